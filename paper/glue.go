package paper

import (
	"strconv"
	"strings"

	"plashet/drawing"
	"plashet/engine/glue"
	"plashet/engine/unit"
	"plashet/words"
)

// glueCard tells gluing up step by step, each with its picture, what can hurt
// there, and a box to tick.
func glueCard(f *flow) {
	f.about = aboutVault
	f.full = func(code, _ string) bool { return strings.HasPrefix(code, "assume.glue") }
	g := f.in.Result.Glue
	held := f.held()
	if g == nil || len(g.Steps) == 0 || held {
		if g == nil || len(g.Steps) == 0 && !g.Withheld {
			f.missing("paper.noglue")
		} else {
			f.paragraph(f.word("paper.withheld"), true)
		}
		return
	}
	f.times(g)
	pictures := map[string]*drawing.Sheet{}
	list := f.art.steps()
	for i := range list {
		pictures[list[i].Name] = &list[i]
	}
	f.heading(f.word("paper.head.steps"))
	for i := range g.Steps {
		s := &g.Steps[i]
		f.step(s, pictures["glue-"+strconv.Itoa(s.Number)])
	}
}

// times tells what is used and how long joints are held, before any is made.
func (f *flow) times(g *glue.Plan) {
	f.heading(f.word("paper.head.times"))
	f.paragraph(f.text("print.cement", num("cement", g.Cement, unit.KindCement), num("primer", g.Primer, unit.KindCement), num("ready", g.Ready, unit.KindDuration)), false)
	if g.Damp {
		f.paragraph(f.word("paper.damp"), false)
	}
	if !g.Known {
		f.warn(f.word("paper.unknowntimes"))
	}
}

// Sizes of a step, mm.
const (
	stepPicture = 46.0 // width of its picture
	stepText    = 9.0  // from the left edge to its text, past the box
)

// step writes one step: a box, its number, what to do, and its picture beside.
func (f *flow) step(s *glue.Step, picture *drawing.Sheet) {
	x0, x1 := f.x0+stepText, f.x1
	tall, above, k := 0.0, 0.0, 0.0 // of the picture: its height, the blank over it, its scale
	if picture != nil {
		k = stepPicture / picture.Width
		x1 -= stepPicture + 3
		from, to := inked(picture)
		above, tall = from*k, (to-from)*k
	}
	doing := wrap(words.Plain(f.in.Say.Say(s.Message, f.units())), hand, false, x1-x0)
	var cautions [][]string
	for _, c := range s.Cautions {
		cautions = append(cautions, wrap(f.word(c), body, true, x1-x0-3))
	}
	lines := float64(len(doing)+1) * hand * lead
	for _, c := range cautions {
		lines += float64(len(c)) * body * lead
	}
	if s.NoReturn {
		lines += hand * lead
	}
	f.gap(1)
	f.need(max(tall, min(lines, f.foot-f.from)) + 2)
	begin, page := f.y, len(f.pages)
	f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: f.y}, To: drawing.Point{X: f.x1, Y: f.y}, Pen: thin})
	f.y += 1
	if picture != nil {
		f.add(drawing.Placed(picture, drawing.Point{X: f.x1 - stepPicture, Y: f.y - above}, k)...)
	}
	f.tick(f.x0, f.y+0.3+hand-body)
	head := f.text("paper.step", count("number", s.Number), str("where", f.word("print.where."+string(s.Where))))
	if s.Hold > 0 {
		head += " · " + f.text("paper.hold", num("hold", s.Hold, unit.KindDuration), num("set", s.Set, unit.KindDuration))
	}
	f.write(x0, f.y+hand, hand, true, fit(head, hand, true, x1-x0))
	f.y += hand * lead
	for _, l := range doing {
		f.need(hand * lead)
		f.write(x0, f.y+hand, hand, false, l)
		f.y += hand * lead
	}
	if s.NoReturn {
		f.write(x0, f.y+hand, hand, true, f.word("print.noreturn"))
		f.y += hand * lead
	}
	for _, c := range cautions {
		for k, l := range c {
			f.need(body * lead)
			if k == 0 {
				f.write(x0, f.y+body, body, true, "!")
			}
			f.write(x0+3, f.y+body, body, true, l)
			f.y += body * lead
		}
	}
	if page == len(f.pages) {
		f.y = max(f.y, begin+1+tall)
	}
	f.y += 1
}
