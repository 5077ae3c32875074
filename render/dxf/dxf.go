// Package dxf writes a sheet of package drawing as a drawing exchange file in the
// published ASCII form (DXF Reference, release 2007: AC1021, text in UTF-8), for
// programs that draw gardens and buildings. A sheet with a scale comes out at full size, in
// inches or millimetres as the file declares, with y up and the picture's own
// zero; lines lie on layers named in words of the trade. What a fill of the sheet
// covers is left out, for such files have no fills that cover; areas of water are
// hatched on a layer of their own. Texts stay texts.
// The same sheet always gives the same bytes.
package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"

	"plashet/drawing"
)

// ErrNotFinite tells that a coordinate is not a number, or infinite.
var ErrNotFinite = errors.New("the sheet holds a coordinate that is not a number")

// Unit is what a length of one stands for.
type Unit uint8

// The units.
const (
	Inch Unit = iota
	Millimetre
)

// perM is how many of them make a metre.
func (u Unit) perM() float64 {
	if u == Millimetre {
		return 1000
	}
	return 1 / 0.0254
}

// Write writes the sheet; without a scale of its own it comes out as large as it
// is on paper. The errors are ErrNotFinite, with nothing written, and those of
// the writer.
func Write(w io.Writer, s *drawing.Sheet, u Unit) error {
	e := &encoder{unit: u, handle: firstHandle, low: point{math.Inf(1), math.Inf(1)}, high: point{math.Inf(-1), math.Inf(-1)}}
	e.perMM, e.zero = u.perM()/1000, drawing.Point{Y: s.Height}
	if s.Scale.PerM > 0 {
		e.perMM, e.zero = u.perM()/s.Scale.PerM, s.Scale.Zero
	}
	e.sheet(s)
	entities := e.b.String()
	e.b.Reset()
	e.head()
	e.tables()
	e.blocks()
	e.section("ENTITIES")
	e.b.WriteString(entities)
	e.put(0, "ENDSEC")
	e.objects()
	e.put(0, "EOF")
	if e.bad {
		return ErrNotFinite
	}
	_, err := w.Write(e.b.Bytes())
	return err
}

// point is a place in the file, y up.
type point struct{ x, y float64 }

// encoder writes group codes and values.
type encoder struct {
	b         bytes.Buffer
	unit      Unit
	perMM     float64 // of the sheet
	zero      drawing.Point
	handle    int
	low, high point // of all that is drawn
	bad       bool
}

// put writes a group of text or a name.
func (e *encoder) put(code int, value string) {
	fmt.Fprintf(&e.b, "%3d\n%s\n", code, value)
}

func (e *encoder) whole(code, value int) { e.put(code, strconv.Itoa(value)) }

// real writes a number to a thousandth of a thousandth: far finer than any tape.
func (e *encoder) real(code int, v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		e.bad, v = true, 0
	}
	r := math.Floor(v*1e6+0.5+1e-3) / 1e6
	if r == 0 {
		r = 0 // without sign
	}
	s := strconv.FormatFloat(r, 'f', -1, 64)
	if r == math.Trunc(r) {
		s = strconv.FormatFloat(r, 'f', 1, 64)
	}
	e.put(code, s)
}

// at writes a place by its codes for x, y and z.
func (e *encoder) at(code int, p point) {
	e.real(code, p.x)
	e.real(code+10, p.y)
	e.real(code+20, 0)
}

func (e *encoder) section(name string) {
	e.put(0, "SECTION")
	e.put(2, name)
}

// next gives a fresh handle.
func (e *encoder) next() string {
	e.handle++
	return strconv.FormatInt(int64(e.handle), 16)
}

// world turns a place on the sheet into one of the file, and keeps the extent.
func (e *encoder) world(p drawing.Point) point {
	q := point{(p.X - e.zero.X) * e.perMM, (e.zero.Y - p.Y) * e.perMM}
	e.low = point{math.Min(e.low.x, q.x), math.Min(e.low.y, q.y)}
	e.high = point{math.Max(e.high.x, q.x), math.Max(e.high.y, q.y)}
	return q
}
