package answer

import (
	"bytes"
	"strings"
	"testing"

	"plashet/engine/design"
	"plashet/engine/hydro"
	"plashet/engine/unit"
	"plashet/words"
)

// A depth wanted on a tilted lip, delivered as wanted, reads as wanted: at mid
// crest; the ends are named for what they are.
func TestTiltedLip(t *testing.T) {
	const wanted, tilt = 14.6 * unit.Millimetre, 6 * unit.Millimetre
	law, err := hydro.LipLaw{Width: 0.4, C: 1.7, Tilt: tilt}.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	q, err := law.FlowForSheet(wanted, hydro.AtUpstream)
	if err != nil {
		t.Fatal(err)
	}
	s, err := law.Sheet(q)
	if err != nil {
		t.Fatal(err)
	}
	print := func(tilt unit.Length) string {
		var b bytes.Buffer
		p := &printer{w: &b, say: words.English(), unit: unit.Metric}
		p.lip(&design.Result{}, design.Lip{Name: "lower", Tilt: tilt, Sheet: s}, "x", unit.Exact)
		return b.String()
	}
	for _, want := range []string{"head upstream 17.6 mm at the low end, 14.6 mm at mid crest, 11.6 mm at the high end;", "critical 9.7 mm, at the edge 7.0 mm at mid crest"} {
		if got := print(tilt); !strings.Contains(got, want) {
			t.Errorf("%q is not in %q", want, got)
		}
	}
	if got := print(0); strings.Contains(got, "crest") || strings.Contains(got, "end") {
		t.Errorf("a level lip has no ends: %q", got)
	}
}
