// Package trace holds what makes an answer open to question: figures with
// their formula and source, assumptions in force, findings, and faults in the
// input. All of it is data; text is made at the edge from the code and the
// arguments (package words), so that a second language needs no engine change.
package trace

import (
	"strings"

	"plashet/engine/unit"
)

// Basis says how far a value can be trusted.
type Basis string

// The bases, strongest first.
const (
	BasisMeasured  Basis = "measured"  // read by the fitter on this job
	BasisSheet     Basis = "sheet"     // read on the maker's sheet for this job
	BasisPublished Basis = "published" // read in the document that the source names
	BasisLibrary   Basis = "library"   // computed by a named general-purpose library or a stated formula
	BasisPractice  Basis = "practice"  // common practice, no source
	BasisMemory    Basis = "memory"    // from memory, to be checked before it is relied on
	BasisGuess     Basis = "guess"     // the user's own guess
	BasisJob       Basis = "job"       // typed in the job, which does not say where it comes from
)

// Source says where a value, a formula or a limit comes from.
type Source struct {
	Title string `json:"title"`          // publication, edition, table or equation; "common practice, no source" otherwise
	Basis Basis  `json:"basis"`          //
	Note  string `json:"note,omitempty"` // what to know before using it
}

// Term is one value that went into a figure.
type Term struct {
	Symbol string     // as in the formula
	Value  unit.Value // with its kind
	From   string     // path in the job ("/pond/water"), ID of another figure, or "" for a constant of the formula
	Source Source     // where the value itself comes from; zero when From tells it
}

// Figure is one number of the answer that can be opened to its formula, the
// values in it and its source.
type Figure struct {
	ID      string // stable, dotted: "fall.upper.flow"; documented in docs/answer.md
	Value   unit.Value
	Formula string // plain text in the terms' symbols
	Terms   []Term
	Source  Source
}

// Severity orders findings.
type Severity uint8

// Info is worth knowing, Caution asks for a look, Danger stops the job.
const (
	Info Severity = iota
	Caution
	Danger
)

func (s Severity) String() string { return [...]string{"info", "caution", "danger"}[s] }

// Arg is one named value in a message. Exactly one of Value and Text is used.
type Arg struct {
	Name   string
	Value  unit.Value
	Text   string
	Places []Place // where Text tells places in the job: the same step by step, for another language
}

// Place is a way into the job, step by step: watercourse “cascade”, part 3, width.
type Place []Step

// Step is one step of it: the document's word, and the name or number of what
// it is, if any.
type Step struct{ Word, Name string }

// String tells the place in the document's own words.
func (p Place) String() string {
	var b strings.Builder
	for i, s := range p {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(s.Word)
		if s.Name != "" {
			b.WriteString(" ")
			b.WriteString(s.Name)
		}
	}
	return b.String()
}

// Same tells that two arguments say the same.
func (a Arg) Same(b Arg) bool { return a.Name == b.Name && a.Value == b.Value && a.Text == b.Text }

// At makes an argument from places in the job.
func At(name string, places ...Place) Arg {
	told := make([]string, 0, len(places))
	for _, p := range places {
		told = append(told, p.String())
	}
	return Arg{Name: name, Text: strings.Join(told, "; "), Places: places}
}

// Num makes an argument from a typed quantity.
func Num[Q unit.Quantity](name string, q Q, k unit.Kind) Arg {
	return Arg{Name: name, Value: unit.Of(q, k)}
}

// Str makes an argument from the job's own words (a name, what was typed).
func Str(name, text string) Arg { return Arg{Name: name, Text: text} }

// Flag is an argument that says no more than that it is there.
func Flag(name string) Arg { return Arg{Name: name, Text: flagged} }

const flagged = "yes"

// Message is a text yet to be made: the code picks the sentence, the
// arguments fill it.
type Message struct {
	Code string
	Args []Arg
}

// Remedy is one way to mend a finding, with its effect worked out by running
// the design again, not by a rule.
type Remedy struct {
	Message
	Effect []Effect
}

// Effect is one figure before and after a remedy.
type Effect struct {
	Figure        string // Figure.ID
	Before, After unit.Value
}

// Finding is the one kind of result of every check.
type Finding struct {
	Message                 // Code is stable: "levels.start.starves"
	Path         string     // where in the job: "/vault/sill"
	Severity     Severity   //
	Found        unit.Value // what was found
	Limit        unit.Value // what it is held against
	LimitSource  Source     // whose limit it is
	Remedies     []Remedy   // the best first
	MoreRemedies int        // how many are left out, because nobody weighs so many
	Accepted     string     // why the user accepts it; empty when it stands
}

// Assumption is a default in force.
type Assumption struct {
	Message            // Code: "assume.water.temperature"
	Path    string     // where the job could say better
	Value   unit.Value //
	Source  Source     //
	Weight  []Effect   // what moves when the value is taken to the other end of its usual range
	Turns   bool       // the other end would turn a verdict
}

// Fault is an error in the input or in a part of the computation: it voids
// only what depends on it.
type Fault struct {
	Message
	Path string // "/watercourses/0/parts/1/lip/width"
	Line int    // in the job file, 0 when not known
}
