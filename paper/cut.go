package paper

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/cut"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// aboutVault tells what the figures of the assembly hang on.
func aboutVault(code, path string) bool {
	for _, p := range []string{"assume.layout", "assume.assembly", "assume.cut", "assume.glue", "layout.", "glue."} {
		if strings.HasPrefix(code, p) {
			return true
		}
	}
	return strings.HasPrefix(path, "/assembly") || strings.HasPrefix(path, "/stock")
}

// held writes that nothing is to be cut or glued, where that is so.
func (f *flow) held() bool {
	if f.in.Result.NotToCut {
		f.banner(f.word("paper.held"))
	}
	return f.in.Result.NotToCut
}

// cutCard lists every piece to cut, from which stick, with its marks.
func cutCard(f *flow) {
	f.about = aboutVault
	f.full = func(code, path string) bool {
		return strings.HasPrefix(code, "assume.cut") || strings.HasPrefix(path, "/stock")
	}
	f.held()
	f.warn(f.word(glue.CautionSaw))
	a := f.in.Result.Assembly
	if a == nil || len(a.Pieces)+len(a.Hoses) == 0 {
		f.missing("paper.nopieces")
	} else {
		f.pieces(a)
		f.stubs(a)
	}
	f.further()
	f.standing() // before the drawing of the sticks, which often takes a page
	pictures := f.art.sticks()
	wide := (f.x1 - f.x0) * 0.75
	if len(pictures) > 0 {
		proof := body * lead * float64(len(f.in.Result.Cutting))
		f.headingOver(f.word("paper.head.sticks"), min(pictures[0].Height*wide/pictures[0].Width*shrink+proof, f.foot-f.from-20))
	}
	f.proof()
	for i := range pictures {
		f.picture(&pictures[i], wide)
	}
}

// fromStick tells by mark which sticks a piece comes from, in the order of the
// plan; pieces of one mark come from several.
func (f *flow) fromStick(mark string) string {
	var out []string
	for i := range f.in.Result.Cutting {
		c := &f.in.Result.Cutting[i]
		for k := range c.Plan.Bars {
			for _, p := range c.Plan.Bars[k].Cuts {
				if n := strconv.Itoa(k + 1); c.Pieces[p.Piece].Mark == mark && !slices.Contains(out, n) {
					if c.Plan.Bars[k].From == cut.FromOffcut {
						n = f.text("paper.offcut", str("number", n))
					}
					out = append(out, n)
				}
			}
		}
	}
	return strings.Join(out, ", ")
}

func (f *flow) pieces(a *layout.Assembly) {
	f.heading(f.word("paper.head.pieces"))
	rolls := map[string]string{}
	for _, r := range a.Rolls {
		switch {
		case r.Piece != "":
			rolls[r.Piece] = f.roll(&r)
		case r.Hose:
			rolls[r.Mark] = f.roll(&r)
		}
	}
	var rows [][]string
	unsure, closing := false, ""
	var hoses []string
	all := a.CutList()
	for i := range all {
		p := &all[i]
		if p.Made {
			continue
		}
		mark := p.Mark
		if !p.Ends[0].Sure || !p.Ends[1].Sure {
			mark, unsure = mark+" *", true
		}
		if p.Closing && !p.InPlace {
			closing = p.Mark
		}
		if p.After == layout.NoPart {
			hoses = append(hoses, f.text("paper.hose", str("piece", p.Mark), str("size", p.Pipe.Size)))
		}
		rows = append(rows, []string{
			"", mark, show(f, p.Cut, unit.KindTape), p.Pipe.Size, f.endOf(p.From, p.Ends[0]), f.endOf(p.To, p.Ends[1]), f.fromStick(p.Mark), rolls[p.Mark],
		})
	}
	f.table([]column{
		{tick: true},
		{head: f.word("paper.piece"), bold: true, hand: true},
		{head: f.word("paper.cut"), end: true, bold: true, hand: true},
		{head: f.word("paper.size")},
		{head: f.word("paper.pumpend"), wide: 34},
		{head: f.word("paper.wallend"), wide: 34},
		{head: f.word("paper.stick")},
		{head: f.word("paper.roll"), wide: rest},
	}, rows)
	if closing != "" {
		f.warn(f.text("paper.closing", str("piece", closing)))
	}
	for _, h := range hoses {
		f.warn(h)
	}
	if unsure {
		f.paragraph(f.word("paper.unsure"), true)
	}
	if a.Tail != nil {
		f.paragraph(f.text("paper.tail", str("piece", a.Tail.Mark)), false)
	}
}

// endOf tells the fitting at an end of a piece, and where to mark it.
func (f *flow) endOf(part string, e layout.PipeEnd) string {
	return f.text("paper.end", str("part", part), num("mark", e.Mark, unit.KindTape))
}

// roll tells how far round the pipe the elbow's line stands from the pipe's own.
func (f *flow) roll(r *layout.RollMark) string {
	if r.Arc <= 0 {
		return f.text("paper.roll.line", str("part", r.Mark))
	}
	return f.text("paper.roll.arc", str("part", r.Mark), num("arc", r.Arc, unit.KindTape), num("angle", r.Angle, unit.KindAngle))
}

func (f *flow) stubs(a *layout.Assembly) {
	if len(a.Stubs) == 0 {
		return
	}
	f.heading(f.word("paper.head.stubs"))
	var rows [][]string
	for _, s := range a.Stubs {
		rows = append(rows, []string{"", s.Piece, show(f, s.Length, unit.KindTape), s.Pipe.Size})
	}
	f.table([]column{{tick: true}, {head: f.word("paper.stub"), bold: true, hand: true}, {head: f.word("paper.cut"), end: true, bold: true, hand: true}, {head: f.word("paper.size"), wide: rest}}, rows)
	f.paragraph(f.word("paper.stubs"), false)
}

// further lists what is cut beyond the assembly.
func (f *flow) further() {
	var rows [][]string
	for i := range f.in.Job.Stock.Pieces {
		p := &f.in.Job.Stock.Pieces[i]
		rows = append(rows, []string{"", p.Mark, show(f, p.Length.SI, unit.KindTape), f.in.Say.Term(p.Pipe.Kind) + " " + p.Pipe.Size, strconv.Itoa(max(1, p.Count)), f.fromStick(p.Mark)})
	}
	if len(rows) == 0 {
		return
	}
	f.heading(f.word("paper.head.further"))
	f.table([]column{{tick: true}, {head: f.word("paper.piece"), bold: true, hand: true}, {head: f.word("paper.cut"), end: true, bold: true, hand: true}, {head: f.word("paper.size"), wide: rest}, {head: f.word("paper.count"), end: true}, {head: f.word("paper.stick")}}, rows)
}

// proof tells how good the plan is.
func (f *flow) proof() {
	for i := range f.in.Result.Cutting {
		c := &f.in.Result.Cutting[i]
		code := "paper.plan.open"
		if c.Plan.Proof.Proven() {
			code = "paper.plan.proven"
		}
		f.paragraph(f.text(code, str("pipe", c.Pipe)), false)
	}
}
