package design

import (
	"math"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// instead is how one of arrange.Input.Instead is told and written into the job.
type instead struct {
	stand     int    // in the job's search, or how many there are for a new one; -1: of fittings
	name      string // attitude where there are several, or fitting
	size      string
	had       int  // fittings of it in stock
	turned    bool // another turn is to be written
	elsewhere bool // and no place
	ended     bool // a check valve with union ends: which, is seen in the layout
	hose      bool // a short hose is allowed, or another than the job's
}

// excluded is a fitting of the tables that the stock leaves out.
type excluded struct {
	name string
	arrange.Fitting
}

// insteads fills what is looked at where nothing fits: the pump as the job does
// not have it stand, what is done soonest first, then fittings that it leaves out.
func (m *model) insteads(a *Arranging, pumpIndex int, pipe catalog.Pipe) {
	add := func(code string, x arrange.Instead, how instead) int {
		x.What = trace.Message{Code: code, Args: how.args()}
		a.Input.Instead, a.instead = append(a.Input.Instead, x), append(a.instead, how)
		return len(a.instead)
	}
	m.otherTurns(a, add)
	m.otherStands(a, pumpIndex, add)
	base := a.Input.Fittings
	for _, x := range a.excluded {
		add(ChangeFitting, arrange.Instead{Fittings: append(base[:len(base):len(base)], x.Fitting)}, instead{stand: -1, name: x.name, size: x.Part.Size})
	}
	if list := m.endedValves(a); len(list) > 0 {
		add(ChangeEnded, arrange.Instead{Fittings: list}, instead{stand: -1, ended: true})
	}
	for i := range base {
		if base[i].AtHand < 0 {
			continue
		}
		more := slices.Clone(base)
		more[i].AtHand = -1
		add(ChangeMore, arrange.Instead{Fittings: more}, instead{stand: -1, name: a.Names[i], size: base[i].Part.Size, had: base[i].AtHand})
	}
	m.otherHoses(a, add)
	if a.Input.Hose == nil {
		quiet := m.quiet
		m.quiet = true // it is only looked at
		if h := m.offeredHose(a, pipe); h != nil {
			if a.Input.Pipes[0].Cost == 0 {
				h.Cost, h.Priced = 0, false
			}
			code := ChangeHose
			if stocked := m.stockedHose(h); stocked != nil {
				h = stocked
			} else {
				code = ChangeHoseGet
			}
			add(code, arrange.Instead{Hose: h}, instead{stand: -1, hose: true, size: h.Part.Size})
		}
		m.quiet = quiet
	}
}

func (n *instead) args() (out []trace.Arg) {
	switch {
	case n.hose:
		out = append(out, trace.Str("size", n.size))
	case n.stand < 0 && n.name != "":
		out = append(out, trace.Str("fitting", n.name), trace.Str("size", n.size))
	case n.name != "":
		out = append(out, trace.Str("attitude", n.name))
	}
	return out
}

type addInstead func(code string, x arrange.Instead, how instead) int

// otherTurns adds, of each way the pump may stand, the other turns and places.
// With elbows glued to the pump the other ways stay, which then cost nothing to
// look at: what is glued is counted by its place among them.
func (m *model) otherTurns(a *Arranging, add addInstead) {
	for i := range a.Input.Standings {
		st, w := a.Input.Standings[i], a.wanted[i]
		if w < 0 {
			continue // all of its turns are looked at
		}
		stand := &m.job.Assembly.Search.Stands[w]
		how := instead{stand: w, turned: true}
		if len(a.Input.Standings) > 1 {
			how.name = a.Attitudes[i]
		}
		with := func(st arrange.Standing) arrange.Instead {
			if len(a.Input.Glued.FromPort) == 0 {
				return arrange.Instead{Standings: []arrange.Standing{st}}
			}
			all := slices.Clone(a.Input.Standings)
			all[i] = st
			return arrange.Instead{Standings: all}
		}
		if !stand.Turn.IsZero() {
			for k, turn := range quarters(stand.Turn.SI)[1:] {
				x := st
				x.Turns = []unit.Angle{turn}
				if x.Fixed {
					x.Pose = about(&st, turn)
				}
				add([...]string{ChangeLeft, ChangeRight, ChangeRound}[k], with(x), how)
			}
		}
		if st.Fixed {
			x := st
			x.Fixed, x.Pose = false, layout.Pose{}
			if stand.Turn.IsZero() {
				x.Turns = nil
			}
			how.turned, how.elsewhere = false, true
			had := add(ChangePlace, with(x), how)
			if !stand.Turn.IsZero() {
				x.Turns, how.turned = nil, true
				y := with(x)
				y.Unless = had
				add(ChangeTurned, y, how)
			}
		}
	}
}

// about is a fixed pump turned over the middle of its box.
func about(st *arrange.Standing, turn unit.Angle) layout.Pose {
	half := func(turn unit.Angle) geom.Vec3 {
		low, high := math.Inf(1), math.Inf(-1)
		left, right := low, high
		reach := func(at geom.Vec3, x, y float64) {
			left, right = math.Min(left, at.X-x), math.Max(right, at.X+x)
			low, high = math.Min(low, at.Y-y), math.Max(high, at.Y+y)
		}
		s, c := math.Sincos(float64(turn))
		for _, b := range st.Pump.Blocks {
			h := b.Size().Scale(0.5)
			reach(b.Centre().RotateAbout(geom.Vec3{Z: 1}, turn), h.X*math.Abs(c)+h.Y*math.Abs(s), h.X*math.Abs(s)+h.Y*math.Abs(c))
		}
		for _, r := range st.Pump.Cylinders {
			for _, end := range [2]geom.Vec3{r.From, r.To} { // no narrower than it is
				reach(end.RotateAbout(geom.Vec3{Z: 1}, turn), float64(r.Radius), float64(r.Radius))
			}
		}
		return geom.Vec3{X: (right - left) / 2, Y: (high - low) / 2}
	}
	return layout.Pose{At: st.Pose.At.Add(half(st.Pose.Turn)).Sub(half(turn)), Turn: turn}
}

// otherStands adds the attitudes that the job leaves out.
func (m *model) otherStands(a *Arranging, pumpIndex int, add addInstead) {
	pump, path := &m.job.Pumps[pumpIndex], at("/pumps", pumpIndex)
	if len(a.Input.Glued.FromPort) > 0 || len(m.job.Assembly.Search.Stands) == 0 {
		return // what is glued to it fits it as it stands
	}
	end := a.Input.Standings[0].Pump.Outlet
	for _, t := range m.otherAttitudes(pump, m.job.Assembly.Search.Stands) {
		add(ChangeStand, arrange.Instead{Standings: []arrange.Standing{{Pump: m.body(pump, t, end, path)}}}, instead{stand: len(m.job.Assembly.Search.Stands), name: t.Name})
	}
}

// otherAttitudes gives those that the job leaves out and that go into the vault.
func (m *model) otherAttitudes(pump *job.Pump, wanted []job.Stand) (list []*job.Attitude) {
	for i := range pump.Attitudes {
		t := &pump.Attitudes[i]
		if slices.ContainsFunc(wanted, func(w job.Stand) bool { return w.Attitude == t.Name }) {
			continue
		}
		if _, fits := m.goesIn(pump, t, layout.Pose{}, 0, true); fits {
			list = append(list, t)
		}
	}
	return list
}
