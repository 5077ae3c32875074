package paper

import (
	"cmp"
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
	for _, name := range suppliers(list) {
		f.counter(f.brief(name), told, list, func(i takeoff.Item) bool { return sameCounter(i.Counter, name) })
	}
	for _, c := range counters {
		f.counter(f.word("paper.counter."+c.name), told, list, func(i takeoff.Item) bool { return i.Counter == "" && slices.Contains(c.codes, i.Code) })
		for _, code := range c.codes {
			done[code] = true
		}
	}
	f.counter(f.word("paper.counter.ground"), told, list, func(i takeoff.Item) bool { return i.Counter == "" && !done[i.Code] })
	f.total(list)
	f.findings(false)
}

// suppliers are the counters that the prices name, in the order of the round: by
// their places in it, those without one last, as the list has them.
func suppliers(list []takeoff.Item) []string {
	type supplier struct {
		name  string
		order int
	}
	const unplaced = 1 << 20
	var all []supplier
	for i := range list {
		x := supplier{list[i].Counter, list[i].Order}
		if x.order <= 0 {
			x.order = unplaced
		}
		if x.name == "" {
			continue
		}
		if k := slices.IndexFunc(all, func(y supplier) bool { return sameCounter(x.name, y.name) }); k >= 0 {
			all[k].order = min(all[k].order, x.order)
			continue
		}
		all = append(all, x)
	}
	slices.SortStableFunc(all, func(a, b supplier) int { return cmp.Compare(a.order, b.order) })
	out := make([]string, 0, len(all))
	for _, x := range all {
		out = append(out, strings.Join(strings.Fields(x.name), " "))
	}
	return out
}

// sameCounter tells that two names mean one counter, however they are typed.
func sameCounter(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// counter writes what is fetched at one place.
func (f *flow) counter(head string, told map[string]bool, list []takeoff.Item, has func(takeoff.Item) bool) {
	var rows [][]string
	var cautions []string
	for _, i := range list {
		if !has(i) {
			continue
		}
		price, total := "—", "—" // not known; at the foot they are counted
		if i.Priced {
			price = i.Price.Round().Format(f.money())
			if per, ok := i.Sold(); ok {
				price = f.text("print.per", str("price", price), str("unit", f.in.Say.Unit(per, f.units())))
			}
			total = f.span(i.Total.Low.Round().Format(f.money()), i.Total.High.Round().Format(f.money()))
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
	columns := []column{
		{tick: true},
		{head: f.word("paper.item"), wide: rest},
		{head: f.word("paper.buy"), end: true, bold: true},
		{head: f.word("paper.price"), end: true},
		{head: f.word("paper.sum"), end: true},
	}
	under := f.begins(columns, rows)
	for _, c := range cautions {
		under += f.warningTall(f.word(c))
	}
	f.headingOver(head, under) // with the dangers and what they are of
	for _, c := range cautions {
		f.warn(f.word(c))
	}
	f.table(columns, rows)
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
			str("sum", f.span(sum.Low.Format(f.money()), sum.High.Format(f.money()))), count("count", unpriced), count("of", len(list))))), true)
	default:
		f.paragraph(f.text("paper.total", str("sum", f.span(sum.Low.Format(f.money()), sum.High.Format(f.money())))), true)
	}
}
