package checks

import (
	"fmt"
	"math"

	"plashet/engine/geom"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// The drain examples and closed forms, each run through the motion as a
// contractor's feature would be: a box that runs back through its valve, a pond
// that runs over its sill. Nothing here calls the closed forms of package hydro.

// fine is the error of a volume, in m³, that a step may make in these checks;
// finest where a table asks for ten digits.
const fine, finest = 1e-9, 1e-12

// derived stands beside a value that follows from the stated formula in the
// comment at its function.
var derived = trace.Source{Title: "derived, see the comment in checks/motion.go", Basis: trace.BasisLibrary}

// drained gives the drain examples of the tables again, by integration.
func drained() ([]Check, error) {
	round, err22 := emptying(math.Pi/4*16*float64(unit.SquareFoot), 5*float64(unit.SquareInch), 1, 6*float64(unit.Foot), 2*float64(unit.Foot))
	// Half of the whole time goes by to a quarter of the level, where the flow
	// is half: t goes with sqrt h.
	small, err23 := emptying(1, 1e-4, 1, 5, 1.25)
	out, err := fromExamples("motion", []worked{
		{"E22", round * math.Sqrt(unit.StandardGravity/(32.2*float64(unit.Foot))), err22},
		{"E23", 2 * small * math.Sqrt(unit.StandardGravity/10), err23},
	})
	if err != nil {
		return nil, err
	}
	rows, err := groupRows("tank")
	if err != nil {
		return nil, err
	}
	t, err := emptying(1.5, math.Pi/4*0.04*0.04, 0.61, 0.6, 0.1)
	if err != nil {
		return nil, err
	}
	c, err := fromRow(rows[0], "motion", t*math.Sqrt(unit.StandardGravity/9.81))
	out = append(out, c)
	for i := range out {
		out[i].ID += "-motion" // they stand a second time, by formula
	}
	return out, err
}

// motions gives the drain examples and the closed forms.
func motions() ([]Check, error) {
	out, err := drained()
	if err != nil {
		return nil, err
	}
	for _, f := range []func() (Check, error){
		twoTanks, twoBoxes, overSill, againstLip, floatValve, emptyingReach, runsDry, rainOver, books,
	} {
		c, err := f()
		if err != nil {
			return nil, err
		}
		if c.Source == "" {
			c.Source, c.Basis = derived.Title, derived.Basis
		}
		c.Group = "motion"
		out = append(out, c)
	}
	return out, nil
}

// basin is a pond of plain walls with its water line at 0.
func basin(area, depth float64) (*level.AreaElevation, error) {
	side := unit.Length(math.Sqrt(area))
	o, err := geom.Rectangle(side, side)
	if err != nil {
		return nil, err
	}
	return level.NewPond(level.Pond{Outline: o, Section: []level.Step{{Depth: unit.Length(depth)}}, Void: 1})
}

// vessel is a box of plain walls and one metre's length.
func vessel(area, depth, floor float64) (*level.AreaElevation, error) {
	return level.NewBox(unit.Length(area), 1, unit.Length(area), 1, unit.Length(depth), unit.Length(floor))
}

func crest(width float64) (*hydro.Lip, error) {
	return hydro.LipLaw{Width: unit.Length(width), C: 1.7}.Prepare()
}

// event gives the time of the first event of a kind.
func event(c motion.Course, code motion.EventCode) (float64, error) {
	for _, e := range c.Events {
		if e.Code == code {
			return float64(e.At), nil
		}
	}
	return 0, fmt.Errorf("motion: no event %s", code)
}

// tall is a box over the pond that runs back through a hole of an area in its
// valve.
func tall(area, hole, floor, from, to float64) motion.Feed {
	return motion.Feed{
		Crest: unit.Length(floor + from), Depth: unit.Length(from), Inlet: unit.Length(to), Valve: true, Bore: unit.Area(hole),
		Parts: []motion.Part{{Full: unit.Volume(area * from), Held: unit.Volume(area * from), HeldOpen: unit.Volume(area * to)}},
	}
}

// emptying is the time in which a tank falls from one level to another over a
// pond that is full to its rim, so that it does not rise.
func emptying(area, hole, cd, from, to float64) (float64, error) {
	pond, err := basin(10, 1)
	if err != nil {
		return 0, err
	}
	s, err := motion.New(motion.Inputs{Pond: pond, Low: -1, Supply: motion.Constant{0}, Feeds: []motion.Feed{tall(area, hole, 0, from, to)}})
	if err != nil {
		return 0, err
	}
	c, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Valve: motion.Leaking, Leak: motion.Leak{Part: 1, Cd: unit.Ratio(cd)}, Until: 1e6, Accuracy: finest, Still: 1e-9})
	if err != nil {
		return 0, err
	}
	return event(c, motion.EventSiphonEnds)
}

