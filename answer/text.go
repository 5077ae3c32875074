// Package answer prints a design's result: as text for reading and as JSON
// with stable names. It computes nothing.
package answer

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"plashet/engine/cut"
	"plashet/engine/design"
	"plashet/engine/glue"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/takeoff"
	"plashet/words"
)

// printer keeps the first error of the writer, so that the printing reads
// straight down.
type printer struct {
	w    io.Writer
	err  error
	say  *words.Language
	unit unit.System
}

// line prints a line; the texts in it are made plain.
func (p *printer) line(format string, args ...any) {
	for i, a := range args {
		if s, ok := a.(string); ok {
			args[i] = words.Plain(s)
		}
	}
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", args...)
	}
}

func (p *printer) head(s string) { p.line("\n%s\n%s", s, strings.Repeat("-", len([]rune(s)))) }

func show[Q unit.Quantity](p *printer, q Q, k unit.Kind) string { return unit.Of(q, k).Format(p.unit) }

// Text prints the answer for reading. Faults met in reading the file stand with
// the design's.
func Text(w io.Writer, r *design.Result, read []trace.Fault, l *words.Language) error {
	p := &printer{w: w, say: l, unit: r.Units}
	p.line("%s", r.Name)
	if r.Note != "" {
		p.line("%s", r.Note)
	}
	p.verdict(r, len(read))
	p.faults(append(slices.Clone(read), r.Faults...))
	p.findings(r)
	p.delivery(r)
	p.options(r)
	p.levels(r)
	p.motion(r)
	p.sure(r)
	p.upkeep(r)
	p.assembly(r)
	p.cutting(r)
	p.glue(r)
	p.materials(r)
	p.assumptions(r)
	return p.err
}

func (p *printer) verdict(r *design.Result, read int) {
	count, accepted := [3]int{}, 0
	for _, f := range r.Findings {
		if f.Accepted != "" {
			accepted++
			continue
		}
		count[f.Severity]++
	}
	taken := ""
	if accepted > 0 {
		taken = fmt.Sprintf("; %d accepted", accepted)
	}
	p.line("\n%d danger, %d caution, %d info%s; %s in the input; %s in force", count[trace.Danger], count[trace.Caution], count[trace.Info], taken,
		counted(len(r.Faults)+read, "fault"), counted(len(r.Assumptions), "assumption"))
}

// counted writes a number with its noun.
func counted(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}

func (p *printer) findings(r *design.Result) {
	if len(r.Findings) == 0 {
		return
	}
	p.head("Findings")
	for sev := trace.Danger; ; sev-- {
		for _, f := range r.Findings {
			if f.Severity != sev {
				continue
			}
			p.line("[%s] %s", sev, p.say.Finding(f, p.unit))
			if f.Accepted != "" {
				p.line("    accepted: %s", f.Accepted)
			}
			if f.LimitSource.Title != "" {
				p.line("    limit %s: %s (%s)", f.Limit.Format(p.unit), f.LimitSource.Title, f.LimitSource.Basis)
			}
			for _, m := range f.Remedies {
				var effects []string
				for _, e := range m.Effect {
					what := ""
					if code := "effect." + e.Figure[strings.LastIndexByte(e.Figure, '.')+1:]; p.say.Has(code) {
						what = p.say.Word(code) + " "
					}
					effects = append(effects, fmt.Sprintf("%s%s to %s", what, e.Before.Format(p.unit), e.After.Format(p.unit)))
				}
				remedy := p.say.Say(m.Message, p.unit)
				if len(effects) > 0 {
					remedy += ": " + strings.Join(effects, ", ")
				}
				p.line("    - %s", remedy)
			}
			if f.MoreRemedies > 0 {
				p.line("    - %d more among the pumps in hand below", f.MoreRemedies)
			}
		}
		if sev == trace.Info {
			return
		}
	}
}

// power shows what a pump draws, or that nobody knows.
func (p *printer) power(w unit.Power) string {
	if w == 0 {
		return "power not known"
	}
	return show(p, w, unit.KindPower)
}

