package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// plumb is how far a pipe may be out of level or upright and still count as
// it, to a fitter's eye (from memory).
const plumb = 2 * unit.Degree

// valves checks each check valve: arrow, attitude, and the hinge of a swing
// valve that lies level.
func (l *laying) valves() {
	any := false
	for i := range l.in.Parts {
		p := &l.in.Parts[i]
		if !p.Kind.IsCheck() {
			continue
		}
		any = true
		path, part := l.partPath(i), trace.Str("part", l.mark(i))
		if p.Reverse {
			l.note(trace.Danger, path, FindReversed, part)
		}
		allowed, src := l.allowed(i)
		rising := unit.Angle(math.Asin(math.Max(-1, math.Min(1, l.a.Places[i].InDir.Z))))
		least, word := unit.Angle(0), "level or up"
		if allowed == AllowedUp {
			least, word = 90*unit.Degree, "up"
		}
		if allowed != AllowedAny && rising < least-plumb {
			l.find(trace.Danger, path, FindAttitude, unit.Of(rising, unit.KindAngle), unit.Of(least, unit.KindAngle), src,
				part, trace.Str("kind", string(p.Kind)), trace.Num("found", rising, unit.KindAngle), trace.Str("allowed", word))
			continue
		}
		if l.a.Places[i].CoverUp {
			l.hinge(i, part)
		}
	}
	if !any {
		l.note(trace.Info, l.in.Path, FindNoCheck)
	}
}

// dustOfSlope keeps what rises by 45 degrees but for rounding from counting as
// flatter than that.
const dustOfSlope = 1e-9

// CoverUp tells that a valve falls shut only with its cover on top: a swing
// valve whose flow rises less than 45 degrees from level. Common practice, no
// source.
func CoverUp(k Kind, flow geom.Vec3) bool {
	return k == CheckSwing && flow.Z < math.Sqrt2/2-dustOfSlope
}

// allowed gives how valve i may stand; by its kind, as an assumption, where
// its data do not say.
func (l *laying) allowed(i int) (Allowed, trace.Source) {
	p := &l.in.Parts[i]
	if p.Allowed != AllowedUnknown && p.Allowed <= AllowedLevelOrUp {
		if p.AllowedFrom.Title != "" {
			return p.Allowed, p.AllowedFrom
		}
		return p.Allowed, trace.Source{Title: "its sheet", Basis: trace.BasisSheet}
	}
	a, word := AllowedAny, "any"
	if p.Kind == CheckSwing {
		a, word = AllowedLevelOrUp, "level or up"
	}
	l.a.Assumptions = append(l.a.Assumptions, trace.Assumption{
		Message: trace.Message{Code: AssumeAttitude, Args: []trace.Arg{trace.Str("part", l.mark(i)), trace.Str("allowed", word)}},
		Path:    l.partPath(i), Source: practice,
	})
	return a, practice
}

// hinge reminds of a level swing valve's cover, which goes on top, and warns
// where it is turned away from there: the flap then hangs askew and may not
// shut. A known cover that is on top needs no word.
func (l *laying) hinge(i int, part trace.Arg) {
	pl := l.a.Places[i]
	off := unit.Angle(math.Acos(math.Max(-1, math.Min(1, clockZero(pl.InDir).Dot(pl.Side)))))
	switch {
	case off > plumb:
		l.find(trace.Caution, l.partPath(i), FindHinge, unit.Of(off, unit.KindAngle), unit.Of(plumb, unit.KindAngle), practice,
			part, trace.Num("turned", off, unit.KindAngle))
	case l.in.Parts[i].Body.Reach.Length == 0:
		l.note(trace.Info, l.partPath(i), FindHinge, part)
	}
}

// split is one place where the chain opens.
type split struct {
	part, opening int // the part's pieces up to this one stay with the pump
	offset        float64
	lip           float64
}

// opens lists the places where the chain opens.
func (l *laying) opens() {
	for i := range l.in.Parts {
		for q, s := range sorted(l.in.Parts[i].Splits) {
			l.splits = append(l.splits, split{part: i, opening: q, offset: float64(s.Offset), lip: float64(s.Lip)})
		}
	}
	if len(l.splits) == 0 {
		l.note(trace.Danger, l.in.Path, FindNoUnion)
	}
}

// handRoom looks for room round each nut: all of the part but its cover, to
// everything that does not lie on the same straight leg.
func (l *laying) handRoom() {
	done := -1
	for _, s := range l.splits {
		if s.part == done {
			continue
		}
		done = s.part
		l.oneHand(s.part)
	}
}

func (l *laying) oneHand(part int) {
	var own *item
	for i := range l.items {
		if l.items[i].at == 2*part {
			own = &l.items[i]
		}
	}
	limit := float64(l.lim.hand)
	least, against := math.Inf(1), ""
	hold := func(d float64, name string) {
		if d < least {
			least, against = d, name
		}
	}
	for i := range own.shapes {
		s := &own.shapes[i]
		if s.leg < 0 {
			continue
		}
		d, wall := l.inside.room(s.solid)
		hold(d, string(wall))
		for k := range l.pump {
			o := shape{solid: l.pump[k], box: l.pump[k].bounds()}
			hold(near(s, &o, limit), "pump")
		}
		for k := range l.in.Vault.Obstacles {
			o := shape{solid: boxOf(l.in.Vault.Obstacles[k].Box), box: l.in.Vault.Obstacles[k].Box}
			hold(near(s, &o, limit), l.in.Vault.Obstacles[k].Name)
		}
		for k := range l.items {
			for m := range l.items[k].shapes {
				if o := &l.items[k].shapes[m]; &l.items[k] != own && o.leg != s.leg {
					d := near(s, o, limit)
					if own.meets(&l.items[k]) {
						d = math.Max(0, d) // no clearance is told between joined parts
					}
					hold(d, l.items[k].name)
				}
			}
		}
	}
	// A union that stands in something is told with the clearances.
	if least < limit-dust && least > -dust {
		l.find(trace.Caution, l.partPath(part), FindHand, tapeOf(least), unit.Of(l.lim.hand, unit.KindTape), l.lim.handSource,
			trace.Str("part", l.mark(part)), trace.Str("against", against), naming(against),
			tape("found", unit.Length(least)), tape("limit", l.lim.hand), tape("short", l.lim.hand-unit.Length(least)))
	}
}
