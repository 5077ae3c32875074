package app

import (
	"fmt"
	"html/template"
	"net/http"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/engine/trace"
)

// tally is the answer in a glance: what is right, what to watch, what stops
// the job.
type tally struct {
	Falls              []fall
	Levels, Fit, Money []row
	Stop, Watch, Note  int // open findings
	Worst              string
	Mark               string
}

// fall is one feed: its flow beside the flow wanted.
type fall struct {
	Name, Flow, Wanted, Between string
	Mark, State                 string
	Stamp                       string // of what was found of its flow; "" for nothing to stamp
	Gauge                       template.HTML
	Why                         string // the address of the figure opened
}

// row is one line of the tally.
type row struct{ Label, Value, Beside, Mark, Why string }

// The band round a wanted flow in which nothing is amiss; the design judges by
// the same (engine/design, judge.go).
const (
	bandLow  = 0.95
	bandHigh = 1.25
)

// tally reads the answer's head out of the document.
func (a *app) tally(s *solved, id string, bands *answer.Bands) tally {
	why := func(figure string) string { return "/jobs/" + id + "/why/" + figure }
	d := &s.doc
	n := open(s)
	t := tally{Stop: n[trace.Danger.String()], Watch: n[trace.Caution.String()], Note: n[trace.Info.String()]}
	switch {
	case t.Stop > 0:
		t.Mark = "stop"
	case t.Watch > 0:
		t.Mark = "watch"
	case d.Pump != nil:
		t.Mark = "right"
	default:
		t.Mark = "none"
	}
	for i, f := range d.Feeds {
		x := fall{Name: f.Name, Flow: f.Flow.Text, Wanted: f.Wanted.Text, Why: why("feed." + strconv.Itoa(i) + ".flow"), Gauge: gauge(f.Flow.SI, f.Wanted.SI, 0, 0)}
		x.Mark, x.Stamp = flowMark(d, i, f)
		if band := bandOf(bands, "feed."+strconv.Itoa(i)+".flow"); band != nil {
			x.Between, x.Gauge = a.banded(band), gauge(f.Flow.SI, f.Wanted.SI, band.Low.SI, band.High.SI)
		}
		x.State = a.say("app.fall." + x.Mark)
		t.Falls = append(t.Falls, x)
	}
	t.Levels = a.levelRows(d, why, bands)
	t.Fit = a.fitRows(s)
	t.Money = a.moneyRows(d, why)
	return t
}

// flowMark says how a feed's flow stands, and with which stamp, by what the design
// found of it: the same as stands among the findings.
func flowMark(d *answer.Document, i int, f answer.Feed) (state, stamp string) {
	worst := ""
	for k := range d.Findings { // the worst first
		x := &d.Findings[k]
		if x.Path == "/watercourses/"+strconv.Itoa(i) && strings.HasPrefix(x.Code, "design.flow.") {
			worst = x.Code
			switch w := weight(x.Severity); {
			case x.Accepted != "":
				stamp = "accepted"
			case w > 1:
				stamp = mark(w)
			}
			break
		}
	}
	switch {
	case f.Dry:
		return "dry", stamp
	case f.Wanted.Text == "":
		return "unwanted", stamp
	case worst == "design.flow.over":
		return "much", stamp
	case worst != "":
		return "short", stamp
	}
	return "right", stamp
}

// levelRows tell the margins at stop and start: of the everyday course, or of
// the first start where there is no other.
func (a *app) levelRows(d *answer.Document, why func(string) string, bands *answer.Bands) []row {
	var rows []row
	for _, course := range []string{"kept", "open", "first"} {
		for _, s := range d.Levels {
			if s.Course != course {
				continue
			}
			id := "level." + s.Course + "." + s.Moment
			if (s.Moment == "stop" || s.Moment == "stop-open") && s.Freeboard.Text != "" && !has(rows, a.say("app.level.rim."+s.Moment)) {
				x := row{Label: a.say("app.level.rim." + s.Moment), Value: s.Freeboard.Text, Beside: a.banded(bandOf(bands, id+".freeboard")), Mark: "right", Why: why(id + ".freeboard")}
				if s.Moment == "stop-open" && !has(rows, a.say("app.level.rim.stop")) {
					x.Label = a.say("app.level.rim.alone")
				}
				if s.Freeboard.SI <= 0 {
					x.Mark = "stop"
				}
				rows = append(rows, x)
			}
			if s.Moment == "run" && s.OverSill.Text != "" && len(rows) < 4 {
				x := row{Label: a.say("app.level.sill"), Value: s.OverSill.Text, Beside: a.say("app.level.needs", "needs", s.NeedsSill.Text), Mark: "right", Why: why(id + ".sill")}
				if s.OverSill.SI < s.NeedsSill.SI || s.Starved {
					x.Mark = "stop"
				}
				rows = append(rows, x)
			}
		}
		if len(rows) > 0 {
			break
		}
	}
	for i := range d.Motion {
		if m := &d.Motion[i]; m.Case == "restart" && m.Dry {
			rows = append(rows, row{Label: a.say("app.level.air"), Value: m.DryAt.Text, Mark: "stop"})
		}
	}
	return rows
}

