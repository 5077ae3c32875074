package answer

import (
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/takeoff"
)

// Material is one line of the material list.
type Material struct {
	ID      string   `json:"id" doc:"stable within a list"`
	Text    string   `json:"text" doc:"what it is"`
	Low     Quantity `json:"buyLow" doc:"what to get, by the smaller rule"`
	High    Quantity `json:"buyHigh" doc:"by the larger rule; the same where there is one"`
	Pack    Quantity `json:"pack,omitzero" doc:"what one of a count holds (a stick, a can)"`
	Total   *Price   `json:"total,omitempty" doc:"price, or price range; absent without a price"`
	How     string   `json:"how,omitempty" doc:"how the sticks of pipe come about"`
	Formula string   `json:"formula" doc:"how the amount comes about"`
	Source  Source   `json:"source" doc:"of the formula"`

	Cautions []string `json:"cautions,omitempty" doc:"what can hurt at the work it stands for"`
}

// Total is the foot of the material list.
type Total struct {
	Sum      *Price `json:"sum,omitempty" doc:"sum, or range, of the lines with a price, each rounded to coins; absent where no line has one"`
	Unpriced int    `json:"unpriced" doc:"lines without a price, which are not in the sum"`
}

func (m maker) materials(d *Document, r *design.Result) {
	for _, i := range r.Materials {
		low, high := i.Buy.Values()
		x := Material{ID: i.ID, Text: m.say.Say(i.Message(), m.unit), Low: m.value(low), High: m.value(high), Pack: m.value(i.Pack), Formula: i.Formula, Source: i.Source}
		for _, c := range i.Cautions() {
			x.Cautions = append(x.Cautions, m.say.Word(c))
		}
		if i.Priced {
			x.Total = m.price(i.Total.Low, i.Total.High)
		}
		if how, ok := i.How(); ok {
			x.How = m.say.Say(how, m.unit)
		}
		d.Materials = append(d.Materials, x)
	}
	if sum, unpriced, err := takeoff.Sum(r.Materials); err == nil && len(r.Materials) > 0 {
		d.Total = &Total{Unpriced: unpriced}
		if unpriced < len(r.Materials) {
			d.Total.Sum = m.price(sum.Low, sum.High)
		}
	}
}

// Price is an amount of money, or a range of it.
type Price struct {
	Low  Money  `json:"low" doc:"by the smaller rule"`
	High Money  `json:"high" doc:"by the larger rule; the same where there is one"`
	Text string `json:"text" doc:"as printed"`
}

func (m maker) price(low, high unit.Money) *Price {
	l, h := m.money(low), m.money(high)
	if l == nil || h == nil {
		return nil
	}
	return &Price{Low: *l, High: *h, Text: span(m.say, l.Text, h.Text, m.unit)}
}
