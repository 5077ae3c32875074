package motion

import (
	"testing"

	"plashet/engine/geom"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/unit"
)

// tank makes a pond of plain walls, its water line at a level.
func tank(tb testing.TB, area unit.Area, depth, line unit.Length) *level.AreaElevation {
	tb.Helper()
	o, err := geom.Rectangle(unit.Length(area), 1)
	if err != nil {
		tb.Fatal(err)
	}
	a, err := level.NewPond(level.Pond{Outline: o, Line: line, Section: []level.Step{{Depth: depth}}, Void: 1})
	if err != nil {
		tb.Fatal(err)
	}
	return a
}

func box(tb testing.TB, length, width, depth, floor unit.Length) *level.AreaElevation {
	tb.Helper()
	a, err := level.NewBox(length, width, length, width, depth, floor)
	if err != nil {
		tb.Fatal(err)
	}
	return a
}

func lip(tb testing.TB, width unit.Length) *hydro.Lip {
	tb.Helper()
	l, err := hydro.LipLaw{Width: width, C: 1.7}.Prepare()
	if err != nil {
		tb.Fatal(err)
	}
	return l
}

// rill is a small feature: a pond of 2.6 m², a vault behind its sill, one feed.
func rill(tb testing.TB) Inputs {
	tb.Helper()
	const q = 1.2e-3
	pond, vault := tank(tb, 2.64, 0.45, 0), box(tb, 0.36, 0.28, 0.42, -0.40)
	upper, lower := lip(tb, 0.25), lip(tb, 0.40)
	return Inputs{
		Pond: pond, Line: 0, Rim: 0.045, Low: -0.22, Flow: q,
		Vault:  &level.Vault{Body: vault, Sill: &level.Sill{Crest: -0.04, Width: 0.18, C: 1.7}},
		Supply: Constant{q},
		Feeds: []Feed{{
			Name: "rill", Pipe: 0.023, PipeHeld: 0.023, Crest: 1.03, Depth: 0.3, Valve: true, Back: 0.4 / (q * q), Bore: 1.6e-3,
			Parts: []Part{
				{Name: "box", Full: 0.04725, Held: 0.04725, Lip: upper, Area: 0.1575},
				{Name: "stream", Reach: true, Full: 0.054, Flow: q},
				{Name: "pool", Full: 0.21, Held: 0.21, HeldOpen: 0.21, Lip: lower, Area: 0.84},
			},
		}},
	}
}
