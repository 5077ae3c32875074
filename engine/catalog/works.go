package catalog

import (
	"fmt"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Rule is a row of trade practice as it stands: what it is about, the range
// and its unit as written.
type Rule struct {
	Topic     string
	Name      string
	Low, High float64 // 0 when the row gives no number
	HasRange  bool
	Unit      string
	Source    trace.Source
}

// HazenWilliams is the usual range of the Hazen-Williams law.
type HazenWilliams struct {
	LeastBore                       unit.Length
	LowSpeed, HighSpeed             unit.Speed
	LowTemperature, HighTemperature unit.Temperature
	LeastReynolds                   float64
	Source                          trace.Source
}

// Holds tells which of the law's conditions a case meets: all must be true for
// the law to be in its range.
func (h HazenWilliams) Holds(bore unit.Length, v unit.Speed, water unit.Temperature, re float64) (size, speed, temperature, turbulent bool) {
	return bore >= h.LeastBore, v >= h.LowSpeed && v <= h.HighSpeed,
		water >= h.LowTemperature && water <= h.HighTemperature, re >= h.LeastReynolds
}

// HazenWilliams gives the range in which a pipe known only by C may be computed
// by it without a caution.
func (b *Book) HazenWilliams() HazenWilliams { return b.hazen }

func (b *Book) loadPractice(l *loader) {
	b.rules = map[string][]Rule{}
	for r := range b.Rows("practice") {
		rule := Rule{Topic: r.Get("topic"), Name: r.Get("rule"), Unit: r.Get("unit"), Source: l.source(r)}
		// A mix such as 1:2:1 is no number; the row is shown as written.
		if r.Get("low") != "" && !strings.Contains(r.Get("low"), ":") {
			rule.Low, rule.High, rule.HasRange = l.num(r, "low"), l.num(r, "high"), true
		}
		b.rules[rule.Topic] = append(b.rules[rule.Topic], rule)
	}
	for _, name := range worksRules {
		if _, ok := b.rule(name); !ok && l.err == nil {
			l.err = fmt.Errorf("table practice has no row %q", name.name)
		}
	}
	for _, s := range soils {
		if _, ok := b.rule(s.row); !ok && l.err == nil {
			l.err = fmt.Errorf("table practice has no row %q", s.row.name)
		}
	}
	limits := map[string]Row{}
	for r := range b.Rows("limits") {
		limits[r.Get("name")] = r
	}
	at := func(name string) Row {
		r, ok := limits["Hazen-Williams "+name]
		if !ok && l.err == nil {
			l.err = fmt.Errorf("table limits has no row for the %s of Hazen-Williams", name)
		}
		return r
	}
	if bore, speed, temp, re := at("bore"), at("speed"), at("temperature"), at("Reynolds number"); l.err == nil {
		b.hazen = HazenWilliams{
			LeastBore: l.millimetres(bore, "low"),
			LowSpeed:  unit.Speed(l.num(speed, "low")), HighSpeed: unit.Speed(l.num(speed, "high")),
			LowTemperature: unit.Temperature(l.num(temp, "low")), HighTemperature: unit.Temperature(l.num(temp, "high")),
			LeastReynolds: l.num(re, "low"), Source: l.source(speed),
		}
	}
}

// Topics names the topics of trade practice.
func (b *Book) Topics() []string {
	var out []string
	for r := range b.Rows("practice") {
		if t := r.Get("topic"); !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}

// Rules gives the rows of a topic, contradicting ones included.
func (b *Book) Rules(topic string) []Rule { return slices.Clone(b.rules[topic]) }

func (b *Book) rule(n ruleName) (Rule, bool) {
	i := slices.IndexFunc(b.rules[n.topic], func(r Rule) bool { return r.Name == n.name })
	if i < 0 {
		return Rule{}, false
	}
	return b.rules[n.topic][i], true
}
