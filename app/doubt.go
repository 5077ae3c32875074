package app

import (
	"context"
	"fmt"
	"html/template"
	"net/http"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/engine/design"
)

const runDoubt = "doubt"

// seed of the draws: the same job always has the same bands.
const seed = 1

// doubt gives the bands of the job as it stands, and begins to work them out
// where they are not at hand; nil until they are.
func (a *app) doubt(o *opened) (*answer.Bands, beside) {
	b, value := a.look(runDoubt, o)
	solved, ok := value.(*design.Result)
	switch {
	case ok && !b.Stale:
		r := *solved
		r.Units = o.result.Units
		if d := answer.Build(&r, o.faults, a.Language); d.Bands != nil {
			return d.Bands, b
		}
		return &answer.Bands{}, b
	case b.Failed && !b.Stale:
		return nil, b
	case o.doc.Pump == nil || a.running(runDoubt, o):
		return nil, b
	}
	j, faults := o.job, o.faults
	b.Running = a.begin(runDoubt, o, func(context.Context, func(string)) any {
		return design.SolveBands(a.Book, j, design.UsualDraws, seed, faults...)
	})
	b.Stale = false
	return nil, b
}

// bandOf finds the band of a figure; nil where it has none, or one no wider than
// what is shown.
func bandOf(b *answer.Bands, figure string) *answer.Band {
	if b == nil {
		return nil
	}
	for i := range b.Figures {
		if f := &b.Figures[i]; f.Figure == figure && f.Low.Text != f.High.Text {
			return f
		}
	}
	return nil
}

// banded tells a band in words; "" for none.
func (a *app) banded(b *answer.Band) string {
	if b == nil {
		return ""
	}
	return a.say("app.doubt.between", "low", shorter(b.Low.Text, b.High.Text), "high", b.High.Text)
}

// shorter leaves out the unit of the first of two figures where both have it.
func shorter(low, high string) string {
	a, unit, ok := strings.Cut(low, " ")
	_, other, ok2 := strings.Cut(high, " ")
	if ok && ok2 && unit == other {
		return a
	}
	return low
}

// doubtLine is a figure with its band and what makes it.
type doubtLine struct {
	Name, Value, Between, Why string
	Bar                       template.HTML
	Shares                    []doubtShare
}

type doubtShare struct {
	Percent string
	Text    string
	Href    string
}

type doubtBody struct {
	ID     string
	Beside beside
	Bands  *answer.Bands
	Lines  []doubtLine
	Motion []doubtLine
	Again  []againLine
}

// againLine is one thing to measure again.
type againLine struct {
	answer.Again
	Percent string
	Href    string
}

func percent(part float64) string { return strconv.Itoa(int(part*100 + 0.5)) }

// least part of a spread that is worth naming.
const worthNaming = 0.1

// doubtPage shows how sure each figure is, and what makes the doubt.
func (a *app) doubtPage(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	b := doubtBody{ID: o.rev.ID}
	b.Bands, b.Beside = a.doubt(o)
	if b.Bands != nil {
		b.Lines = a.doubtLines(o, b.Bands)
		b.Again = a.again(o, b.Bands)
		for i := range b.Bands.Motion {
			f := &b.Bands.Motion[i]
			if p := strings.Split(f.Figure, "."); len(p) > 2 {
				name := a.Language.Word("motion.case."+p[1]) + ": " + a.Language.Word("sure.motion."+p[2])
				b.Motion = append(b.Motion, doubtLine{Name: name, Value: f.Value.Text, Between: a.banded(f), Bar: bar(f)})
			}
		}
	}
	a.show(w, r, http.StatusOK, "doubt", a.say("app.doubt.title"), a.heading(o, "doubt"), b)
	return nil
}

func (a *app) doubtLines(o *opened, b *answer.Bands) (list []doubtLine) {
	for i := range b.Figures {
		f := &b.Figures[i]
		if f.Text == "" || f.Low.Text == f.High.Text {
			continue
		}
		x := doubtLine{Name: f.Text, Value: f.Value.Text, Between: a.banded(f), Bar: bar(f), Why: "/jobs/" + o.rev.ID + "/why/" + f.Figure}
		for _, s := range f.Shares {
			if s.Part < worthNaming || len(x.Shares) > 3 || s.Doubt < 0 || s.Doubt >= len(b.Doubts) {
				continue
			}
			d := &b.Doubts[s.Doubt]
			x.Shares = append(x.Shares, doubtShare{percent(s.Part), d.Text, a.field(o, d.Path)})
		}
		list = append(list, x)
	}
	return list
}

// field gives the address of the field of a path; "" where no part holds it.
func (a *app) field(o *opened, path string) string {
	p := partAt(path)
	if p == "" {
		return ""
	}
	return "/jobs/" + o.rev.ID + "/part/" + p + "#" + fieldID(path)
}

// again lists what is worth measuring again.
func (a *app) again(o *opened, b *answer.Bands) (list []againLine) {
	if b == nil {
		return nil
	}
	for _, x := range b.Again {
		list = append(list, againLine{x, percent(x.Part), a.field(o, x.Path)})
	}
	return list
}

// bar draws a band with the figure in it.
func bar(f *answer.Band) template.HTML {
	low, high := min(f.Low.SI, f.Value.SI), max(f.High.SI, f.Value.SI)
	if !(high > low) {
		return ""
	}
	const wide, edge = 300.0, 24.0
	x := func(v float64) float64 { return edge + (v-low)/(high-low)*(wide-2*edge) }
	return template.HTML(fmt.Sprintf(`<svg class="band" viewBox="0 0 300 20" preserveAspectRatio="none" aria-hidden="true" focusable="false"><path class="base" d="M0 10H300"/><rect class="wash" x="%.1f" y="4" width="%.1f" height="12"/><path class="edge" d="M%.1f 2V18M%.1f 2V18"/><path class="now" d="M%.1f 0V20"/></svg>`,
		x(f.Low.SI), x(f.High.SI)-x(f.Low.SI), x(f.Low.SI), x(f.High.SI), x(f.Value.SI))) //nolint:gosec // numbers only
}
