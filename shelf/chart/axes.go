package chart

import (
	"math"
	"strconv"
)

// Pixel is a place in the picture.
type Pixel struct{ X, Y float64 }

func (p Pixel) minus(q Pixel) Pixel { return Pixel{p.X - q.X, p.Y - q.Y} }

func (p Pixel) length() float64 { return math.Hypot(p.X, p.Y) }

// cross is the area that two ways span.
func cross(a, b Pixel) float64 { return a.X*b.Y - a.Y*b.X }

// Mark is a place on an axis with the value that stands there.
type Mark struct {
	Pixel
	Value float64
}

// Axes turns pixels into values and back; NewAxes makes one.
type Axes struct {
	flow, head [2]Mark
	u, v       Pixel // from the first mark to the second, along the flow and along the head
	area       float64
}

// Limits of the marks.
const (
	leastApart = 20.0 // pixels between the two marks of an axis: one off by a pixel is off by 5 %
	leastSine  = 0.17 // of the angle between the axes: 10 degrees
)

// NewAxes takes two marks on each axis. With u from the first mark of the flow
// to its second and v likewise of the head, any pixel p is
//
//	p = F1 + a u + b v = H1 + c u + d v
//	flow = f1 + a (f2 - f1), head = h1 + d (h2 - h1)
//
// so that the axes need neither cross at nought nor stand upright (an affine
// map from two directions; common practice, no source). The error is an *Error.
func NewAxes(flow, head [2]Mark) (*Axes, error) {
	for _, m := range []Mark{flow[0], flow[1], head[0], head[1]} {
		for _, n := range []float64{m.X, m.Y, m.Value} {
			if math.IsNaN(n) || math.Abs(n) > 1e9 {
				return nil, fail(FaultNumber)
			}
		}
	}
	a := &Axes{flow: flow, head: head, u: flow[1].minus(flow[0].Pixel), v: head[1].minus(head[0].Pixel)}
	for _, x := range []struct {
		name  string
		way   Pixel
		marks [2]Mark
	}{{"flow", a.u, flow}, {"head", a.v, head}} {
		switch {
		case x.way.length() < leastApart:
			return nil, fail(FaultNear, "axis", x.name, "least", strconv.Itoa(leastApart))
		case x.marks[0].Value == x.marks[1].Value:
			return nil, fail(FaultAlike, "axis", x.name)
		}
	}
	a.area = cross(a.u, a.v)
	if math.Abs(a.area) < leastSine*a.u.length()*a.v.length() {
		return nil, fail(FaultParallel)
	}
	return a, nil
}

// At gives the values at a pixel.
func (a *Axes) At(p Pixel) (flow, head float64) {
	along := cross(p.minus(a.flow[0].Pixel), a.v) / a.area
	up := cross(a.u, p.minus(a.head[0].Pixel)) / a.area
	return a.flow[0].Value + along*(a.flow[1].Value-a.flow[0].Value), a.head[0].Value + up*(a.head[1].Value-a.head[0].Value)
}

// Back gives the pixel where the values stand: the inverse of At.
func (a *Axes) Back(flow, head float64) Pixel {
	along := (flow - a.flow[0].Value) / (a.flow[1].Value - a.flow[0].Value)
	up := (head - a.head[0].Value) / (a.head[1].Value - a.head[0].Value)
	// The pixel is s away from F1 by u and from H1 by v: solve F1 + along u + b v
	// = H1 + c u + up v for b.
	between := a.head[0].minus(a.flow[0].Pixel)
	b := up + cross(a.u, between)/a.area
	return Pixel{a.flow[0].X + along*a.u.X + b*a.v.X, a.flow[0].Y + along*a.u.Y + b*a.v.Y}
}

// Fine is what one pixel is worth: the flow and the head between a pixel and the
// next along each axis.
func (a *Axes) Fine() (flow, head float64) {
	return math.Abs(a.flow[1].Value-a.flow[0].Value) / a.u.length(), math.Abs(a.head[1].Value-a.head[0].Value) / a.v.length()
}

// Slant is by how many degrees the angle between the axes misses the right one:
// none on a scanned sheet, some on a photograph.
func (a *Axes) Slant() float64 {
	sine := math.Abs(a.area) / (a.u.length() * a.v.length())
	return math.Acos(min(1, sine)) * 180 / math.Pi
}

// Off is how many pixels a place of the grid whose values are known lies from
// where the marks put it: what the map does not straighten.
func (a *Axes) Off(known Pixel, flow, head float64) float64 {
	return a.Back(flow, head).minus(known).length()
}