// twoTanks: an opening under water between two upright tanks of areas A1 and A2,
// their levels d apart: A1 dz1 = -A2 dz2 = -Cd a sqrt(2 g d) dt, so
//
//	t = 2 A1 A2 / ((A1 + A2) Cd a sqrt(2g)) (sqrt d0 - sqrt d1)
func twoTanks() (Check, error) {
	const a1, a2, cd, hole, from, to = 2.0, 0.5, 0.61, 1e-3, 1.0, 0.9
	pond, err := basin(4, 1)
	if err != nil {
		return Check{}, err
	}
	vault, err := vessel(a2, 3, -1)
	if err != nil {
		return Check{}, err
	}
	// The sill lies so high that the pond takes no part.
	in := motion.Inputs{
		Pond: pond, NoRim: true, Low: -1, Supply: motion.Constant{0}, Feeds: []motion.Feed{tall(a1, hole, -0.9, from, to)},
		Vault: &level.Vault{Body: vault, Sill: &level.Sill{Crest: 5, Width: 1, C: 1.7}},
	}
	s, err := motion.New(in)
	if err != nil {
		return Check{}, err
	}
	c, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Valve: motion.Leaking, Leak: motion.Leak{Part: 1, Cd: cd}, Until: 1e5, Accuracy: fine, Still: 1e-9})
	if err != nil {
		return Check{}, err
	}
	got, err := event(c, motion.EventSiphonEnds)
	d0 := 1.1 // the box stands at 0.1, the vault is dry at -1
	d1 := d0 - (from-to)*(1+a1/a2)
	want := 2 * a1 * a2 / ((a1 + a2) * cd * hole * math.Sqrt(2*unit.StandardGravity)) * (math.Sqrt(d0) - math.Sqrt(d1))
	return Check{ID: "M-tanks", What: "two upright tanks of 2 and 0.5 m² level out through an opening of 10 cm² under water, Cd 0.61, from 1.1 to 0.6 m apart", Unit: "s", Want: want, Got: got, Rel: 1e-6}, err
}

