package answer

import (
	"fmt"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
	"plashet/offer"
	"plashet/words"
)

// OfferPart is one part of an offer as values: what Offered and OfferedTo print
// under one head.
type OfferPart struct {
	Head  string
	Lines []OfferLine
}

// OfferLine is one line of it: a sentence, or a name with its amount.
type OfferLine struct {
	Text, Amount string
	Deep         bool // it belongs to the line before
	Sum          bool // it adds up what stands above
}

// OfferParts gives an offer as values: as the client sees one design, counted
// from 0, or for the firm.
func OfferParts(j *job.Job, d *offer.Document, design int, client bool, l *words.Language) []OfferPart {
	p := &offered{printer: printer{say: l, unit: j.System(), style: j.Style()}, j: j, parts: []OfferPart{}}
	if client {
		p.client(d, design)
	} else {
		p.firm(d, design)
	}
	return p.parts
}

// head, line, tell and row gather where parts are gathered, else they print.

func (p *offered) head(code string) {
	if p.parts == nil {
		p.printer.head(code)
		return
	}
	p.parts = append(p.parts, OfferPart{Head: p.text(code)})
}

func (p *offered) line(format string, args ...any) {
	if p.parts == nil {
		p.printer.line(format, args...)
		return
	}
	p.gather(fmt.Sprintf(format, args...), "", false)
}

func (p *offered) tell(margin, code string, args ...trace.Arg) {
	if p.parts == nil {
		p.printer.tell(margin, code, args...)
		return
	}
	p.gather(margin+p.text(code, args...), "", false)
}

// row prints a name and an amount.
func (p *offered) row(name, amount string) {
	if p.parts == nil {
		p.printer.line("%-44s %16s", name, amount)
		return
	}
	p.gather(name, amount, name == p.word("offer.row.total") || name == p.word("offer.row.sofar") || name == p.word("offer.row.after") || name == p.word("offer.row.cost"))
}

func (p *offered) gather(text, amount string, sum bool) {
	plain := strings.TrimLeft(words.Plain(text), " ")
	if plain == "" {
		return
	}
	if len(p.parts) == 0 {
		p.parts = append(p.parts, OfferPart{})
	}
	at := &p.parts[len(p.parts)-1]
	at.Lines = append(at.Lines, OfferLine{plain, amount, strings.HasPrefix(text, " "), sum})
}
