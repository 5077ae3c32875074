package job

import (
	"fmt"
	"slices"
	"testing"

	"plashet/engine/trace"
)

// TestTwoWays: a number that can be read in two ways is asked back with those that
// its field takes as they would be typed, and each, typed instead, is taken without a
// question, as what it says. Values by hand: a depth of 1.41 mm or of 1410 m is none.
func TestTwoWays(t *testing.T) {
	const euro, comma = `"units": "metric", "site": {"currency": "EUR"%s}`, `"numbers": {"decimal": "comma"}, `
	for _, c := range []struct {
		head, path, typed string
		ways              []string
		values            []float64 // SI
	}{
		{euro, "/pond/depth", "1.410 mm", []string{"1410 mm"}, []float64{1.41}},
		{euro, "/pond/depth", "1,410 m", []string{"1.4100 m"}, []float64{1.41}},
		{euro, "/site/altitude", "1,410 m", []string{"1410 m", "1.4100 m"}, []float64{1410, 1.41}},
		{euro, "/pond/water", "@stone + 1,410 m", []string{"@stone + 1410 m", "@stone + 1.4100 m"}, []float64{1410, 1.41}},
		{euro, "/pond/water", "@stone + 999,410 m", []string{"@stone + 999.4100 m"}, []float64{999.41}},
		{euro, "/pond/depth", "999,410 m", nil, nil},
		{comma + euro, "/site/altitude", "1.250 m", []string{"1250 m", "1,2500 m"}, []float64{1250, 1.25}},
		{comma + euro, "/pond/depth", "1.250 m", []string{"1,2500 m"}, []float64{1.25}},
	} {
		set := func(text string) (*Job, *trace.Message) {
			t.Helper()
			j, faults := Read([]byte(`{"format": "plashet job", "version": 1, "name": "x", ` + fmt.Sprintf(c.head, "") + `}`))
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			f := j.Set(c.path, text)
			if f == nil {
				return j, nil
			}
			return j, &f.Message
		}
		_, m := set(c.typed)
		if m == nil {
			t.Errorf("%s: not asked", c.typed)
			continue
		}
		ways := Ways(*m)
		if !slices.Equal(ways, c.ways) {
			t.Errorf("%s: %q, want %q (%s)", c.typed, ways, c.ways, m.Code)
			continue
		}
		for i, w := range ways {
			j, m := set(w)
			if m != nil {
				t.Errorf("%s instead of %s: %s", w, c.typed, m.Code)
				continue
			}
			for _, f := range j.Fields(c.path[:5]) {
				if f.Path == c.path && (f.SI < c.values[i]*0.999999 || f.SI > c.values[i]*1.000001) {
					t.Errorf("%s is read as %v, want %v", w, f.SI, c.values[i])
				}
			}
		}
	}
	j, faults := Read([]byte(`{"format": "plashet job", "version": 1, "name": "x", "units": "metric", "site": {"currency": "EUR", "tariff": "1,234"}}`))
	if j == nil || len(faults) != 1 {
		t.Fatal(faults)
	}
	if w := Ways(faults[0].Message); len(w) != 2 || w[0] != "1234" || w[1] != "1.2340" {
		t.Errorf("an amount: %q", w)
	}
}
