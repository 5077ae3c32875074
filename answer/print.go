package answer

import (
	"fmt"
	"io"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// printer keeps the first error of the writer, so that the printing reads
// straight down. What it prints are the sentences of a catalogue: here stand
// only their codes and the order and layout of the page.
type printer struct {
	w     io.Writer
	err   error
	say   *words.Language
	unit  unit.System
	style unit.Style // of amounts of money
}

// line prints a line; the texts in it are made plain.
func (p *printer) line(format string, args ...any) {
	for i, a := range args {
		if s, ok := a.(string); ok {
			args[i] = words.Plain(s)
		}
	}
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", args...)
	}
}

// head prints the title of a part.
func (p *printer) head(code string, args ...trace.Arg) {
	s := p.text(code, args...)
	p.line("\n%s\n%s", s, strings.Repeat("-", len([]rune(s))))
}

// text is a sentence of the catalogue, or a part of one.
func (p *printer) text(code string, args ...trace.Arg) string {
	return p.say.Say(trace.Message{Code: code, Args: args}, p.unit)
}

// tell prints a sentence, set in as far as the margin says.
func (p *printer) tell(margin, code string, args ...trace.Arg) {
	p.line("%s", margin+p.text(code, args...))
}

// heads gives the job's name as a title has it.
func (p *printer) heads(name string) trace.Arg {
	if name == "" {
		name = p.say.Word("paper.noname")
	}
	return str("name", name)
}

// value shows a value in the job's units, a bound told as one.
func (p *printer) value(v unit.Value) string { return p.say.Value(v, p.unit) }

func show[Q unit.Quantity](p *printer, q Q, k unit.Kind) string { return p.value(unit.Of(q, k)) }

// showBound shows what may be a bound.
func showBound[Q unit.Quantity](p *printer, q Q, k unit.Kind, b unit.Bound) string {
	return p.value(unit.Bounded(q, k, b))
}

// num and str are the arguments of a sentence.
func num[Q unit.Quantity](name string, q Q, k unit.Kind) trace.Arg { return trace.Num(name, q, k) }

func str(name, text string) trace.Arg { return trace.Str(name, text) }

// count is a number of things as an argument.
func count(name string, n int) trace.Arg { return num(name, unit.Ratio(n), unit.KindCount) }

// counted writes a number with its noun, which the catalogue has for one and
// for several.
func (p *printer) counted(n int, noun string) string {
	if n == 1 {
		return p.text(noun+"one", count("count", n))
	}
	return p.text(noun+"many", count("count", n))
}
