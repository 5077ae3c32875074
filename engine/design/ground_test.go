package design

import (
	"math"
	"testing"

	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

func holes(r *Result) map[string]float64 {
	out := map[string]float64{}
	for _, i := range r.Materials {
		if i.Code == takeoff.CodeDig {
			for _, x := range i.Terms {
				out[x.Symbol] = x.Value.SI / float64(unit.CubicFoot)
			}
		}
	}
	return out
}

// What the hillside takes, by hand, with its overlap of 1 ft and the bank of 1 ft,
// room of 6 in and trench of 8 x 18 in that are assumed:
//
//	falls   102.25 - 93.00 ft from the first crest to the water, less 7 % of 28 ft: 7.29 ft
//	liner   28 + (4 + 2/3) + (3 + 2/3) + 7.29 + 1 + 2 = 46.62 ft, 3 + 2 + 2 = 7 ft wide
//	        (its trade notes reckon 45 x 10 ft)
//	bed     6 + 2 + 2 = 10 ft by 4 + 2 + 2 = 8 ft
//	stream  28 x 3 x 1 = 84 ft³; pools 4 x 3 x 4/12 = 4 and 3 x 2 x 4/12 = 2; bed 6 x 4 x 1 = 24
//	vault   36 x 30 x 26 in = 16.25 ft³, of which 24 x 18 x 26 in = 6.5 are the vault
//	trench  82 ft x 8/12 x 18/12 = 82 ft³
func TestGroundOfTheHillside(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	r := Solve(book, j)
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 0.005*want {
			t.Errorf("%s: %g, by hand %g", what, got, want)
		}
	}
	sheets := 0
	for _, i := range r.Materials {
		if i.Code != takeoff.CodeLiner {
			continue
		}
		l, w := float64(i.Length/unit.Foot), float64(i.Width/unit.Foot)
		switch i.Place {
		case "cascade":
			near("cascade's length", l, 46.62)
			near("cascade's width", w, 7)
			sheets++
		case "gravel bed, bed":
			near("bed's length", l, 10)
			near("bed's width", w, 8)
			sheets++
		}
	}
	if sheets != 2 {
		t.Errorf("%d sheets by hand are there", sheets)
	}
	for name, want := range map[string]float64{"stream": 84, "upper pool": 4, "lower pool": 2, "gravel bed, bed": 24, "vault": 16.25, "trench": 82} {
		near(name, holes(r)["V "+name], want)
	}
	for _, i := range r.Materials {
		if i.Code == takeoff.CodeSoil {
			var dug float64
			for _, v := range holes(r) {
				dug += v
			}
			// Common earth swells by 20 percent at least: Table 4-1 as quoted.
			near("soil left over", i.Buy.Low/float64(unit.CubicFoot), (dug-(16.25-6.5)-82)*1.2)
		}
	}
	figures := map[string]bool{}
	for _, f := range r.Figures {
		figures[f.ID] = f.Formula != "" && len(f.Terms) > 0
	}
	for k := range holes(r) {
		if k != "V pond" && !figures["hole.0"] {
			t.Errorf("%s cannot be opened", k)
		}
	}
}

// What the job does not tell is assumed, or told as not counted.
func TestGroundUntold(t *testing.T) {
	book, good := read(t, "hillside-cascade")
	for _, c := range []struct {
		code   string
		change func(j *job.Job)
	}{
		{takeoff.FindPoolSizes, func(j *job.Job) { j.Watercourses[0].Parts[1].Pool.Depth = job.Length{} }},
		{takeoff.FindVault, func(j *job.Job) { j.Vault.Length = job.Length{} }},
		{takeoff.FindBed, func(j *job.Job) { j.Watercourses[1].Box.Lined = false }},
		{takeoff.FindFalls, func(j *job.Job) {
			j.Pond.Water = job.Level{}
			j.Watercourses[1].Parts[0].Lip.Drop = job.Length{}
		}},
	} {
		if codes(Solve(book, good).Findings, c.code) != 0 {
			t.Errorf("%s is told of a job that gives all", c.code)
		}
		j := good.Clone()
		c.change(j)
		if n := codes(Solve(book, j).Findings, c.code); n != 1 {
			t.Errorf("%s is told %d times", c.code, n)
		}
	}
	assumed := map[string]bool{}
	for _, a := range Solve(book, good).Assumptions {
		assumed[a.Code] = true
	}
	for _, code := range []string{takeoff.AssumeWorkRoom, takeoff.AssumeTrench, takeoff.AssumeBank, takeoff.AssumePlainEnds} {
		if !assumed[code] {
			t.Errorf("%s is not told", code)
		}
	}
	j := good.Clone()
	j.Works.TrenchDepth = job.Length{Text: "0"} // it lies on the ground
	if holes(Solve(book, j))["V trench"] != 0 {
		t.Error("a trench of no depth is dug")
	}
}
