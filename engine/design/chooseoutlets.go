package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// outlets fills the wanted flows, and the level of the vault at them.
func (m *model) outlets(c *Choice, p *size.Problem) bool {
	d := &Delivery{}
	sound := true
	for i := range m.job.Watercourses {
		w, path := &m.job.Watercourses[i], at("/watercourses", i)
		lips, ok := m.lips(i)
		if !ok {
			sound = false
			continue
		}
		k := slices.IndexFunc(m.job.Runs, func(r job.Run) bool { return r.To == w.Name })
		o := size.Outlet{Name: w.Name, Segment: k, Wanted: m.wanted(i, lips), Level: lips[0].crest, Lip: lips[0].law}
		if o.Pours = pours(&w.Box); o.Pours {
			o.Inlet = o.Level + w.Box.Inlet.SI - w.Box.Depth.SI
		}
		if k < 0 {
			m.fault(path, size.CodeTree, trace.Str("name", w.Name))
			sound = false
		} else if o.Wanted <= 0 {
			m.fault(path, size.CodeWanted, trace.Str("name", w.Name))
			sound = false
		}
		f := Feed{Name: w.Name, Path: path, Flow: o.Wanted, Wanted: o.Wanted}
		for _, l := range lips {
			if s, err := l.law.Sheet(o.Wanted); err == nil {
				f.Lips = append(f.Lips, Lip{Name: l.part.Name, Path: at(path+"/parts", l.index) + "/lip", Sheet: s})
			}
		}
		d.Feeds = append(d.Feeds, f)
		d.Drawn += o.Wanted
		p.Outlets = append(p.Outlets, o)
	}
	if !sound {
		return false
	}
	c.Vault, sound = m.drawnDown(d)
	p.Level = c.Vault
	if rated := m.job.Vault.Rated.SI; rated > 0 && d.Drawn > rated {
		m.found(FindSkimmer, "/vault/rated", trace.Caution, unit.Of(d.Drawn, unit.KindFlow), unit.Of(rated, unit.KindFlow), sheetSource)
	}
	return sound
}

// pours tells that the pipe comes into a box from over its water.
func pours(b *job.Box) bool {
	return !b.Inlet.IsZero() && !b.Depth.IsZero() && b.Inlet.SI >= b.Depth.SI
}

// drawnDown is the running level of the vault at the wanted flows, with the pipe
// as drawn holding its water; the pond's line where levels cannot be worked out.
func (m *model) drawnDown(d *Delivery) (unit.Length, bool) {
	line, ok := m.survey.Level(m.job.Pond.Water)
	if !ok {
		m.fault("/pond/water", CodeNoLevel, trace.Str("name", "pond"))
		return 0, false
	}
	t := m.trial()
	for i := range m.job.Runs {
		if _, pp, ok := t.run(i); ok {
			d.Runs = append(d.Runs, Run{Index: i, Name: m.job.Runs[i].Name, Path: at("/runs", i), Volume: hydro.PipeVolume(pp.bore, pp.length)})
		}
	}
	if len(m.job.Pumps) > 0 {
		if l := t.levels(0, d, nil); l != nil {
			if z, ok := running(l); ok {
				line = z
			}
		}
	}
	return line, true
}