// twoBoxes: a box of area A1 runs through pipe of resistance R into an empty one
// of area A2 that stands lower, their levels d apart: A1 dz1 = -A2 dz2 = -sqrt(d/R)
// dt, so
//
//	t = 2 A1 A2 sqrt(R) / (A1 + A2) (sqrt d0 - sqrt d1)
func twoBoxes() (Check, error) {
	const a1, a2, r, from, to, lower = 0.4, 0.5, 1e6, 0.4, 0.15, -0.5
	pond, err := basin(4, 1)
	if err != nil {
		return Check{}, err
	}
	upper, below := tall(a1, 1e-3, 2, from, to), tall(a2, 1e-3, 2+lower, 0.3, 0)
	below.Parts[0].Held = 0
	s, err := motion.New(motion.Inputs{Pond: pond, NoRim: true, Low: -1, Supply: motion.Constant{0, 0}, Feeds: []motion.Feed{upper, below}, Ways: []motion.Way{{Way: level.Way{From: 0, To: 1}, Back: r}}, Places: 2})
	if err != nil {
		return Check{}, err
	}
	c, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Valve: motion.Works, Until: 1e5, Accuracy: fine, Still: 1e-9})
	if err != nil {
		return Check{}, err
	}
	got, err := event(c, motion.EventSiphonEnds)
	d0 := from - lower
	d1 := d0 - (from-to)*(1+a1/a2)
	want := 2 * a1 * a2 * math.Sqrt(r) / (a1 + a2) * (math.Sqrt(d0) - math.Sqrt(d1))
	return Check{ID: "M-joined", What: "after a stop a full box of 0.4 m² runs through pipe of 1,000,000 s²/m⁵ into an empty one of 0.5 m², from 0.9 to 0.45 m apart, where its pipe ends", Unit: "s", Want: want, Got: got, Rel: 1e-6}, err
}

// overSill: a pond of area A runs over a sill that falls free: A dh = -C L h^1.5
// dt, so
//
//	t = 2 A / (C L) (1/sqrt h2 - 1/sqrt h1)
func overSill() (Check, error) {
	const area, width, c, h1, h2 = 5.0, 0.4, 1.7, 0.25, 0.05
	pond, err := basin(area, 1)
	if err != nil {
		return Check{}, err
	}
	vault, err := vessel(1, 3, -4)
	if err != nil {
		return Check{}, err
	}
	in := motion.Inputs{
		Pond: pond, Line: -0.5, NoRim: true, Low: -4, Supply: motion.Constant{0}, Feeds: []motion.Feed{tall(1, 1e-4, 1, 1, 0.5)},
		Vault: &level.Vault{Body: vault, Sill: &level.Sill{Crest: -0.75, Width: width, C: c}},
	}
	s, err := motion.New(in)
	if err != nil {
		return Check{}, err
	}
	t := 2 * area / (c * width) * (1/math.Sqrt(h2) - 1/math.Sqrt(h1))
	run, err := s.Run(motion.Program{From: s.Filled(-0.5, -4), Valve: motion.Works, Until: unit.Duration(t), Whole: true, Accuracy: fine})
	return Check{ID: "M-sill", What: "a pond of 5 m² runs over a free sill 0.4 m wide, C 1.7: head left of 0.25 m after the time to 0.05 m", Unit: "m", Want: h2, Got: float64(run.End.Pond) + 0.75, Rel: 1e-6}, err
}

// againstLip: a box of area A gets Q and runs over a lip: A dh = (Q - C L h^1.5)
// dt. With x = sqrt(h/H), H the head at which the lip passes Q, 2 A H x dx = Q (1
// - x³) dt, and the partial fractions of x / (1 - x³) give
//
//	t = 2 A H / Q F(x),  F = ln((1 + x + x²)/(1 - x)²) / 6 - (atan((2x + 1)/sqrt 3) - pi/6) / sqrt 3
//
// The engine joins the weir's law to zero under a head of 1 mm, which is why it
// does not come nearer.
func againstLip() (Check, error) {
	const area, width, q, x = 0.5, 0.5, 0.04, 0.8
	lip, err := crest(width)
	if err != nil {
		return Check{}, err
	}
	head := math.Pow(q/(1.7*width), 2.0/3)
	t := 2 * area * head / q * (math.Log((1+x+x*x)/((1-x)*(1-x)))/6 - (math.Atan((2*x+1)/math.Sqrt(3))-math.Pi/6)/math.Sqrt(3))
	pond, err := basin(1000, 1)
	if err != nil {
		return Check{}, err
	}
	f := motion.Feed{Crest: 1, Depth: 0.5, Inlet: 0.5, Valve: true, Parts: []motion.Part{{Full: 0.25, Held: 0.25, HeldOpen: 0.25, Lip: lip, Area: area}}}
	s, err := motion.New(motion.Inputs{Pond: pond, NoRim: true, Low: -1, Flow: q, Supply: motion.Constant{q}, Feeds: []motion.Feed{f}})
	if err != nil {
		return Check{}, err
	}
	run, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Pump: true, Valve: motion.Works, Until: unit.Duration(t), Whole: true, Accuracy: fine})
	return Check{ID: "M-lip", What: "a full box of 0.5 m² gets 40 l/s and runs over a lip 0.5 m wide, C 1.7: head after the time to 0.64 of the steady head", Unit: "m", Want: x * x * head, Got: (float64(run.Stored) - 0.25) / area, Rel: 1e-5}, err
}

