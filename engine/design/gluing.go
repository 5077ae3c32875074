package design

import (
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// defaultGlue is the temperature of pipe and air when gluing, where the job
// does not say. Common practice, no source.
const defaultGlue unit.Temperature = 15

// glue orders the joints of a laid chain. Its steps are held back, and its
// pieces are not to be cut, while there is a danger on it or a fault in it.
func (m *model) glue(parts []layout.Laid, laid layout.Assembly, dangers []trace.Finding, faulty int) {
	in := m.gluing(parts, laid)
	if m.job.Site.GlueTemperature.IsZero() {
		m.assume("/site/glueTemperature", AssumeGlue, unit.Of(in.Temperature, unit.KindTemperature), practice)
	}
	in.Unfit = len(dangers) > 0 || faulty > 0
	plan, findings, faults := glue.Order(in)
	m.out.Glue = &plan
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.out.Assumptions = append(m.out.Assumptions, plan.Assumptions...)
	m.out.Figures = append(m.out.Figures, plan.Figures...)
	if laid.Laid && (in.Unfit || plan.Withheld) {
		m.out.NotToCut = true
		m.withhold(append(dangers, m.dangers(findings)...), faulty)
	}
}

// gluing tells under which conditions a chain is glued.
func (m *model) gluing(parts []layout.Laid, laid layout.Assembly) glue.Input {
	site := &m.job.Site
	fromPump, _ := m.job.Assembly.Glued()
	in := glue.Input{
		Parts: parts, PortMade: fromPump > 0, Assembly: laid, Book: m.book,
		Temperature: site.GlueTemperature.Or(defaultGlue), Damp: site.Damp, Frost: site.Frost, Path: "/assembly",
	}
	if d := m.out.Delivery; d != nil {
		in.Pressure = m.water.PressureOf(d.Head)
	}
	return in
}
