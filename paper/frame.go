package paper

import (
	"fmt"
	"slices"
	"strings"

	"plashet/drawing"
	"plashet/engine/trace"
	"plashet/render/face"
	"plashet/words"
)

// bind puts head and foot on the pages, now that their number is known.
func (f *flow) bind() []drawing.Sheet {
	wide, tall := f.in.Paper.Size()
	name := words.Plain(f.in.Result.Name)
	if name == "" {
		name = f.word("paper.noname")
	}
	filled := f.pages
	code, coded := qr(f.in.Stamp.text(name), drawing.Point{X: f.x1 - codeWide, Y: codeTop}) // the same on every page
	out := make([]drawing.Sheet, 0, len(filled))
	for i, items := range filled {
		f.pages = [][]drawing.Item{nil} // the frame is drawn by itself
		f.head(name)
		if coded {
			f.add(drawing.Group{Name: "code", Items: code})
		}
		f.footer(i+1, len(filled))
		out = append(out, drawing.Sheet{
			Name: fmt.Sprintf("%s-%d", f.name, i+1), Title: f.title + ": " + name, Desc: f.title, Width: wide, Height: tall,
			Items: append([]drawing.Item{drawing.Group{Name: "frame", Items: f.pages[0]}}, items...),
		})
	}
	return out
}

// head writes whose sheet this is, with the code.
func (f *flow) head(name string) {
	most := f.x1 - f.x0 - codeWide - 3
	f.write(f.x0, 9+huge, huge, true, fit(f.title, huge, true, most))
	f.write(f.x0, 18.5+large, large, true, fit(name, large, true, most))
	j := f.in.Job
	var parts []string
	for _, s := range []string{j.Place, j.Client} {
		if s != "" {
			parts = append(parts, words.Plain(s))
		}
	}
	if j.Date != "" {
		parts = append(parts, f.text("paper.surveyed", str("date", j.Date)))
	}
	if s := strings.Join(parts, " · "); s != "" {
		f.write(f.x0, 26+body, body, false, fit(s, body, false, most))
	}
	f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: 33}, To: drawing.Point{X: f.x1, Y: 33}, Pen: rule})
}

// footer writes revision, date, page, and what stands behind the sheet.
func (f *flow) footer(page, of int) {
	_, tall := f.in.Paper.Size()
	y := tall - bottom + 4
	f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: y}, To: drawing.Point{X: f.x1, Y: y}, Pen: thin})
	stamp := f.in.Stamp
	revision := f.word("paper.norevision")
	if stamp.Revision > 0 {
		revision = f.text("paper.revision", count("number", stamp.Revision))
	}
	parts := []string{revision, f.text("paper.made", str("date", stamp.Date))}
	if d := stamp.short(); d != "" {
		parts = append(parts, f.text("paper.digest", str("digest", d)))
	}
	number := f.text("paper.page", count("page", page), count("of", of))
	f.add(drawing.Text{At: drawing.Point{X: f.x1, Y: y + 1 + body}, Size: body, Bold: true, Anchor: drawing.End, Ink: drawing.Black, Text: number})
	f.write(f.x0, y+1+body, small, false, fit(strings.Join(parts, " · "), small, false, f.x1-f.x0-width(number, body, true)-4))
	f.write(f.x0, y+1+body+small*lead, small, false, fit(f.standingCounts(), small, false, f.x1-f.x0))
	f.write(f.x0, y+1+body+2*small*lead, small, false, fit(f.word("paper.stale"), small, false, f.x1-f.x0))
}

// standingCounts tells on every page what stands behind it: open dangers and
// cautions, assumptions in force, findings accepted.
func (f *flow) standingCounts() string {
	found, accepted := [3]int{}, 0
	for _, x := range f.in.Result.Findings {
		if x.Accepted != "" {
			accepted++
			continue
		}
		found[x.Severity]++
	}
	return f.text("paper.standing", count("danger", found[trace.Danger]), count("caution", found[trace.Caution]),
		count("faults", len(f.faults())), count("assumed", len(f.in.Result.Assumptions)), count("accepted", accepted))
}

// bears tells that a finding bears on the sheet.
func (f *flow) bears(code, path string) bool {
	if f.accepts != nil {
		return f.accepts(code, path)
	}
	return f.about != nil && f.about(code, path)
}

// standing writes at the end of a sheet the findings accepted and the
// assumptions in force that its figures hang on, once.
func (f *flow) standing() {
	if f.stood {
		return
	}
	f.stood = true
	first := true
	for _, x := range f.in.Result.Findings {
		// The client is promised water as well as work.
		if bears := f.bears(x.Code, x.Path) || f.client && aboutWater(x.Code, x.Path); x.Accepted == "" || !bears {
			continue
		}
		if first {
			f.heading(f.word("paper.head.accepted"))
			first = false
		}
		f.paragraph(f.in.Say.Finding(x, f.units()), false)
		f.lines(f.x0+5, f.x1, f.text("print.accepted", str("why", x.Accepted)), body, true)
	}
	if f.about == nil {
		return
	}
	first = true
	further := 0
	said := map[string]bool{} // alike in two places: told once
	for _, a := range f.in.Result.Assumptions {
		s := f.in.Say.Assumption(a, f.units())
		if !f.about(a.Code, a.Path) || said[s] {
			continue
		}
		said[s] = true
		if f.full != nil && !a.Turns && !f.full(a.Code, a.Path) {
			further++
			continue
		}
		if first {
			f.heading(f.word("paper.head.assumed"))
			first = false
		}
		if a.Turns {
			s += " " + f.word("paper.turns")
		}
		f.lines(f.x0, f.x1, "· "+s, small, a.Turns)
	}
	if further > 0 {
		f.gap(1.5)
		f.lines(f.x0, f.x1, f.text("paper.assumed.more", count("count", further), str("sheet", f.word("paper.title.assembly"))), small, false)
	}
}

// lacking lists the characters that the letters do not have, where there are any.
func (f *flow) lacking() {
	var list []rune
	note := func(s string) {
		_, l := face.Shown(s)
		for _, r := range l {
			if !slices.Contains(list, r) {
				list = append(list, r)
			}
		}
	}
	for _, s := range []string{f.in.Result.Name, f.in.Job.Place, f.in.Job.Client} { // of the head, as much as is shown
		note(fit(words.Plain(s), body, false, f.x1-f.x0))
	}
	for _, p := range f.pages {
		(&drawing.Sheet{Items: p}).Each(func(it drawing.Item) {
			if t, ok := it.(drawing.Text); ok {
				note(t.Text)
			}
		})
	}
	if len(list) == 0 {
		return
	}
	const most = 24
	var names []string
	for _, r := range list[:min(most, len(list))] {
		names = append(names, fmt.Sprintf("U+%04X", r))
	}
	s := strings.Join(names, ", ")
	if len(list) > most {
		s += " …"
	}
	f.gap(3)
	f.lines(f.x0, f.x1, f.text("paper.lacking", str("box", string(face.Missing)), str("list", s)), small, false)
}

// missing writes that a part cannot be shown, and why.
func (f *flow) missing(code string) {
	f.paragraph(f.word(code), true)
	for _, x := range f.faults() {
		f.lines(f.x0+5, f.x1, f.in.Say.Say(x.Message, f.units()), body, false)
	}
}
