package design

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Limits of the checks. Common practice unless a source stands beside them.
const (
	shortBy  unit.Ratio = 0.05
	shortBad unit.Ratio = 0.15
	overBy   unit.Ratio = 0.25
	fastNote            = 5 * unit.FootPerSecond
	fastBad             = 8 * unit.FootPerSecond
)

var (
	speedSource = trace.Source{Title: "USDA NRCS conservation practice standard 430: 5 ft/s in plastic pressure pipe", Basis: trace.BasisPublished}
	boxSource   = trace.Source{Title: "the box's flow is read at no head", Basis: trace.BasisPractice}
	jobSource   = trace.Source{Title: "wanted on this job", Basis: trace.BasisSheet}
	sheetSource = trace.Source{Title: "the maker's sheet, as typed in the job", Basis: trace.BasisSheet}
)

// judge holds the delivery against what is wanted and what is wise.
func (m *model) judge(pump int, vault unit.Length) {
	d := m.out.Delivery
	m.out.Options = m.options(pump, vault)
	for i := range d.Feeds {
		m.judgeFeed(i)
	}
	static, friction := d.Static, unit.Head(0)
	for _, r := range d.Runs {
		friction += r.Friction + r.Fittings
		sev, limit := trace.Info, unit.Speed(fastNote)
		if r.Speed > fastBad {
			sev, limit = trace.Caution, fastBad
		}
		if r.Speed > fastNote {
			m.found(FindFast, r.Path, sev, unit.Of(r.Speed, unit.KindSpeed), unit.Of(limit, unit.KindSpeed), speedSource, trace.Str("name", r.Name))
		}
	}
	if friction > static && static > 0 {
		m.found(FindFriction, "/runs", trace.Caution, unit.Of(friction, unit.KindHead), unit.Of(static, unit.KindHead), practice)
	}
	p := &m.job.Pumps[pump]
	if box := p.BoxFlow.SI; box > 0 && d.Flow < box*0.9 {
		m.found(FindBox, at("/pumps", pump)+"/boxFlow", trace.Info, unit.Of(d.Flow, unit.KindFlow), unit.Of(box, unit.KindFlow), boxSource,
			trace.Num("box", box, unit.KindFlow), trace.Num("percent", unit.Ratio(1-d.Flow/box), unit.KindPercent))
	}
	if !p.Cord.IsZero() && p.CordPath.SI > p.Cord.SI {
		m.found(FindCord, at("/pumps", pump)+"/cord", trace.Danger, unit.Of(p.Cord.SI, unit.KindDistance), unit.Of(p.CordPath.SI, unit.KindDistance), sheetSource)
	}
	if rated := m.job.Vault.Rated.SI; rated > 0 && d.Flow > rated {
		m.found(FindSkimmer, "/vault/rated", trace.Caution, unit.Of(d.Flow, unit.KindFlow), unit.Of(rated, unit.KindFlow), sheetSource)
	}
}

func (m *model) found(code, path string, sev trace.Severity, found, limit unit.Value, src trace.Source, args ...trace.Arg) {
	args = append(args, trace.Arg{Name: "found", Value: found}, trace.Arg{Name: "limit", Value: limit}, trace.Str("where", m.job.Where(path)))
	m.find(trace.Finding{Message: trace.Message{Code: code, Args: args}, Path: path, Severity: sev, Found: found, Limit: limit, LimitSource: src})
}

func (m *model) judgeFeed(i int) {
	f := &m.out.Delivery.Feeds[i]
	name := trace.Str("name", f.Name)
	flow, want := unit.Of(f.Flow, unit.KindFlow), unit.Of(f.Wanted, unit.KindFlow)
	switch {
	case f.Dry:
		m.found(FindDry, f.Path, trace.Danger, flow, want, jobSource, name)
		m.remedy(i)
	case f.Wanted <= 0:
	case unit.Ratio(f.Flow/f.Wanted) < 1-shortBy:
		sev := trace.Caution
		if unit.Ratio(f.Flow/f.Wanted) < 1-shortBad {
			sev = trace.Danger
		}
		m.found(FindShort, f.Path, sev, flow, want, jobSource, name, trace.Num("percent", unit.Ratio(1-f.Flow/f.Wanted), unit.KindPercent))
		m.remedy(i)
	case unit.Ratio(f.Flow/f.Wanted) > 1+overBy:
		m.found(FindOver, f.Path, trace.Info, flow, want, jobSource, name)
	}
}

// enough is the part of the wanted flows from which a feed counts as served.
const enough = 1 - shortBy

// remedy puts what would give a feed more under the last finding: the valves
// set to share, and the options that come nearer to what is wanted, the
// cheapest over the years first.
func (m *model) remedy(feed int) {
	f := &m.out.Findings[len(m.out.Findings)-1]
	now := m.out.Delivery
	have := now.Feeds[feed].Flow
	flow := func(q unit.Flow) trace.Effect {
		return trace.Effect{Figure: feedID(feed) + ".flow", Before: unit.Of(have, unit.KindFlow), After: unit.Of(q, unit.KindFlow)}
	}
	if s := now.Share; s != nil && len(now.Feeds) > 1 {
		if q := min(s.Reach, 1) * unit.Ratio(now.Feeds[feed].Wanted); unit.Flow(q) > have {
			f.Remedies = append(f.Remedies, trace.Remedy{Message: trace.Message{Code: RemedyValves}, Effect: []trace.Effect{flow(unit.Flow(q))}})
		}
	}
	for _, o := range m.out.Options {
		q := o.Feeds[feed]
		if o.Reach > 0 {
			q = unit.Flow(min(o.Reach, 1)) * now.Feeds[feed].Wanted
		}
		if o.AsIs || q <= have {
			continue
		}
		r := trace.Remedy{
			Message: trace.Message{Code: RemedyOption, Args: []trace.Arg{trace.Str("pump", o.Pump), trace.Str("pipe", o.Pipe)}},
			Effect:  []trace.Effect{flow(q), {Figure: "pump.power", Before: unit.Of(now.Power, unit.KindPower), After: unit.Of(o.Power, unit.KindPower)}},
		}
		if now.Cost.Currency != "" && o.Cost.Currency != "" {
			r.Args = append(r.Args, trace.Str("cost", o.Cost.Round().Format()))
		}
		if first, ok := m.more(o); ok {
			r.Args = append(r.Args, trace.Str("more", first))
		}
		f.Remedies = append(f.Remedies, r)
	}
}

// more tells what an option costs beyond the design as drawn.
func (m *model) more(o Option) (string, bool) {
	for _, as := range m.out.Options {
		if as.AsIs && as.First.Currency != "" && o.First.Currency == as.First.Currency {
			return unit.Money{Amount: o.First.Amount.Sub(as.First.Amount), Currency: o.First.Currency}.Round().Format(), true
		}
	}
	return "", false
}

// safety tells what can hurt someone on this job.
func (m *model) safety() {
	if len(m.job.Pumps) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindElectric}, Path: "/pumps", Severity: trace.Caution})
	}
	if m.job.Site.Children {
		m.find(trace.Finding{Message: trace.Message{Code: FindChildren}, Path: "/pond", Severity: trace.Caution})
	}
}
