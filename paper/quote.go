package paper

import (
	"slices"
	"strings"
	"time"

	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/quote"
	"plashet/takeoff"
	"plashet/words"
)

// offered is what the client is offered: scope, the designs side by side, total,
// payments, terms. Nothing of what it costs the firm stands on it. Where a price
// is missing it is a draft and says so: a sum that is not the whole is nothing to
// sign.
func offered(f *flow) {
	d := f.in.Offer
	if d == nil || len(d.Designs) == 0 {
		f.paragraph(f.word("paper.nooffer"), true)
		return
	}
	f.about, f.accepts = aboutOffer, aboutList
	draft := f.draft(d.Designs)
	f.paragraph(f.in.Job.ClientNote, false)
	o := &f.in.Job.Offer
	f.clauses("offer.head.includes", o.Includes)
	f.clauses("offer.head.excludes", o.Excludes)
	if d.Currency == "" {
		return
	}
	for k := 0; k < len(d.Designs); k += sideBySide {
		f.designs(d.Designs[k:min(k+sideBySide, len(d.Designs))], k > 0)
	}
	f.clauses("offer.head.terms", o.Terms)
	f.gap(1.5)
	f.valid(o.ValidDays)
	if slices.ContainsFunc(d.Designs, func(p offer.Priced) bool { return len(p.Assumptions) > 0 }) {
		f.paragraph(f.word("paper.offer.high"), false)
	}
	f.warn(f.word("offer.safe"))
	if !draft {
		f.accept(d.Designs)
	}
}

// aboutOffer tells the assumptions that the client is told of: what may move the
// price when the ground is opened, and how the water will look. What only the crew
// works by stands on the crew's sheets.
func aboutOffer(code, _ string) bool {
	return slices.Contains([]string{takeoff.AssumeSoil, takeoff.AssumeTrench, design.AssumeCrest, design.AssumeSheetAt}, code)
}

// sideBySide is how many designs stand in one table.
const sideBySide = 3

// draft heads an offer that is not whole with what it lacks, and tells that it
// did.
func (f *flow) draft(list []offer.Priced) bool {
	d, draft := f.in.Offer.Draft(list)
	if !draft {
		return false
	}
	f.banner(f.word("offer.draft"))
	if len(d.Lacks) > 0 {
		var lacks []string
		for _, name := range d.Lacks {
			if s := f.in.Say.Item(name); !slices.Contains(lacks, s) {
				lacks = append(lacks, s)
			}
		}
		f.paragraph(f.text("offer.lacks", count("count", len(lacks))), true)
		f.paragraph(strings.Join(lacks, "; "), false)
		f.gap(1)
	}
	said := map[string]bool{}
	for _, x := range d.Faults {
		if s := f.in.Say.Say(x.Message, f.units()); !said[s] {
			said[s] = true
			f.paragraph(s, false)
			f.gap(0.6)
		}
	}
	f.gap(2)
	return true
}

func (f *flow) clauses(head string, list []job.Clause) {
	if len(list) == 0 {
		return
	}
	f.heading(f.word(head))
	for _, c := range list {
		f.bullet(c.Text)
	}
}

