package design

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// A hatch is handed to the laying as it was measured, in the middle where it is
// not said, and the pump must pass it. The sizes are worked out by hand: the
// vault is 16 by 20 in.
func TestHatch(t *testing.T) {
	book, j := read(t, "terrace-spout")
	if r := Solve(book, j); !r.Assembly.LiftOut.Possible {
		t.Fatal("the pump does not come out through the whole rim")
	}
	inch := func(text string, v float64) job.Length {
		l := job.Length{}
		l.Text, l.SI = text, unit.Length(v)*unit.Inch
		return l
	}
	for _, c := range []struct {
		name        string
		hatch       job.Hatch
		want        layout.Opening
		comes       bool
		left, front bool // assumed
	}{
		{"in the middle", job.Hatch{Length: inch("14 in", 14), Width: inch("9 in", 9)}, layout.Opening{FromX: 1, ToX: 15, FromY: 5.5, ToY: 14.5}, false, true, true},
		{"measured", job.Hatch{Length: inch("15 in", 15), Width: inch("19 in", 19), Left: inch("1/2", 0.5), Front: inch("0", 0)}, layout.Opening{FromX: 0.5, ToX: 15.5, FromY: 0, ToY: 19}, true, false, false},
		{"one side", job.Hatch{Length: inch("4 in", 4), Width: inch("4 in", 4), Front: inch("1 in", 1)}, layout.Opening{FromX: 6, ToX: 10, FromY: 1, ToY: 5}, false, true, false},
	} {
		j.Vault.Hatch = c.hatch
		r := Solve(book, j)
		for _, p := range [4][2]unit.Length{{r.Assembly.Hatch.FromX, c.want.FromX}, {r.Assembly.Hatch.ToX, c.want.ToX}, {r.Assembly.Hatch.FromY, c.want.FromY}, {r.Assembly.Hatch.ToY, c.want.ToY}} {
			if d := p[0] - p[1]*unit.Inch; d > 1e-9 || d < -1e-9 {
				t.Errorf("%s: the opening is %v, not %v in", c.name, r.Assembly.Hatch, c.want)
				break
			}
		}
		if r.Assembly.LiftOut.Possible != c.comes {
			t.Errorf("%s: the pump comes out: %v", c.name, !c.comes)
		}
		var left, front bool
		for _, a := range r.Assumptions {
			if a.Code == AssumeHatch {
				left, front = has(a.Args, "left"), has(a.Args, "front")
			}
		}
		if left != c.left || front != c.front {
			t.Errorf("%s: assumed from the left %v, from the front %v", c.name, left, front)
		}
	}
}

// A larger hatch is written with its place, for in the middle it would not stay;
// a longer vault leaves it where it is over the floor.
func TestHatchMend(t *testing.T) {
	_, j := read(t, "terrace-spout") // 16 by 20 in, the hole in the right wall
	for path, text := range map[string]string{"/vault/hatch/length": "10 in", "/vault/hatch/width": "12 in"} {
		if f := j.Set(path, text); f != nil {
			t.Fatal(f)
		}
	}
	for _, c := range []struct {
		code string
		want []Entry
	}{
		{arrange.ChangeHatchLeft, []Entry{{"/vault/hatch/length", "10-1/2\""}, {"/vault/hatch/left", "2-1/2\""}}},
		{arrange.ChangeHatchRight, []Entry{{"/vault/hatch/length", "10-1/2\""}, {"/vault/hatch/left", "3\""}}},
		{arrange.ChangeHatchFront, []Entry{{"/vault/hatch/width", "1' 0-1/2\""}, {"/vault/hatch/front", "3-1/2\""}}},
		{arrange.ChangeHatchBack, []Entry{{"/vault/hatch/width", "1' 0-1/2\""}, {"/vault/hatch/front", "4\""}}},
		{arrange.ChangeWidth, []Entry{{"/vault/width", "1' 8-1/2\""}, {"/vault/hatch/front", "4\""}}},
	} {
		a := &Arranging{Units: j.System(), Outcome: &arrange.Outcome{Short: []arrange.Change{{What: trace.Message{Code: c.code}, By: 0.49 * unit.Inch}}}}
		if got := a.Mend(j, 0); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.code, got, c.want)
		}
	}
}

func has(args []trace.Arg, name string) bool {
	for _, a := range args {
		if a.Name == name {
			return true
		}
	}
	return false
}