func has(rows []row, label string) bool {
	for _, r := range rows {
		if r.Label == label {
			return true
		}
	}
	return false
}

// fitRows tell whether the assembly fits and the pump comes out.
func (a *app) fitRows(s *solved) []row {
	d := &s.doc
	if d.Assembly == nil {
		return []row{{Label: a.say("app.fit.assembly"), Value: a.say("app.fit.unlaid"), Mark: "none"}}
	}
	fits := row{Label: a.say("app.fit.assembly"), Value: a.say("app.fit.fits"), Mark: "right"}
	if d.NotToCut {
		fits.Value, fits.Mark = a.say("app.fit.not"), "stop"
	}
	if x := d.Assembly.Second; x != nil {
		fits.Beside = a.say("app.fit.second", "passed", strconv.Itoa(x.Passed), "checks", strconv.Itoa(x.Checks))
	}
	out := row{Label: a.say("app.fit.out"), Mark: "right"}
	w := &d.Assembly.WayOut
	switch {
	case !w.Checked:
		out.Value, out.Mark = a.say("app.fit.out.unknown"), "none"
	case !w.Possible && w.Narrow:
		out.Value, out.Mark = a.say("app.fit.out.narrow"), "stop"
	case !w.Possible:
		out.Value, out.Mark = a.say("app.fit.out.no", "blocker", w.Blocker), "stop"
	default:
		out.Value = a.say("app.fit.out.yes", "count", strconv.Itoa(len(w.Moves)))
		if w.Union != "" {
			out.Beside = a.say("app.fit.out.union", "union", w.Union)
		}
	}
	return []row{fits, out}
}

func (a *app) moneyRows(d *answer.Document, why func(string) string) []row {
	var rows []row
	if t := d.Total; t != nil && t.Sum != nil {
		x := row{Label: a.say("app.money.material"), Value: t.Sum.Text}
		if t.Unpriced > 0 {
			x.Beside = a.say("app.money.unpriced", "count", strconv.Itoa(t.Unpriced))
		}
		rows = append(rows, x)
	} else {
		rows = append(rows, row{Label: a.say("app.money.material"), Value: a.say("app.money.none")})
	}
	if d.Pump != nil {
		if d.Pump.Cost != nil {
			rows = append(rows, row{Label: a.say("app.money.year"), Value: d.Pump.Cost.Text, Why: why("pump.energy")})
		} else if d.Pump.Energy != nil {
			rows = append(rows, row{Label: a.say("app.money.year"), Value: d.Pump.Energy.Text, Why: why("pump.energy")})
		}
	}
	return rows
}

// gauge draws a flow beside the flow wanted as a levelling staff: the band
// wanted washed in, the flow as the water that stands on the staff, and across its end
// from low to high where it may truly stand; low and high 0 where that is not known.
func gauge(flow, wanted, low, high float64) template.HTML {
	top := max(flow, high, wanted*bandHigh) * 1.12
	if !(top > 0) {
		return ""
	}
	const wide = 300.0
	x := func(q float64) float64 { return min(max(q/top, 0), 1) * wide }
	var b strings.Builder
	b.WriteString(`<svg class="staff" viewBox="0 0 300 26" preserveAspectRatio="none" aria-hidden="true" focusable="false">`)
	if wanted > 0 {
		fmt.Fprintf(&b, `<rect class="band" x="%.1f" y="1" width="%.1f" height="24"/>`, x(wanted*bandLow), x(wanted*bandHigh)-x(wanted*bandLow))
		fmt.Fprintf(&b, `<path class="edge" d="M%.1f 1V25M%.1f 1V25"/>`, x(wanted*bandLow), x(wanted*bandHigh))
	}
	fmt.Fprintf(&b, `<rect class="flow" x="0" y="9" width="%.1f" height="8"/>`, x(flow))
	if high > low { // where nine in ten of what may be true lie
		fmt.Fprintf(&b, `<path class="doubt" d="M%.1f 13H%.1fM%.1f 8V18M%.1f 8V18"/>`, x(low), x(high), x(low), x(high))
	}
	for i := 1; i < 20; i++ { // the staff's marks: long at the tenths
		high := 3
		if i%2 == 0 {
			high = 6
		}
		fmt.Fprintf(&b, `<path class="tick" d="M%.1f 25v-%d"/>`, float64(i)*wide/20, high)
	}
	fmt.Fprintf(&b, `<path class="base" d="M0 25H300"/><path class="point" d="M%.1f 9l-5 -8h10z"/></svg>`, x(flow))
	return template.HTML(b.String()) //nolint:gosec // numbers only
}

