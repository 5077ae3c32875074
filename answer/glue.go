package answer

import (
	"strings"

	"plashet/engine/design"
	"plashet/engine/glue"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// GlueStep is one step of gluing up.
type GlueStep struct {
	Number   int      `json:"number" doc:"order"`
	Code     string   `json:"code" doc:"stable code of what to do"`
	Text     string   `json:"text" doc:"the sentence"`
	Where    string   `json:"where" doc:"bench or vault"`
	Parts    []string `json:"parts,omitempty" doc:"marks of parts and pieces in hand"`
	Joints   []int    `json:"joints,omitempty" doc:"joints made, counted along the flow from 1"`
	Tilt     string   `json:"tilt,omitempty" doc:"how the work is held"`
	Hold     Quantity `json:"hold,omitzero" doc:"held together"`
	Set      Quantity `json:"set,omitzero" doc:"left before it is moved"`
	NoReturn bool     `json:"noReturn,omitempty" doc:"cannot be undone but with a saw"`
	Cautions []string `json:"cautions,omitempty" doc:"what can hurt"`
}

// glue prints the steps of gluing up.
func (p *printer) glue(r *design.Result) {
	g := r.Glue
	if g != nil && g.Withheld {
		p.head("print.head.withheld")
		p.tell("", "print.withheld")
		return
	}
	if g == nil || len(g.Steps) == 0 {
		return
	}
	p.head("print.head.glue")
	for _, s := range g.Steps {
		notes := ""
		if s.NoReturn {
			notes = " " + p.say.Word("print.noreturn")
		}
		p.line("%2d. [%s] %s%s", s.Number, p.say.Word("print.where."+string(s.Where)), p.say.Say(s.Message, p.unit), notes)
		for _, c := range s.Cautions {
			p.line("      ! %s", p.say.Word(c))
		}
	}
	p.times(g)
	p.tell("", "print.cement", num("cement", g.Cement, unit.KindCement), num("primer", g.Primer, unit.KindCement), num("ready", g.Ready, unit.KindDuration))
}

// times prints each manual's set and cure times beside the one in force.
func (p *printer) times(g *glue.Plan) {
	sources := map[string]string{}
	var order []string
	shown := func(list []glue.Timed) string {
		var out []string
		for _, t := range list {
			out = append(out, p.text("print.manual", str("manual", t.Manual), num("time", t.Duration, unit.KindDuration)))
			if sources[t.Manual] == "" {
				sources[t.Manual] = t.Source.Title
				order = append(order, t.Manual)
			}
		}
		return strings.Join(out, ", ")
	}
	forced := func(what string, list []glue.Timed, d unit.Duration) {
		args := []trace.Arg{str("what", p.say.Word(what)), str("manuals", shown(list)), num("time", d, unit.KindDuration)}
		switch {
		case len(list) == 0:
			p.tell("    ", "print.time.none", args...)
		case g.Damp:
			p.tell("    ", "print.time.damp", args...)
		default:
			p.tell("    ", "print.time", args...)
		}
	}
	for _, j := range sizes(g) {
		t := &j.Times
		p.tell("", "print.hold", str("size", j.Size), num("time", t.Hold, unit.KindDuration), str("source", t.HoldSource.Title), str("note", t.HoldSource.Note))
		forced("print.time.set", t.Sets, t.Set)
		forced("print.time.cure", t.Cures, t.Cure)
	}
	for _, name := range order {
		p.tell("    ", "print.manual.source", str("manual", name), str("source", sources[name]))
	}
}
