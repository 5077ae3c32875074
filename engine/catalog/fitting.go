package catalog

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Dimension is one length of a fitting with its source. MeasureFirst says that
// it is a standard's minimum, an estimate or from memory: measure the part in
// hand before cutting by it.
type Dimension struct {
	Length       unit.Length
	MeasureFirst bool
	Source       trace.Source
}

// Known tells whether the fitting has this dimension at all.
func (d Dimension) Known() bool { return d.Source.Basis != "" }

// EndKind is the way an end joins its mate.
type EndKind string

// The kinds of ends.
const (
	Socket     EndKind = "socket" // a pipe or spigot is cemented into it
	Spigot     EndKind = "spigot" // goes straight into a socket
	NPTMale    EndKind = "NPT male"
	NPTFemale  EndKind = "NPT female"
	BSPTMale   EndKind = "BSPT male"
	BSPPFemale EndKind = "BSPP female"
	Barb       EndKind = "barb" // a hose is pushed over it
)

// End is one end of a fitting.
type End struct {
	Kind EndKind
	Size string
	Turn unit.Angle // between the way in at the first end, straight on, and the way out at this one; 0 for the first
	Stop Dimension  // from the centre to where the mate's end stands, as the package comment tells
	// Depth is how far the two parts overlap: socket depth, length of a
	// spigot, engagement of a thread, length of a barb. A receiving end (socket,
	// female thread) has its face at Stop + Depth; a male thread ends there.
	Depth Dimension
	Hub   Dimension // outside diameter here
}

// Form is the shape of a fitting.
type Form string

// The forms.
const (
	FormStraight Form = "straight"
	FormBend     Form = "bend"
	FormTee      Form = "tee"
	FormCross    Form = "cross"
	FormWye      Form = "wye"
	FormReducer  Form = "reducer"
	FormAdapter  Form = "adapter"
	FormBulkhead Form = "bulkhead"
	FormCap      Form = "cap"
)

// Attitudes are the ways a valve may stand, in the words of the job document.
type Attitudes string

// The attitudes. AttitudesNone is for fittings to which it makes no difference.
const (
	AttitudesNone           Attitudes = ""
	AttitudesAny            Attitudes = "any"
	AttitudesUpright        Attitudes = "upright"
	AttitudesLevelOrUpright Attitudes = "level or upright"
)

// Fitting is one size of a fitting.
type Fitting struct {
	Name   string // as the book prints it: "tee branch"
	Body   string // the part to buy: "tee"
	Size   string
	Series string // "Sch 40", "Sch 80" or "metric"
	Form   Form
	Turn   unit.Angle // of a bend, or of a branch off the run; 0 for straight
	Ends   []End      // first the way in as laid from the pump
	Out    int        // index of the end the water leaves by; 0 for a cap

	Socket Dimension // depth of its socket; of the smaller one when it reduces
	ToStop Dimension // centre to stop (bend, tee, cross, branch of a wye); stop to stop of a straight fitting
	Hub    Dimension // outside diameter of its hub; of the larger one when it reduces
	Widest Dimension // outside diameter of its body: nut, valve, flange, hexagon; the hub's where nothing is wider
	ToWall Dimension // bulkhead fitting: how far its inner face stands off the wall

	Arrow         bool // it has a direction of flow marked on it
	Opens         bool // it opens by hand
	Attitudes     Attitudes
	AttitudesFrom trace.Source

	MeasureFirst bool   // its socket or its laying length is not measured
	Note         string // what to know of this fitting
}

// Measured is what a fitter measured on the part in hand. A zero value was not
// measured and stays with the table.
type Measured struct {
	Fitting, Size string
	Socket        unit.Length // depth of its socket, face to stop (of the smaller socket of a reducing fitting)
	ToStop        unit.Length // as Fitting.ToStop
	Hub           unit.Length // outside diameter of its body, or of its hub where nothing is wider
	K             unit.Ratio  // loss coefficient from its sheet
	Attitudes     Attitudes   // by its sheet
	Note          string
}

// FittingNames names the fittings that have dimensions.
func (b *Book) FittingNames() []string { return slices.Clone(b.names) }

// FittingSizes lists the sizes in which fittings of a series ("Sch 40",
// "Sch 80", "metric") have dimensions.
func (b *Book) FittingSizes(series string) []string { return slices.Clone(b.bodySizes[series]) }

// find reads the name of a fitting and the series written with it.
func (b *Book) find(name string) (*model, string, error) {
	if m, series := b.model(name); m != nil {
		return m, series, nil
	}
	return nil, "", fault(CodeFittingUnknown, trace.Str("fitting", name), nearest(near(name, b.names)))
}

func (b *Book) model(name string) (m *model, series string) {
	if m := b.models[name]; m != nil {
		return m, ""
	}
	ws, series := cutSeries(words(name))
	return b.models[nameKey(ws)], series
}

