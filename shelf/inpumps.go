package shelf

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/design"
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// FieldName is the field that tells one pump from another.
const FieldName = "name"

// Fields of a point of the curve: each row may hold one.
const (
	pointFlow  = "curve/flow"
	pointHead  = "curve/head"
	pointWatts = "curve/watts"
)

// pumpFields in the order of a file. But for the points of the curve they are
// paths in a pump, and the currency is its document's.
var pumpFields = []Field{
	{Name: FieldName, Must: true, Example: "fall 60", Heads: []string{"name", "pump", "model", "type", "article", "item", "description", "product"}},
	{Name: pointFlow, Example: "54 gpm", Kind: unit.KindFlow, Heads: []string{"flow", "q", "flow rate", "delivery", "capacity", "gpm", "gph", "caudal"}},
	{Name: pointHead, Example: "16 ft", Kind: unit.KindHead, Heads: []string{"head", "h", "total head", "tdh", "lift", "altura"}},
	{Name: pointWatts, Example: "610 W", Kind: unit.KindPower, Heads: []string{"watts at the point", "watts", "power", "p1", "input power", "potencia"}},
	{Name: "watts", Example: "640 W", Kind: unit.KindPower, Heads: []string{"pump watts", "rated watts", "rated power"}},
	{Name: "boxFlow", Example: "6120 gph", Kind: unit.KindFlow, Heads: []string{"box flow", "max flow", "maximum flow"}},
	{Name: "maxHead", Example: "24 ft", Kind: unit.KindHead, Heads: []string{"max head", "maximum head", "shutoff head", "shut off head"}},
	{Name: "volts", Example: "120 V", Kind: unit.KindVoltage, Heads: []string{"volts", "voltage"}},
	{Name: "amps", Example: "6.2 A", Kind: unit.KindCurrent, Heads: []string{"amps", "current"}},
	{Name: "port/size", Example: "2", Heads: []string{"port size", "port", "outlet", "outlet size"}},
	{Name: "port/thread", Example: "NPT female", Heads: []string{"port thread", "thread"}},
	{Name: "minWater", Example: "7 in", Kind: unit.KindDepth, Heads: []string{"min water", "least water", "minimum water level"}},
	{Name: "minFlow", Example: "12 gpm", Kind: unit.KindFlow, Heads: []string{"min flow", "least flow", "minimum flow"}},
	{Name: "bestFlow", Example: "60 gpm", Kind: unit.KindFlow, Heads: []string{"best flow", "bep", "bep flow"}},
	{Name: "motorWatts", Example: "700 W", Kind: unit.KindPower, Heads: []string{"motor watts", "motor power", "p2"}},
	{Name: "runUp", Example: "1 s", Kind: unit.KindDuration, Heads: []string{"run up", "start time"}},
	{Name: "solids", Example: "3/8 in", Kind: unit.KindBore, Heads: []string{"solids", "solids size", "free passage"}},
	{Name: "cord", Example: "20 ft", Kind: unit.KindDistance, Heads: []string{"cord", "cord length", "cable"}},
	{Name: "weight", Example: "22 lb", Kind: unit.KindWeight, Heads: []string{"weight", "mass"}},
	{Name: FieldPrice, Example: "420", Heads: []string{"price", "unit price", "net price", "cost", "list price"}},
	{Name: FieldCurrency, Example: "USD", Heads: []string{"currency", "curr"}},
	{Name: "continuous", Example: "true", Heads: []string{"continuous", "continuous duty"}},
	{Name: "note", Example: "sheet of March 2026", Heads: []string{"note", "notes", "remark", "source"}},
}

// PumpFields are those of a pump's row.
func PumpFields() []Field { return slices.Clone(pumpFields) }

// PumpRow is a pump that can be taken, and the first line it stands on.
type PumpRow struct {
	Line int
	Job  *job.Job
}

// pumpRead is a pump while its rows are read.
type pumpRead struct {
	line   int
	job    *job.Job
	points int
	first  map[string]string // what an earlier row says of a field
	ill    bool
}