// designs writes up to three designs side by side, down to the payments.
func (f *flow) designs(list []offer.Priced, again bool) {
	if again {
		f.heading(f.word("paper.offer.further"))
	} else {
		f.heading(f.word("offer.head.scopes"))
	}
	if !slices.ContainsFunc(list, func(p offer.Priced) bool { return !p.Offer.Unpriced() }) {
		f.paragraph(f.word("offer.nototal"), true)
		f.gives(list)
		f.stops(list)
		return
	}
	columns := []column{{wide: rest}}
	for i := range list {
		columns = append(columns, column{head: f.columnName(list[i].Name, ""), end: true, wide: f.amountWide(list)})
	}
	g := grid{f: f, list: list}
	for _, s := range scopesOf(list) {
		g.row(f.scopeName(s), func(o *quote.Offer) (unit.Money, bool) {
			i := slices.IndexFunc(o.Scopes, func(x quote.Scope) bool { return x.Name == s })
			if i < 0 {
				return unit.Money{}, false
			}
			return o.Scopes[i].Price, true
		})
	}
	g.sum(f.word("offer.row.net"), func(o *quote.Offer) (unit.Money, bool) { return o.Net, true })
	for k := range list[0].Offer.Taxes { // the same rules in every design
		t := &list[0].Offer.Taxes[k]
		g.row(f.text("paper.offer.tax", str("name", f.brief(t.Name)), str("rate", f.money().Write(t.Rate.Shift(2).String())+" %")), func(o *quote.Offer) (unit.Money, bool) {
			return o.Taxes[k].Amount, true
		})
	}
	if slices.ContainsFunc(list, func(p offer.Priced) bool { return !p.Offer.Rounding.Amount.IsZero() }) {
		g.row(f.word("offer.row.rounding"), func(o *quote.Offer) (unit.Money, bool) { return o.Rounding, true })
	}
	g.sum(f.word("offer.row.total"), func(o *quote.Offer) (unit.Money, bool) { return o.Total, true })
	f.table(columns, g.rows, g.sums...)
	f.gives(list)
	f.stops(list)
	f.payments(list, columns)
}

// stops tells plainly of designs that end in danger, beside less water than is
// wanted, which stands in the table.
func (f *flow) stops(list []offer.Priced) {
	for i := range list {
		p := &list[i]
		switch {
		case p.Stops == 0:
		case p.Name == "":
			f.warn(f.text("paper.offer.stopped", count("count", p.Stops)))
		default:
			f.warn(f.text("paper.offer.stops", str("name", f.brief(p.Name)), count("count", p.Stops)))
		}
	}
}

