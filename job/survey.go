package job

import (
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// ClosureUnsaid is the misclosure allowed between a given and a levelled
// elevation where no tolerance is entered: two rod readings, each read to a
// hundredth of a foot (3 mm). Common practice, no source.
const ClosureUnsaid unit.Length = 0.006

// Reduced is the survey brought to one datum.
type Reduced struct {
	Points   []ReducedPoint // those whose elevation is known, in the survey's order
	Setups   []ReducedSetup // those whose height is known, in the survey's order
	Closures []Closure      // points both given and levelled

	levels map[string]elevation // by name; also "water" and "rim" of the pond
}

// ReducedPoint is a point's elevation.
type ReducedPoint struct {
	Name      string
	Path      string // "/survey/points/3"
	Elevation unit.Length
	Plus      unit.Length // tolerances entered on the way to it, added up
	Setup     string      // standing it was levelled from; "" when it is given
}

// ReducedSetup is the height of instrument of one standing of the level:
// elevation of the benchmark + reading on it.
type ReducedSetup struct {
	Name   string
	Path   string // "/survey/setups/0"
	Height unit.Length
	Plus   unit.Length
}

// Closure compares a point's given elevation with the one levelled.
type Closure struct {
	Path       string
	Misclosure unit.Length // levelled - given
	Limit      unit.Length
	Assumed    bool // Limit is ClosureUnsaid: no tolerance was entered
}

type elevation struct{ at, plus unit.Length }

// Level gives a level's elevation above the datum; false when it was left
// empty or refers to a point whose elevation is not known.
func (r Reduced) Level(l Level) (unit.Length, bool) {
	if l.IsZero() {
		return 0, false
	}
	if l.Point == "" {
		return l.SI, true
	}
	base, ok := r.levels[l.Point]
	return base.at + l.SI, ok
}

// Point gives the elevation of a named point; "water" and "rim" are those of
// the pond unless the survey has points of that name.
func (r Reduced) Point(name string) (unit.Length, bool) {
	e, ok := r.levels[name]
	return e.at, ok
}

// Elevations reduces the rod readings to one datum and finds every level of
// the job. Height of instrument = elevation of the benchmark + reading on it;
// elevation of a point = height of instrument - reading on it (differential
// levelling, any surveying handbook). A benchmark may be a point found from
// another standing. Each fault voids only the points and levels that hang on
// it. The faults are among those of Validate.
func (j *Job) Elevations() (Reduced, []trace.Fault) {
	r := reduce(j)
	r.tellAll()
	for i := range r.faults {
		r.faults[i].Args = append(r.faults[i].Args, trace.At("where", j.PlaceOf(r.faults[i].Path)))
	}
	return r.out, r.faults
}

// oddPointName tells whether a point's name could be taken for a level with an
// offset, or could not be written behind an @.
func oddPointName(name string) bool {
	at, _, _ := offsetAt(name)
	return at >= 0 || strings.HasPrefix(name, "@")
}
