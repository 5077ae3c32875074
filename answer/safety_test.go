package answer

import (
	"strings"
	"testing"

	"plashet/engine/glue"
	"plashet/takeoff"
	"plashet/words"
)

// TestCautionAtItsLine: digging and stone are told to be dangerous under the
// very line that stands for the work, in text and JSON.
func TestCautionAtItsLine(t *testing.T) {
	say := words.English()
	for name, r := range answers(t) {
		text, d := printed(t, r)
		lines := strings.Split(text, "\n")
		if s := say.Word(glue.CautionSaw); strings.Count(text, s) < len(r.Cutting) || len(d.Cutting) > 0 && d.Cutting[0].Cautions[0] != s {
			t.Errorf("%s: nobody guards the eyes at the saw", name)
		}
		seen := 0
		for k, i := range r.Materials {
			want := map[string][]string{
				takeoff.CodeDig:      {takeoff.CautionServices, takeoff.CautionCaveIn, takeoff.CautionOpenHole},
				takeoff.CodeBoulders: {takeoff.CautionLift},
			}[i.Code]
			for _, code := range want {
				seen++
				if s := say.Word(code); !strings.Contains(strings.Join(d.Materials[k].Cautions, "\n"), s) || !strings.Contains(text, "    ! "+s) {
					t.Errorf("%s: %s is not told at %s", name, code, i.Code)
				}
			}
			if i.Code == takeoff.CodeDig {
				for n, l := range lines {
					if strings.HasPrefix(l, "digging") && !strings.Contains(lines[n+1], say.Word(takeoff.CautionServices)) {
						t.Errorf("%s: under digging stands %q", name, lines[n+1])
					}
				}
			}
		}
		if seen == 0 {
			t.Errorf("%s: neither digging nor stone is on the list", name)
		}
	}
}
