package catalog

import (
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Pipe is one size of one kind of pipe or hose.
type Pipe struct {
	Kind     string // trade name: "PVC Sch 40"
	Size     string // as the tables name it: "1-1/2", "d50", "32 mm"
	Standard string // "ASTM D1785", "EN ISO 1452-2"; empty for hose

	OD, Wall unit.Length // 0 for hose, which is known by its bore only
	Bore     unit.Length // inside diameter at the least wall; real pipe is a little narrower

	// Roughness is the absolute roughness for the Colebrook-White law, with the
	// range in which it may lie. It is 0 with an empty RoughnessSource for a
	// pipe that is known only by HazenWilliamsC.
	Roughness                   unit.Length
	RoughnessLow, RoughnessHigh unit.Length
	RoughnessSource             trace.Source

	// HazenWilliamsC is 0 unless the pipe is known only by it.
	HazenWilliamsC      float64
	HazenLow, HazenHigh float64
	HazenSource         trace.Source

	Rating       unit.Pressure // water at 73 F (23 C), 0 when not known
	RatingSource trace.Source

	Rigid       bool         // stands by itself in an assembly; false for hose and flexible pipe
	SolventWeld bool         // joined with solvent cement
	Source      trace.Source // of OD, wall and bore
}

// RigidSolvent tells that the pipe is cut to length and cemented into sockets,
// as the assembly and the cutting plan need it.
func (p Pipe) RigidSolvent() bool { return p.Rigid && p.SolventWeld }

// pipeKey names a row: by kind for pipes, by "standard series" for dimensions
// and ratings.
type pipeKey struct {
	kind string
	size size
}

// kind is a row of the table of kinds.
type kind struct {
	name string
	sys  system
	law  Pipe // what all sizes of the kind share
}

// Kinds names the kinds of pipe and hose.
func (b *Book) Kinds() []string { return slices.Clone(b.kindNames) }

// PipeSizes lists the sizes of a kind in the order of the tables; nothing when
// the kind is unknown.
func (b *Book) PipeSizes(kindName string) []string {
	k := b.kind(kindName)
	if k == nil {
		return nil
	}
	return slices.Clone(b.pipeSizes[k.name])
}

func (b *Book) kind(name string) *kind {
	if k := b.kinds[name]; k != nil {
		return k
	}
	return b.kinds[nameKey(words(name))]
}

// FindPipe gives a pipe by kind and size. The size may be written "1-1/2",
// "1 1/2", "1.5", "1-1/2 in" or "DN40" for inch pipe, "50", "d50" or "50 mm"
// for metric pipe, where it is the outside diameter; a hose takes either, as
// its bore. Errors: CodePipeUnknown, CodePipeSize, CodeSizeUnread, CodeSizeDN.
func (b *Book) FindPipe(kindName, sizeText string) (Pipe, error) {
	k := b.kind(kindName)
	if k == nil {
		return Pipe{}, fault(CodePipeUnknown, trace.Str("kind", kindName), nearest(near(kindName, b.kindNames)))
	}
	s, err := b.readSize(sizeText, k.sys)
	if err != nil {
		return Pipe{}, err
	}
	p, ok := b.pipes[pipeKey{k.name, s}]
	if !ok {
		return Pipe{}, fault(CodePipeSize, trace.Str("kind", k.name), trace.Str("size", sizeText), nearest(b.pipeSizes[k.name]))
	}
	return p, nil
}

func (b *Book) loadPipes(l *loader) {
	b.kinds, b.pipes, b.pipeSizes = map[string]*kind{}, map[pipeKey]Pipe{}, map[string][]string{}
	b.inchOfDN = map[int64]size{}
	rowsOf := map[string][]Row{} // of the pipe table, by standard and series
	for r := range b.Rows("pipe") {
		series := r.Get("standard") + " " + r.Get("series")
		rowsOf[series] = append(rowsOf[series], r)
		if r.Get("dn_mm") != "" {
			b.inchOfDN[int64(l.num(r, "dn_mm")*1e6)] = l.size(r, "size")
		}
	}
	for r := range b.Rows("kinds") {
		k := b.readKind(l, r)
		series := r.Get("standard") + " " + r.Get("series")
		for _, d := range rowsOf[series] {
			p := k.law
			p.OD, p.Wall = l.inches(d, "od_in"), l.inches(d, "wall_min_in")
			if k.sys == metric {
				p.OD, p.Wall = l.millimetres(d, "od_mm"), l.millimetres(d, "wall_min_mm")
			}
			p.Bore = p.OD - 2*p.Wall
			p.Source = l.source(d)
			s := l.size(d, "size")
			if r.Get("rated") == "yes" {
				p.Rating, p.RatingSource = b.ratingOf(l, series, s, p, d)
			}
			if note := r.Get("dims_note"); note != "" {
				p.Standard = ""
				p.Source = trace.Source{Title: p.Source.Title, Basis: trace.BasisMemory, Note: note}
			}
			b.addPipe(k, s, d.Get("size"), p)
		}
	}
}

func (b *Book) readKind(l *loader, r Row) *kind {
	k := &kind{name: r.Get("kind")}
	switch r.Get("system") {
	case "inch":
		k.sys = inch
	case "metric":
		k.sys = metric
	}
	k.law = Pipe{
		Kind: k.name, Standard: r.Get("standard"),
		Rigid: r.Get("rigid") == "yes", SolventWeld: r.Get("solvent") == "yes",
		Roughness: l.millimetres(r, "roughness_mm"), RoughnessLow: l.millimetres(r, "roughness_low_mm"), RoughnessHigh: l.millimetres(r, "roughness_high_mm"),
		HazenWilliamsC: l.opt(r, "hazen_williams_c"), HazenLow: l.opt(r, "c_low"), HazenHigh: l.opt(r, "c_high"),
	}
	if k.law.HazenWilliamsC > 0 {
		k.law.HazenSource = l.source(r)
	} else {
		k.law.RoughnessSource = l.source(r)
	}
	b.kindNames = append(b.kindNames, k.name)
	b.kinds[k.name] = k
	for _, n := range append(aliases(r), k.name) {
		key := nameKey(words(n))
		if was := b.kinds[key]; was != nil && was != k {
			l.fail(r, "aliases", "names two kinds of pipe by "+key)
		}
		b.kinds[key] = k
	}
	return k
}

func aliases(r Row) []string {
	if r.Get("aliases") == "" {
		return nil
	}
	return strings.Split(r.Get("aliases"), ";")
}

func (b *Book) addPipe(k *kind, s size, text string, p Pipe) {
	p.Size = text
	b.pipes[pipeKey{k.name, s}] = p
	b.pipeSizes[k.name] = append(b.pipeSizes[k.name], text)
}

func (b *Book) loadHoses(l *loader) {
	b.hoseInch = map[size]size{}
	for r := range b.Rows("hose") {
		k := b.kinds[r.Get("kind")]
		if k == nil {
			l.fail(r, "kind", "is no kind of pipe")
			return
		}
		p, s := k.law, l.size(r, "size")
		p.Bore, p.Source = l.millimetres(r, "bore_mm"), l.source(r)
		b.addPipe(k, s, r.Get("size"), p)
		b.hoseInch[s] = l.size(r, "nps")
	}
}
