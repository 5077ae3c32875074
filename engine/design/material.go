package design

import (
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// material takes the list off from all that was designed.
func (m *model) material() {
	j := m.job
	in := takeoff.Input{
		Book: m.book, Currency: j.Site.Currency, Overlap: j.Works.LinerOverlap.SI, Bare: !j.Works.LinerOverlap.IsZero(), Layers: j.Works.UnderlayLayers,
		Metric: m.out.Units.Is(unit.Metric), Soil: j.Works.Soil, Spare: j.Works.SpareFittings.SI,
		Can: j.Works.CementCan.SI, TapeRoll: j.Works.TapeRoll.SI, Truck: j.Works.Truck.SI,
		Paths: takeoff.Paths{
			Can: "/works/cementCan", TapeRoll: "/works/tapeRoll", Truck: "/works/truck", Overlap: "/works/linerOverlap", Layers: "/works/underlayLayers",
			Soil: "/works/soil", Spare: "/works/spareFittings",
		},
	}
	assembly, beyond := m.built()
	in.Fittings = fittings(assembly, beyond)
	in.Joints, in.Threads = m.joints(assembly, beyond)
	for _, x := range in.Joints {
		m.out.Joints += x.Count
	}
	for _, x := range in.Threads {
		m.out.Joints += x.Count
	}
	in.Pipe = m.pipeNeeded()
	in.Pond = m.hole()
	m.ground(&in)
	in.Prices = m.priced
	m.stays()
	items, findings, faults := takeoff.List(in)
	m.out.Materials = items
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.out.Assumptions = append(m.out.Assumptions, takeoff.Assumed(in)...)
	if len(in.Fittings) > 0 && j.Works.SpareFittings.IsZero() {
		m.assume(in.Paths.Spare, takeoff.AssumeSpare, unit.Of(unit.Ratio(0), unit.KindPercent), practice)
	}
}

// stays tells what is there already, and so in no list and no price.
func (m *model) stays() {
	var there []trace.Place
	path := ""
	note := func(at string) {
		there = append(there, m.job.PlaceOf(at))
		if path == "" {
			path = at
		}
	}
	for i := range m.job.Pumps {
		p := &m.job.Pumps[i]
		if p.Existing && (p.Name == m.job.Use || i == 0 && m.job.Use == "" || slices.ContainsFunc(m.job.FurtherPumps, func(f job.FurtherPump) bool { return f.Pump == p.Name })) {
			note(at("/pumps", i))
		}
	}
	for i := range m.job.Runs {
		if m.job.Runs[i].Existing {
			note(at("/runs", i))
		}
	}
	if len(there) > 0 {
		m.find(trace.Finding{
			Message: trace.Message{Code: takeoff.FindExisting, Args: []trace.Arg{trace.At("where", there...), trace.Num("count", unit.Ratio(len(there)), unit.KindCount)}},
			Path:    path, Severity: trace.Info,
		})
	}
}

// hole gives the pond as the list takes it; nil when its shape is not known.
func (m *model) hole() *takeoff.Pond {
	outline, err := OutlineOf(m.job.Pond.Outline)
	line, known := m.survey.Level(m.job.Pond.Water)
	if err != nil || !known {
		return nil // told by the levels
	}
	quiet := m.quiet
	m.quiet = true
	curve := m.pond(line)
	m.quiet = quiet
	if curve == nil {
		return nil
	}
	box := outline.Bounds()
	return &takeoff.Pond{
		Length: unit.Length(box.Max.X - box.Min.X), Width: unit.Length(box.Max.Y - box.Min.Y), Depth: line - curve.Floor(), Volume: curve.Drawn(), Stone: !m.job.Works.NoRock, Path: "/pond",
	}
}
