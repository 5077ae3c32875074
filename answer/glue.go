package answer

import (
	"slices"
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
	p.glueSteps(g)
	p.times(g)
	p.tell("", "print.cement", num("cement", g.Cement, unit.KindCement), num("primer", g.Primer, unit.KindCement), num("ready", g.Ready, unit.KindDuration))
}

// glueSteps prints the steps with what can hurt at each.
func (p *printer) glueSteps(g *glue.Plan) {
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

// GlueTime is what cemented joints of one size ask for. The can decides.
type GlueTime struct {
	Size       string    `json:"size" doc:"nominal"`
	Hold       *Quantity `json:"hold,omitempty" doc:"held together"`
	HoldSource Source    `json:"holdSource,omitzero" doc:"of the hold"`
	Set        *Quantity `json:"set,omitempty" doc:"in force before it is moved: the slower manual, longer where it is damp"`
	Sets       []Manual  `json:"sets,omitempty" doc:"each manual, dry"`
	Cure       *Quantity `json:"cure,omitempty" doc:"in force before water pressure: the slower manual, longer where it is damp"`
	Cures      []Manual  `json:"cures,omitempty" doc:"each manual, dry"`
}

// Manual is one manual's time.
type Manual struct {
	Name         string   `json:"manual" doc:"A or B; the source names it"`
	Time         Quantity `json:"time" doc:"its time"`
	Sizes        string   `json:"sizes" doc:"the range of sizes it is for, in"`
	Temperatures string   `json:"temperatures" doc:"the range of temperatures it is for, °F"`
	Pressure     string   `json:"pressure,omitempty" doc:"the range of pressures, psi"`
	Source       Source   `json:"source" doc:"which manual"`
}

// times gathers the times of the joints, by size along the flow.
func (m maker) times(g *glue.Plan) []GlueTime {
	var out []GlueTime
	for _, t := range sizes(g) {
		x := GlueTime{Size: t.Size, HoldSource: t.Times.HoldSource, Sets: m.manuals(t.Times.Sets), Cures: m.manuals(t.Times.Cures)}
		for _, c := range []struct {
			to **Quantity
			by unit.Duration
		}{{&x.Hold, t.Times.Hold}, {&x.Set, t.Times.Set}, {&x.Cure, t.Times.Cure}} {
			if c.by > 0 {
				*c.to = new(of(m, c.by, unit.KindDuration))
			}
		}
		out = append(out, x)
	}
	return out
}

func (m maker) manuals(list []glue.Timed) []Manual {
	var out []Manual
	for _, t := range list {
		out = append(out, Manual{t.Manual, of(m, t.Duration, unit.KindDuration), t.Sizes, t.Temps, t.Pressure, t.Source})
	}
	return out
}

// sizes gives one cemented joint of each size, along the flow.
func sizes(g *glue.Plan) []glue.Joint {
	var out []glue.Joint
	for _, j := range g.Joints {
		if j.Kind == glue.Cement && !slices.ContainsFunc(out, func(o glue.Joint) bool { return o.Size == j.Size }) {
			out = append(out, j)
		}
	}
	return out
}
