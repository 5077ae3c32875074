package shelf

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// PricesFormat stands in every list of prices.
const PricesFormat = "plashet prices"

// MostPrices is how many prices a list may have.
const MostPrices = 10_000

// Lengths of texts, in letters.
const (
	mostItem = 200
	mostNote = 400
)

// mostOrder is the last place in the round of the counters.
const mostOrder = 999

// Price is one price of a list, each field as typed.
type Price struct {
	Item     string `json:"item"`              // as the material list names it
	Amount   string `json:"price"`             // of one of Unit, without a currency, with a decimal point
	Currency string `json:"currency"`          // ISO 4217 code
	Unit     string `json:"unit,omitempty"`    // what it is for: each when empty
	Date     string `json:"date,omitempty"`    // year-month-day
	Counter  string `json:"counter,omitempty"` // where it is bought
	Order    int    `json:"order,omitempty"`   // place of the counter in the round; 0 not said
	Note     string `json:"note,omitempty"`
	Aside    bool   `json:"aside,omitempty"` // kept, but no longer offered to jobs
}

// Prices is a list of prices.
type Prices struct {
	Format  string  `json:"format"`
	Version int     `json:"version"`
	List    []Price `json:"prices"`
}

// NewPrices makes an empty list.
func NewPrices() *Prices { return &Prices{Format: PricesFormat, Version: 1, List: []Price{}} }

// Encode writes a list in its canonical form.
func (p *Prices) Encode() ([]byte, error) {
	p.Format, p.Version = PricesFormat, 1
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	err := e.Encode(p)
	return b.Bytes(), err
}

// DecodePrices reads a list, strictly; nil with a fault where it is none.
func DecodePrices(data []byte) (*Prices, *trace.Fault) {
	p := NewPrices()
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(p); err != nil || p.Format != PricesFormat || p.Version != 1 || d.More() {
		f := fault(FaultPrices, 0, "found", p.Format)
		return nil, &f
	}
	if len(p.List) > MostPrices {
		f := fault(FaultFull, 0, "limit", strconv.Itoa(MostPrices))
		return nil, &f
	}
	return p, nil
}

// key is what tells one price from another: the item, what it is for, its
// currency and its counter.
type key struct{ item, unit, currency, counter string }

func (p *Price) key() key {
	per := Fold(p.Unit)
	if per == "" {
		per = "each"
	}
	return key{Fold(p.Item), per, p.Currency, Fold(p.Counter)}
}

