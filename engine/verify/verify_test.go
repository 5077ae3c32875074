package verify

import (
	"slices"
	"testing"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Assemblies that can be built pass every check, in a box, with a lift straight
// up, and in a round tapered vault.
func TestWhatCanBeBuiltPasses(t *testing.T) {
	metric := lifts()
	metric.Settings.Units = unit.Metric
	home := sideways()
	home.Settings.MakeUp = layout.Is(unit.Length(0))
	for name, i := range map[string]layout.Input{"box": lifts(), "straight up": sideways(), "round": round30(), "metric": metric, "no gap": home} {
		a, _, faults := layout.Lay(i)
		if len(faults) > 0 {
			t.Fatalf("%s: %+v", name, faults)
		}
		r := Prove(i, a)
		if len(r.Checks) < 50 || r.Passed() != len(r.Checks) {
			t.Errorf("%s: %d of %d pass", name, r.Passed(), len(r.Checks))
			show(t, r.Failed())
		}
	}
}

// The hillside demo's first layout is refused for the one reason that layout
// gives too: the pump does not come out.
func TestWhatCannotFailsForTheSameReason(t *testing.T) {
	i := hillside()
	a, fs, faults := layout.Lay(i)
	r := Prove(i, a)
	if failed := r.Failed(); len(failed) != 1 || failed[0].Code != CheckWay {
		show(t, failed)
		t.Error("want the way out refused, nothing else")
	}
	if u := r.Untold(fs, faults); len(u) != 0 {
		t.Errorf("layout tells it too: %+v", u)
	}
	if u := r.Unproved(fs); len(u) != 0 {
		t.Errorf("and here it is refuted: %+v", u)
	}
}

// A disagreement is seen from both sides.
func TestDisagreement(t *testing.T) {
	i := lifts()
	a, fs, faults := layout.Lay(i)
	a.Pieces = slices.Clone(a.Pieces)
	a.Pieces[1].Cut -= unit.Inch
	r := Prove(i, a)
	if u := r.Untold(fs, faults); !slices.ContainsFunc(u, func(c Check) bool { return c.Code == CheckCut && c.Margin.SI < -0.02 }) {
		t.Errorf("a piece an inch short: %+v", u)
	}
	i = hillside()
	_, fs, _ = layout.Lay(i)
	j := lifts()
	b, _, _ := layout.Lay(j)
	good := Prove(j, b)
	if u := good.Unproved(fs); len(u) != 1 || u[0].Code != layout.FindBlocked {
		t.Errorf("layout's danger is not confirmed by a report that passes: %+v", u)
	}
}

// What is not laid, or does not match in count, fails as a whole.
func TestNothingLaid(t *testing.T) {
	for _, a := range []layout.Assembly{{}, {Laid: true}, {Laid: true, Places: make([]layout.Place, 1)}} {
		if r := Prove(lifts(), a); len(r.Checks) != 1 || r.Passed() != 0 || r.Checks[0].Code != CheckWhole {
			t.Errorf("%+v", r)
		}
	}
	if r := Prove(layout.Input{}, layout.Assembly{Laid: true}); r.Passed() != 0 {
		t.Errorf("%+v", r)
	}
	if r := Prove(layout.Input{Parts: make([]layout.Laid, 2)}, layout.Assembly{Laid: true, Places: make([]layout.Place, 2)}); len(r.Failed()) == 0 {
		t.Error("empty parts pass")
	}
}