// pumpReader reads the rows of pumps.
type pumpReader struct {
	m      Mapping
	titles []string
	pumps  []*pumpRead
	byName map[string]*pumpRead
	faults []trace.Fault
}

// ReadPumps reads the rows of a table by a mapping: rows of one name are one
// pump, each of them may hold a point of its curve, and what a pump has once may
// stand in any of them. A pump with a fault in any row is not taken at all: a
// curve that lacks a point would be another curve.
func ReadPumps(t *Table, m Mapping) (rows []PumpRow, faults []trace.Fault) {
	u := *t
	u.Titled = m.Titled
	r := &pumpReader{m: m, titles: u.Titles(), byName: map[string]*pumpRead{}}
	if _, ok := r.column(FieldName); !ok {
		return nil, []trace.Fault{fault(FaultUnmapped, 0, "field", FieldName, "example", exampleOf(pumpFields, FieldName))}
	}
	for _, row := range u.Body() {
		r.row(row)
	}
	for _, p := range r.pumps {
		r.curve(p)
		if !p.ill {
			rows = append(rows, PumpRow{p.line, p.job})
		}
	}
	slices.SortStableFunc(r.faults, func(a, b trace.Fault) int { return a.Line - b.Line })
	return rows, r.faults
}

func (r *pumpReader) column(field string) (int, bool) {
	c, ok := r.m.Column[field]
	return c, ok && c >= 0 && c < len(r.titles)
}

func (r *pumpReader) cell(row Row, field string) string {
	if c, ok := r.column(field); ok && c < len(row.Cells) {
		return row.Cells[c]
	}
	return ""
}

func (r *pumpReader) add(p *pumpRead, f trace.Fault) {
	if p != nil {
		p.ill = true
	}
	r.faults = append(r.faults, f)
}

// row takes one row.
func (r *pumpReader) row(row Row) {
	name := strings.Join(strings.Fields(r.cell(row, FieldName)), " ")
	if name == "" {
		c, _ := r.column(FieldName)
		r.add(nil, fault(FaultMissing, row.Line, "field", FieldName, "column", r.titles[c], "example", exampleOf(pumpFields, FieldName)))
		return
	}
	p := r.byName[Fold(name)]
	if p == nil {
		units := "us"
		if r.m.System.Is(unit.Metric) {
			units = "metric"
		}
		p = &pumpRead{line: row.Line, first: map[string]string{}}
		r.byName[Fold(name)], r.pumps = p, append(r.pumps, p)
		j, f := NewPump(name, units, "")
		if f != nil {
			r.add(p, r.placed(*f, row, FieldName))
			return
		}
		p.job = j
	}
	if p.job == nil {
		return // its name was refused
	}
	r.point(p, row)
	for _, f := range pumpFields {
		if text := r.cell(row, f.Name); text != "" && f.Name != FieldName && !strings.HasPrefix(f.Name, "curve/") {
			r.scalar(p, row, f, text)
		}
	}
}

// point takes the point of the curve that a row may hold.
func (r *pumpReader) point(p *pumpRead, row Row) {
	flow, head := r.cell(row, pointFlow), r.cell(row, pointHead)
	watts := r.cell(row, pointWatts)
	if flow == "" && head == "" {
		if watts != "" {
			r.add(p, fault(FaultPair, row.Line, "name", p.job.Name))
		}
		return
	}
	if flow == "" || head == "" {
		r.add(p, fault(FaultPair, row.Line, "name", p.job.Name))
		return
	}
	at := "/pumps/0/curve/" + strconv.Itoa(p.points)
	p.points++
	for _, x := range []struct{ field, end, text string }{{pointFlow, "/flow", flow}, {pointHead, "/head", head}, {pointWatts, "/watts", watts}} {
		if x.text != "" {
			r.set(p, row, x.field, at+x.end, x.text)
		}
	}
}

