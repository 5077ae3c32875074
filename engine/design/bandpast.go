package design

import (
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// FindBandPast says that in a part of the draws a pump runs outside its
// published curve, so that an end of the bands is none. Args: name, percent.
const FindBandPast = "design.band.past"

// pastEnds counts the draws in which a pump runs past an end of its data. It is
// held there, so what is read of flows is a bound; where that goes for more of
// the draws than lie beyond an end of the band, that end is a bound too.
type pastEnds struct{ draws, more, less int }

// beyondBand is the part of the draws that lies beyond each end of a band.
const beyondBand = 0.05

func (p *pastEnds) count(side unit.Bound, solved bool) {
	if !solved {
		return
	}
	p.draws++
	switch side {
	case unit.MoreThan:
		p.more++
	case unit.LessThan:
		p.less++
	}
}

func (p *pastEnds) many(n int) bool { return float64(n) > beyondBand*float64(p.draws) }

// bound tells the ends of the band of a flow, or of what rises with one, as what
// they are.
func (p *pastEnds) bound(b *Banded) {
	if b.Value.Kind != unit.KindFlow && b.Value.Kind != unit.KindSpeed && !strings.HasPrefix(b.Figure, "feed.") {
		return
	}
	if p.many(p.more) {
		b.High.Bound = unit.MoreThan
	}
	if p.many(p.less) {
		b.Low.Bound = unit.LessThan
	}
}

// find says it in a sentence.
func (p *pastEnds) find(m *model, pump int) {
	if !p.many(p.more) && !p.many(p.less) {
		return
	}
	m.find(trace.Finding{
		Message: trace.Message{Code: FindBandPast, Args: []trace.Arg{
			trace.Str("name", m.job.Pumps[pump].Name), trace.Num("percent", unit.Ratio(p.more+p.less)/unit.Ratio(p.draws), unit.KindPercent),
		}},
		Path: at("/pumps", pump) + "/curve", Severity: trace.Info,
	})
}
