package design

import (
	"math"
	"slices"
	"testing"

	"plashet/demo"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// apply puts a level's remedy into the job; false for one that moves the pond's
// own shape with its water line.
func apply(j *job.Job, m trace.Remedy) bool {
	amount := func(name string) unit.Length {
		for _, a := range m.Args {
			if a.Name == name {
				return unit.Length(a.Value.SI)
			}
		}
		return 0
	}
	switch m.Code {
	case RemedySill:
		j.Vault.Sill.SI -= amount("amount")
	case RemedyRim:
		j.Pond.Rim.SI += amount("amount")
	case RemedyTopUp:
		j.Pond.RunningLine = j.Vault.Sill
		j.Pond.RunningLine.SI += amount("over")
	default:
		return false
	}
	return true
}

// What a remedy of a level promises comes true when it is built: the whole design,
// with its pump and pipe, is worked out again for the job so changed.
func TestLevelRemediesHold(t *testing.T) {
	seen := map[string]int{}
	for _, name := range demo.Names() {
		book, good := read(t, name)
		for _, change := range []func(j *job.Job){
			func(*job.Job) {},
			func(j *job.Job) { j.Pond.Rim.SI += 0.1 }, // room to top up
			func(j *job.Job) { j.Pond.Rim.SI -= 0.03 },
		} {
			j := good.Clone()
			change(j)
			r := Solve(book, j)
			for _, f := range r.Findings {
				k := slices.IndexFunc(ailments, func(a ailment) bool { return slices.Contains(a.codes, f.Code) })
				for _, m := range f.Remedies {
					mended := j.Clone()
					if k < 0 || !apply(mended, m) {
						continue
					}
					seen[m.Code]++
					for _, left := range Solve(book, mended).Findings {
						if slices.Contains(ailments[k].codes, left.Code) {
							t.Errorf("%s: %s is not mended by %s %+v: %s is left", name, f.Code, m.Code, m.Args, left.Code)
						}
					}
				}
			}
		}
	}
	for _, code := range []string{RemedySill, RemedyRim, RemedyTopUp} {
		if seen[code] == 0 {
			t.Errorf("no demo has %s: %v", code, seen)
		}
	}
}

// The courtyard's sill is to come down by 20 mm (the trade's notes of the demo),
// and topping it up is no remedy as it stands: a stop would then run over.
func TestCourtyardSill(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	for _, f := range Solve(book, j).Findings {
		if f.Code != level.FindingRestartStarves {
			continue
		}
		for _, m := range f.Remedies {
			if m.Code == RemedyTopUp {
				t.Error("topping up is told as a remedy")
			}
			if m.Code == RemedySill && math.Abs(m.Args[0].Value.SI-0.020) > 1e-9 {
				t.Errorf("the sill comes down by %g m", m.Args[0].Value.SI)
			}
		}
		if len(f.Remedies) == 0 {
			t.Error("no remedy")
		}
		return
	}
	t.Error("it does not starve")
}
