// Package answer prints a design's result: as text for reading and as JSON
// with stable names. It computes nothing, and holds no sentence: those stand in
// package words.
package answer

import (
	"io"
	"slices"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/words"
)

// Text prints the answer for reading. Faults met in reading the file stand with
// the design's.
func Text(w io.Writer, r *design.Result, read []trace.Fault, l *words.Language) error {
	p := &printer{w: w, say: l, unit: r.Units, style: r.Style}
	p.line("%s", r.Name)
	if r.Note != "" {
		p.line("%s", r.Note)
	}
	p.verdict(r, len(read))
	p.faults(append(slices.Clone(read), r.Faults...))
	p.findings(r)
	p.delivery(r)
	p.options(r)
	p.levels(r)
	p.motion(r)
	p.sure(r)
	p.upkeep(r)
	p.assembly(r)
	p.cutting(r)
	p.glue(r)
	p.materials(r)
	p.assumptions(r)
	return p.err
}
