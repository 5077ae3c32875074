package catalog

import (
	"fmt"
	"iter"
	"strings"

	"plashet/engine/trace"
)

// lossRow is one method for a fitting: a law for all sizes, or values by size.
type lossRow struct {
	law    Loss
	bySize map[float64]Loss // by nominal inches; nil when the law holds for all
}

// lossNaming ties the rows of the tables of losses to the fittings of the book.
// The order of a fitting's rows is the order of preference: laws that follow
// the Reynolds number before fixed figures, published before memory.
var lossNaming = []struct {
	name string
	rows []string // the column "fitting"; all its methods
}{
	{"elbow 90", []string{"90 elbow, threaded standard r/D=1", "90 elbow, standard threaded", "90 elbow, standard r/D=1, screwed", "90 elbow, regular screwed", "90 elbow, standard", "90 ell screwed", "90 elbow PVC", "90 ell (wrought) code allowance"}},
	{"elbow 45", []string{"45 elbow, threaded standard r/D=1", "45 elbow, standard threaded", "45 elbow, standard r/D=1", "45 elbow, regular screwed", "45 elbow, standard", "45 ell screwed", "45 elbow PVC", "45 ell (wrought) code allowance"}},
	{"street elbow 90", []string{"90 street elbow, threaded"}},
	{"street elbow 45", []string{"45 street elbow, threaded"}},
	{"swept bend 90", []string{"90 bend r/D=2", "90 bend r/d=2"}},
	{"tee run", []string{"tee run through, threaded", "tee, flow through run", "tee run through, screwed", "tee, line (run) flow, screwed", "tee, run with branch blanked", "tee run PVC", "tee run (wrought) code allowance"}},
	{"tee branch", []string{"tee through branch, threaded r/D=1", "tee, flow through branch", "tee used as elbow, standard, screwed", "tee, branch flow, screwed", "tee, used as elbow", "tee screwed (branch)", "tee branch PVC", "tee branch (wrought) code allowance"}},
	{"cross run", []string{"tee run through, threaded", "tee, flow through run"}},
	{"cross branch", []string{"tee through branch, threaded r/D=1", "tee, flow through branch"}},
	{"wye run", []string{"wye 45, flow through run"}},
	{"wye branch", []string{"wye 45, flow by the branch"}},
	{"coupling", []string{"coupling"}},
	{"male adapter", []string{"male/female adapter PVC"}},
	{"female adapter", []string{"male/female adapter PVC"}},
	{"union", []string{"union"}},
	{"check valve swing", []string{"swing check valve", "swing check valve, straight body", "check valve, swing", "swing check valve, open"}},
	{"check valve spring", []string{"spring (poppet) check valve, plastic"}},
	{"check valve swing union-ended", []string{"swing check valve", "swing check valve, straight body", "check valve, swing", "swing check valve, open"}},
	{"check valve spring union-ended", []string{"spring (poppet) check valve, plastic"}},
	{"ball valve", []string{"ball valve, standard, beta=1", "ball valve, full bore, open", "gate/ball/plug valve, full line size"}},
	{"gate valve", []string{"gate valve, standard, beta=1", "gate valve, full bore, open", "gate/ball/plug valve, full line size", "gate valve, screwed, open", "gate valve, open", "gate valve code allowance"}},
	{"bulkhead fitting", []string{"bulkhead fitting"}},
	{"hose barb adapter", []string{"hose barb adapter"}},
	{"reducer bushing", []string{"sudden contraction", "sudden enlargement"}},
	{"reducing coupling", []string{"sudden contraction", "sudden enlargement"}},
	{"entrance", []string{"entrance from open tank, square edged", "entrance, sharp edged flush"}},
	{"entrance bell mouth", []string{"entrance from open tank, bell mouth"}},
	{"entrance projecting", []string{"entrance from open tank, inward projecting pipe", "entrance, inward projecting pipe"}},
	{"exit", []string{"exit, any shape, into still water"}},
}

// taken notes what a fitting's rows stand in for, where they were made for
// another.
var taken = map[string]string{
	"cross run":    "no row for a cross: taken as a tee",
	"cross branch": "no row for a cross: taken as a tee",

	"check valve swing union-ended":  "no row for one with union ends: taken as one without",
	"check valve spring union-ended": "no row for one with union ends: taken as one without",
}

