package design

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of keeping a layout.
const (
	// CodeKeepNone: there is no such layout to keep. Args: found, count.
	CodeKeepNone = "design.keep.none"
	// CodeKeepUnlaid: the assembly as drawn has no places, so that there is no cut card to keep. No args.
	CodeKeepUnlaid = "design.keep.unlaid"
	// CodeKeepDiffers: written into the job the layout does not come out as it was found. Args: name.
	CodeKeepDiffers = "design.keep.differs"
)

// Keep gives a copy of the job with layout n, counted from 0, as its assembly,
// and with the record by which later changes are told. The lengths are written
// as they are cut; where that rounding would not do, as they were worked out.
func (a *Arranging) Keep(book *catalog.Book, j *job.Job, n int) (*job.Job, []trace.Fault) {
	if a.Outcome == nil || n < 0 || n >= len(a.Outcome.Layouts) {
		count := 0
		if a.Outcome != nil {
			count = len(a.Outcome.Layouts)
		}
		return nil, []trace.Fault{{Path: "/assembly", Message: trace.Message{Code: CodeKeepNone, Args: []trace.Arg{
			trace.Num("found", unit.Ratio(n+1), unit.KindCount), trace.Num("count", unit.Ratio(count), unit.KindCount),
		}}}}
	}
	l := &a.Outcome.Layouts[n]
	found := func(next *job.Job) bool {
		m := modelFor(book, next)
		laid := m.relaid()
		if laid == nil || !sameCuts(laid, &l.Laid) || !m.holds(laid) || len(laid.LiftOut.Moves) != len(l.Laid.LiftOut.Moves) {
			return false
		}
		m.record(next, laid, claimWord(a.Outcome.Proof.Claim))
		return true
	}
	next := a.written(j, l, true)
	m := modelFor(book, next)
	if laid := m.relaid(); laid != nil {
		// The pump stands where the rounded pieces put it, or a hair beside.
		for _, hair := range hairs {
			if m.nudge(next, laid, hair) && found(next) {
				return next, nil
			}
		}
	}
	if next = a.written(j, l, false); found(next) {
		return next, nil
	}
	return nil, []trace.Fault{{Path: "/assembly", Message: trace.Message{Code: CodeKeepDiffers, Args: []trace.Arg{trace.Str("name", strconv.Itoa(n+1))}}}}
}

// KeepDrawn gives a copy of the job with the record of its assembly as drawn.
func KeepDrawn(book *catalog.Book, j *job.Job) (*job.Job, []trace.Fault) {
	next := j.Clone()
	next.Assembly.Kept = job.Kept{}
	m := modelFor(book, next)
	laid := m.relaid()
	if laid == nil {
		return nil, append(m.out.Faults, trace.Fault{Path: "/assembly", Message: trace.Message{Code: CodeKeepUnlaid}})
	}
	m.record(next, laid, "drawn")
	return next, nil
}

func modelFor(book *catalog.Book, j *job.Job) *model {
	return &model{
		book: book, job: j, out: &Result{Name: j.Name, Note: j.Note, Units: j.System(), Style: j.Style()},
		pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{},
	}
}

// relaid lays the job's assembly; nil where it has no places.
func (m *model) relaid() *layout.Assembly {
	if !m.start() {
		return nil
	}
	pump, ok := m.pump()
	if !ok {
		return nil
	}
	laid := m.lay(pump)
	if laid == nil || !laid.Laid {
		return nil
	}
	return laid
}

// holds tells that the assembly meets the hole, with no fault and no danger.
func (m *model) holds(a *layout.Assembly) bool {
	return len(m.out.Faults) == 0 && len(m.dangers(m.out.Findings)) == 0 && a.Closure.Off.Norm() <= float64(layout.Step(m.out.Units))
}

// hairs are the shifts by which the pump is tried beside its place, in thirty-
// seconds of an inch: half of what a cut is rounded to, which no tape tells.
var hairs = [][2]float64{{0, 0}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}}

// nudge sets the pump on the floor so that the rounding of the pieces ends at the
// hole, but for a hair.
func (m *model) nudge(j *job.Job, a *layout.Assembly, hair [2]float64) bool {
	const fine = unit.Inch / 32
	p := m.laidFrom.Pose.At.Sub(a.Closure.Off)
	x, y := unit.Length(p.X)+unit.Length(hair[0])*fine, unit.Length(p.Y)+unit.Length(hair[1])*fine
	return j.Set("/assembly/at/x", exactly(x, m.out.Units)) == nil && j.Set("/assembly/at/y", exactly(y, m.out.Units)) == nil
}