// floatValve: a float valve that gives Q at a band b under its level and less in
// proportion is a linear reservoir: what is missing shrinks as exp(-t Q / (A b)).
func floatValve() (Check, error) {
	const area, q, band, missing, t = 3.0, 1e-4, 0.05, 0.04, 2000.0
	pond, err := basin(area, 1)
	if err != nil {
		return Check{}, err
	}
	s, err := motion.New(motion.Inputs{Pond: pond, NoRim: true, Low: -1, Supply: motion.Constant{0}, Feeds: []motion.Feed{tall(1, 1e-4, 1, 1, 0.5)}})
	if err != nil {
		return Check{}, err
	}
	run, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Valve: motion.Works, TopUp: motion.TopUp{Level: missing, Band: band, Flow: q}, Until: t, Whole: true, Accuracy: fine})
	return Check{ID: "M-float", What: "a float valve, 0.1 l/s at 50 mm under its level, on a pond of 3 m² that lacks 40 mm: still missing after 2,000 s", Unit: "m", Want: missing * math.Exp(-t*q/(area*band)), Got: missing - float64(run.End.Pond), Rel: 1e-6}, err
}

// emptyingReach: a reach that holds V0 at the flow Q0 and passes Q0 (V/V0)^(5/3)
// by Manning's power of the depth, with nothing coming: dV = -Q0 (V/V0)^(5/3) dt,
//
//	V = V0 (1 + 2/3 Q0 t / V0)^(-3/2)
func emptyingReach() (Check, error) {
	const v0, q, t = 0.4, 3e-3, 300.0
	pond, err := basin(10, 1)
	if err != nil {
		return Check{}, err
	}
	f := motion.Feed{Crest: 1, Depth: 0.5, Inlet: 0.5, Valve: true, Parts: []motion.Part{{Full: 0.1, Held: 0.1, HeldOpen: 0.1}, {Reach: true, Full: v0, Held: 0, Flow: q}}}
	s, err := motion.New(motion.Inputs{Pond: pond, NoRim: true, Low: -1, Flow: q, Supply: motion.Constant{q}, Feeds: []motion.Feed{f}})
	if err != nil {
		return Check{}, err
	}
	steady, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Pump: true, Valve: motion.Works, Until: 1e5, Still: 1e-11, Accuracy: fine})
	if err != nil {
		return Check{}, err
	}
	run, err := s.Run(motion.Program{From: steady.End, Valve: motion.Works, Until: t, Whole: true, Accuracy: fine})
	return Check{ID: "M-reach", What: "a reach of 400 l at 3 l/s, by Manning's power, 300 s after the stop", Unit: "m³", Want: v0 * math.Pow(1+2.0/3*q*t/v0, -1.5), Got: float64(run.Stored) - 0.1, Rel: 1e-6}, err
}

