package design

import (
	"errors"
	"math"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of a hose that bends more than hoses do, or finds no room.
const (
	// FindHoseTighter: its least radius is less than flexible pipe is known to bend to.
	// Args: found (radius), limit (the least known of), od.
	FindHoseTighter = "design.hose.tighter"
	// FindHoseUnknown: no flexible pipe of the size is known, so that only rigid layouts
	// are looked at. Args: name, size, and near (sizes there are).
	FindHoseUnknown = "design.hose.unknown"
	// FindHoseNoStock: only the stock counts, and it has no pipe to cut a hose from.
	// Args: name, size.
	FindHoseNoStock = "design.hose.stock"
	// FindHoseShort: its longest piece is too short for the least turn that the pump
	// asks. Args: radius, turn, found (its length then, with its straight ends and what
	// goes into the sockets), limit.
	FindHoseShort = "design.hose.short"
	// FindHoseNone: none was found with a hose, whose bends take much room. Args: radius,
	// turn and found (of the least bend), quarter (length of a quarter turn), limit.
	FindHoseNone = "design.hose.none"

	// ChangeHoseTighter: with a hose that bends tighter. Args: size, cut (its length), radius.
	ChangeHoseTighter = "design.instead.hose.tighter"
	// ChangeHoseGet: with a hose that the stock lacks. Args as those of ChangeHose.
	ChangeHoseGet = "design.instead.hose.get"
	// ChangeHoseLonger: with a longer piece of hose. Args as those of ChangeHose.
	ChangeHoseLonger = "design.instead.hose.longer"
)

// tightOfOD is how tight flexible pipe is known to bend, in outside diameters: no
// sheet known of allows less than three (from memory of flexible PVC pipe).
const tightOfOD = 3

// bends judges the least radius of a hose, measured to its middle: at half its
// outside diameter its inside would lie in one point, below that it would cross itself
// (plane geometry).
func (m *model) bends(path string, radius, od unit.Length) bool {
	limit := od / 2
	args := func(limit unit.Length) []trace.Arg {
		return []trace.Arg{trace.Num("found", radius, unit.KindTape), trace.Num("limit", limit, unit.KindTape), trace.Num("od", od, unit.KindTape)}
	}
	switch {
	case radius <= limit:
		m.fault(path, CodeHoseFolds, append(args(limit), trace.Num("usual", radiusOfOD*od, unit.KindTape))...)
		return false
	case radius < tightOfOD*od && !m.told(FindHoseTighter):
		m.find(trace.Finding{
			Message: trace.Message{Code: FindHoseTighter, Args: args(tightOfOD * od)}, Path: path, Severity: trace.Caution,
			Found: unit.Of(radius, unit.KindTape), Limit: unit.Of(tightOfOD*od, unit.KindTape), LimitSource: memory,
		})
	}
	return true
}

// told tells that a finding of a code stands already.
func (m *model) told(code string) bool {
	for i := range m.out.Findings {
		if m.out.Findings[i].Code == code {
			return true
		}
	}
	return false
}

// knows tells that there is flexible pipe of a size to cut a hose from. Where the
// kind is known and only this size of it is not, rigid layouts are still looked
// for, and that is told; what else is wrong with the hose is told where it is made.
func (m *model) knows(pipe catalog.Pipe) bool {
	name := hosePipe(m.job, pipe.Size)
	_, err := m.pipe(name)
	var e *catalog.Error
	if err == nil || !errors.As(err, &e) || e.Code == catalog.CodePipeUnknown {
		return true
	}
	m.remark("/assembly/search/hose", trace.Caution, trace.Message{Code: FindHoseUnknown, Args: []trace.Arg{
		trace.Str("name", name.Kind), trace.Str("size", pipe.Size), trace.Str("near", e.Arg("near")),
	}})
	return false
}

// otherHoses adds a hose that bends tighter, or a longer piece of it, where the
// job's bends less or is shorter than is usual.
func (m *model) otherHoses(a *Arranging, add addInstead) {
	had := a.Input.Hose
	if had == nil {
		return
	}
	try := func(code string, change func(h *arrange.Hose)) {
		h := *had
		change(&h)
		add(code, arrange.Instead{Hose: &h}, instead{stand: -1, hose: true, size: h.Part.Size})
	}
	c := &had.Part.Curve
	if usual := radiusOfOD * had.Part.In.Hub.Length; c.Radius > usual {
		try(ChangeHoseTighter, func(h *arrange.Hose) {
			h.Part.Curve.Radius = usual
			h.Part.Curve.Least.Length, h.Part.Curve.Least.Source = usual, memory
		})
	}
	if usual := m.usualLongest(); c.Longest < usual {
		try(ChangeHoseLonger, func(h *arrange.Hose) { h.Part.Curve.Longest = usual })
	}
}

// hoseMend gives the entry by which a hose of a change is written: what is longest
// rounded up to a whole inch or centimetre.
func (a *Arranging) hoseMend(j *job.Job, s *arrange.Change) []Entry {
	h := &s.Layout.Laid.Hoses[0]
	switch s.What.Code {
	case ChangeHoseTighter:
		return []Entry{{"/assembly/hose/leastRadius", exactly(h.Curve.Radius, j.System())}}
	case ChangeHoseLonger:
		return []Entry{{"/assembly/hose/longest", wholeLength(h.Exact, j)}}
	}
	entries := []Entry{{"/assembly/search/hose", "true"}}
	if s.What.Code == ChangeHoseGet {
		path, pipe := at("/stock/offcuts", len(j.Stock.Offcuts)), hosePipe(j, h.Size)
		entries = append(entries, Entry{path + "/pipe/kind", pipe.Kind}, Entry{path + "/pipe/size", pipe.Size}, Entry{path + "/length", wholeLength(h.Cut, j)})
	}
	return entries
}

// hosePipe names what a hose of a size is cut from.
func hosePipe(j *job.Job, size string) job.PipeName {
	if kind := j.Assembly.Hose.Kind; kind != "" {
		return job.PipeName{Kind: kind, Size: size}
	}
	return job.PipeName{Kind: usualHose, Size: size}
}

// wholeLength rounds a length up to a whole inch or centimetre, as it is typed.
func wholeLength(l unit.Length, j *job.Job) string {
	step := unit.Inch
	if j.System().Is(unit.Metric) {
		step = 10 * unit.Millimetre
	}
	return unit.Of(step*unit.Length(math.Ceil(float64(l/step)-1e-6)), unit.KindTape).Format(j.System().Typed())
}

// hasHose tells that there may be pipe to cut a hose of a size from: where only the
// stock counts, and it has none, that is told.
func (m *model) hasHose(size string) bool {
	name := m.named(hosePipe(m.job, size))
	if !m.job.Stock.Only || len(m.inHand(name).Lengths) > 0 {
		return true
	}
	m.remark("/stock/offcuts", trace.Caution, trace.Message{Code: FindHoseNoStock, Args: []trace.Arg{trace.Str("name", name.Kind), trace.Str("size", name.Size)}})
	return false
}

// stockedHose lets a hose be cut from what there is alone, where only the stock
// counts; nil where there is none of it.
func (m *model) stockedHose(h *arrange.Hose) *arrange.Hose {
	if h == nil || !m.job.Stock.Only {
		return h
	}
	limited := *h
	if limited.Stock = m.inHand(m.named(hosePipe(m.job, h.Part.Size))); len(limited.Stock.Lengths) == 0 {
		return nil
	}
	return &limited
}

// fromStock tells that a hose is cut from what the stock has of its pipe: there is a
// length that gives it, or no other counts. Else it is bought by its length.
func (m *model) fromStock(name job.PipeName, cut unit.Length) bool {
	s := &m.job.Stock
	if s.Only {
		return true
	}
	for i := range s.Sticks {
		if m.named(s.Sticks[i].Pipe) == name && s.Sticks[i].Length.SI >= cut {
			return true
		}
	}
	for i := range s.Offcuts {
		if m.named(s.Offcuts[i].Pipe) == name && s.Offcuts[i].Length.SI >= cut {
			return true
		}
	}
	return false
}

// hosesToCut lists the hoses of the assembly that are still to be made, with the
// pipe of each.
func (m *model) hosesToCut(a *layout.Assembly) (hoses []*layout.HoseCut, from []job.PipeName) {
	for i := range a.Hoses {
		h := &a.Hoses[i]
		if m.job.Assembly.Parts[h.Part].Glued == "" {
			hoses = append(hoses, h)
			from = append(from, m.named(hosePipe(m.job, m.laidFrom.Parts[h.Part].Size)))
		}
	}
	return hoses, from
}

// usualLongest is how long a piece of hose is taken to be at most.
func (m *model) usualLongest() unit.Length {
	if m.job.System().Is(unit.Metric) {
		return usualHoseLongSI
	}
	return usualHoseLong
}

// tellHose says why no layout with a hose was found, though the job allows one: its
// longest piece does not reach round the least turn, or a bend of it takes more
// room than there is.
func (m *model) tellHose(a *Arranging) {
	in, o := &a.Input, a.Outcome
	if in.Hose == nil || o.Least <= 0 {
		return
	}
	for i := range o.Layouts {
		if o.Layouts[i].Worth.Hoses > 0 {
			return
		}
	}
	const quarter = unit.Angle(math.Pi / 2)
	c := &in.Hose.Part.Curve
	longest := c.Longest
	if s := in.Hose.Stock; s != nil {
		longest = min(longest, slices.Max(append(s.Lengths, 0)))
	}
	least, round := in.ShortestHose(o.Least), in.ShortestHose(quarter)
	args := []trace.Arg{
		trace.Num("radius", c.Radius, unit.KindTape), trace.Num("turn", o.Least, unit.KindAngle), trace.Num("found", least, unit.KindTape),
		trace.Num("limit", longest, unit.KindTape),
	}
	path := "/assembly/hose/leastRadius"
	switch {
	case least > longest:
		if !m.job.Assembly.Hose.Longest.IsZero() && m.job.Assembly.Hose.LeastRadius.SI <= radiusOfOD*in.Hose.Part.In.Hub.Length {
			path = "/assembly/hose/longest"
		}
		m.remark(path, trace.Caution, trace.Message{Code: FindHoseShort, Args: args})
	case round > longest || c.Radius+c.Straight > max(in.Vault.Length, in.Vault.Width):
		m.remark(path, trace.Caution, trace.Message{Code: FindHoseNone, Args: append(args, trace.Num("quarter", round, unit.KindTape))})
	}
}