// exactly writes a length to a hundred-thousandth of an inch or a tenth of a
// micrometre: less than what the search keeps to spare.
func exactly(l unit.Length, s unit.System) string {
	if s.Is(unit.Metric) {
		return decimals(float64(l/unit.Millimetre), 4) + " mm"
	}
	return decimals(float64(l/unit.Inch), 5) + " in"
}

// decimals writes a number with at most so many places; three get a fourth, for
// "123.456" could be a hundred thousand to the reader.
func decimals(v float64, places int) string {
	k := math.Pow(10, float64(places))
	v = math.Round(v*k) / k
	if v == 0 {
		v = 0 // no minus before a nought
	}
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if _, behind, _ := strings.Cut(s, "."); len(behind) == 3 {
		s += "0"
	}
	return s
}

// written gives a copy of the job with a layout as its assembly.
func (a *Arranging) written(j *job.Job, l *arrange.Layout, asCut bool) *job.Job {
	next := j.Clone()
	s := next.System()
	old, as := j.Assembly, &next.Assembly
	as.Attitude, as.Kept = a.Attitudes[l.Standing], job.Kept{}
	as.Closing.Gap = job.Length{}
	set := func(path, text string) { _ = next.Set(path, text) } // a path and text of this package's making: keeping lays them again
	set("/assembly/turn", decimals(float64(l.Chain.Pose.Turn/unit.Degree), 6)+" deg")
	for _, c := range []struct {
		axis string
		v    float64
	}{{"x", l.Chain.Pose.At.X}, {"y", l.Chain.Pose.At.Y}, {"z", l.Chain.Pose.At.Z}} {
		set("/assembly/at/"+c.axis, exactly(unit.Length(c.v), s))
	}
	if as.Pipe == (job.PipeName{}) && len(a.Input.Pipes) > 0 {
		as.Pipe = job.PipeName{Kind: a.Input.Pipes[0].Kind, Size: a.Input.Pipes[0].Size}
	}
	if o := l.Chain.Vault.Outlet; o != a.Input.Vault.Outlet {
		set("/vault/outlet/along", exactly(o.Along, s))
		set("/vault/outlet/height", exactly(o.Height, s))
		next.Vault.Outlet.Undrilled = job.Undrilled{}
	}
	fromPump, toWall := old.Glued()
	if fromPump == 0 {
		as.Start, as.StartBy, as.StartCloses = job.Length{}, "", l.Chain.Start.Closing
		if k := slices.IndexFunc(l.Laid.Pieces, func(c layout.Piece) bool { return c.After < 0 }); k >= 0 && !as.StartCloses {
			a.lengthOf(next, "/assembly/start", &l.Laid.Pieces[k], asCut)
		}
	} else if as.StartCloses && !old.Closing.Gap.IsZero() {
		as.StartCloses, as.Start, as.StartBy = false, old.Closing.Gap, "faces"
	}
	as.Parts = nil
	n := len(l.Chain.Parts)
	for i := range l.Chain.Parts {
		p := &l.Chain.Parts[i]
		switch k := i - (n - toWall); {
		case i < fromPump-1:
			as.Parts = append(as.Parts, gluedPart(old.Parts[i], old.Closing))
			continue
		case k >= 0:
			as.Parts = append(as.Parts, gluedPart(old.Parts[len(old.Parts)-toWall+k], old.Closing))
			continue
		}
		out := job.Laid{Fitting: a.PartName(&p.Part), Size: p.Size, Mark: p.Mark, Reverse: p.Reverse, Closes: p.Next.Closing}
		if in, to := p.In.Kind == layout.Spigot, p.Out.Kind == layout.Spigot; in != to { // it goes in either way round
			out.Spigot = "wall"
			if in {
				out.Spigot = "pump"
			}
		}
		if i < fromPump { // the last glued one: what comes after it is new
			out = old.Parts[i]
			out.Next, out.NextBy, out.Closes = job.Length{}, "", p.Next.Closing
		} else if p.Size == as.Pipe.Size {
			out.Size = ""
		}
		as.Parts = append(as.Parts, out)
		path := at("/assembly/parts", i)
		if turn, _ := p.Turn(); (turn != 0 || p.Kind.IsCheck() && p.Roll != 0) && i >= fromPump {
			set(path+"/roll", decimals(float64(p.Roll/unit.Degree), 6)+" deg")
		}
		if p.Kind == layout.Hose && i >= fromPump {
			set(path+"/bend", decimals(float64(p.Curve.Turn/unit.Degree), 6)+" deg")
			set(path+"/before", exactly(p.In.TakeOff.Length, s))
			set(path+"/behind", exactly(p.Out.TakeOff.Length, s))
		}
		k := slices.IndexFunc(l.Laid.Pieces, func(c layout.Piece) bool { return c.After == i })
		if p.Next.Closing || k < 0 {
			continue // worked out, or fixed by spigot and thread
		}
		a.lengthOf(next, path+"/next", &l.Laid.Pieces[k], asCut)
	}
	return next
}

