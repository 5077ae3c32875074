package design

import (
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
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

// remedy puts the options that give a feed more under the last finding.
func (m *model) remedy(feed int) {
	f := &m.out.Findings[len(m.out.Findings)-1]
	now := m.out.Delivery
	for _, o := range m.out.Options {
		if o.AsIs || o.Feeds[feed] <= now.Feeds[feed].Flow {
			continue
		}
		f.Remedies = append(f.Remedies, trace.Remedy{
			Message: trace.Message{Code: RemedyOption, Args: []trace.Arg{trace.Str("pump", o.Pump), trace.Str("pipe", o.Pipe)}},
			Effect: []trace.Effect{
				{Figure: "feed.flow", Before: unit.Of(now.Feeds[feed].Flow, unit.KindFlow), After: unit.Of(o.Feeds[feed], unit.KindFlow)},
				{Figure: "pump.power", Before: unit.Of(now.Power, unit.KindPower), After: unit.Of(o.Power, unit.KindPower)},
			},
		})
	}
}

// larger names the next size up in which pipe and fittings are to be had.
func larger(book *catalog.Book, p job.PipeName) (job.PipeName, bool) {
	sizes := book.PipeSizes(p.Kind)
	here, err := book.FindPipe(p.Kind, p.Size)
	if err != nil {
		return p, false
	}
	best := job.PipeName{}
	bore := unit.Length(0)
	for _, s := range sizes {
		q, err := book.FindPipe(p.Kind, s)
		if err != nil || q.Bore <= here.Bore || (bore > 0 && q.Bore >= bore) {
			continue
		}
		if _, err := book.Loss("elbow 90", s); err != nil {
			continue // no fittings of that size
		}
		best, bore = job.PipeName{Kind: p.Kind, Size: s}, q.Bore
	}
	return best, bore > 0
}

// options tries every pump in hand on the pipe as drawn and on pipe one and two
// sizes larger in the runs that carry the most.
func (m *model) options(pump int, vault unit.Length) []Option {
	var out []Option
	asDrawn := m.job
	defer func() { m.job, m.quiet = asDrawn, false }()
	m.quiet = true
	for up := 0; up <= 2; up++ {
		j := asDrawn.Clone()
		m.job = j
		changed := up == 0
		for range up {
			for i := range j.Runs {
				if next, ok := larger(m.book, j.Runs[i].Pipe); ok && j.Runs[i].Bore.IsZero() {
					j.Runs[i].Pipe = next
					changed = true
				}
			}
		}
		if !changed {
			continue
		}
		var sizes []string
		for _, r := range j.Runs {
			sizes = append(sizes, r.Pipe.Size)
		}
		for i := range j.Pumps {
			d, _, ok := m.deliver(i, vault)
			if !ok {
				continue
			}
			o := Option{Pump: d.Pump, Pipe: strings.Join(sizes, ", "), Flow: d.Flow, Power: d.Power, Cost: d.Cost, AsIs: up == 0 && i == pump}
			for _, f := range d.Feeds {
				o.Feeds = append(o.Feeds, f.Flow)
			}
			out = append(out, o)
		}
	}
	return out
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