// finding is one finding with what can be done about it.
type finding struct {
	answer.Finding
	Mark, Limit string
	Remedies    []remedy
	Part        string // of the job it stands in
	Where       string
}

// remedy is one remedy with its effect in words.
type remedy struct {
	Text, Effect string
	Index        int
	Takes        bool // it can be taken with one tap
}

// findings gives those of the parts whose test holds, the worst first.
func (a *app) findings(o *opened, of func(path string) bool) []finding {
	var list []finding
	for i := range o.doc.Findings {
		f := &o.doc.Findings[i]
		if !of(f.Path) {
			continue
		}
		x := finding{Finding: *f, Mark: mark(weight(f.Severity)), Part: partAt(f.Path), Where: a.where(o.job, f.Path)}
		if f.LimitSource.Title != "" {
			x.Limit = a.say("app.finding.limit", "limit", f.Limit.Text, "source", f.LimitSource.Title, "basis", a.Language.Word("print.basis."+string(f.LimitSource.Basis)))
		}
		for k, m := range f.Remedies {
			x.Remedies = append(x.Remedies, remedy{Text: m.Text, Effect: a.effects(m.Effect), Index: k, Takes: a.takes(o, f, k)})
		}
		list = append(list, x)
	}
	return list
}

// effects tells what a remedy moves.
func (a *app) effects(list []answer.Effect) string {
	var said []string
	for _, e := range list {
		name := ""
		if code := "effect." + e.Figure[strings.LastIndexByte(e.Figure, '.')+1:]; a.Language.Has(code) {
			name = a.Language.Word(code)
		}
		said = append(said, strings.TrimSpace(a.say("app.moved", "name", name, "before", e.Before.Text, "after", e.After.Text)))
	}
	return strings.Join(said, ", ")
}

type answerBody struct {
	ID       string
	Base     int
	Here     string
	Note     string
	Tally    tally
	Findings []finding
	Wrong    []answer.Fault // what could not be read or worked out
	Assumed  int
	Last     string
	Stage    string
	Doubt    beside
	Again    []againLine
	Sure     bool // the bands are at hand
}

// answer is the page on which a job opens.
func (a *app) answer(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	bands, work := a.doubt(o)
	b := answerBody{
		ID: o.rev.ID, Base: o.rev.Number, Note: o.job.Note, Tally: a.tally(o.solved, o.rev.ID, bands), Doubt: work, Again: a.again(o, bands), Sure: bands != nil && len(bands.Figures) > 0,
		Findings: a.findings(o, func(string) bool { return true }), Wrong: o.doc.Faults,
		Assumed: len(o.doc.Assumptions), Last: o.rev.What, Stage: a.say("app.stage." + stage(o.solved)),
	}
	a.show(w, r, http.StatusOK, "answer", o.job.Name, a.heading(o, ""), b)
	return nil
}

// assumed lists the defaults in force with their weight.
func (a *app) assumed(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	type item struct {
		answer.Assumption
		Part, Weighs, Where, Basis string
	}
	var list []item
	for _, x := range o.doc.Assumptions {
		list = append(list, item{x, partAt(x.Path), a.effects(x.Weight), a.where(o.job, x.Path), a.Language.Word("print.basis." + string(x.Source.Basis))})
	}
	b := struct {
		ID   string
		List []item
	}{o.rev.ID, list}
	a.show(w, r, http.StatusOK, "assumed", a.say("app.assumed.title"), a.heading(o, "assumed"), b)
	return nil
}