func (p *printer) delivery(r *design.Result) {
	d := r.Delivery
	if d == nil {
		return
	}
	p.head("Pump and pipe")
	height := "no water runs"
	if d.Rises {
		height = "height " + show(p, d.Static, unit.KindHead) + " of it"
	}
	p.line("pump %s: %s at %s; %s; %s", d.Pump, d.Beyond.Text(p.flow(r, d.Flow, "pump.flow")), (-d.Beyond).Text(show(p, d.Head, unit.KindHead)), height, p.power(d.Power))
	for i, o := range d.Others {
		p.line("%s, pump %s: %s at %s; %s", o.Name, o.Pump, o.Beyond.Text(p.flow(r, o.Flow, design.OtherID(i)+".flow")), (-o.Beyond).Text(show(p, o.Head, unit.KindHead)), p.power(o.Power))
	}
	if d.Energy > 0 {
		cost := ""
		if d.Cost.Currency != "" {
			cost = ", " + d.Cost.Round().Format()
		}
		p.line("a year: %s%s", show(p, d.Energy, unit.KindEnergy), cost)
	}
	for _, run := range d.Runs {
		p.line("run %-12s %12s  %10s  Re %7.0f  pipe %9s  fittings %9s", run.Name, d.Bound().Text(show(p, run.Flow, unit.KindFlow)), d.Bound().Text(show(p, run.Speed, unit.KindSpeed)),
			float64(run.Reynolds), d.Bound().Text(show(p, run.Friction, unit.KindHead)), d.Bound().Text(show(p, run.Fittings, unit.KindHead)))
	}
	for i, f := range d.Feeds {
		wanted := ""
		if f.Wanted > 0 {
			wanted = ", wanted " + show(p, f.Wanted, unit.KindFlow)
		}
		p.line("feed %-11s %s%s", f.Name, d.Bound().Text(p.flow(r, f.Flow, design.FeedID(i)+".flow")), wanted)
		p.throttle(d.Share, f)
		for k, l := range f.Lips {
			p.lip(r, l, design.LipID(i, k), d.Bound())
		}
	}
}

// lip tells the sheet over a lip. On one that is out of level each depth says
// where it is meant.
func (p *printer) lip(r *design.Result, l design.Lip, id string, bound unit.Bound) {
	depth := func(h unit.Length) string { return bound.Text(show(p, h, unit.KindDepth)) }
	head, middle := depth(l.Sheet.Head)+p.between(r, id+".head"), ""
	if l.Tilt > 0 {
		head += " at the low end, " + depth(l.Sheet.Middle) + " at mid crest, " + depth(l.Sheet.High) + " at the high end"
		middle = " at mid crest"
	}
	p.line("  lip %-10s head upstream %s; critical %s, at the edge %s%s; %s", l.Name, head, depth(l.Sheet.Critical), depth(l.Sheet.Edge), middle,
		bound.Text(show(p, l.Sheet.PerWidth, unit.KindFlowPerWidth)))
}

// throttle tells what a feed's valve must take; nothing where that is too
// little to be read.
func (p *printer) throttle(s *design.Share, f design.Feed) {
	burn := show(p, f.Burn, unit.KindHead)
	if s == nil || burn == show(p, unit.Head(0), unit.KindHead) {
		return
	}
	each := "to share as wanted"
	if s.At < 1 {
		each = "to give every feed the " + show(p, s.At, unit.KindPercent) + " of what is wanted that the pump reaches,"
	}
	p.line("     %s its valve must take %s more (K %.1f)", each, burn, float64(f.K))
}

func (p *printer) options(r *design.Result) {
	if len(r.Options) < 2 {
		return
	}
	p.head("Pumps in hand on this pipe and on larger pipe")
	for _, o := range r.Options {
		var feeds []string
		for _, f := range o.Feeds {
			feeds = append(feeds, o.Beyond.Text(show(p, f, unit.KindFlow)))
		}
		mark := " "
		if o.AsIs {
			mark = "*"
		}
		cost := ""
		if o.Cost.Currency != "" {
			cost = o.Cost.Round().Format() + " a year"
		}
		if o.First.Currency != "" {
			cost += ", " + o.First.Round().Format() + " once"
		}
		reach := ""
		if o.Reach > 0 && len(o.Feeds) > 1 {
			reach = ", valves set: " + show(p, o.Reach, unit.KindPercent) + " of what is wanted"
		}
		p.line("%s pump %-4s pipe %-22s %11s (%s%s)  %8s  %s", mark, o.Pump, o.Pipe, o.Beyond.Text(show(p, o.Flow, unit.KindFlow)), strings.Join(feeds, " + "), reach, p.power(o.Power), cost)
	}
	p.line("* as drawn")
}

