package shelf

import (
	"strconv"
	"strings"

	"plashet/engine/trace"
)

// PriceRow is a price that can be taken, and the line it stands on.
type PriceRow struct {
	Line  int
	Price Price
}

// ReadPrices reads the rows of a table by a mapping: the prices that can be
// taken, and the faults of the other rows. Of two rows for one price the first
// is taken.
func ReadPrices(t *Table, m Mapping) (rows []PriceRow, faults []trace.Fault) {
	u := *t
	u.Titled = m.Titled
	titles := u.Titles()
	for _, f := range priceFields {
		if c, ok := m.Column[f.Name]; f.Must && (!ok || c < 0 || c >= len(titles)) {
			faults = append(faults, fault(FaultUnmapped, 0, "field", f.Name, "example", f.Example))
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	where := func(field string) string {
		if c, ok := m.Column[field]; ok && c >= 0 && c < len(titles) {
			return titles[c]
		}
		return ""
	}
	first := map[key]int{}
	for _, r := range u.Body() {
		cell := func(field string) string {
			if c, ok := m.Column[field]; ok && c >= 0 && c < len(r.Cells) {
				return r.Cells[c]
			}
			return ""
		}
		c := checker{line: r.Line, where: where}
		p := Price{
			Item: cell(FieldItem), Currency: cell(FieldCurrency), Unit: cell(FieldUnit), Date: cell(FieldDate), Counter: cell(FieldCounter), Note: cell(FieldNote),
		}
		if strings.TrimSpace(p.Currency) == "" {
			p.Currency = m.Currency
		}
		amount, fits := number(cell(FieldPrice), m.Comma)
		if p.Amount = amount; !fits {
			c.add(FaultComma, FieldPrice, short(cell(FieldPrice)))
		}
		if text := cell(FieldOrder); text != "" {
			n, err := strconv.Atoi(text)
			if p.Order = n; err != nil {
				c.add(FaultOrder, FieldOrder, short(text))
			}
		}
		p.Date = strings.ReplaceAll(p.Date, "/", "-")
		p, found := CheckPrice(p, r.Line, where)
		if !fits { // told once
			found = without(found, FieldPrice)
		}
		found = append(c.faults, found...)
		k := p.key()
		if at, twice := first[k]; twice && len(found) == 0 {
			found = append(found, fault(FaultTwice, r.Line, "line", strconv.Itoa(r.Line), "item", p.Item, "first", strconv.Itoa(at)))
		}
		if len(found) > 0 {
			faults = append(faults, found...)
			continue
		}
		first[k] = r.Line
		rows = append(rows, PriceRow{r.Line, p})
	}
	return rows, faults
}

// without leaves out the faults of a field.
func without(list []trace.Fault, field string) []trace.Fault {
	var out []trace.Fault
	for _, f := range list {
		if f.Path != "/"+field {
			out = append(out, f)
		}
	}
	return out
}

// Moves is what rows do to a list.
type Moves struct {
	New     []Price
	Changed []Change
	Same    int
}

// Change is a price before and after.
type Change struct{ Before, After Price }

// Take gives the list with the rows in it: a price that is there already gets
// what the row says of it and keeps the rest, any other is put behind. The list
// that is given stays as it was.
func (p *Prices) Take(rows []PriceRow) (*Prices, Moves, *trace.Fault) {
	next := NewPrices()
	next.List = append(next.List, p.List...)
	at := make(map[key]int, len(next.List))
	for i := len(next.List) - 1; i >= 0; i-- {
		at[next.List[i].key()] = i
	}
	var m Moves
	for _, r := range rows {
		i, known := at[r.Price.key()]
		if !known {
			at[r.Price.key()] = len(next.List)
			next.List = append(next.List, r.Price)
			m.New = append(m.New, r.Price)
			continue
		}
		before := next.List[i]
		after := before.with(r.Price)
		if after == before {
			m.Same++
			continue
		}
		next.List[i] = after
		m.Changed = append(m.Changed, Change{before, after})
	}
	if len(next.List) > MostPrices {
		f := fault(FaultFull, 0, "limit", strconv.Itoa(MostPrices))
		return nil, Moves{}, &f
	}
	return next, m, nil
}

// with gives a price what another says; what the other leaves empty stays.
func (p Price) with(other Price) Price {
	p.Amount, p.Aside = other.Amount, false
	for _, s := range []struct{ own, other *string }{{&p.Date, &other.Date}, {&p.Note, &other.Note}} {
		if *s.other != "" {
			*s.own = *s.other
		}
	}
	if other.Order != 0 {
		p.Order = other.Order
	}
	return p
}