// runsDry: a vault cut off from its pond is drawn from its level to the pump's
// least in A z / Q.
func runsDry() (Check, error) {
	const area, q, depth = 0.1, 1e-3, 0.2
	pond, err := basin(3, 1)
	if err != nil {
		return Check{}, err
	}
	vault, err := vessel(area, 1, -0.5)
	if err != nil {
		return Check{}, err
	}
	in := motion.Inputs{
		Pond: pond, Line: -0.1, NoRim: true, Low: -0.4, Flow: q, Supply: motion.Constant{q}, Feeds: []motion.Feed{tall(1, 1e-4, 1, 1, 0.5)},
		Vault: &level.Vault{Body: vault, Sill: &level.Sill{Crest: 0, Width: 1, C: 1.7}},
	}
	s, err := motion.New(in)
	if err != nil {
		return Check{}, err
	}
	run, err := s.Run(motion.Program{From: s.Filled(-0.1, depth-0.4), Pump: true, Valve: motion.Works, Until: 100})
	return Check{ID: "M-dry", What: "1 l/s out of a vault of 0.1 m², cut off 0.2 m over the pump's least level: the pump draws air after", Unit: "s", Want: area * depth / q, Got: float64(run.DryAt), Rel: 1e-6}, err
}

// rainOver: of rain on a pond of plain walls, what finds no room under the rim
// runs over.
func rainOver() (Check, error) {
	const area, rain, room = 4.0, 0.06, 0.045
	pond, err := basin(area, 1)
	if err != nil {
		return Check{}, err
	}
	s, err := motion.New(motion.Inputs{Pond: pond, Rim: room, Low: -1, Supply: motion.Constant{0}, Feeds: []motion.Feed{tall(1, 1e-4, 1, 1, 0.5)}})
	if err != nil {
		return Check{}, err
	}
	run, err := s.Run(motion.Program{From: s.AtRest(motion.Held), Valve: motion.Works, Rain: motion.Rain{Depth: rain, Over: 900, From: 60}, Until: 3600})
	return Check{ID: "M-rain", What: "60 mm of rain on a pond of 4 m² with 45 mm under its rim: runs over", Unit: "m³", Want: area * (rain - room), Got: float64(run.Over), Rel: 1e-6}, err
}

// books: whatever happens, no water is won or lost: one thousandth of what is on
// its way is the bound that is promised.
func books() (Check, error) {
	pond, err := basin(2.64, 0.45)
	if err != nil {
		return Check{}, err
	}
	vault, err := vessel(0.1, 0.42, -0.4)
	if err != nil {
		return Check{}, err
	}
	lip, err := crest(0.25)
	if err != nil {
		return Check{}, err
	}
	const q = 1.2e-3
	s, err := motion.New(motion.Inputs{
		Pond: pond, Rim: 0.045, Low: -0.22, Flow: q, Supply: motion.Constant{q},
		Vault: &level.Vault{Body: vault, Sill: &level.Sill{Crest: -0.04, Width: 0.18, C: 1.7}},
		Feeds: []motion.Feed{{
			Pipe: 0.023, PipeHeld: 0.023, Crest: 1.03, Depth: 0.3, Back: 3e5, Bore: 1.6e-3,
			Parts: []motion.Part{
				{Full: 0.047, Held: 0.047, Lip: lip, Area: 0.1575, Plan: 0.1575},
				{Reach: true, Full: 0.054, Flow: q, Plan: 1.8},
				{Full: 0.21, Held: 0.21, HeldOpen: 0.21, Lip: lip, Area: 0.84, Plan: 0.84},
			},
		}},
	})
	if err != nil {
		return Check{}, err
	}
	run, err := s.Run(motion.Program{
		Pump: true, CutAt: 240, RunUp: 1, Valve: motion.Absent, Rain: motion.Rain{Depth: 0.08, Over: 600, From: 120},
		TopUp: motion.TopUp{Level: 0, Flow: 2e-4}, Until: 1800, Whole: true,
	})
	return Check{ID: "M-books", What: "a courtyard rill through first start, a pump that draws air, power cut, rain, top-up and overflow: water won or lost, of what is on its way", Want: 0, Got: math.Round(math.Abs(float64(run.Mass))*1e9) / 1e9, Abs: 1e-3}, err
}
