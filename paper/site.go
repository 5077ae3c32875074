package paper

import (
	"slices"
	"strings"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/takeoff"
)

// planWide is how wide the plan is printed, mm: its letters near those of the page.
const planWide = 115.0

// site is the sheet for the first day: what was measured, the plan, and what can
// hurt where people dig and where there is open water.
func site(f *flow) {
	f.about = func(code, path string) bool {
		if aboutList(code, path) {
			return false
		}
		return strings.HasPrefix(path, "/site") || path == "/numbers" || strings.HasPrefix(path, "/pond") || strings.HasPrefix(path, "/survey") || strings.HasPrefix(path, "/vault")
	}
	f.warn(f.word(takeoff.CautionServices))
	f.told(design.FindWater, design.FindChildren)
	if f.in.Job.Note != "" {
		f.paragraph(f.text("paper.crew", str("note", f.in.Job.Note)), false)
	}
	f.gap(2)
	if p := f.art.plan(); p != nil {
		f.picture(&p.picture, planWide)
		f.tables(p.lists)
	} else {
		f.paragraph(f.word("paper.noplan"), true)
	}
	f.points()
}

// told warns with the findings of these codes, where the design has them.
func (f *flow) told(codes ...string) {
	for _, c := range codes {
		for _, x := range f.in.Result.Findings {
			if x.Code == c {
				f.warn(f.in.Say.Finding(x, f.units()))
			}
		}
	}
}

// points lists the survey, brought to one datum.
func (f *flow) points() {
	r, _ := f.in.Job.Elevations()
	var rows [][]string
	for _, p := range r.Points {
		by := p.Setup
		if by == "" {
			by = f.word("paper.given")
		}
		rows = append(rows, []string{p.Name, show(f, p.Elevation, unit.KindElevation), by})
	}
	if len(rows) == 0 {
		return
	}
	f.heading(f.word("paper.head.points"))
	f.table([]column{{head: f.word("paper.point"), wide: rest}, {head: f.word("paper.elevation"), end: true, bold: true}, {head: f.word("paper.from")}}, rows)
}

// aboutWater tells what flows and levels hang on.
func aboutWater(code, path string) bool {
	if aboutVault(code, path) || aboutList(code, path) {
		return false
	}
	for _, p := range []string{"/runs", "/pumps", "/use", "/watercourses", "/site", "/pond", "/vault", "/circuit", "/furtherPumps", "/survey"} {
		if strings.HasPrefix(path, p) {
			return true
		}
	}
	return false
}

// water is the hydraulic answer: what was found, flows, curves, levels.
func water(f *flow) {
	f.about = aboutWater
	f.told(design.FindElectric)
	f.feeds()
	f.sureLevels()
	f.float(f.art.water())
	f.findings(true, design.FindElectric)
}

// feeds tells what each feed gets, or that it could not be worked out.
func (f *flow) feeds() {
	d := f.in.Result.Delivery
	if d == nil {
		f.missing("paper.noflow")
		return
	}
	var rows [][]string
	for _, x := range d.Feeds {
		wanted := "—"
		if x.Wanted > 0 {
			wanted = show(f, x.Wanted, unit.KindFlow)
		}
		got := f.show(unit.Bounded(x.Flow, unit.KindFlow, d.Bound()))
		if x.Dry {
			got = f.word("paper.dry")
		}
		rows = append(rows, []string{x.Name, got, f.banded(x.Name, ".flow"), wanted})
	}
	f.heading(f.text("paper.head.flow", str("pump", d.Pump)))
	f.table([]column{{head: f.word("paper.feed"), wide: rest}, {head: f.word("paper.gets"), end: true, bold: true}, {head: f.word("paper.band"), end: true}, {head: f.word("paper.wanted"), end: true}}, rows)
	f.paragraph(f.text("paper.point.at", num("flow", d.Flow, unit.KindFlow), num("head", d.Head, unit.KindHead), num("power", d.Power, unit.KindPower)), false)
}

// sureLevels sets the levels between which 90 of 100 draws lie beside the levels
// as they are reckoned.
func (f *flow) sureLevels() {
	if f.in.Result.Bands == nil {
		return
	}
	var rows [][]string
	for _, b := range f.in.Result.Bands.Outputs {
		p := strings.Split(b.Figure, ".")
		if len(p) != 4 || p[0] != "level" || p[3] != "change" && p[3] != "pump" && p[3] != "freeboard" {
			continue
		}
		name := f.word("level.course."+p[1]) + ", " + f.word("level.moment."+p[2])
		rows = append(rows, []string{
			f.text("sure.level-"+p[3], str("name", name)), f.show(b.Value),
			f.text("print.to", trace.Arg{Name: "low", Value: b.Low}, trace.Arg{Name: "high", Value: b.High}),
		})
	}
	f.heading(f.word("paper.head.levels"))
	f.table([]column{{wide: rest}, {head: f.word("paper.reckoned"), end: true, bold: true}, {head: f.word("paper.band"), end: true}}, rows)
}

// banded shows the band of a feed's figure; nothing where none was asked for.
func (f *flow) banded(name, suffix string) string {
	if f.in.Result.Bands == nil {
		return "—"
	}
	for _, b := range f.in.Result.Bands.Outputs {
		if b.Name == name && strings.HasSuffix(b.Figure, suffix) {
			return f.text("print.to", trace.Arg{Name: "low", Value: b.Low}, trace.Arg{Name: "high", Value: b.High})
		}
	}
	return "—"
}

// findings writes what stands open of what the sheet is about, the worst first.
// A sheet that nothing is open of has no such part, but where it is the answer.
func (f *flow) findings(always bool, told ...string) {
	head := func() {
		if !always {
			f.heading(f.word("paper.head.findings"))
			always = true
		}
	}
	none := true
	if always {
		f.heading(f.word("paper.head.findings"))
	}
	for _, sev := range []trace.Severity{trace.Danger, trace.Caution, trace.Info} {
		for _, x := range f.in.Result.Findings {
			if x.Severity != sev || x.Accepted != "" || slices.Contains(told, x.Code) || !f.about(x.Code, x.Path) {
				continue
			}
			head()
			none = false
			s := f.in.Say.Mark(sev) + ": " + f.in.Say.Finding(x, f.units())
			if sev == trace.Danger {
				f.warn(s)
				continue
			}
			f.lines(f.x0, f.x1, s, body, false)
			f.gap(0.8)
		}
	}
	if !always {
		return
	}
	if none {
		f.paragraph(f.word("paper.nofindings"), false)
	}
	for _, x := range f.faults() {
		f.lines(f.x0, f.x1, f.word("paper.fault")+" "+f.in.Say.Say(x.Message, f.units()), body, true)
	}
}
