package hydro

import (
	"bytes"
	"encoding/csv"
	"errors"
	"math"
	"os"
	"strconv"
	"testing"

	"plashet/engine/unit"
)

// vectors reads testdata/<name>.csv; the first `words` columns are text.
func vectors(t *testing.T, name string, words int) (text [][]string, numbers [][]float64) {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 10 {
		t.Fatalf("%s holds only %d rows", name, len(rows))
	}
	for _, r := range rows[1:] {
		line := make([]float64, len(r)-words)
		for i, s := range r[words:] {
			if line[i], err = strconv.ParseFloat(s, 64); err != nil {
				t.Fatal(err)
			}
		}
		text, numbers = append(text, r[:words]), append(numbers, line)
	}
	return text, numbers
}

// near fails unless got is want within a relative tolerance, or within abs.
func near[Q ~float64](t *testing.T, what string, got, want Q, rel, abs float64) {
	t.Helper()
	d := math.Abs(float64(got - want))
	if !(d <= abs || d <= rel*math.Abs(float64(want))) {
		t.Errorf("%s: got %.17g, want %.17g (off by %.3g)", what, float64(got), float64(want), d)
	}
}

// relDiff is the difference over the greater size; 0 for two zeros.
func relDiff(a, b float64) float64 {
	if a == b {
		return 0
	}
	return math.Abs(a-b) / math.Max(math.Abs(a), math.Abs(b))
}

func waterAt(t testing.TB, celsius float64) Water {
	t.Helper()
	w, err := WaterAt(unit.Temperature(celsius))
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// wantCode fails unless err is an *Error with the code.
func wantCode(t *testing.T, what string, err error, code string) {
	t.Helper()
	var e *Error
	if !errors.As(err, &e) {
		t.Errorf("%s: got %v, want code %s", what, err, code)
		return
	}
	if e.Code != code {
		t.Errorf("%s: got code %s, want %s", what, e.Code, code)
	}
}
