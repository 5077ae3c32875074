package catalog

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// model is a row of the table of fittings.
type model struct {
	name, body string
	out        int
	form       Form
	turn       unit.Angle
	ends       []string // "socket", "spigot", "male", "female", "barb"
	valve      bool     // moulded with the long sockets of ASTM D2467
	stopRule   string   // label of a row of laying lengths, or one of the rules of stop
	stop       line     // stop to stop, where the rule is an estimate
	widest     line     // outside diameter of the body
	face       line     // how far a bulkhead's inner face stands off the wall
	arrow      bool
	opens      bool
	attitudes  Attitudes
	source     trace.Source
}

// line is an estimate that grows with the pipe's outside diameter.
type line struct {
	given  bool
	perOD  float64
	plusIn float64
}

func (e line) at(od unit.Length) unit.Length {
	return od*unit.Length(e.perOD) + unit.Length(e.plusIn)*unit.Inch
}

// formula prints the estimate with the quantity it is for.
func (e line) formula(what string) string {
	s := fmt.Sprintf("estimate: %s = %g OD", what, e.perOD)
	if e.plusIn != 0 {
		s += fmt.Sprintf(" + %g in", e.plusIn)
	}
	return s
}

type socketKey struct {
	standard string // "D2466", "D2467", "metric"
	size     size
}

type layingKey struct {
	series string
	rule   string
	size   size
}

// The rows of laying lengths, as the table labels them.
const (
	elbowRule    = "90 elbow, centre to socket stop"
	teeRule      = "tee run and branch, centre to socket stop"
	elbow45Rule  = "45 elbow, centre to socket stop"
	couplingRule = "coupling, stop to stop"
)

// wallOfFitting is how much thicker a fitting's wall is taken than the pipe's:
// the share that ASTM D2466 asks of a fitting's body, from memory.
const wallOfFitting = 1.25

// wyeSpare is the room left beyond the least lengths at which the pipes of a
// wye clear one another: an estimate.
const wyeSpare = 1.03

func (b *Book) loadNominal(l *loader) {
	b.nominal = map[size]float64{}
	for r := range b.Rows("laying_metric") {
		nps, ok := mixedNumber(r.Get("nps"))
		if !ok {
			l.fail(r, "nps", "is no size")
		}
		b.nominal[l.size(r, "size")] = nps
	}
}

func (b *Book) loadBodies(l *loader) {
	b.sockets, b.laying, b.bodySizes = map[socketKey]Dimension{}, map[layingKey]Dimension{}, map[string][]string{}
	for r := range b.Rows("sockets") {
		standard, depth := seriesMetric, l.millimetres(r, "socket_length_min_mm")
		if rest, ok := strings.CutPrefix(r.Get("standard"), "ASTM "); ok {
			standard, _, _ = strings.Cut(rest, " ")
			depth = l.inches(r, "socket_length_min_in")
		}
		b.sockets[socketKey{standard, l.size(r, "size")}] = Dimension{depth, true, l.source(r)}
	}
	for r := range b.Rows("laying") {
		_, series, _ := strings.Cut(strings.TrimSuffix(r.Get("standard"), ")"), "(")
		b.addLaying(l, r, series, l.size(r, "nps"), l.inches(r, "laying_length_in"))
	}
	for r := range b.Rows("laying_metric") {
		b.addLaying(l, r, seriesMetric, l.size(r, "size"), l.millimetres(r, "laying_length_mm"))
	}
	b.models = map[string]*model{}
	for r := range b.Rows("fittings") {
		b.addModel(l, r)
	}
}

func (b *Book) addLaying(l *loader, r Row, series string, s size, length unit.Length) {
	rule := r.Get("fitting")
	b.laying[layingKey{series, rule, s}] = Dimension{length, true, l.source(r)}
	if rule == couplingRule {
		b.bodySizes[series] = append(b.bodySizes[series], s.String())
	}
}