// Fold makes names that differ in case or in blanks alike.
func Fold(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// Find gives the number of the price that another one would replace; -1 where
// there is none.
func (p *Prices) Find(of Price) int {
	k := of.key()
	for i := range p.List {
		if p.List[i].key() == k {
			return i
		}
	}
	return -1
}

// Fields of a price, by which faults and columns name them.
const (
	FieldItem     = "item"
	FieldPrice    = "price"
	FieldCurrency = "currency"
	FieldUnit     = "unit"
	FieldDate     = "date"
	FieldCounter  = "counter"
	FieldOrder    = "order"
	FieldNote     = "note"
)

// priceFields in the order of a file, each with an example.
var priceFields = []Field{
	{Name: FieldItem, Must: true, Example: "elbow 90, 2", Heads: []string{"item", "article", "description", "product", "material", "name", "part", "artikel", "articulo"}},
	{Name: FieldPrice, Must: true, Example: "3.15", Heads: []string{"price", "unit price", "net price", "net", "cost", "rate", "amount", "preis", "precio"}},
	{Name: FieldCurrency, Example: "USD", Heads: []string{"currency", "curr", "waehrung", "moneda"}},
	{Name: FieldUnit, Example: "each", Heads: []string{"unit", "per", "uom", "unit of sale", "sold by", "sold", "pack", "einheit", "unidad"}},
	{Name: FieldDate, Example: "2026-03-01", Heads: []string{"date", "as of", "valid from", "price date", "datum", "fecha"}},
	{Name: FieldCounter, Example: "pipe counter", Heads: []string{"counter", "supplier", "department", "vendor", "shop", "section"}},
	{Name: FieldOrder, Example: "2", Heads: []string{"order", "counter order", "round", "sequence", "no", "#"}},
	{Name: FieldNote, Example: "until the end of the season", Heads: []string{"note", "notes", "remark", "remarks", "comment"}},
}

// CheckPrice holds a price against the rules and makes it canonical: blanks
// folded, the amount with a decimal point and no currency. A fault names its
// field; where is what the reader calls each field, and line is 0 for one typed
// in a form.
func CheckPrice(p Price, line int, where func(field string) string) (Price, []trace.Fault) {
	c := checker{line: line, where: where}
	p.Item = c.text(FieldItem, p.Item, mostItem)
	p.Counter = c.text(FieldCounter, p.Counter, mostItem)
	p.Note = c.text(FieldNote, p.Note, mostNote)
	p.Unit = c.text(FieldUnit, p.Unit, mostItem)
	p.Currency = strings.ToUpper(strings.TrimSpace(p.Currency))
	if p.Item == "" {
		c.add(FaultMissing, FieldItem, "")
	}
	if !isCode(p.Currency) {
		c.add(FaultCurrency, FieldCurrency, p.Currency)
	} else {
		p.Amount = c.amount(p.Amount, p.Currency)
	}
	if _, ok := design.PriceUnit(p.Unit, unit.US); !ok {
		c.add(FaultUnit, FieldUnit, p.Unit)
	}
	if p.Date != "" {
		if _, err := time.Parse("2006-01-02", p.Date); err != nil {
			c.add(FaultDate, FieldDate, p.Date)
		}
	}
	if p.Order < 0 || p.Order > mostOrder {
		c.add(FaultOrder, FieldOrder, strconv.Itoa(p.Order))
	}
	return p, c.faults
}

// isCode tells that a text has the form of a currency's code (ISO 4217).
func isCode(s string) bool {
	return len(s) == 3 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == ""
}

// checker gathers the faults of one row.
type checker struct {
	line   int
	where  func(field string) string
	faults []trace.Fault
}

func (c *checker) add(code, field, found string, more ...string) {
	args := []string{"field", field, "found", found, "example", exampleOf(priceFields, field)}
	if c.line > 0 {
		args = append(args, "line", strconv.Itoa(c.line))
	}
	if c.where != nil && c.where(field) != "" {
		args = append(args, "column", c.where(field))
	}
	f := fault(code, c.line, append(args, more...)...)
	f.Path = "/" + field
	c.faults = append(c.faults, f)
}

// text folds blanks and refuses what cannot be printed on a line.
func (c *checker) text(field, s string, most int) string {
	s = strings.Join(strings.Fields(s), " ")
	if utf8.RuneCountInString(s) > most || !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }) {
		c.add(FaultText, field, short(s), "limit", strconv.Itoa(most))
	}
	return s
}

// short cuts a text for a sentence.
func short(s string) string {
	runes := []rune(strings.ToValidUTF8(s, "\ufffd"))
	if len(runes) > 60 {
		return string(runes[:60]) + "…"
	}
	return string(runes)
}

// amount reads an amount and writes it as a job reads it again in any currency:
// three decimals get a fourth, for "1.410" could be a thousand and more.
func (c *checker) amount(text, currency string) string {
	if strings.TrimSpace(text) == "" {
		c.add(FaultMissing, FieldPrice, "")
		return text
	}
	m, err := unit.ParseMoney(text, currency)
	if err != nil {
		c.add(FaultMoney, FieldPrice, short(text))
		return text
	}
	if m.Amount.IsNegative() {
		c.add(FaultNegative, FieldPrice, short(text))
		return text
	}
	s := m.Amount.String()
	if _, decimals, _ := strings.Cut(text, "."); len(digits(decimals)) == 2 { // 3.10 stays 3.10
		s = m.Amount.StringFixed(2)
	}
	if _, decimals, _ := strings.Cut(s, "."); len(decimals) == 3 {
		s += "0"
	}
	return s
}

// digits are those that a text begins with.
func digits(s string) string {
	return s[:len(s)-len(strings.TrimLeft(s, "0123456789"))]
}

// Exact prints the amount with its currency. The shelf serves all jobs, so it is
// written with a point and the code, as in its files.
func (p Price) Exact() string {
	m, err := unit.ParseMoney(p.Amount, p.Currency)
	if err != nil {
		return p.Amount + " " + p.Currency
	}
	return m.FormatExact(unit.StyleOf("", unit.US))
}

// Per prints the amount with what it is for.
func (p Price) Per() string {
	if p.Unit == "" || p.Unit == "each" {
		return p.Exact()
	}
	return p.Exact() + " / " + p.Unit
}

// Line prints the price in a line.
func (p Price) Line() string {
	text := p.Item + ": " + p.Per()
	for _, s := range []string{p.Date, p.Counter} {
		if s != "" {
			text += ", " + s
		}
	}
	return text
}