func (b *Book) loadLosses(l *loader) {
	rows := map[string][]Row{}
	b.fT = map[float64]float64{}
	for _, name := range []string{"losses", "losses_more"} {
		for r := range b.Rows(name) {
			rows[r.Get("fitting")] = append(rows[r.Get("fitting")], r)
			if strings.HasPrefix(r.Get("fitting"), "fT (") {
				b.fT[l.size(r, "size_nps").value()] = l.num(r, "K_or_value")
				b.fTSource = r.Get("source")
			}
		}
	}
	b.losses = map[string][]lossRow{}
	for _, n := range lossNaming {
		b.lossNames = append(b.lossNames, n.name)
		for _, label := range n.rows {
			if rows[label] == nil && l.err == nil {
				l.err = fmt.Errorf("table losses has no row %q for %s", label, n.name)
			}
			b.addLosses(l, n.name, rows[label])
		}
	}
}

// addLosses adds the rows of one label. Values by size of one method make one
// entry; the values that Crane prints by size are left to the outside checks,
// because the law n fT gives them.
func (b *Book) addLosses(l *loader, name string, rows []Row) {
	var bySize map[float64]Loss
	for _, r := range rows {
		law := l.law(r, name)
		sizeText := r.Get("size_nps")
		switch {
		case sizeText == "" || sizeText == "all":
			b.losses[name] = append(b.losses[name], lossRow{law: law})
			if law.Form == LossCrane {
				older := &b.losses[name][len(b.losses[name])-1].law.Source
				older.Note = joinNotes("fT by nominal size from "+b.fTSource, older.Note)
				newer := law
				newer.Form, newer.Method = LossCraneBore, "Crane, 2009 on"
				newer.Source.Note = joinNotes("fT of the bore in place of the older table's", newer.Source.Note)
				b.losses[name] = append(b.losses[name], lossRow{law: newer})
			}
		case law.Form == LossCrane:
		default:
			if bySize == nil {
				bySize = map[float64]Loss{}
				b.losses[name] = append(b.losses[name], lossRow{law: law, bySize: bySize})
			}
			bySize[l.size(r, "size_nps").value()] = law
		}
	}
}

func joinNotes(ours, theirs string) string { return strings.TrimSuffix(ours+"; "+theirs, "; ") }

// law reads a row's constants by its method.
func (l *loader) law(r Row, name string) Loss {
	law := Loss{Fitting: name, Method: r.Get("method"), As: r.Get("fitting"), Source: l.source(r)}
	switch {
	case law.Method == "Darby 3-K":
		law.Form, law.K1, law.Ki, law.Kd = LossDarby, l.num(r, "K1"), l.num(r, "Ki_or_Kinf"), l.num(r, "Kd")
	case law.Method == "Hooper 2-K":
		law.Form, law.K1, law.Ki = LossHooper, l.num(r, "K1"), l.num(r, "Ki_or_Kinf")
	case law.Method == "equivalent length":
		law.Form, law.EquivLength = LossEquivalent, l.feet(r, "K_or_value")
	case law.Method == "Crane" && r.Get("L_over_D") != "":
		law.Form, law.N = LossCrane, l.num(r, "L_over_D")
	case r.Get("fitting") == "sudden contraction":
		law.Form, law.Method = LossContraction, law.As
	case r.Get("fitting") == "sudden enlargement":
		law.Form, law.Method = LossEnlargement, law.As
	default:
		law.Form = LossFixed
		low, high := l.span(r, "K_or_value")
		law.K = (low + high) / 2
		if high > low {
			law.Low, law.High = low, high
			law.Source.Note = joinNotes("middle of the range", law.Source.Note)
		}
	}
	if law.As == "swing check valve, straight body" || law.As == "swing check valve" {
		law.OpensFullyAt = SwingCheckOpens(1000)
	}
	if law.Form == LossContraction || law.Form == LossEnlargement {
		law.Source.Note = joinNotes("bores of Sch 40 (inch) or PN16 (metric) pipe", law.Source.Note)
	}
	if note := taken[name]; note != "" {
		law.Source.Basis = trace.BasisMemory
		law.Source.Note = note
	}
	return law
}

