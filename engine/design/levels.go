package design

import (
	"plashet/engine/geom"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Defaults of streams and boxes.
const defaultReachN unit.Ratio = 0.04 // between 0.03 and 0.07, open-channel textbooks (Chow), from memory

var memoryChow = trace.Source{Title: "open-channel textbooks (Chow)", Basis: trace.BasisMemory}

// pond makes the area-elevation curve of the pond; nil when it cannot.
func (m *model) pond(line unit.Length) *level.AreaElevation {
	p := &m.job.Pond
	outline, err := outlineOf(p.Outline)
	if err != nil {
		m.refuse("/pond/outline", err)
		return nil
	}
	in := level.Pond{Outline: outline, Line: line, Void: p.Void.Or(1), MeasuredArea: p.Outline.Area.SI, MeasuredVolume: p.Measured.SI}
	for _, s := range p.Section {
		in.Section = append(in.Section, level.Step{Depth: s.Depth.SI, In: s.In.SI})
	}
	if len(in.Section) == 0 && !p.Depth.IsZero() {
		in.Section = []level.Step{{Depth: p.Depth.SI}}
		m.assume("/pond/section", AssumeWalls, unit.Of(p.Depth.SI, unit.KindDepth), practice)
	}
	curve, err := level.NewPond(in)
	if err != nil {
		m.refuse("/pond", err)
		return nil
	}
	return curve
}

func outlineOf(o job.Outline) (*geom.Outline, error) {
	switch o.Shape {
	case "rectangle":
		return geom.Rectangle(o.Length.SI, o.Width.SI)
	case "circle":
		return geom.Circle(o.Length.SI)
	case "ellipse":
		return geom.Ellipse(o.Length.SI, o.Width.SI)
	}
	var points []geom.Vec2
	if o.Shape == "offsets" {
		taped := make([]geom.TapedOffset, 0, len(o.Offsets))
		for _, f := range o.Offsets {
			taped = append(taped, geom.TapedOffset{At: f.At.SI, Left: f.Left.SI, Right: f.Right.SI})
		}
		var err error
		if points, err = geom.FromOffsets(taped); err != nil {
			return nil, err
		}
	}
	for _, q := range o.Points {
		points = append(points, geom.Vec2{X: float64(q.X.SI), Y: float64(q.Y.SI)})
	}
	if o.Smooth {
		return geom.SmoothCurve(points)
	}
	return geom.Polygon(points)
}

// vaultOf makes the vault the pump stands in; nil when the pump stands in the
// pond itself or its levels are not known.
func (m *model) vaultOf() (*level.Vault, unit.Length, bool) {
	v := &m.job.Vault
	floor, known := m.survey.Level(v.Floor)
	if v.Shape == "" || !known {
		return nil, 0, false
	}
	var body *level.AreaElevation
	var err error
	if v.Shape == "round" {
		body, err = level.NewRound(v.FloorLength.Or(v.Length.SI), v.Length.SI, v.Depth.SI, floor)
	} else {
		body, err = level.NewBox(v.FloorLength.Or(v.Length.SI), v.FloorWidth.Or(v.Width.SI), v.Length.SI, v.Width.SI, v.Depth.SI, floor)
	}
	if err != nil {
		m.refuse("/vault", err)
		return nil, 0, false
	}
	out := &level.Vault{Body: body, ScreenLoss: v.ScreenLoss.SI}
	if sill, ok := m.survey.Level(v.Sill); ok && !v.WeirWidth.IsZero() {
		c, err := hydro.CrestBroad.Coefficient()
		if err == nil {
			out.Sill = &level.Sill{Crest: sill, Width: v.WeirWidth.SI, C: c.C}
			m.assume("/vault/weirWidth", AssumeSkimmer, unit.Of(unit.Ratio(c.C), unit.KindRatio), c.Source)
		}
	}
	return out, floor, true
}

// levels works out the water levels for a delivery; nil when they cannot be.
func (m *model) levels(pumpIndex int, d *Delivery) *level.Levels {
	line, ok := m.survey.Level(m.job.Pond.Water)
	if !ok {
		m.fault("/pond/water", CodeNoLevel, trace.Str("name", "pond"))
		return nil
	}
	rim, ok := m.survey.Level(m.job.Pond.Rim)
	if !ok {
		m.fault("/pond/rim", CodeNoLevel, trace.Str("name", "rim"))
		return nil
	}
	pond := m.pond(line)
	if pond == nil {
		return nil
	}
	in := level.Inputs{Pond: pond, Line: line, Rim: rim, Flow: d.Flow, DesignRain: m.job.Site.DesignRain.SI, Valve: m.hasCheck()}
	vault, floor, ok := m.vaultOf()
	if ok {
		in.Vault = vault
		pump := &m.job.Pumps[pumpIndex]
		in.Stand = level.Stand{Floor: floor, MinWater: pump.MinWater.SI, MinKnown: !pump.MinWater.IsZero()}
	}
	if z, ok := m.survey.Level(m.job.Pond.RunningLine); ok && !m.job.Pond.RunningLine.IsZero() {
		in.RunningLine, in.TopsUp = z, true
	}
	in.Stores = m.stores(d)
	out, err := level.Solve(in)
	if err != nil {
		m.refuse("/pond", err)
		return nil
	}
	return &out
}

func (m *model) hasCheck() bool {
	for _, r := range m.job.Runs {
		for _, f := range r.Fittings {
			if f.Fitting == "check valve swing" || f.Fitting == "check valve spring" {
				return true
			}
		}
	}
	return false
}

// stores lists what holds water on its way, in the order it fills.
func (m *model) stores(d *Delivery) []level.Store {
	var out []level.Store
	add := func(path string) func(level.Store, error) {
		return func(s level.Store, err error) {
			if err != nil {
				m.refuse(path, err)
				return
			}
			out = append(out, s)
		}
	}
	for _, r := range d.Runs {
		for i := range m.job.Runs {
			if m.job.Runs[i].Name == r.Name {
				add(r.Path)(level.Run(r.Name, r.Path, r.Volume, m.job.Runs[i].Drains))
			}
		}
	}
	for i := range m.job.Watercourses {
		w, f := &m.job.Watercourses[i], &d.Feeds[i]
		path := at("/watercourses", i)
		void := w.Box.Void.Or(1)
		area := unit.Area(w.Box.Length.SI * w.Box.Width.SI)
		volume := w.Box.Volume.Or(unit.Volume(float64(area) * float64(w.Box.Depth.SI) * float64(void)))
		if volume > 0 {
			add(path + "/box")(level.Box(w.Name, path+"/box", level.BoxSize{Volume: volume, Depth: w.Box.Depth.SI, Inlet: w.Box.Inlet.SI}))
		}
		lip := 0
		for k := range w.Parts {
			p, at := &w.Parts[k], at(path+"/parts", k)
			switch {
			case p.Lip != nil:
				if lip < len(f.Lips) && area > 0 && f.Flow > 0 {
					add(at + "/lip")(level.Lip(p.Lip.Name, at+"/lip", f.Lips[lip].Sheet.Head, area, void))
				}
				lip++
				area, void = 0, 1 // water behind the next lip is the next pool's
			case p.Pool != nil:
				area, void = p.Pool.Area.Or(unit.Area(p.Pool.Length.SI*p.Pool.Width.SI)), 1
				add(at + "/pool")(level.Pool(p.Pool.Name, at+"/pool", area, p.Pool.Depth.SI, p.Pool.Leaks))
			case p.Reach != nil:
				if size, ok := m.reach(at+"/reach", p.Reach, f.Flow); ok {
					add(at + "/reach")(level.Reach(p.Reach.Name, at+"/reach", size))
				}
			}
		}
	}
	return out
}

// reach gives a reach as it runs: the depth measured, or by Manning's formula.
func (m *model) reach(path string, r *job.Reach, q unit.Flow) (level.ReachSize, bool) {
	size := level.ReachSize{Depth: r.Depth.SI, Wetted: r.Width.SI * unit.Length(r.Wetted.Or(1)), Length: r.Length.SI, Holds: r.Holds.SI}
	if q <= 0 {
		size.Depth = size.Holds
		return size, true
	}
	if !r.Depth.IsZero() {
		return size, true
	}
	if r.Slope.IsZero() {
		m.fault(path+"/slope", CodeNoLevel, trace.Str("name", r.Name))
		return size, false
	}
	if r.N.IsZero() {
		m.assume(path+"/n", AssumeReachN, unit.Of(defaultReachN, unit.KindRatio), memoryChow, trace.Str("name", r.Name))
	}
	flow, err := hydro.Channel{Width: size.Wetted, Slope: r.Slope.SI, N: r.N.Or(defaultReachN)}.Normal(q)
	if err != nil {
		m.refuse(path, err)
		return size, false
	}
	size.Depth = max(flow.Depth, size.Holds)
	return size, true
}