func (p *printer) upkeep(r *design.Result) {
	u := r.Upkeep
	if u == nil {
		return
	}
	p.head("Upkeep")
	if u.Turnover > 0 {
		p.line("all the water of the pond goes round once in %s", (-r.Delivery.Bound()).Text(show(p, u.Turnover, unit.KindDuration)))
	}
	if u.Evaporation > 0 {
		p.line("a summer day takes %s off %s of water: %s to top up", show(p, u.Evaporation, unit.KindDepth), show(p, u.WaterArea, unit.KindArea), show(p, u.TopUp, unit.KindWater))
	}
	if u.LoadKnown {
		p.line("the pumps draw %s", show(p, u.Load, unit.KindCurrent))
	}
	if u.DropShare > 0 {
		p.line("the cable loses %s, %s of the voltage", show(p, u.Drop, unit.KindVoltage), show(p, u.DropShare, unit.KindPercent))
	}
	p.line("the electrical figures are for the licensed electrician, who decides by the local code")
}

func (p *printer) cutting(r *design.Result) {
	for _, c := range r.Cutting {
		p.head("Cutting plan, " + c.Pipe)
		p.notToCut(c.NotToCut)
		p.cautions([]string{glue.CautionSaw}, map[string]bool{})
		for _, b := range c.Plan.Bars {
			from := "stick"
			if b.From == cut.FromOffcut {
				from = "offcut"
			}
			var pieces []string
			for _, k := range b.Cuts {
				pieces = append(pieces, c.Pieces[k.Piece].Mark+" "+show(p, k.Length, unit.KindTape))
			}
			p.line("%s of %s: %s; left %s", from, show(p, b.Length, unit.KindTape), strings.Join(pieces, ", "), show(p, b.Remnant, unit.KindTape))
		}
		end := "cutting.unproven"
		if c.Plan.Proof.Proven() {
			end = "cutting.proven"
		}
		p.line("%s: %s", p.say.Word("cutting.method"), p.say.Word(end))
	}
}

// glue prints the steps of gluing up.
func (p *printer) glue(r *design.Result) {
	g := r.Glue
	if g != nil && g.Withheld {
		p.head("Gluing up")
		p.line("HELD BACK: no step is told while the assembly cannot be built; see its dangers and faults")
		return
	}
	if g == nil || len(g.Steps) == 0 {
		return
	}
	p.head("Gluing up, step by step")
	for _, s := range g.Steps {
		notes := ""
		if s.NoReturn {
			notes = " No way back after this."
		}
		p.line("%2d. [%s] %s%s", s.Number, s.Where, p.say.Say(s.Message, p.unit), notes)
		for _, c := range s.Cautions {
			p.line("      ! %s", p.say.Word(c))
		}
	}
	p.times(g)
	p.line("cement %s, primer %s; water pressure not before %s after the last joint; the can's label decides",
		show(p, g.Cement, unit.KindCement), show(p, g.Primer, unit.KindCement), show(p, g.Ready, unit.KindDuration))
}

// times prints each manual's set and cure times beside the one in force.
func (p *printer) times(g *glue.Plan) {
	sources := map[string]string{}
	var order []string
	shown := func(list []glue.Timed) string {
		var out []string
		for _, t := range list {
			out = append(out, fmt.Sprintf("manual %s %s", t.Manual, show(p, t.Duration, unit.KindDuration)))
			if sources[t.Manual] == "" {
				sources[t.Manual] = t.Source.Title
				order = append(order, t.Manual)
			}
		}
		return strings.Join(out, ", ")
	}
	forced := func(what string, list []glue.Timed, d unit.Duration) {
		if len(list) == 0 {
			p.line("    %s: the tables do not reach it; the can tells", what)
			return
		}
		p.line("    %s by %s, dry; in force, the slower%s: %s", what, shown(list), p.damp(g), show(p, d, unit.KindDuration))
	}
	for _, j := range sizes(g) {
		t := &j.Times
		p.line("size %s: hold %s (%s: %s)", j.Size, show(p, t.Hold, unit.KindDuration), t.HoldSource.Title, t.HoldSource.Note)
		forced("set", t.Sets, t.Set)
		forced("cure", t.Cures, t.Cure)
	}
	for _, name := range order {
		p.line("    manual %s: %s", name, sources[name])
	}
}

func (p *printer) damp(g *glue.Plan) string {
	if g.Damp {
		return " and longer because it is damp"
	}
	return ""
}

