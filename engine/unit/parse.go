package unit

import (
	"math"
	"strings"
	"unicode/utf8"
)

// Limits of what is read.
const (
	MaxText   = 100 // bytes
	MaxNumber = 1e9 // in the kind's unit of the system asked for
)

// Reading is what a text was read as.
type Reading struct {
	SI      float64 // in the SI unit of the kind's dimension
	Unit    string  // unit it was written in, or the one a bare number took
	Bare    bool    // no unit was written: Unit is the kind's own in that system
	Kind    Kind    //
	Density float64 // kg/m³ of water assumed to turn a pressure into a head or back; 0 when none was
}

// Parse reads what people write for a kind, in any unit of its dimension:
//
//	4' 7-1/2"   4 ft 7.5 in   55 1/2 in   1.41 m   3300 gph   12.5 m³/h   2 psi
//
// A bare number takes the kind's unit in that system, and after feet the inch.
// Gallons, quarts, pints and tons are US ones unless "imperial" or "UK" is
// written; a bare "ton" is refused in the metric system. For KindPercent a bare
// number of at most 1 is the ratio itself (0.4 is 40 %), a larger one needs its
// percent sign. A head may be written as a pressure: head = pressure /
// (1000 kg/m³ × 9.80665 m/s²), and Reading.Density says so. "1,410" is 1410 in
// the US system and wherever the unit leaves no doubt (gal, ft, mm, L/h); else it
// is refused in the metric system, where "1,41 m" is 1.41 m. "1.410" is 1.41 in
// both systems, as sheets, levels and this package itself write it ("2.067 in",
// "3.542 m"); but with a unit that is counted in thousands and not measured so
// finely (gph, gal, L/h, L, W, mm), and for a count, it is refused: whoever
// writes a decimal comma means 1410. Where the system says a decimal comma
// (Marks.Said), point and comma change parts: "1,410 m" is 1.41 m, "1.410 mm" is
// 1410 mm, and "1.410 m" and "1,410 L/h" are refused.
//
// The error is a *ParseError. Nothing but finite numbers is read, at most
// MaxNumber of the kind's unit.
func Parse(text string, k Kind, s System) (Reading, error) {
	p := parser{typed: text, text: text, kind: k, system: s}
	if k == KindNone || k == KindMoney || k >= kindEnd {
		return Reading{}, p.fail(CodeKind, 0, 0)
	}
	if len(text) > MaxText {
		return Reading{}, p.fail(CodeLong, MaxText, MaxText)
	}
	p.text = s.Marks().plain(text)
	return p.parse()
}

// Read reads a text as a typed quantity. A kind of another dimension than Q's
// is the caller's mistake: CodeKind.
func Read[Q Quantity](text string, k Kind, s System) (Q, Reading, error) {
	var q Q
	if q.Dim() != k.Dim() {
		p := parser{typed: text, text: text, kind: k, system: s}
		return 0, Reading{}, p.fail(CodeKind, 0, 0)
	}
	r, err := Parse(text, k, s)
	return Q(r.SI), r, err
}

// parser goes once through the text.
type parser struct {
	typed  string // as it came
	text   string // the same with a decimal point, place by place
	kind   Kind
	system System
	at     int
}

// term is one number with its unit.
type term struct {
	number
	unit    *unitDef
	unitAt  int
	bare    bool
	unitEnd int
}

func (p *parser) fail(code Code, at, end int) *ParseError {
	at, end = min(at, len(p.text)), min(end, len(p.text))
	return &ParseError{
		Code: code, Text: p.typed, At: at, Found: strings.ToValidUTF8(p.typed[at:max(at, end)], "\uFFFD"),
		Kind: p.kind, System: p.system, Example: p.system.Typed().Marks().Write(p.kind.Example(p.system)),
	}
}

func (p *parser) parse() (Reading, error) {
	p.skipSpace()
	if p.at == len(p.text) {
		return Reading{}, p.fail(CodeEmpty, p.at, p.at)
	}
	negative := p.sign()
	t, err := p.term()
	if err != nil {
		return Reading{}, err
	}
	r, err := p.convert(&t)
	if err != nil {
		return Reading{}, err
	}
	if p.at < len(p.text) {
		if r, err = p.second(&t); err != nil {
			return Reading{}, err
		}
	}
	if negative {
		r.SI = p.negate(r.SI, &t)
	}
	return r, p.check(&r, &t)
}

// negate turns the sign of what was written; below zero Fahrenheit the offset
// stands between that and the sign of the SI value.
func (p *parser) negate(si float64, t *term) float64 {
	if t.unit.offset != 0 {
		return t.unit.si(-t.value)
	}
	return -si + 0
}

// check holds the value against what the kind allows.
func (p *parser) check(r *Reading, t *term) error {
	shown := p.kind.unit(p.system).number(r.SI)
	// The hair lets the limit itself come back from SI.
	if math.IsNaN(shown) || math.Abs(shown) > MaxNumber*(1+1e-12) {
		*r = Reading{}
		return p.fail(CodeRange, t.at, t.end)
	}
	if p.kind == KindCount && r.SI != math.Trunc(r.SI) {
		*r = Reading{}
		return p.fail(CodeWhole, t.at, t.end)
	}
	if p.kind == KindPercent && t.bare && math.Abs(r.SI) > 1 {
		*r = Reading{}
		return p.fail(CodePercent, t.at, t.end)
	}
	return nil
}

func (p *parser) peek() (rune, int) { return utf8.DecodeRuneInString(p.text[p.at:]) }

