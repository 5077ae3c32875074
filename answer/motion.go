package answer

import (
	"plashet/engine/design"
	"plashet/engine/unit"
)

// Moving is one case of start and stop as JSON.
type Moving struct {
	Case      string   `json:"case" doc:"first: first start; restart: every later start; stop; stop-leaks, stop-open: a stop with the check valve leaking, stuck open; cut: a power cut in mid first start; rain: the design rain once all is still after a stop; start-shut: a start with the check valve stuck shut; pump-stops: one of several pumps stops while the others run; pump-stops-open: the same with the check valve of its leg stuck open"`
	Pump      string   `json:"pump,omitempty" doc:"of the last three: the pump that stops, or pushes against the valve"`
	Left      Quantity `json:"left,omitzero" doc:"of the last three: what all feeds together still get"`
	Against   Quantity `json:"backAgainst,omitzero" doc:"of pump-stops: flow back through the pump that stands still"`
	Boils     Quantity `json:"boils,omitzero" doc:"of start-shut: how soon a litre of water round a pump that moves nothing boils, at its watts"`
	Lowest    Quantity `json:"vaultLowest" doc:"least level in the vault (without a vault, of the pond)"`
	LowestAt  Quantity `json:"vaultLowestAt" doc:"when"`
	Dry       bool     `json:"dry" doc:"the pump draws air"`
	DryAt     Quantity `json:"dryAt,omitzero" doc:"when first; absent when it never does"`
	DryFor    Quantity `json:"dryFor,omitzero" doc:"for how long in all"`
	Gasping   bool     `json:"gasping" doc:"it still does at the end"`
	Highest   Quantity `json:"pondHighest" doc:"greatest level of the pond"`
	HighestAt Quantity `json:"pondHighestAt" doc:"when"`
	Room      Quantity `json:"room,omitzero" doc:"rim less that level; absent where the rim is not known"`
	Over      Quantity `json:"over" doc:"water run over the rim"`
	OverAt    Quantity `json:"overAt,omitzero" doc:"when it begins; absent when none does"`
	Still     bool     `json:"still" doc:"all came to rest, or to steady running, in the time that was followed"`
	StillAt   Quantity `json:"stillAt,omitzero" doc:"when; absent when it did not"`
	CutAt     Quantity `json:"cutAt,omitzero" doc:"of cut: when the power goes"`
	CameBack  Quantity `json:"cameBack,omitzero" doc:"of a stop: water that came back, through the pump and down the watercourses"`
	Through   Quantity `json:"throughPump,omitzero" doc:"of that, through the stopped pump"`
	Added     Quantity `json:"added" doc:"rain and top-up"`
	Mass      float64  `json:"massError" doc:"water won or lost in the reckoning, of what the watercourses hold running"`
	Series    []Sample `json:"series" doc:"the case through time, thinned: straight lines between these tell it"`
}

// Sample is the state at one time, in SI.
type Sample struct {
	At      float64 `json:"s" doc:"time, s"`
	Pond    float64 `json:"pond" doc:"level of the pond, m"`
	Vault   float64 `json:"vault" doc:"level at the pump, m"`
	Drawn   float64 `json:"drawn" doc:"flow that the pump draws, m³/s"`
	Back    float64 `json:"back" doc:"flow back through the stopped pump, m³/s"`
	Returns float64 `json:"returns" doc:"flow down into the pond, m³/s"`
	Stored  float64 `json:"stored" doc:"water in pipes, boxes, pools and streams, m³"`
	Over    float64 `json:"over" doc:"water run over the rim so far, m³"`
}

