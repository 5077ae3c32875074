package design

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Take gives a copy of the job with a remedy of a finding of its result taken:
// the fields changed as if the user had typed them. ok is false where the
// remedy cannot be written into the job. What the valves are to take beside
// another pump or pipe is worked out again on that pipe.
func Take(book *catalog.Book, j *job.Job, r *Result, m trace.Remedy) (next *job.Job, ok bool) {
	t := taker{book: book, job: j.Clone(), result: r, ok: true}
	switch m.Code {
	case RemedySill:
		t.shift("/vault/sill", -amount(m))
	case RemedyRim:
		t.shift("/pond/rim", amount(m))
	case RemedyFill:
		t.shift("/pond/water", amount(m))
	case RemedyDrain:
		t.shift("/pond/water", -amount(m))
	case RemedyTopUp:
		t.topUp(m)
	case RemedyValves:
		t.valves(r)
	case RemedyPump, RemedyOption:
		t.pump(m)
	case RemedyRun:
		t.run(m)
	default:
		t.ok = false
	}
	return t.job, t.ok
}

type taker struct {
	book   *catalog.Book
	job    *job.Job
	result *Result
	ok     bool
}

func (t *taker) set(path, value string) {
	if f := t.job.Set(path, value); f != nil {
		t.ok = false
	}
}

func amount(m trace.Remedy) unit.Length {
	for _, a := range m.Args {
		if a.Name == "amount" {
			return unit.Length(a.Value.SI)
		}
	}
	return 0
}

// stepped is a length as it is typed for a level: in the steps of a depth.
func (t *taker) stepped(by unit.Length) string {
	return unit.Value{SI: math.Abs(float64(by)), Kind: unit.KindDepth}.Format(t.job.System().Typed())
}

// shift moves a level, and keeps where they were those that the job counts from
// it: @water and @rim are the pond's own where the survey has no such points.
func (t *taker) shift(path string, by unit.Length) {
	own := map[string]string{"/pond/water": "water", "/pond/rim": "rim"}[path]
	for _, p := range t.job.Survey.Points {
		if p.Name == own && path == "/pond/water" {
			t.ok = false // the survey holds the water line: it was read there
			return
		}
		if p.Name == own {
			own = ""
		}
	}
	type level struct {
		path string
		from unit.Length
		to   unit.Length
		name string
	}
	var moves []level
	for at, q := range t.job.Quantities() {
		switch {
		case at == path:
			moves = append(moves, level{at, unit.Length(q.Read.SI), unit.Length(q.Read.SI) + by, q.Point})
		case own != "" && q.Point == own:
			moves = append(moves, level{at, unit.Length(q.Read.SI), unit.Length(q.Read.SI) - by, q.Point})
		}
	}
	found := false
	for _, m := range moves {
		found = found || m.path == path
		value := unit.Value{SI: float64(m.to), Kind: unit.KindElevation}.Format(t.job.System().Typed())
		if m.name != "" {
			value = t.from(m.name, m.to)
		}
		t.set(m.path, value)
	}
	t.ok = t.ok && found && by != 0
}

// from writes a level as an offset from a point.
func (t *taker) from(point string, by unit.Length) string {
	sign := " + "
	if by < 0 {
		sign = " - "
	}
	if math.Abs(float64(by)) < float64(unit.Millimetre)/10 {
		return "@" + point
	}
	return "@" + point + sign + t.stepped(by)
}

// topUp sets the line to which the pond is topped up while it runs.
func (t *taker) topUp(m trace.Remedy) {
	for _, a := range m.Args {
		switch a.Name {
		case "below":
			t.set("/pond/runningLine", t.from("rim", -unit.Length(a.Value.SI)))
			return
		case "over":
			if s := t.job.Vault.Sill; s.Point != "" {
				t.set("/pond/runningLine", t.from(s.Point, s.SI+unit.Length(a.Value.SI)))
			} else {
				t.set("/pond/runningLine", unit.Value{SI: float64(s.SI) + a.Value.SI, Kind: unit.KindElevation}.Format(t.job.System().Typed()))
			}
			return
		}
	}
	t.ok = false
}

// valves sets the valve of each feed to take what it must beyond its setting.
func (t *taker) valves(r *Result) {
	if r.Delivery == nil || r.Delivery.Share == nil {
		t.ok = false
		return
	}
	for _, f := range r.Delivery.Feeds {
		if f.K <= 0 {
			continue
		}
		last := -1
		for i := range t.job.Runs {
			if t.job.Runs[i].To == f.Name {
				if last >= 0 {
					t.ok = false // two runs end there: which valve is not told
				}
				last = i
			}
		}
		if last < 0 {
			t.ok = false
			continue
		}
		k := float64(t.job.Runs[last].Throttle.SI + f.K)
		t.set("/runs/"+strconv.Itoa(last)+"/throttle", strconv.FormatFloat(k, 'f', 1, 64))
	}
}

// pump puts another pump to use, or larger pipe, and sets the valves to it.
func (t *taker) pump(m trace.Remedy) {
	sizes := strings.Split(text(m.Message, "pipe"), ", ")
	if len(sizes) != len(t.job.Runs) {
		t.ok = false
		return
	}
	name := text(m.Message, "pump")
	t.set("/use", name)
	for i := range t.job.Pumps { // how the other pump stands is its own
		if p := &t.job.Pumps[i]; p.Name == name && !slices.ContainsFunc(p.Attitudes, func(a job.Attitude) bool { return a.Name == t.job.Assembly.Attitude }) {
			t.set("/assembly/attitude", "")
		}
	}
	for i, size := range sizes {
		at := "/runs/" + strconv.Itoa(i) + "/"
		if k := strings.LastIndexByte(size, ' '); k >= 0 {
			t.set(at+"pipe/kind", size[:k])
			t.set(at+"existing", "")
			t.set(at+"c", "")
			t.set(at+"roughness", "")
			size = size[k+1:]
		}
		if t.job.Runs[i].Pipe.Size != size {
			t.set(at+"existing", "") // another pipe is a new one
		}
		t.set(at+"pipe/size", size)
	}
	if !t.ok || len(t.job.Watercourses) < 2 {
		return
	}
	if r := Solve(t.book, t.job); r.Delivery != nil && r.Delivery.Share != nil {
		t.valves(r)
	}
}
