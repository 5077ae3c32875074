package paper

import (
	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/glue"
	"plashet/engine/level"
	"plashet/engine/unit"
)

// startUp is the record of the first start: what to do, what is reckoned, what
// is measured.
func startUp(f *flow) {
	f.accepts = func(code, path string) bool { return aboutWater(code, path) || aboutVault(code, path) }
	f.warn(f.word(glue.CautionWaterOnly))
	f.told(design.FindElectric, design.FindIntake)
	f.heading(f.word("paper.head.before"))
	for _, c := range []string{"cured", "electric", "clear", "fill", "valve"} {
		s := f.word("paper.start." + c)
		if g := f.in.Result.Glue; c == "cured" && g != nil && g.Ready > 0 {
			s += " " + f.text("paper.start.ready", num("ready", g.Ready, unit.KindDuration))
		}
		f.check(s)
	}
	f.heading(f.word("paper.head.record"))
	f.record()
	f.heading(f.word("paper.head.after"))
	for _, c := range []string{"leaks", "stop", "again", "handover"} {
		f.check(f.word("paper.start." + c))
	}
	f.signature()
}

// record sets what was reckoned beside room for what is measured.
func (f *flow) record() {
	var rows [][]string
	add := func(what, reckoned string) { rows = append(rows, []string{what, reckoned, ""}) }
	r := f.in.Result
	if r.Delivery == nil {
		f.missing("paper.noflow")
	}
	if r.Delivery != nil {
		for _, x := range r.Delivery.Feeds {
			add(f.text("paper.rec.flow", str("name", x.Name)), f.show(unit.Bounded(x.Flow, unit.KindFlow, r.Delivery.Bound())))
		}
		for _, x := range r.Delivery.Feeds {
			for _, l := range x.Lips {
				add(f.text("paper.rec.lip", str("name", l.Name)), show(f, l.Sheet.Head, unit.KindDepth))
			}
		}
	}
	survey, _ := f.in.Job.Elevations()
	if line, known := survey.Level(f.in.Job.Pond.Water); known && r.Levels != nil {
		for _, m := range []level.Moment{level.MomentRest, level.MomentRun, level.MomentHeld, level.MomentOpen} {
			if s, ok := r.Levels.Find(r.Levels.Everyday(), m); ok {
				add(f.word("paper.rec."+string(m)), show(f, s.Pond-line, unit.KindDepth))
			}
		}
	}
	if u := r.Upkeep; u != nil && u.LoadKnown {
		add(f.word("paper.rec.amps"), show(f, u.Load, unit.KindCurrent))
	}
	for _, c := range []string{"temperature", "volume"} {
		add(f.word("paper.rec."+c), "")
	}
	f.table([]column{{head: f.word("paper.what"), wide: rest}, {head: f.word("paper.reckoned"), end: true, bold: true}, {head: f.word("paper.measured"), wide: 45, blank: true}}, rows)
	f.paragraph(f.word("paper.rec.note"), false)
}

// signature leaves room for who did it and when.
func (f *flow) signature() {
	f.apart(10)
	f.need(14)
	half := (f.x1 - f.x0 - 8) / 2
	for i, c := range []string{"paper.name", "paper.day"} {
		x := f.x0 + float64(i)*(half+8)
		f.add(drawing.Line{From: drawing.Point{X: x, Y: f.y}, To: drawing.Point{X: x + half, Y: f.y}, Pen: thin})
		f.write(x, f.y+body+0.6, small, false, f.word(c))
	}
	f.y += 8
}

// care is what the owner keeps.
func care(f *flow) {
	f.told(design.FindChildren)
	for _, c := range []string{design.FindWater, design.FindIntake, design.FindElectric} {
		f.warn(f.word(c))
	}
	if u := f.in.Result.Upkeep; u != nil {
		f.heading(f.word("paper.head.figures"))
		if u.TopUp > 0 {
			f.paragraph(f.text("paper.care.topup", num("water", u.TopUp, unit.KindWater), num("depth", u.Evaporation, unit.KindDepth)), false)
		}
		if u.Turnover > 0 {
			f.paragraph(f.text("print.turnover", num("time", u.Turnover, unit.KindDuration)), false)
		}
	}
	if d := f.in.Result.Delivery; d != nil && d.Energy > 0 {
		f.paragraph(f.text("paper.care.energy", num("energy", d.Energy, unit.KindEnergy)), false)
	}
	for _, part := range []struct {
		name  string
		tasks []string
	}{
		{"week", []string{"level", "basket", "look"}},
		{"month", []string{"screen", "lips", "plug"}},
		{"year", []string{"pump", "check", "edge"}},
		{"winter", []string{"frost", "ice"}},
		{"trouble", []string{"noflow", "falling", "over"}},
	} {
		f.heading(f.word("paper.care.head." + part.name))
		if part.name == "month" || part.name == "year" {
			f.warn(f.word(glue.CautionUnplug))
		}
		for _, t := range part.tasks {
			f.check(f.word("paper.care." + t))
		}
	}
	if f.in.Job.ClientNote != "" {
		f.gap(1.5)
		f.paragraph(f.in.Job.ClientNote, false)
	}
	f.paragraph(f.word("paper.care.source"), false)
}
