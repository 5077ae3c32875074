package paper

import (
	"slices"
	"strings"

	"plashet/engine/unit"
	"plashet/takeoff"
)

// counters are the places where things are fetched, in the order of the round,
// with what each has.
var counters = []struct {
	name  string
	codes []string
}{
	{"pipe", []string{takeoff.CodePipe, takeoff.CodeFitting}},
	{"cement", []string{takeoff.CodeCement, takeoff.CodePrimer, takeoff.CodeTape}},
	{"liner", []string{takeoff.CodeLiner, takeoff.CodeUnderlay}},
	{"stone", []string{takeoff.CodeBoulders, takeoff.CodeGravel}},
}

// aboutList tells what the list hangs on.
func aboutList(code, path string) bool {
	return strings.HasPrefix(code, "assume.takeoff") || strings.HasPrefix(code, "takeoff.") || strings.HasPrefix(path, "/works")
}

// material is the list to fetch by, counter after counter.
func material(f *flow) {
	f.about = aboutList
	list := f.in.Result.Materials
	if len(list) == 0 {
		f.missing("paper.nomaterial")
		return
	}
	told := map[string]bool{}
	done := map[string]bool{}
	for _, c := range counters {
		f.counter(c.name, told, list, func(code string) bool { return slices.Contains(c.codes, code) })
		for _, code := range c.codes {
			done[code] = true
		}
	}
	f.counter("ground", told, list, func(code string) bool { return !done[code] })
	f.total(list)
	f.findings(false)
}

// counter writes what is fetched at one place.
func (f *flow) counter(name string, told map[string]bool, list []takeoff.Item, has func(string) bool) {
	var rows [][]string
	var cautions []string
	for _, i := range list {
		if !has(i.Code) {
			continue
		}
		price, total := "", ""
		if i.Priced {
			price = i.Price.Round().Format()
			total = f.span(i.Total.Low.Round().Format(), i.Total.High.Round().Format())
		}
		name := f.in.Say.Say(i.Message(), f.units())
		if i.Spare.High > 0 {
			name += f.text("print.spare", str("amount", f.amount(i.Spare)))
		}
		pack := ""
		if i.Pack.Kind != unit.KindNone {
			pack = f.text("print.pack", str("each", f.show(i.Pack)))
		}
		rows = append(rows, []string{"", name, f.amount(i.Buy) + pack, price, total})
		for _, c := range i.Cautions() {
			if !told[c] {
				told[c] = true
				cautions = append(cautions, c)
			}
		}
	}
	if len(rows) == 0 {
		return
	}
	f.heading(f.word("paper.counter." + name))
	for _, c := range cautions {
		f.warn(f.word(c))
	}
	f.table([]column{
		{tick: true},
		{head: f.word("paper.item"), wide: rest},
		{head: f.word("paper.buy"), end: true, bold: true},
		{head: f.word("paper.price"), end: true},
		{head: f.word("paper.sum"), end: true},
	}, rows)
}

func (f *flow) amount(r takeoff.Range) string {
	low, high := r.Values()
	return f.span(f.show(low), f.show(high))
}

func (f *flow) span(low, high string) string {
	if low == high {
		return low
	}
	return f.text("print.to", str("low", low), str("high", high))
}

// total writes the foot of the list.
func (f *flow) total(list []takeoff.Item) {
	sum, unpriced, err := takeoff.Sum(list)
	switch {
	case err != nil:
		f.paragraph(f.word("print.total.mixed"), true)
	case unpriced == len(list):
		f.paragraph(f.word("print.total.none"), true)
	case unpriced > 0:
		f.paragraph(f.text("paper.total", str("sum", f.text("print.total.part",
			str("sum", f.span(sum.Low.Format(), sum.High.Format())), count("count", unpriced), count("of", len(list))))), true)
	default:
		f.paragraph(f.text("paper.total", str("sum", f.span(sum.Low.Format(), sum.High.Format()))), true)
	}
}
