package answer

import (
	"strings"

	"plashet/engine/cut"
	"plashet/engine/design"
	"plashet/engine/glue"
	"plashet/engine/unit"
)

// Cutting is one cutting plan.
type Cutting struct {
	Pipe     string `json:"pipe" doc:"kind and size"`
	NotToCut bool   `json:"notToCut,omitempty" doc:"pieces of an assembly that cannot be built are among them"`
	Bars     []Bar  `json:"bars" doc:"what is cut up"`
	Proven   bool   `json:"proven" doc:"no plan is better"`
	Method   string `json:"method" doc:"how it was planned and what came first, in a few words"`

	Cautions []string `json:"cautions" doc:"what can hurt at the saw"`
}

// Bar is one stick or offcut.
type Bar struct {
	From    string   `json:"from" doc:"stick or offcut"`
	Length  Quantity `json:"length" doc:"its length"`
	Cuts    []CutOff `json:"cuts" doc:"pieces cut from it"`
	Remnant Quantity `json:"remnant" doc:"what is left"`
}

// CutOff is one piece from a bar.
type CutOff struct {
	Mark   string   `json:"mark" doc:"mark on the piece"`
	Length Quantity `json:"length" doc:"its length"`
}

func (p *printer) cutting(r *design.Result) {
	for _, c := range r.Cutting {
		p.head("print.head.cutting", str("pipe", c.Pipe))
		p.notToCut(c.NotToCut)
		p.cautions([]string{glue.CautionSaw}, map[string]bool{})
		for _, b := range c.Plan.Bars {
			from := "print.bar.stick"
			if b.From == cut.FromOffcut {
				from = "print.bar.offcut"
			}
			pieces := make([]string, 0, len(b.Cuts))
			for _, k := range b.Cuts {
				pieces = append(pieces, c.Pieces[k.Piece].Mark+" "+show(p, k.Length, unit.KindTape))
			}
			p.tell("", from, num("length", b.Length, unit.KindTape), str("pieces", strings.Join(pieces, ", ")), num("left", b.Remnant, unit.KindTape))
		}
		end := "cutting.unproven"
		if c.Plan.Proof.Proven() {
			end = "cutting.proven"
		}
		p.line("%s: %s", p.say.Word("cutting.method"), p.say.Word(end))
	}
}
