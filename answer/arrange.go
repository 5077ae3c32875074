package answer

import (
	"io"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// arranging prints what a search for layouts found.
type arranging struct {
	printer
	a    *design.Arranging
	full bool // with all of the play and the steps of gluing of each layout
}

// Arranged prints for reading the layouts that a search found, side by side and
// one by one, and how far the claim reaches; where nothing fits, what failed and
// what would mend it. Faults met in reading stand with the search's. In full each
// layout comes with all of its play and the steps of gluing it up.
func Arranged(w io.Writer, a *design.Arranging, read []trace.Fault, l *words.Language, full bool) error {
	p := &arranging{printer{w: w, say: l, unit: a.Units}, a, full}
	p.tell("", "found.title", p.heads(a.Name))
	if a.Note != "" {
		p.line("%s", a.Note)
	}
	if o := a.Outcome; o != nil {
		p.tell("", "found.pump", str("name", a.Pump), num("flow", a.Flow, unit.KindFlow))
		switch {
		case len(o.Layouts) > 0:
			p.sideBySide()
			for i := range o.Layouts[:p.shown()] {
				p.layout(i)
			}
		case len(o.Faults) == 0:
			p.none()
		}
	}
	if len(a.Findings) > 0 {
		p.head("found.head.findings")
		for _, f := range a.Findings {
			p.line("%s%s", p.severity(f.Severity), p.say.Finding(f, p.unit))
		}
	}
	p.faults(append(slices.Clone(read), a.Faults...))
	if len(a.Assumptions) > 0 {
		p.head("print.head.assumed")
		for _, x := range a.Assumptions {
			p.line("%s", p.say.Assumption(x, p.unit))
		}
	}
	return p.err
}

// Progress says how far a search has got.
func Progress(g arrange.Progress, l *words.Language) string {
	p := printer{say: l}
	if g.Short != "" {
		return p.text("found.progress.short", str("what", l.Say(trace.Message{Code: g.Short, Args: g.Args}, unit.US)), count("done", g.Done), count("of", g.Of))
	}
	return p.text("found.progress", count("elbows", g.Elbows), count("done", g.Done), count("of", g.Of), count("layouts", g.Layouts))
}