// materials prints the list.
func (p *printer) materials(r *design.Result) {
	if len(r.Materials) == 0 {
		return
	}
	p.head("Material")
	told := map[string]bool{}
	for _, i := range r.Materials {
		price := "no price"
		if i.Priced {
			price = span(i.Total.Low.Round().Format(), i.Total.High.Round().Format())
		}
		spare := ""
		if i.Spare.High > 0 {
			spare = ", spare in it " + amount(i.Spare, p.unit)
		}
		p.line("%-44s %s%s%s; %s", p.say.Say(i.Message(), p.unit), amount(i.Buy, p.unit), pack(i.Pack, p.unit), spare, price)
		if how, ok := i.How(); ok {
			p.line("    %s", p.say.Say(how, p.unit))
		}
		p.cautions(i.Cautions(), told)
	}
	p.total(r)
}

// cautions prints what can hurt, each of a list once.
func (p *printer) cautions(codes []string, told map[string]bool) {
	for _, c := range codes {
		if !told[c] {
			p.line("    ! %s", p.say.Word(c))
		}
		told[c] = true
	}
}

// total prints the foot of the list. The lines are of one currency, the job's.
func (p *printer) total(r *design.Result) {
	sum, unpriced, err := takeoff.Sum(r.Materials)
	switch {
	case err != nil:
		p.line("no total: the prices are in different currencies")
	case unpriced == len(r.Materials):
		p.line("no total: no item has a price")
	case unpriced > 0:
		p.line("%-44s %s; %d of %d items have no price and are not in it", "total of what has a price", span(sum.Low.Format(), sum.High.Format()), unpriced, len(r.Materials))
	default:
		p.line("%-44s %s", "total", span(sum.Low.Format(), sum.High.Format()))
	}
}

// moved names the figure of an effect: a line of the list by its own name.
func (p *printer) moved(r *design.Result, figure string) string {
	for _, i := range r.Materials {
		if i.ID == figure {
			return p.say.Say(i.Message(), p.unit)
		}
	}
	return p.say.Word("moves." + figure[strings.LastIndexByte(figure, '.')+1:])
}

// amount shows a range as one figure where both ends are shown alike.
func amount(v takeoff.Range, s unit.System) string {
	low, high := v.Values()
	return span(low.Format(s), high.Format(s))
}

func span(low, high string) string {
	if low == high {
		return low
	}
	return low + " to " + high
}

// pack tells what one of a count holds.
func pack(v unit.Value, s unit.System) string {
	if v.Kind == unit.KindNone {
		return ""
	}
	return " of " + v.Format(s)
}

func (p *printer) faults(list []trace.Fault) {
	if len(list) == 0 {
		return
	}
	p.head("Faults in the input")
	for _, f := range list {
		place := f.Path
		if f.Line > 0 {
			place = fmt.Sprintf("line %d, %s", f.Line, f.Path)
		}
		p.line("%s: %s", place, p.say.Say(f.Message, p.unit))
	}
}

func (p *printer) assumptions(r *design.Result) {
	if len(r.Assumptions) == 0 {
		return
	}
	p.head("Assumed, because the job does not say")
	for _, a := range r.Assumptions {
		p.line("%s: %s (%s)", a.Path, p.say.Assumption(a, p.unit), a.Source.Title)
		for _, e := range a.Weight {
			if e.Before.Format(p.unit) != e.After.Format(p.unit) {
				p.line("    at the other end of its usual range: %s goes from %s to %s", p.moved(r, e.Figure), e.Before.Format(p.unit), e.After.Format(p.unit))
			}
		}
		if a.Turns {
			p.line("    it could turn a verdict: find out")
		}
	}
}

// Figures prints every figure opened: formula, the values in it, source.
func Figures(w io.Writer, r *design.Result) error {
	p := &printer{w: w, unit: r.Units}
	p.head("Figures")
	for _, f := range r.Figures {
		p.line("%s = %s", f.ID, f.Value.Format(p.unit))
		p.line("    %s", f.Formula)
		for _, t := range f.Terms {
			value := ""
			if t.Value.Kind != unit.KindNone {
				value = " = " + t.Value.Format(p.unit)
			}
			p.line("    %s%s  %s", t.Symbol, value, t.From)
		}
		p.line("    by %s (%s)", f.Source.Title, f.Source.Basis)
	}
	return p.err
}