func (m maker) motion(d *Document, r *design.Result) {
	if r.Motion == nil {
		return
	}
	when := func(happens bool, at unit.Duration) (q Quantity) {
		if happens {
			q = of(m, at, unit.KindDuration)
		}
		return q
	}
	for i := range r.Motion.Cases {
		c := &r.Motion.Cases[i]
		x := Moving{
			Case: string(c.Case), Lowest: of(m, c.Lowest, unit.KindElevation), LowestAt: of(m, c.LowestAt, unit.KindDuration),
			Dry: c.Dry, DryAt: when(c.Dry, c.DryAt), DryFor: when(c.Dry, c.DryFor), Gasping: c.Gasping,
			Highest: of(m, c.Highest, unit.KindElevation), HighestAt: of(m, c.HighestAt, unit.KindDuration),
			Over: of(m, c.Over, unit.KindWater), OverAt: when(c.Spills, c.RimAt), Still: c.Still, StillAt: when(c.Still, c.StillAt),
			CutAt: when(c.CutAt > 0, c.CutAt), Added: of(m, c.Added, unit.KindWater), Mass: float64(c.Mass), Series: make([]Sample, 0, len(c.Series)),
		}
		if !r.Motion.NoRim {
			x.Room = of(m, r.Motion.Rim-c.Highest, unit.KindDepth)
		}
		if back, ok := c.CameBack(); ok {
			x.CameBack, x.Through = of(m, back, unit.KindWater), of(m, c.Back, unit.KindWater)
		}
		if a := c.Astray; a != nil {
			x.Pump, x.Left = a.Pump, of(m, a.Left(), unit.KindFlow)
			if c.Case != design.CaseShut {
				x.Against = of(m, a.Back, unit.KindFlow)
			} else if a.Boils > 0 {
				x.Boils = of(m, a.Boils, unit.KindDuration)
			}
		}
		for _, s := range c.Series {
			x.Series = append(x.Series, Sample{
				At: float64(s.At), Pond: float64(s.Pond), Vault: float64(s.Vault), Drawn: float64(s.Drawn), Back: float64(s.Back),
				Returns: float64(s.Returns), Stored: float64(s.Stored), Over: float64(s.Over),
			})
		}
		d.Motion = append(d.Motion, x)
	}
}

// motion prints start and stop as a table, levels from the water line at rest.
func (p *printer) motion(r *design.Result) {
	v := r.Motion
	if v == nil {
		return
	}
	p.head("print.head.motion")
	rows := [][]string{{"", p.say.Word("print.motion.lowest"), p.say.Word("print.motion.highest"), p.say.Word("print.motion.still"), p.say.Word("print.motion.back")}}
	for i := range v.Cases {
		c := &v.Cases[i]
		still, back := p.text("print.motion.restless", num("time", c.Took, unit.KindDuration)), "–"
		if c.Still {
			still = p.text("print.motion.after", num("time", c.StillAt, unit.KindDuration))
		}
		if b, ok := c.CameBack(); ok {
			back = show(p, b, unit.KindWater)
		}
		notes := ""
		if c.Dry {
			notes += p.text("print.motion.dry", num("time", c.DryAt, unit.KindDuration))
		}
		if c.Over > 0 {
			notes += p.text("print.motion.over", num("water", c.Over, unit.KindWater))
		}
		label := p.say.Word("motion.case." + string(c.Case))
		if a := c.Astray; a != nil {
			if c.Case != design.CaseShut {
				label += ": " + a.Pump
				notes += "; " + show(p, a.Back, unit.KindFlow) + " " + p.say.Word("motion.through")
			}
			if a.Left() > 0 {
				notes += "; " + show(p, a.Left(), unit.KindFlow) + " " + p.say.Word("motion.left")
			} else {
				notes += "; " + p.say.Word("motion.nothing")
			}
		}
		rows = append(rows, []string{label, p.level(c.Lowest-v.Line, c.LowestAt), p.level(c.Highest-v.Line, c.HighestAt), still, back + notes})
	}
	p.table("lllll", rows)
	p.tell("", "print.motion.foot")
}

// level shows a level and when it is reached.
func (p *printer) level(z unit.Length, at unit.Duration) string {
	code := "print.motion.once"
	if at >= unit.Second {
		code = "print.motion.when"
	}
	return p.text(code, num("level", z, unit.KindDepth), num("time", at, unit.KindDuration))
}
