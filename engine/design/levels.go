package design

import (
	"slices"

	"plashet/engine/geom"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Defaults of pond and streams. Common practice, no source, unless one stands
// beside them.
const (
	defaultReachN  unit.Ratio  = 0.04                        // between 0.03 and 0.07, open-channel textbooks (Chow), from memory
	defaultReserve unit.Length = reserveDays * unit.Inch / 4 // at 1/4 in a day
	reserveDays                = 2                           // before someone tops up
)

// Codes of the levels, beside those of package level.
const (
	// FindVaultLevel says that the vault's floor has no level, so the vault is left out of the water levels. No args.
	FindVaultLevel = "design.vault.level"
	// FindWeirWidth says that the skimmer has a sill but no width, so what passes over it is not known. No args.
	FindWeirWidth = "design.vault.weirwidth"
	// FindSillLevel says that the skimmer has a width but its sill no level. No args.
	FindSillLevel = "design.vault.sill"

	AssumeReserve   = "assume.level.reserve" // what may evaporate before someone tops up. Args: value (depth)
	AssumeTwoDays   = "assume.level.twodays" // the reserve is what two of the job's summer days take. Args: value (depth)
	AssumeRain      = "assume.level.rain"    // no cloudburst is counted. Args: value (depth)
	AssumePondVoid  = "assume.pond.void"     // the pond holds no stone. Args: value
	AssumeBoxVoid   = "assume.box.void"      // the boxes hold no gravel. Args: value
	AssumeBoxInlet  = "assume.box.inlet"     // the pipe comes into the boxes at the floor. Args: value (height)
	AssumeWetted    = "assume.reach.wetted"  // reaches carry water over all of their width. Args: value
	AssumeHolds     = "assume.reach.holds"   // reaches run dry after a stop. Args: value (depth)
	AssumePoolDepth = "assume.pool.depth"    // a pool holds nothing. Args: name, value (depth)
	AssumeScreen    = "assume.vault.screen"  // nothing is lost through mat, net or screen. Args: value (depth)
	AssumeVaultOpen = "assume.vault.open"    // the pond reaches the vault at every level. No args.
	AssumeDrains    = "assume.run.drains"    // a run drains when nothing holds it. Args: name
)

var memoryChow = trace.Source{Title: "open-channel textbooks (Chow)", Basis: trace.BasisMemory}

// pond makes the area-elevation curve of the pond; nil when it cannot.
func (m *model) pond(line unit.Length) *level.AreaElevation {
	p := &m.job.Pond
	outline, err := OutlineOf(p.Outline)
	if err != nil {
		m.refuse("/pond/outline", err)
		return nil
	}
	if p.Void.IsZero() {
		m.assumeOnce("/pond/void", AssumePondVoid, unit.Of(unit.Ratio(1), unit.KindPercent))
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

// assumeOnce notes a default that holds wherever the job does not say
// otherwise, at the first of these places.
func (m *model) assumeOnce(path, code string, v unit.Value) {
	if !slices.ContainsFunc(m.out.Assumptions, func(a trace.Assumption) bool { return a.Code == code }) {
		m.assume(path, code, v, practice)
	}
}

// OutlineOf makes the pond's outline; an error where its sizes or points make none.
func OutlineOf(o job.Outline) (*geom.Outline, error) {
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
// pond itself, and nil with stand.Unknown when it cannot be made.
func (m *model) vaultOf() (out *level.Vault, stand level.Stand) {
	v := &m.job.Vault
	if v.Shape == "" {
		return nil, stand
	}
	stand.Unknown = true
	floor, known := m.survey.Level(v.Floor)
	if !known {
		m.remark("/vault/floor", trace.Caution, trace.Message{Code: FindVaultLevel})
		return nil, stand
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
		return nil, stand
	}
	if v.ScreenLoss.IsZero() {
		m.assumeOnce("/vault/screenLoss", AssumeScreen, unit.Of(unit.Length(0), unit.KindDepth))
	}
	return &level.Vault{Body: body, ScreenLoss: v.ScreenLoss.SI, Sill: m.sill()}, level.Stand{Floor: floor}
}

// sill makes the weir between pond and vault; nil when there is none or not
// enough is known of it.
func (m *model) sill() *level.Sill {
	v := &m.job.Vault
	crest, known := m.survey.Level(v.Sill)
	switch wide := !v.WeirWidth.IsZero(); {
	case known && !wide:
		m.remark("/vault/weirWidth", trace.Caution, trace.Message{Code: FindWeirWidth})
		return nil
	case wide && !known:
		m.remark("/vault/sill", trace.Caution, trace.Message{Code: FindSillLevel})
		return nil
	case !wide:
		m.assumeOnce("/vault/sill", AssumeVaultOpen, unit.Value{})
		return nil
	}
	c, err := hydro.CrestBroad.Coefficient()
	if err != nil {
		m.refuse("/vault/weirWidth", err)
		return nil
	}
	m.assume("/vault/weirWidth", AssumeSkimmer, unit.Of(unit.Ratio(c.C), unit.KindRatio), c.Source)
	return &level.Sill{Crest: crest, Width: v.WeirWidth.SI, C: c.C}
}

// levels works out the water levels for a delivery; nil when they cannot be.
// The pump gives less from a lower vault, as at a first start: how much less
// follows from where it draws air; nil: it gives the same.
func (m *model) levels(pumpIndex int, d *Delivery, leans func(low unit.Length) (at unit.Length, slope float64)) *level.Levels {
	if m.blind {
		return nil
	}
	in, ok := m.levelInputs(pumpIndex, d)
	if !ok {
		return nil
	}
	if leans != nil {
		in.FlowAt, in.FlowSlope = leans(in.Lowest())
	}
	out, err := level.Solve(in)
	if err != nil {
		m.refuse("/pond", err)
		return nil
	}
	return &out
}

// leans tells how the flow of a system leans on the vault's level round where it
// stands.
func (m *model) leans(sys *system, d *Delivery, vault unit.Length) func(low unit.Length) (unit.Length, float64) {
	return func(low unit.Length) (unit.Length, float64) { return vault, m.slope(sys, d, vault, low) }
}

// slope gives how the flow drawn from the vault grows with its level, in m²/s, on
// the whole between two levels; 0 where that is not known.
func (m *model) slope(sys *system, d *Delivery, vault, low unit.Length) float64 {
	fall := vault - low
	if fall <= leastFall || d.Bound() != unit.Exact {
		return 0
	}
	less, ok := m.trial().operate(sys, low)
	if _, again := m.trial().operate(sys, vault); !ok || !again || less.Bound() != unit.Exact {
		return 0
	}
	return max(0, float64(d.Drawn-less.Drawn)/float64(fall))
}

// leastFall is the fall of the vault under which its flow does not change to
// speak of.
const leastFall unit.Length = 0.005

// levelInputs fills what the levels follow from; false where they cannot be
// worked out.
func (m *model) levelInputs(pumpIndex int, d *Delivery) (in level.Inputs, ok bool) {
	line, ok := m.survey.Level(m.job.Pond.Water)
	if !ok {
		m.fault("/pond/water", CodeNoLevel, trace.Str("name", "pond"))
		return in, false
	}
	pond := m.pond(line)
	if pond == nil {
		return in, false
	}
	site := &m.job.Site
	in = level.Inputs{Pond: pond, Line: line, RimSource: m.rimSource(), Flow: d.Drawn, DesignRain: site.DesignRain.SI, RainOn: m.rainOn(), Reserve: site.Reserve.SI}
	if site.Reserve.IsZero() {
		in.Reserve = m.reserve()
	}
	if in.Rim, ok = m.survey.Level(m.job.Pond.Rim); !ok {
		in.NoRim = true
	} else if site.DesignRain.IsZero() {
		m.assumeOnce("/site/designRain", AssumeRain, unit.Of(unit.Length(0), unit.KindDepth))
	}
	in.Vault, in.Stand = m.vaultOf()
	in.Stand.MinWater, in.Stand.MinKnown = m.leastWater(pumpIndex, in.Stand.Floor)
	if z, ok := m.survey.Level(m.job.Pond.RunningLine); ok && !m.job.Pond.RunningLine.IsZero() {
		in.RunningLine, in.TopsUp = z, true
	}
	if z, ok := m.survey.Level(m.job.Pond.FillLevel); ok && !m.job.Pond.FillLevel.IsZero() && m.job.Pond.FillFlow.SI > 0 {
		in.Fill, in.Fills = z, true
	}
	in.Valve = slices.Contains(m.closed().runs, true)
	in.Stores = m.stores(d)
	in.Boxes = m.boxes(in.Stores)
	return in, true
}

// reserve is what evaporates before someone tops up, where the job does not say:
// what two of its summer days take, or of a dry summer's.
func (m *model) reserve() unit.Length {
	if e, ok := m.trial().evaporation(); ok {
		m.assumeOnce("/site/reserve", AssumeTwoDays, unit.Of(reserveDays*e, unit.KindDepth))
		return reserveDays * e
	}
	m.assumeOnce("/site/reserve", AssumeReserve, unit.Of(defaultReserve, unit.KindDepth))
	return defaultReserve
}

// rimSource tells where the rim's level comes from: as the job says, or by the
// rod of a survey point it names.
func (m *model) rimSource() trace.Source {
	rim := &m.job.Pond.Rim
	origin := rim.Source
	for i := range m.job.Survey.Points {
		p := &m.job.Survey.Points[i]
		if origin != job.OriginNone || rim.Point == "" || p.Name != rim.Point {
			continue
		}
		if origin = p.Elevation.Source; p.Elevation.IsZero() {
			if origin = p.Reading.Source; origin == job.OriginNone && !p.Reading.IsZero() {
				origin = job.OriginMeasured // read on the rod
			}
		}
	}
	basis := trace.BasisJob
	switch origin {
	case job.OriginMeasured:
		basis = trace.BasisMeasured
	case job.OriginSheet:
		basis = trace.BasisSheet
	case job.OriginRule:
		basis = trace.BasisPractice
	case job.OriginGuess:
		basis = trace.BasisGuess
	case job.OriginNone:
	}
	return trace.Source{Title: "level of the edge's lowest point", Basis: basis}
}
