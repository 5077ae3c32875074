package job

import (
	"fmt"
	"math"
	"testing"
)

// Corners of an opening over a round vault, 26 in across, worked out by hand: of a
// square in the middle they lie on the rim where it is 26 / sqrt 2 = 18.385 in wide.
func TestHatchCorners(t *testing.T) {
	for _, c := range []struct {
		length, width, left, front string
		fits                       bool
	}{
		{"18 in", "18 in", "", "", true},
		{"18-3/8", "18-3/8", "", "", true},
		{"18-1/2", "18-1/2", "", "", false},
		{"24 in", "24 in", "", "", false},
		{"24 in", "10 in", "", "", true},  // 12 and 5: 13, the corner on the rim
		{"24 in", "11 in", "", "", false}, // 12 and 5.5: 13.2
		{"10 in", "10 in", "0", "", false},
		{"10 in", "10 in", "2 in", "8 in", true},   // 11 and 5: 12.08
		{"10 in", "10 in", "2 in", "12 in", false}, // 11 and 9
	} {
		hatch := fmt.Sprintf(`"length": %q, "width": %q`, c.length, c.width)
		if c.left != "" {
			hatch += fmt.Sprintf(`, "left": %q`, c.left)
		}
		if c.front != "" {
			hatch += fmt.Sprintf(`, "front": %q`, c.front)
		}
		_, faults := Read([]byte(`{"format": "plashet job", "version": 1, "name": "Corner", "units": "us",
			"vault": {"shape": "round", "length": "26 in", "depth": "30 in", "hatch": {` + hatch + `}}}`))
		told := 0
		for _, f := range faults {
			if f.Code != CodeHatchRound || f.Path != "/vault/hatch" {
				t.Errorf("%v: %v", c, f)
				continue
			}
			told++
			for _, a := range f.Args {
				if a.Name == "square" && math.Abs(a.Value.SI-18.25*0.0254) > 1e-9 { // 18.385 down to quarters
					t.Errorf("a square of %v m", a.Value.SI)
				}
			}
		}
		if (told == 0) != c.fits || told > 1 {
			t.Errorf("%v: told %d times", c, told)
		}
	}
}
