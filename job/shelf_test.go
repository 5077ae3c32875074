package job

import (
	"math"
	"strings"
	"testing"

	"plashet/engine/unit"
)

func feet(l Length, want unit.Length) bool {
	const abs = 1e-12
	return math.Abs(float64(l.SI-want*unit.Foot)) < abs
}

func TestReadShelf(t *testing.T) {
	metric := &Job{Units: "metric", Site: Site{Currency: "EUR"}}
	pumps, ill, faults := ReadShelf([]byte("\n\n [{\"name\": \"A\", \"maxHead\": 3, \"price\": \"80\"},\n {\"name\": \"B\", \"maxHead\": \"much\"},\n {\"name\": \"C\"}]"), metric)
	if len(pumps) != 3 || pumps[0].MaxHead.SI != 3 || len(ill) != 1 || !ill[1] {
		t.Fatalf("%+v, ill %v", pumps, ill)
	}
	if sum, err := pumps[0].Price.Amount(unit.StyleOf("EUR", unit.Metric)); err != nil || sum.Format(unit.StyleOf("", unit.US)) != "80.00 EUR" {
		t.Errorf("%v %v", sum, err)
	}
	if len(faults) != 1 || faults[0].Line != 4 || !strings.HasPrefix(faults[0].Path, "/shelf/pumps/1") {
		t.Errorf("%+v", faults)
	}
	// the same bare number where feet are spoken
	pumps, _, _ = ReadShelf([]byte(`[{"name": "A", "maxHead": 3}]`), &Job{Units: "us"})
	if len(pumps) != 1 || !feet(pumps[0].MaxHead, 3) {
		t.Errorf("%+v", pumps)
	}
	// a job file: its own units hold, and only its pumps count
	pumps, ill, faults = ReadShelf([]byte(`{"format": "plashet job", "version": 1, "name": "x", "units": "us", "runs": 7, "pumps": [{"name": "A", "maxHead": 3}]}`), metric)
	if len(pumps) != 1 || !feet(pumps[0].MaxHead, 3) || len(ill) != 0 || len(faults) != 0 {
		t.Errorf("%+v %v %v", pumps, ill, faults)
	}
	for _, bad := range []string{"", "   ", "7", `"pumps"`, "null", "[", "{", `[{"name": "A"}`, "\xff\xfe", "[\xff]", `[{"name": "A"}], "runs": []`, `[{"name": "A"}] x`} {
		if pumps, _, faults := ReadShelf([]byte(bad), metric); len(faults) == 0 || len(pumps) > 0 {
			t.Errorf("%q is taken: %v", bad, pumps)
		}
	}
	// two of one name cannot be told apart
	if _, ill, faults := ReadShelf([]byte(`[{"name": "A"}, {"name": "A"}]`), metric); len(faults) != 1 || !ill[1] {
		t.Errorf("%v %v", ill, faults)
	}
}