func (p *parser) skipSpace() {
	for {
		r, size := p.peek()
		if !isSpace(r) {
			return
		}
		p.at += size
	}
}

// sign reads a plus or minus and the spaces behind it.
func (p *parser) sign() (negative bool) {
	r, size := p.peek()
	if negative = isHyphen(r); negative || r == '+' {
		p.at += size
		p.skipSpace()
	}
	return negative
}

// term reads a number and its unit, if one is written, and stops before
// whatever follows.
func (p *parser) term() (term, error) {
	n, code := scanNumber(p.text, p.at)
	t := term{number: n}
	if code == CodeNumber && n.end == n.at {
		return t, p.fail(CodeNumber, n.at, len(p.text))
	}
	if code != "" {
		return t, p.fail(code, n.at, n.end)
	}
	p.at = n.end
	p.skipSpace()
	t.unitAt = p.at
	end := p.unitEnd()
	if end == p.at {
		t.bare = true
		t.unitEnd = end
		return t, nil
	}
	p.at = end
	t.unitEnd = t.unitAt + len(strings.TrimRightFunc(p.text[t.unitAt:end], isSpace))
	p.skipSpace()
	return t, p.unit(&t)
}

// unit looks the term's unit up.
func (p *parser) unit(t *term) error {
	typed := p.text[t.unitAt:t.unitEnd]
	if t.unit = markUnit(typed); t.unit != nil {
		return nil
	}
	u := findUnit(typed)
	if u == nil || p.system.Is(Metric) && u == shortTon && isBareTon(typed) {
		err := p.fail(CodeUnknown, t.unitAt, t.unitEnd)
		if err.Near = nearUnit(typed, p.kind, p.system); u != nil {
			err.Near = "t"
		}
		return err
	}
	if p.kind == KindTemperature && u == degree {
		t.bare = true // "60°" says a temperature but not whose degrees
		return nil
	}
	t.unit = u
	return nil
}

// isBareTon tells that a ton is not said to be a short one; where tons are
// metric it would be read ten per cent light.
func isBareTon(typed string) bool {
	return strings.EqualFold(typed, "ton") || strings.EqualFold(typed, "tons")
}

// convert gives the reading of a term that stands alone.
func (p *parser) convert(t *term) (Reading, error) {
	if t.bare {
		t.unit = p.kind.unit(p.system)
		if p.kind == KindPercent {
			t.unit = &plainNumber
		}
	}
	if t.ambiguous && p.careful() && (t.bare || !t.unit.grouped) && p.kind != KindCount || t.dotted && p.thousands(t) {
		return Reading{}, p.fail(CodeAmbiguous, t.at, t.end)
	}
	r := Reading{SI: t.unit.si(t.value), Unit: t.unit.name, Bare: t.bare, Kind: p.kind, Density: t.unit.density}
	if t.unit.dim == p.kind.Dim() {
		return r, nil
	}
	if p.kind == KindHead && t.unit.dim == DimPressure {
		r.SI /= ConventionalWaterDensity * StandardGravity
		// A column of water is a head already; nothing is assumed.
		if r.Density != 0 {
			r.Density = 0
		} else {
			r.Density = ConventionalWaterDensity
		}
		return r, nil
	}
	err := p.fail(CodeDimension, t.unitAt, t.unitEnd)
	err.Dim = t.unit.dim
	return Reading{}, err
}

// careful tells that a mark which should group thousands may as well be a
// decimal one: in metric units, and for people who write a decimal comma.
func (p *parser) careful() bool {
	m := p.system.Marks()
	return p.system.Is(Metric) || m.Said && m.Decimal == Comma
}

// thousands tells that a point before three digits may well group thousands:
// in a unit that is counted in thousands and never measured to its thousandth
// part, or in a count. Where the kind itself is shown as finely in that unit,
// it is a decimal point.
func (p *parser) thousands(t *term) bool {
	if p.kind == KindCount {
		return true
	}
	own := p.kind.in(p.system)
	return t.unit.coarse && (own.unit != t.unit.name || own.decimals < 3)
}

// second reads the smaller unit behind the first: the inches of feet and
// inches. first comes back as the sum in the smaller unit.
func (p *parser) second(first *term) (Reading, error) {
	rest := p.at
	if r, size := p.peek(); isHyphen(r) || r == ',' {
		p.at += size
		p.skipSpace()
	}
	if first.bare || first.unit.lower == "" || p.at == len(p.text) {
		return Reading{}, p.fail(CodeTrailing, rest, len(p.text))
	}
	t, err := p.term()
	if err != nil {
		return Reading{}, err
	}
	if t.bare && first.unit == foot {
		t.unit, t.bare = inch, false
	}
	if t.bare || p.at < len(p.text) || !first.unit.mayPrecede(t.unit) {
		return Reading{}, p.fail(CodeTrailing, rest, len(p.text))
	}
	ratio := math.Round(t.unit.number(first.unit.si(1)))
	if !first.whole || t.value >= ratio {
		return Reading{}, p.fail(CodeParts, first.at, t.unitEnd)
	}
	if first.ambiguous && p.careful() && !first.unit.grouped {
		return Reading{}, p.fail(CodeAmbiguous, first.at, first.end)
	}
	name := "ft in"
	if first.unit != foot {
		name = first.unit.name + " " + t.unit.name
	}
	first.value = first.value*ratio + t.value
	first.unit, first.end, first.ambiguous, first.dotted = t.unit, t.end, t.ambiguous, t.dotted
	r, err := p.convert(first)
	r.Unit = name
	return r, err
}
