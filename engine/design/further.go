package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// further is a pump that runs at the same time as the one in use.
type further struct {
	index int // among the job's further pumps
	pump  int // among the job's pumps
	link  int
	curve *hydro.Curve
	vault bool   // it draws from the vault
	inlet inLine // its suction pipe, where it draws from the vault
}

// further adds a further pump to the network.
func (m *model) further(p *plumbing, i int, node func(name string) int) bool {
	f := &m.job.FurtherPumps[i]
	pump := m.pumpNamed(f.Pump)
	if pump < 0 {
		m.fault(at("/furtherPumps", i)+"/pump", CodeNoSuchPump, trace.Str("name", f.Pump))
		return false
	}
	curve, ok := m.ownCurve(pump)
	if !ok {
		return false
	}
	o := further{index: i, pump: pump, curve: curve, vault: f.From == ""}
	from := p.source
	if !o.vault {
		from = node(f.From)
	} else if o.inlet = p.inlets[pump].law; p.inlets[pump].bad {
		return false
	}
	o.link = p.net.AddLink(network.Link{
		Name: f.Name, From: from, To: node(f.Name),
		Parts: []network.Part{{Name: f.Name, Law: pumpLaw{curve: curve, suction: o.inlet}, Role: network.Pump}},
	})
	p.others = append(p.others, o)
	return true
}

// others fills what the further pumps do.
func (m *model) others(s *system, d *Delivery) {
	for _, o := range s.others {
		l, f := &s.state.Links[o.link], &m.job.FurtherPumps[o.index]
		x := Other{Name: f.Name, Pump: f.Pump, Path: at("/furtherPumps", o.index), Flow: l.Flow, Head: o.inlet.head(l.Flow) - l.Loss}
		if x.Flow < network.MassTolerance {
			x.Flow = 0
		}
		if o.vault {
			d.Drawn += x.Flow
		}
		x.Power = power(o.curve, x.Flow)
		if x.Beyond = (pumpLaw{curve: o.curve}).side(x.Flow); x.Beyond != unit.Exact {
			x.Head = atEnd(o.curve, x.Beyond)
			m.past(x.Path, x.Name, x.Flow, x.Beyond)
		}
		d.Others = append(d.Others, x)
	}
}

// leastWater gives the depth over a floor that the pumps drawing from the vault
// ask for: the greatest, where they differ. A pump that stands outside the
// water draws air once its intake is bare.
func (m *model) leastWater(pumpIndex int, floor unit.Length) (least unit.Length, known bool) {
	ask := func(p *job.Pump) {
		if !p.MinWater.IsZero() {
			least, known = max(least, p.MinWater.SI), true
		}
		if intake, ok := m.survey.Level(p.Outside.Intake); ok && outside(p) {
			least, known = max(least, intake-floor), true
		}
	}
	ask(&m.job.Pumps[pumpIndex])
	for _, f := range m.job.FurtherPumps {
		if p, ok := m.byName(f.Pump); ok && f.From == "" {
			ask(p)
		}
	}
	return least, known
}

// judgeFurther tells what is to be known of pumps that run together: each by
// its own sheet, which leg lets water back through a pump at rest, and what the
// pump in use gives alone.
func (m *model) judgeFurther(pump int, vault unit.Length) {
	seen := map[string]bool{m.job.Pumps[pump].Name: true}
	for i, o := range m.out.Delivery.Others {
		if k := m.pumpNamed(o.Pump); !seen[o.Pump] {
			seen[o.Pump] = true
			m.judgeSheet(k, o.Power)
		}
		m.judgeOther(i, &m.out.Delivery.Others[i], vault)
		if m.job.FurtherPumps[i].From == "" {
			m.judgeLeg(o.Name, o.Path)
		} else {
			m.judgeRound(i)
		}
	}
	m.untwin()
	if len(m.out.Delivery.Others) > 0 {
		m.judgeLeg("pump", "/runs")
		m.judgeAlone(pump, vault)
	}
}

// judgeLeg looks along the leg of a pump, up to where other water joins it, for
// a check valve.
func (m *model) judgeLeg(name, path string) {
	if _, valve, joint := m.pumpLeg(name); joint != "" && !valve {
		m.find(trace.Finding{
			Message: trace.Message{Code: FindNoCheck, Args: []trace.Arg{trace.Str("name", name), trace.Str("joint", joint)}},
			Path:    path, Severity: trace.Caution,
		})
	}
}

// judgeAlone tells what the feeds together get from the pump in use alone, with
// the further pumps taken out and their legs shut.
func (m *model) judgeAlone(pump int, vault unit.Length) {
	alone := *m.job
	alone.FurtherPumps, alone.Runs = nil, nil
	for _, r := range m.job.Runs {
		if !slices.ContainsFunc(m.job.FurtherPumps, func(f job.FurtherPump) bool { return f.Name == r.From }) {
			alone.Runs = append(alone.Runs, r)
		}
	}
	t := m.trial()
	t.job = &alone
	sys, ok := t.connect(pump, vault)
	if !ok {
		return
	}
	d, ok := t.operate(sys, vault)
	if !ok {
		return
	}
	sum := func(feeds []Feed) (q unit.Flow) {
		for i := range feeds {
			q += feeds[i].Flow
		}
		return q
	}
	both, one := sum(m.out.Delivery.Feeds), sum(d.Feeds)
	if one > 0 {
		m.found(FindTogether, "/furtherPumps", trace.Info, unit.Of(both, unit.KindFlow), unit.Of(one, unit.KindFlow), trace.Source{},
			trace.Str("name", m.job.Pumps[pump].Name), trace.Num("percent", unit.Ratio(both/one-1), unit.KindPercent))
	}
}

// otherFigures opens what each further pump does.
func (m *model) otherFigures(i int, o *Other) {
	id := OtherID(i)
	m.figure(id+".flow", unit.Bounded(o.Flow, unit.KindFlow, o.Beyond), "the flow at which the pump's head equals what the network asks of it", sourceBooks,
		term("H", o.Head, unit.KindHead, id+".head"))
	m.figure(id+".head", unit.Of(o.Head, unit.KindHead), "H(Q) on the pump's curve, PCHIP through its points", hydro.SourcePCHIP,
		term("Q", o.Flow, unit.KindFlow, id+".flow"))
	if o.Power > 0 {
		m.figure(id+".power", unit.Of(o.Power, unit.KindPower), "electrical power at Q, from the watts given", sheetSource, term("Q", o.Flow, unit.KindFlow, id+".flow"))
	}
}

// judgeOther holds where a further pump runs against its own range.
func (m *model) judgeOther(i int, o *Other, vault unit.Length) {
	k := m.pumpNamed(o.Pump)
	curve, ok := m.trial().ownCurve(k)
	if !ok {
		return
	}
	drawn := &vault
	if m.job.FurtherPumps[i].From != "" {
		drawn = nil // what stands at its inlet is another pump's
	}
	m.judgeDuty(OtherID(i), k, curve, o.Flow, o.Power, drawn)
}
