package table

import (
	"strings"

	"plashet/engine/unit"
)

// materials sets out the material list: one row a line of the list, in its
// order. Prices are given for one of what is bought and for all of it.
func (m *maker) materials() {
	m.head(
		column{word: "item"}, column{word: "least"}, column{word: "most"}, column{word: "unit"}, column{word: "pack"}, column{word: "packunit"},
		column{word: "spare"}, column{word: "each"}, column{word: "per"}, column{word: "sumleast"}, column{word: "summost"}, column{word: "currency"},
		column{word: "how"}, column{word: "caution"}, column{word: "id"},
	)
	for _, i := range m.Result.Materials {
		low, high := i.Buy.Values()
		_, spare := i.Spare.Values()
		how := ""
		if x, ok := i.How(); ok {
			how = m.Say.Say(x, m.units())
		}
		var cautions []string
		for _, c := range i.Cautions() {
			cautions = append(cautions, m.Say.Word(c))
		}
		var price [5]Cell
		if i.Priced {
			price = [5]Cell{
				money(i.Price), text(m.Say.Value(i.Per, m.plain())),
				money(i.Total.Low.Round()), money(i.Total.High.Round()), text(i.Price.Currency),
			}
		}
		m.row(
			text(m.Say.Say(i.Message(), m.units())), m.value(low), m.value(high), m.unit(low), m.value(i.Pack), m.unit(i.Pack),
			m.value(spare), price[0], price[1], price[2], price[3], price[4],
			text(how), text(strings.Join(cautions, " ")), text(i.ID),
		)
	}
}

// unit names the unit of a value's number; things that are counted have a word.
func (m *maker) unit(v unit.Value) Cell {
	if v.Kind == unit.KindCount {
		return m.word("table.pieces")
	}
	return text(v.Kind.UnitName(m.units()))
}

// money is an exact amount as a number.
func money(a unit.Money) Cell {
	if a.Currency == "" {
		return Cell{}
	}
	f, _ := a.Amount.Float64() // coins of a job's size are exact to the twelfth digit
	return number(f)
}