// scalar takes what a pump has once.
func (r *pumpReader) scalar(p *pumpRead, row Row, f Field, text string) {
	if was, said := p.first[f.Name]; said {
		if was != text {
			c, _ := r.column(f.Name)
			r.add(p, fault(FaultDiffers, row.Line, "name", p.job.Name, "field", f.Name, "column", r.titles[c], "found", short(text), "first", short(was)))
		}
		return
	}
	p.first[f.Name] = text
	switch f.Name {
	case FieldCurrency:
		return // with the price
	case FieldPrice:
		r.price(p, row, text)
		return
	case "continuous":
		if text = yes(text); text == "" {
			return
		}
	}
	r.set(p, row, f.Name, "/pumps/0/"+f.Name, text)
}

// yes reads what people write for yes and no; what is neither stays, for the
// rules of the job to tell.
func yes(text string) string {
	switch Fold(text) {
	case "yes", "y", "true", "1", "x", "ja", "si", "sí":
		return "true"
	case "no", "n", "false", "0", "-", "nein":
		return ""
	}
	return text
}

// price takes a pump's price with its currency.
func (r *pumpReader) price(p *pumpRead, row Row, text string) {
	c := checker{line: row.Line, where: func(field string) string {
		if i, ok := r.column(field); ok {
			return r.titles[i]
		}
		return ""
	}}
	code := strings.ToUpper(r.cell(row, FieldCurrency))
	if code == "" {
		code = r.m.Currency
	}
	amount, fits := number(text, r.m.Comma)
	switch {
	case !fits:
		c.add(FaultComma, FieldPrice, short(text))
	case !isCode(code):
		c.add(FaultCurrency, FieldCurrency, code)
	default:
		if amount = c.amount(amount, code); len(c.faults) == 0 {
			p.job.Site.Currency = code
			r.set(p, row, FieldPrice, "/pumps/0/price", amount)
		}
	}
	for _, f := range c.faults {
		r.add(p, f)
	}
}

// set puts a cell into a field of the pump. A bare number gets the unit of its
// column, so that it means the same for ever.
func (r *pumpReader) set(p *pumpRead, row Row, field, path, text string) {
	for _, f := range pumpFields {
		if f.Name != field || f.Kind == unit.KindNone {
			continue
		}
		written, fits := number(text, r.m.Comma)
		if !fits {
			c, _ := r.column(field)
			r.add(p, fault(FaultComma, row.Line, "field", field, "column", r.titles[c], "found", short(text)))
			return
		}
		if text = written; bare(text, f.Kind, r.m.System) {
			in := r.m.Unit[field]
			if in == "" {
				in = f.Kind.UnitName(r.m.System)
			}
			text += " " + in
		}
	}
	if f := p.job.Set(path, text); f != nil {
		r.add(p, r.placed(*f, row, field))
	}
}

// bare tells that a text is a number without a unit.
func bare(text string, k unit.Kind, s unit.System) bool {
	reading, err := unit.Parse(text, k, s)
	return err == nil && reading.Bare
}

// placed says of a job's fault in which row and column it stands.
func (r *pumpReader) placed(f trace.Fault, row Row, field string) trace.Fault {
	c, _ := r.column(field)
	f.Line, f.Path = row.Line, "/"+field
	f.Args = slices.Clone(f.Args)
	for i := range f.Args {
		if f.Args[i].Name == "where" {
			f.Args[i].Text = r.titles[c]
		}
	}
	return f
}

// curve holds the points of a pump against the rules of a curve.
func (r *pumpReader) curve(p *pumpRead) {
	if p.ill || p.points == 0 {
		return
	}
	_, err := design.SheetCurve(&p.job.Pumps[0])
	var bad *hydro.Error
	if errors.As(err, &bad) {
		m := bad.Message
		m.Args = append(slices.Clone(m.Args), trace.Str("where", p.job.Name))
		r.add(p, trace.Fault{Message: m, Line: p.line, Path: "/curve"})
	}
}