func (b *Book) addModel(l *loader, r Row) {
	estimate := func(name string) line {
		return line{r.Get(name+"_per_od") != "", l.opt(r, name+"_per_od"), l.opt(r, name+"_plus_in")}
	}
	m := &model{
		name: r.Get("name"), body: r.Get("body"), out: int(l.num(r, "through")),
		form: Form(r.Get("form")), turn: unit.Angle(l.num(r, "turn_deg")) * unit.Degree,
		ends: strings.Fields(r.Get("ends")), valve: r.Get("depths") == "valve",
		stopRule: r.Get("stop_rule"), stop: estimate("stop"), widest: estimate("body"), face: estimate("face"),
		arrow: r.Get("arrow") == "yes", opens: r.Get("opens") == "yes",
		attitudes: Attitudes(r.Get("attitudes")), source: l.source(r),
	}
	b.names = append(b.names, m.name)
	b.models[m.name] = m
	for _, n := range append(aliases(r), m.name) {
		key := nameKey(words(n))
		if was := b.models[key]; was != nil && was != m {
			l.fail(r, "aliases", "names two fittings by "+key)
		}
		b.models[key] = m
	}
}

// bodyPipe gives the pipe that the sockets of a part are made for.
func (b *Book) bodyPipe(series string, s size) Pipe {
	kindName := "PVC " + series
	if series == seriesMetric {
		kindName = "PVC PN16"
	}
	return b.pipes[pipeKey{kindName, s}]
}

// socketDepth gives the depth of a part's socket of one size.
func (b *Book) socketDepth(p part, s size) Dimension {
	standard := "D2466"
	switch {
	case p.series == seriesMetric:
		standard = seriesMetric
	case p.series == "Sch 80" || p.model.valve:
		standard = "D2467"
	}
	return b.sockets[socketKey{standard, s}]
}

func (b *Book) hub(p part, s size) Dimension {
	pipe := b.bodyPipe(p.series, s)
	return Dimension{
		Length: pipe.OD + 2*wallOfFitting*pipe.Wall, MeasureFirst: true,
		Source: trace.Source{
			Title: "estimate: hub = OD + 2 x 1.25 x wall of the pipe", Basis: trace.BasisMemory,
			Note: "a fitting's wall is taken as 1.25 times the pipe's; measure it where hubs must clear something",
		},
	}
}

func (m *model) estimated(e line, what string, od unit.Length) Dimension {
	return Dimension{
		Length: e.at(od), MeasureFirst: true,
		Source: trace.Source{Title: e.formula(what), Basis: m.source.Basis, Note: m.source.Note},
	}
}

// toStop gives the laying length of a part by its rule.
func (b *Book) toStop(p part) Dimension {
	m, large := p.model, b.bodyPipe(p.series, p.large())
	guess := func(length unit.Length, title string) Dimension {
		return Dimension{length, true, trace.Source{Title: "estimate: " + title, Basis: trace.BasisMemory, Note: m.source.Note}}
	}
	switch m.stopRule {
	case "none":
		return Dimension{}
	case "estimate":
		return m.estimated(m.stop, "stop to stop", large.OD)
	case "wye":
		return guess(LayingFloor(large.OD, 135*unit.Degree)*wyeSpare, "OD/2 / tan 22.5 + 3 percent")
	case "reducing":
		small := b.bodyPipe(p.series, p.small())
		straight := b.laying[layingKey{p.series, couplingRule, p.large()}]
		return guess(straight.Length+(large.OD-small.OD)/2, "coupling + (OD - od)/2")
	case "bushing":
		length := b.socketDepth(p, p.large()).Length + m.stop.at(large.OD) - b.socketDepth(p, p.small()).Length
		return guess(max(length, large.Wall), "larger socket depth + 0.08 OD - smaller socket depth")
	case "male":
		t := b.threadOf(p)
		return guess(large.Wall+t.Length()-t.MakeUp().Length, "one pipe wall + thread length L2 + V less its engagement")
	case "female":
		t := b.threadOf(p)
		return guess(large.Wall+max(t.Effective-t.MakeUp().Length, 0), "one pipe wall + thread length L2 less its engagement")
	}
	return b.laying[layingKey{p.series, m.stopRule, p.large()}]
}

// threadOf gives the thread of an adapter: NPT on inch parts, BSP on metric
// ones, in the inch size that the pipe goes by; a hose goes by its bore.
func (b *Book) threadOf(p part) Thread {
	s := p.sizes[0]
	if p.series != seriesMetric {
		return b.threads[threadKey{"NPT", s}]
	}
	in := size{inch, int64(math.Round(b.nominal[s] * 1e6))}
	if slices.Contains(p.model.ends, "barb") && b.hoseInch[s] != (size{}) {
		in = b.hoseInch[s]
	}
	return b.threads[threadKey{"BSPT", in}]
}