// gives tells what each design gives: its note, and the water over each fall
// beside what is wanted, so that nobody signs for less unawares.
func (f *flow) gives(list []offer.Priced) {
	for i := range list {
		if list[i].Note != "" {
			f.paragraph(f.designName(list[i].Name)+": "+list[i].Note, false)
		}
	}
	if len(list[0].Falls) == 0 {
		return
	}
	columns := []column{{head: f.word("paper.offer.water"), wide: rest}, {head: f.word("paper.wanted"), end: true}}
	for i := range list {
		columns = append(columns, column{head: f.columnName(list[i].Name, "paper.gets"), end: true, wide: f.amountWide(list)})
	}
	var rows [][]string
	short := false
	for k, x := range list[0].Falls {
		wanted := "—"
		if x.Wanted.SI > 0 {
			wanted = f.show(x.Wanted)
		}
		row := []string{x.Name, wanted}
		for i := range list {
			cell := "—"
			if k < len(list[i].Falls) {
				if y := list[i].Falls[k]; y.Name == x.Name {
					cell = f.show(y.Flow)
					if y.Short {
						cell, short = cell+" *", true
					}
				}
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	f.gap(1)
	f.table(columns, rows)
	if short {
		f.paragraph(f.word("paper.offer.short"), true)
	}
}

// columnName heads the column of a design; where there is one only, by a word.
func (f *flow) columnName(name, code string) string {
	if len(f.in.Offer.Designs) > 1 {
		return f.designName(name)
	}
	if code == "" {
		return ""
	}
	return f.word(code)
}

// payments writes when what falls due.
func (f *flow) payments(list []offer.Priced, columns []column) {
	first := &list[0].Offer
	if !first.Planned || first.Deposit.Amount.IsZero() && len(first.Stages) == 0 {
		return
	}
	g := grid{f: f, list: list}
	if !first.Deposit.Amount.IsZero() {
		g.row(f.word("offer.row.deposit"), func(o *quote.Offer) (unit.Money, bool) { return o.Deposit, o.Planned })
	}
	for k := range first.Stages {
		g.row(first.Stages[k].Name, func(o *quote.Offer) (unit.Money, bool) {
			if !o.Planned {
				return unit.Money{}, false
			}
			return o.Stages[k].Amount, true
		})
	}
	g.row(f.word("offer.row.rest"), func(o *quote.Offer) (unit.Money, bool) { return o.Rest, o.Planned })
	f.heading(f.word("offer.head.pay"))
	f.table(columns, g.rows)
}

// grid is rows of amounts, a column for each design.
type grid struct {
	f    *flow
	list []offer.Priced
	rows [][]string
	sums []int // rows that add up what stands above
}

func (g *grid) row(name string, of func(*quote.Offer) (unit.Money, bool)) {
	r := []string{fit(name, body, false, longName+30)}
	for i := range g.list {
		cell := "—"
		if m, ok := of(&g.list[i].Offer); ok && !g.list[i].Offer.Unpriced() {
			cell = m.Format(g.f.money())
		}
		r = append(r, cell)
	}
	g.rows = append(g.rows, r)
}

func (g *grid) sum(name string, of func(*quote.Offer) (unit.Money, bool)) {
	g.sums = append(g.sums, len(g.rows))
	g.row(name, of)
}

// scopesOf lists the parts of the work of all designs, each once.
func scopesOf(list []offer.Priced) []string {
	var out []string
	for i := range list {
		for _, s := range list[i].Offer.Scopes {
			if !slices.Contains(out, s.Name) {
				out = append(out, s.Name)
			}
		}
	}
	return out
}

// amountWide is the width of a column of amounts: room for the largest, but not
// so much that the names have none.
func (f *flow) amountWide(list []offer.Priced) float64 {
	wide := 30.0
	for i := range list {
		wide = max(wide, width(list[i].Offer.Total.Format(f.money()), body, true))
	}
	return min(wide, (f.x1-f.x0)*0.7/float64(len(list))-gutter)
}

func (f *flow) designName(name string) string {
	if name == "" {
		return f.word("offer.own")
	}
	return f.brief(name)
}

// brief cuts a name short: one that fills a page is no name.
func (f *flow) brief(name string) string { return fit(words.Plain(name), body, false, longName) }

// longName is how long a name may be on an offer, mm.
const longName = 90.0

// scopeName names a part of the work: in the reader's language where it is one
// of the tool's own, else as it was typed.
func (f *flow) scopeName(name string) string {
	if code := "offer.scope." + name; f.in.Say.Has(code) {
		return f.word(code)
	}
	return f.brief(name)
}

// dateForm is how a day is written.
const dateForm = "2006-01-02"

// valid tells until which day the offer holds, counted from that of the sheet.
func (f *flow) valid(days int) {
	if days < 1 {
		f.paragraph(f.word("paper.offer.open"), true)
		return
	}
	s := f.text("offer.valid", count("days", days))
	if day, err := time.Parse(dateForm, f.in.Stamp.Date); err == nil {
		s = f.text("paper.offer.until", count("days", days), str("date", day.AddDate(0, 0, days).Format(dateForm)))
	}
	f.paragraph(s, true)
}

// accept leaves room for who accepts what.
func (f *flow) accept(list []offer.Priced) {
	f.headingOver(f.word("paper.head.accept"), float64(len(list)+2)*body*lead+30)
	f.paragraph(f.word("paper.accept"), false)
	f.gap(1)
	if len(list) > 1 {
		for i := range list {
			if list[i].Name != "" && list[i].Stops > 0 {
				continue
			}
			f.check(f.designName(list[i].Name) + ": " + list[i].Offer.Total.Format(f.money()))
		}
	}
	f.sign("paper.sign.client", "paper.sign.firm")
}

// sign leaves lines for name, signature and date, one for each who signs.
func (f *flow) sign(codes ...string) {
	for _, c := range codes {
		f.apart(11)
		f.need(8)
		parts := []struct {
			code string
			part float64
		}{{c, 0.72}, {"paper.day", 0.28}}
		x := f.x0
		for _, p := range parts {
			wide := (f.x1-f.x0)*p.part - 4
			f.add(drawing.Line{From: drawing.Point{X: x, Y: f.y}, To: drawing.Point{X: x + wide, Y: f.y}, Pen: thin})
			f.write(x, f.y+body+0.6, small, false, fit(f.word(p.code), small, false, wide))
			x += wide + 4
		}
		f.y += 6
	}
}

// faults gives all that is wrong in the job: what could not be read, and what
// could not be worked out.
func (f *flow) faults() []trace.Fault { return slices.Concat(f.in.Unread, f.in.Result.Faults) }