// cutSeries takes "sch 40" or "sch 80" out of a name.
func cutSeries(ws []string) (rest []string, series string) {
	i := slices.Index(ws, "sch")
	if i < 0 || i+1 >= len(ws) || (ws[i+1] != "40" && ws[i+1] != "80") {
		return ws, ""
	}
	return slices.Delete(slices.Clone(ws), i, i+2), "Sch " + ws[i+1]
}

// Fitting gives a fitting by name and size, with the fitter's own measurements
// in place of the table's (of two of the same dimension the later counts). Inch fittings are
// Sch 40 unless the name says Sch 80 ("elbow 90 Sch 80"). A reducing fitting
// takes two sizes in the order of flow, "2 x 1-1/2". Errors:
// CodeFittingUnknown, CodeFittingSize, CodeFittingTwoSizes,
// CodeFittingOneSize, CodeSizeUnread, CodeSizeDN, CodeMeasured.
func (b *Book) Fitting(name, sizeText string, overrides []Measured) (Fitting, error) {
	p, err := b.part(name, sizeText)
	if err != nil {
		return Fitting{}, err
	}
	m, err := b.measured(p, overrides)
	if err != nil {
		return Fitting{}, err
	}
	return b.build(p, m)
}

// part is a fitting named: which model, series and sizes.
type part struct {
	model  *model
	series string
	sizes  [2]size // in the order of flow; alike unless it reduces
}

func (p part) size() string {
	if p.sizes[0] == p.sizes[1] {
		return p.sizes[0].String()
	}
	return p.sizes[0].String() + " x " + p.sizes[1].String()
}

// large and small give the sizes of a reducing fitting in order.
func (p part) large() size { return p.sizes[p.largeEnd()] }
func (p part) small() size { return p.sizes[1-p.largeEnd()] }

func (p part) largeEnd() int {
	if p.sizes[1].micros > p.sizes[0].micros {
		return 1
	}
	return 0
}

// The series of fittings where the name does not tell: for inch pipe and for
// metric pipe.
const (
	seriesInch   = "Sch 40"
	seriesMetric = "metric"
)

func (b *Book) part(name, sizeText string) (part, error) {
	m, series, err := b.find(name)
	if err != nil {
		return part{}, err
	}
	p := part{model: m, series: series}
	if p.sizes, err = b.readSizes(sizeText); err != nil {
		return part{}, err
	}
	args := []trace.Arg{trace.Str("fitting", m.name), trace.Str("size", sizeText)}
	switch reduces := p.sizes[0] != p.sizes[1]; {
	case m.form == FormReducer && !reduces:
		return part{}, fault(CodeFittingTwoSizes, args...)
	case m.form != FormReducer && reduces:
		return part{}, fault(CodeFittingOneSize, args...)
	}
	if p.series == "" {
		p.series = seriesInch
		if p.sizes[0].sys == metric {
			p.series = seriesMetric
		}
	}
	for _, s := range p.sizes {
		if _, ok := b.laying[layingKey{p.series, couplingRule, s}]; !ok {
			return part{}, fault(CodeFittingSize, append(args, nearest(b.bodySizes[p.series]))...)
		}
	}
	return p, nil
}

// CheckMeasured tells what is wrong with one measurement: an unknown part or
// size, or a value that is negative or not a number. Errors: as Fitting.
func (b *Book) CheckMeasured(o Measured) error {
	if _, err := b.part(o.Fitting, o.Size); err != nil {
		return err
	}
	for _, v := range []struct {
		name string
		v    float64
	}{{"socket", float64(o.Socket)}, {"toStop", float64(o.ToStop)}, {"hub", float64(o.Hub)}, {"k", float64(o.K)}} {
		if !(v.v >= 0) || math.IsInf(v.v, 0) {
			return fault(CodeMeasured, trace.Str("fitting", o.Fitting), trace.Str("size", o.Size), trace.Str("value", v.name))
		}
	}
	return nil
}

// measured gathers what was measured on a part. A measurement of another part,
// or of none in the book, is left aside: CheckMeasured names those.
func (b *Book) measured(p part, overrides []Measured) (*Measured, error) {
	var all *Measured
	for _, o := range overrides {
		if m, _, err := b.find(o.Fitting); err != nil || m.body != p.model.body {
			continue
		}
		q, err := b.part(o.Fitting, o.Size)
		if err != nil || q.series != p.series || q.sizes != p.sizes {
			continue
		}
		if err := b.CheckMeasured(o); err != nil {
			return nil, err
		}
		if all == nil {
			all = &Measured{}
		}
		all.Socket, all.ToStop, all.Hub = cmp.Or(o.Socket, all.Socket), cmp.Or(o.ToStop, all.ToStop), cmp.Or(o.Hub, all.Hub)
		all.Attitudes, all.Note = cmp.Or(o.Attitudes, all.Attitudes), cmp.Or(o.Note, all.Note)
	}
	return all, nil
}