// lengthOf writes how long a piece is: as it is cut, or as it was worked out.
func (a *Arranging) lengthOf(j *job.Job, path string, c *layout.Piece, asCut bool) {
	by, long := "pipe", unit.Of(c.Cut, unit.KindTape).Format(j.System().Typed())
	if !asCut {
		by, long = "stops", exactly(c.StopToStop, j.System())
	}
	_ = j.Set(path+"By", by) // of this package's making, as in written
	_ = j.Set(path, long)
}

// PartName gives the catalogue's name of a part that the search used, either way
// round.
func (a *Arranging) PartName(p *layout.Part) string {
	if i := a.fittingOf(p); i >= 0 {
		return a.Names[i]
	}
	return string(p.Kind)
}

// PartSize gives a part's size as the counter has it: of one that reduces the
// larger first, whichever way the water runs.
func (a *Arranging) PartSize(p *layout.Part) string {
	small, large, two := strings.Cut(p.Size, " x ")
	bushing := p.Out.Kind == layout.Spigot // the spigot is of the larger size
	if two && (bushing || p.In.Kind == layout.Socket && p.Out.Hub.Length > p.In.Hub.Length) {
		return large + " x " + small
	}
	return p.Size
}

// fittingOf gives which of the search's fittings a part is, either way round; -1
// for none, as for one that was glued before.
func (a *Arranging) fittingOf(p *layout.Part) int {
	for i := range a.Input.Fittings {
		q := &a.Input.Fittings[i].Part
		if q.Kind == p.Kind && q.Size == p.Size && (same(q.In, p.In) && same(q.Out, p.Out) || same(q.In, p.Out) && same(q.Out, p.In)) {
			return i
		}
	}
	return -1
}

// same tells that two ends are of one fitting.
func same(a, b layout.End) bool {
	return a.Kind == b.Kind && a.Size == b.Size && a.TakeOff.Length == b.TakeOff.Length && a.Depth.Length == b.Depth.Length && a.Hub.Length == b.Hub.Length
}

// sameCuts tells that two layings have the same pieces; a closing piece may come
// out a step longer or shorter, because it takes up the rounding of the others.
func sameCuts(a, b *layout.Assembly) bool {
	if len(a.Pieces) != len(b.Pieces) {
		return false
	}
	if !slices.EqualFunc(a.Hoses, b.Hoses, func(p, q layout.HoseCut) bool {
		return p.Part == q.Part && math.Abs(float64(p.Cut-q.Cut)) < alikeCut
	}) {
		return false
	}
	for i := range a.Pieces {
		d := math.Abs(float64(a.Pieces[i].Cut - b.Pieces[i].Cut))
		limit := alikeCut
		if a.Pieces[i].Closing {
			limit += float64(len(a.Pieces)) * float64(unit.Inch) / 16
		}
		if a.Pieces[i].After != b.Pieces[i].After || d > limit && !a.Pieces[i].Made {
			return false
		}
	}
	return true
}

// record writes what the laid assembly stands on and its cut card into the job.
func (m *model) record(j *job.Job, a *layout.Assembly, claim string) {
	k := job.Kept{Claim: claim, Sizes: sizesDigest(m.laidFrom, a)}
	pump, _ := m.pump()
	for _, e := range m.keptEntries(pump) {
		k.Inputs = append(k.Inputs, job.KeptInput{Path: e.alias, Value: e.value})
	}
	j.Assembly.Kept = k
	for _, p := range m.cuts(a) {
		if p.Made {
			continue // on no card
		}
		at := at("/assembly/kept/pieces", len(j.Assembly.Kept.Pieces))
		j.Assembly.Kept.Pieces = append(j.Assembly.Kept.Pieces, job.KeptPiece{Mark: p.Mark, From: p.From, To: p.To, Closes: p.Closing})
		_ = j.Set(at+"/cut", unit.Of(p.Cut, unit.KindTape).Format(m.out.Units.Typed())) // cut to the step that is printed
	}
}

// claimWord is the job's word for a claim.
func claimWord(c arrange.Claim) string {
	switch c {
	case arrange.Everything:
		return "everything"
	case arrange.Family:
		return "family"
	case arrange.Stopped:
		return "stopped"
	}
	return "capped"
}
