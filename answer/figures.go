package answer

import (
	"io"
	"strconv"

	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/words"
)

// Figures prints every figure opened: formula, the values in it, source.
func Figures(w io.Writer, r *design.Result, l *words.Language) error {
	p := &printer{w: w, say: l, unit: r.Units}
	p.head("print.head.figures")
	for _, f := range r.Figures {
		p.line("%s = %s", f.ID, p.value(f.Value))
		p.line("    %s", f.Formula)
		for _, t := range f.Terms {
			value := ""
			if t.Value.Kind != unit.KindNone {
				value = " = " + p.value(t.Value)
			}
			p.line("    %s%s  %s", t.Symbol, value, t.From)
		}
		p.tell("    ", "print.by", str("source", f.Source.Title), str("basis", p.basis(f.Source)))
	}
	return p.err
}

// coefficient shows a loss coefficient, which is known no better.
func coefficient(k unit.Ratio) string { return strconv.FormatFloat(float64(k), 'f', 1, 64) }