// lossCase is a question for a loss: the name and the sizes read.
type lossCase struct {
	name    string
	sizes   [2]size // in the order of flow
	nominal float64
}

// start fills what all methods share.
func (c lossCase) start() Loss {
	p := part{sizes: c.sizes}
	return Loss{Fitting: c.name, Size: p.size(), On: p.small().String(), NominalIn: c.nominal}
}

func (b *Book) lossCase(name, sizeText string) (lossCase, error) {
	c := lossCase{name: b.lossName(name)}
	if b.losses[c.name] == nil {
		return c, b.noLoss(name, c.name)
	}
	var err error
	if c.sizes, err = b.readSizes(sizeText); err != nil {
		return c, err
	}
	args := []trace.Arg{trace.Str("fitting", c.name), trace.Str("size", sizeText)}
	reduces := c.sizes[0] != c.sizes[1]
	_, changes := b.beta(part{sizes: c.sizes})
	switch m := b.models[c.name]; {
	case m != nil && m.form == FormReducer && !reduces:
		return c, fault(CodeFittingTwoSizes, args...)
	case (m == nil || m.form != FormReducer) && reduces:
		return c, fault(CodeFittingOneSize, args...)
	case reduces && !changes:
		return c, outside("bores", "size")
	}
	c.nominal, err = b.nominalOf(part{sizes: c.sizes}.small())
	return c, err
}

// lossName turns any way of writing a fitting's name into the name that the
// losses go by; entrance and exit are no fittings and stand for themselves.
func (b *Book) lossName(name string) string {
	if b.losses[name] != nil {
		return name
	}
	if m, _, err := b.find(name); err == nil {
		return m.name
	}
	key := nameKey(words(name))
	for _, n := range b.lossNames {
		if nameKey(words(n)) == key {
			return n
		}
	}
	return name
}

// noLoss tells why a fitting has no loss: unknown, none in the book, or one for
// each way through it.
func (b *Book) noLoss(asked, name string) *Error {
	if b.models[name] == nil {
		return fault(CodeFittingUnknown, trace.Str("fitting", asked), nearest(near(asked, append(b.LossNames(), b.names...))))
	}
	var ways []string
	for _, n := range b.lossNames {
		if m := b.models[n]; m != nil && m.body == name {
			ways = append(ways, n)
		}
	}
	if ways != nil {
		return fault(CodeLossWhich, trace.Str("fitting", name), nearest(ways))
	}
	return fault(CodeLossNone, trace.Str("fitting", name), nearest(nil))
}

// beta gives the ratio of the bores of two sizes of Sch 40 (inch) or PN16
// (metric) pipe.
func (b *Book) beta(p part) (float64, bool) {
	bore := func(s size) float64 {
		series := "Sch 40"
		if s.sys == metric {
			series = seriesMetric
		}
		return float64(b.bodyPipe(series, s).Bore)
	}
	small, large := bore(p.small()), bore(p.large())
	return small / large, small > 0 && large > small
}

// eachLoss gives every method that has the size, the default first.
func (b *Book) eachLoss(c lossCase) iter.Seq[Loss] {
	return func(yield func(Loss) bool) {
		start := c.start()
		for i := range b.losses[c.name] {
			row := &b.losses[c.name][i]
			law, ok := row.law, true
			if row.bySize != nil {
				law, ok = row.bySize[c.nominal]
			}
			law.Fitting, law.Size, law.On, law.NominalIn = start.Fitting, start.Size, start.On, start.NominalIn
			switch law.Form {
			case LossCrane:
				law.FT, ok = b.fT[c.nominal]
			case LossContraction, LossEnlargement:
				law.Beta, _ = b.beta(part{sizes: c.sizes})
				ok = (law.Form == LossContraction) == (c.sizes[0].micros > c.sizes[1].micros)
			}
			if c.sizes[0].sys == metric && (row.bySize != nil || law.Form == LossDarby || law.Form == LossCrane) {
				law.Source.Note = joinNotes("made for inch sizes; taken at the one that this metric size goes by", law.Source.Note)
			}
			if ok && !yield(law) {
				return
			}
		}
	}
}

// noSuchSize tells that no method has the size.
func (c lossCase) noSuchSize() *Error {
	return fault(CodeLossSize, trace.Str("fitting", c.name), trace.Str("size", c.start().Size))
}
