package cli

import (
	"errors"
	"fmt"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// question is one thing that a new job needs to know: a flag, or a question
// where somebody can be asked.
type question struct {
	flag string
	path string // in the job
	ask  string // the question, and the flag's help
	kind unit.Kind
	eg   string               // example; the kind's when empty
	take string               // what is taken, and told, when nothing is said
	idle func(m *making) bool // the question does not arise
	may  bool                 // it may stay without an answer
	held func(m *making) error
}

// Paths of the one watercourse, lip, pump and run of a new job.
const (
	pathLip   = "/watercourses/0/parts/0/lip"
	pathCurve = "/pumps/0/curve"
	pathRun   = "/runs/0"
)

// questions stand in the order they are asked; units come first because bare
// numbers are read in them.
var questions = []question{
	{flag: "units", path: "/units", ask: "units of bare numbers and of the answer, us or metric", eg: "us"},
	{flag: "name", path: "/name", ask: "what the crew calls the job", eg: "Back garden"},
	{flag: "shape", path: "/pond/outline/shape", ask: "shape of the pond: rectangle, ellipse or circle", take: "rectangle"},
	{flag: "length", path: "/pond/outline/length", ask: "length of the pond at the water line, or its diameter", kind: unit.KindPlan},
	{flag: "width", path: "/pond/outline/width", ask: "width of the pond at the water line", kind: unit.KindPlan, idle: round},
	{flag: "depth", path: "/pond/depth", ask: "greatest depth of the pond", kind: unit.KindPlan},
	{flag: "rim", path: "/pond/rim", ask: "lowest point of the rim above the water line", kind: unit.KindElevation, eg: "3 in or 8 cm"},
	{flag: "lip-width", path: pathLip + "/width", ask: "clear width of the lip", kind: unit.KindTape},
	{flag: "lip-height", path: pathLip + "/crest", ask: "crest of the lip above the water line", kind: unit.KindElevation, eg: "4 ft or 1.2 m"},
	{flag: "flow", path: pathLip + "/wanted", ask: "flow wanted over the lip (nothing when a sheet depth is wanted)", kind: unit.KindFlow, may: true, idle: hasSheet},
	{flag: "sheet", path: pathLip + "/sheet", ask: "sheet depth wanted over the lip, in place of the flow", kind: unit.KindDepth, idle: hasFlow},
	{flag: "sheet-at", path: pathLip + "/sheetAt", ask: "where that depth is meant: upstream (still water above the crest), critical (on the crest) or edge (as it leaves)", eg: "edge", idle: hasNoSheet},
	{flag: "pipe-kind", path: pathRun + "/pipe/kind", ask: "kind of pipe", eg: "PVC Sch 40", held: pipeKind},
	{flag: "pipe-size", path: pathRun + "/pipe/size", ask: "nominal size of inch pipe, outside diameter of metric pipe", eg: "2", held: pipeSize},
	{flag: "pipe-length", path: pathRun + "/length", ask: "length of pipe from the pump to the lip", kind: unit.KindDistance},
}

// typed is the answer to a question given as a flag; help calls it by what it
// measures.
type typed struct{ text, what string }

func (t *typed) String() string     { return t.text }
func (t *typed) Set(s string) error { t.text = s; return nil }
func (t *typed) Type() string       { return t.what }

// answer makes the flag's value.
func (q *question) answer() *typed {
	if q.kind != unit.KindNone {
		return &typed{what: q.kind.Dim().String()}
	}
	return &typed{what: "text"}
}

func round(m *making) bool      { return m.j.Pond.Outline.Shape == "circle" }
func hasFlow(m *making) bool    { return !m.lip().Wanted.IsZero() }
func hasSheet(m *making) bool   { return !m.lip().Sheet.IsZero() }
func hasNoSheet(m *making) bool { return !hasSheet(m) }

func (m *making) lip() *job.Lip { return m.j.Watercourses[0].Parts[0].Lip }

// example shows how the answer may be written.
func (q *question) example(s unit.System) string {
	if q.eg == "" && q.kind != unit.KindNone {
		return q.kind.Example(s)
	}
	return q.eg
}

// set puts an answer in the job; the error is a sentence.
func (m *making) set(q *question, text string) error {
	before := m.j.Clone()
	if f := m.j.Set(q.path, text); f != nil {
		return m.sentence(f.Message)
	}
	if q.held != nil {
		if err := q.held(m); err != nil {
			m.j = before
			return err
		}
	}
	return nil
}

func (m *making) sentence(t trace.Message) error {
	return errors.New(m.say.Say(t, m.j.System()))
}

// pipeKind holds the kind against the book, so that a slip is told at once.
func pipeKind(m *making) error {
	kind := m.j.Runs[0].Pipe.Kind
	if len(m.book.PipeSizes(kind)) > 0 {
		return nil
	}
	kinds := m.book.Kinds()
	if n := near(kind, kinds); n != "" {
		return fmt.Errorf("there is no kind of pipe %q; near it: %s", kind, n)
	}
	return fmt.Errorf("there is no kind of pipe %q; there are: %s", kind, strings.Join(kinds, ", "))
}

func pipeSize(m *making) error {
	p := m.j.Runs[0].Pipe
	if p.Kind == "" {
		return nil // its own question tells
	}
	_, err := m.book.FindPipe(p.Kind, p.Size)
	if ce, ok := errors.AsType[*catalog.Error](err); ok {
		said := ce.Message()
		said.Args = append(said.Args, trace.At("where", m.j.PlaceOf(pathRun+"/pipe/size")))
		return m.sentence(said)
	}
	return err
}

// point adds one point of the pump's curve, written "54 gpm @ 16 ft".
func (m *making) point(text string) error {
	flow, head, ok := strings.Cut(text, "@")
	if !ok {
		return fmt.Errorf("%q has no @ between flow and head; write it like %q", text, m.pointExample())
	}
	curve := &m.j.Pumps[0].Curve
	n := len(*curve)
	for _, part := range []struct{ path, text string }{
		{pathCurve + fmt.Sprintf("/%d/flow", n), flow}, {pathCurve + fmt.Sprintf("/%d/head", n), head},
	} {
		if f := m.j.Set(part.path, strings.TrimSpace(part.text)); f != nil {
			*curve = (*curve)[:n]
			return m.sentence(f.Message)
		}
	}
	return nil
}

func (m *making) pointExample() string {
	s := m.j.System()
	return unit.KindFlow.Example(s) + " @ " + unit.KindHead.Example(s)
}
