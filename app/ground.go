package app

import (
	"math"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
)

// ground is the grid that a pond's outline is drawn on: what stands in the job,
// to scale, and what a script needs to send what is drawn as edits. Drawn in
// centimetres, across to the right and up the page as the job counts.
type ground struct {
	Job, Kind, List string // address of the job; points or offsets; path of the list
	Step, Fine      float64
	Feet            bool
	Comma           bool // a length is written with a decimal comma, to be read so
	Base, Full      int

	View                  string
	Wide, High, Font, Dot float64
	Hit                   float64
	Lines                 []groundLine
	Marks                 []groundMark
	Edge, Raw             string // the outline; the corners joined where they make none
	Baseline              *groundLine
	Bar                   groundLine
	Area, Each            string
	Wider, Closer         string // how much ground to show instead; "" for no more
}

// groundLine is a line of the grid, with what it is numbered by.
type groundLine struct {
	X1, Y1, X2, Y2 float64
	Main           bool
	Text           string
	TX, TY         float64
}

// groundMark is a corner, or one side of a taped offset.
type groundMark struct {
	At, Label, Name, Side string
	X, Y                  string // metres
	CX, CY                float64
}

// spot is a place on the ground, metres.
type spot struct{ X, Y float64 }

// start turns the shape that stands into one that is drawn.
type start struct {
	Code   string
	Fields []startField
}

type startField struct{ Path, Text string }

// Limits of the ground that is shown: each step of it is half as wide again.
const (
	leastGround, mostGround = -3, 6
	outlinePath             = "/pond/outline"
)

// groundOf reads how much ground a request wants to see.
func groundOf(r *http.Request) int {
	n, err := strconv.Atoi(r.URL.Query().Get("ground"))
	if err != nil {
		return 0
	}
	return min(max(n, leastGround), mostGround)
}

// outlineIn puts the grid, or the ways to begin with it, into the outline's group.
// The list of the other way to measure is left out while it is empty.
func (a *app) outlineIn(r *http.Request, o *opened, groups []group) {
	for i := range groups {
		if groups[i].Path != "/pond" {
			continue
		}
		for k := range groups[i].Groups {
			g := &groups[i].Groups[k]
			if g.Path != outlinePath {
				continue
			}
			shape := o.job.Pond.Outline.Shape
			g.Lists = slices.DeleteFunc(g.Lists, func(l list) bool {
				return len(l.Elements) == 0 && (l.Path == outlinePath+"/points" || l.Path == outlinePath+"/offsets") && l.Path != outlinePath+"/"+shape
			})
			if shape == "points" || shape == "offsets" {
				g.Draw = a.ground(r, o, *g)
			} else {
				g.Starts = starts(o.job)
			}
			g.Filled = true
		}
	}
}

// starts gives the edits that make corners or taped offsets of the shape that
// stands, so that drawing goes on from it.
func starts(j *job.Job) []start {
	o := j.Pond.Outline
	at := func(list string, i int, name string, v unit.Length) startField {
		return startField{outlinePath + "/" + list + "/" + itoa(i) + "/" + name, unit.Of(v, unit.KindPlan).Format(j.System().Typed())}
	}
	length, width := o.Length.SI, o.Width.SI
	if o.Shape == "circle" {
		width = length
	}
	points, offsets := start{Code: "points"}, start{Code: "offsets"}
	switch {
	case length <= 0 || width <= 0:
	case o.Shape == "rectangle":
		for i, v := range [][2]unit.Length{{0, 0}, {length, 0}, {length, width}, {0, width}} {
			points.Fields = append(points.Fields, at("points", i, "x", v[0]), at("points", i, "y", v[1]))
		}
		for i, v := range []unit.Length{0, length} {
			offsets.Fields = append(offsets.Fields, at("offsets", i, "at", v), at("offsets", i, "left", width/2), at("offsets", i, "right", width/2))
		}
	default: // an ellipse, by eight places of its edge
		for i := range 8 {
			s, c := math.Sincos(float64(i) * math.Pi / 4)
			points.Fields = append(points.Fields, at("points", i, "x", length*unit.Length(1+c)/2), at("points", i, "y", width*unit.Length(1+s)/2))
		}
		for i := range 5 {
			s, c := math.Sincos(float64(i) * math.Pi / 4)
			half := width * unit.Length(s) / 2
			offsets.Fields = append(offsets.Fields, at("offsets", i, "at", length*unit.Length(1-c)/2), at("offsets", i, "left", half), at("offsets", i, "right", half))
		}
		smooth := startField{outlinePath + "/smooth", "true"}
		points.Fields, offsets.Fields = append(points.Fields, smooth), append(offsets.Fields, smooth)
	}
	list := []start{points, offsets}
	for i := range list {
		list[i].Fields = append(list[i].Fields, startField{outlinePath + "/shape", list[i].Code}, startField{outlinePath + "/length", ""}, startField{outlinePath + "/width", ""})
	}
	return list
}

// ground draws what stands of the outline.
func (a *app) ground(r *http.Request, o *opened, g group) *ground {
	out, feet, n := o.job.Pond.Outline, o.job.System().Is(unit.US), groundOf(r)
	d := &ground{
		Job: "/jobs/" + o.rev.ID, Kind: out.Shape, List: outlinePath + "/" + out.Shape, Feet: feet, Comma: o.job.System().Typed().Marks().Decimal == unit.Comma,
		Base: o.rev.Number, Full: job.MaxList, Each: unit.KindPlan.UnitName(o.job.System()),
	}
	var names []string
	for _, l := range g.Lists {
		for _, e := range l.Elements {
			if l.Path == d.List {
				names = append(names, e.Title)
			}
		}
	}
	var corners []spot
	mark := func(i int, side, label string, v spot) {
		name := names[i]
		if side != "" {
			name += ", " + strings.ToLower(a.Language.Field(side))
		}
		corners = append(corners, v)
		d.Marks = append(d.Marks, groundMark{At: itoa(i), Label: label, Name: name, Side: side, X: metres(v.X), Y: metres(v.Y), CX: v.X * 100, CY: -v.Y * 100})
	}
	if out.Shape == "points" {
		for i, p := range out.Points {
			mark(i, "", itoa(i+1), spot{X: float64(p.X.SI), Y: float64(p.Y.SI)})
		}
	} else {
		for i, f := range out.Offsets {
			mark(i, "right", itoa(i+1), spot{X: float64(f.At.SI), Y: -float64(f.Right.SI)})
		}
		for i := len(out.Offsets) - 1; i >= 0; i-- {
			f := out.Offsets[i]
			mark(i, "left", itoa(i+1), spot{X: float64(f.At.SI), Y: float64(f.Left.SI)})
		}
	}
	d.Raw = chain(corners)
	if shape, err := design.OutlineOf(out); err == nil {
		var edge []spot
		for _, v := range shape.Polyline(0.01) {
			edge = append(edge, spot(v))
		}
		d.Edge, d.Raw = chain(edge), ""
		d.Area = unit.Of(shape.Area(), unit.KindArea).Format(o.job.System())
	}
	d.lay(corners, n)
	if n < mostGround {
		d.Wider = "?ground=" + itoa(n+1) + "#ground"
	}
	if n > leastGround {
		d.Closer = "?ground=" + itoa(n-1) + "#ground"
	}
	return d
}

func metres(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// chain writes corners as a drawing has them.
func chain(points []spot) string {
	var b strings.Builder
	for _, v := range points {
		b.WriteString(strconv.FormatFloat(v.X*100, 'f', 1, 64) + "," + strconv.FormatFloat(-v.Y*100, 'f', 1, 64) + " ")
	}
	return strings.TrimSpace(b.String())
}

// Steps of the grid, and the most cells across.
var (
	feetSteps  = []float64{0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500}
	meterSteps = []float64{0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200}
)

const mostCells = 24

// lay finds the ground to show, at least 20 by 15 ft (6 by 4.5 m) unless less is
// asked for, and rules it.
func (d *ground) lay(corners []spot, n int) {
	size, steps, parts := 1.0, meterSteps, 5.0
	wide := 6.0
	if d.Feet {
		size, steps, parts, wide = float64(unit.Foot), feetSteps, 4, 20*float64(unit.Foot)
	}
	k := math.Pow(1.5, float64(n))
	c := spot{X: wide / 2, Y: wide * 3 / 8}
	if d.Kind == "offsets" {
		c.Y = 0
	}
	half := spot{X: wide / 2 * k, Y: wide * 3 / 8 * k}
	low, high := spot{X: c.X - half.X, Y: c.Y - half.Y}, spot{X: c.X + half.X, Y: c.Y + half.Y}
	if len(corners) > 2 && n < 0 { // closer: what is drawn decides
		low, high = corners[0], corners[0]
	}
	for _, v := range corners {
		low = spot{X: min(low.X, v.X), Y: min(low.Y, v.Y)}
		high = spot{X: max(high.X, v.X), Y: max(high.Y, v.Y)}
	}
	margin := max(high.X-low.X, high.Y-low.Y) / 16
	tall := high.Y - low.Y
	for _, s := range steps {
		if d.Step = s * size; (high.X-low.X+2*margin)/d.Step <= mostCells && (tall+2*margin)/d.Step <= mostCells {
			break
		}
	}
	d.Fine = d.Step / parts
	out := func(v float64, up bool) float64 {
		if up {
			return math.Ceil((v+margin)/d.Step) * d.Step
		}
		return math.Floor((v-margin)/d.Step) * d.Step
	}
	d.rule(spot{X: out(low.X, false), Y: out(low.Y, false)}, spot{X: out(high.X, true), Y: out(high.Y, true)}, size)
}

// rule draws the grid between two corners of the ground, with its numbers, the
// baseline and the scale bar.
func (d *ground) rule(low, high spot, size float64) {
	x0, x1, y0, y1 := low.X*100, high.X*100, -high.Y*100, -low.Y*100
	side := max(x1-x0, y1-y0)
	d.Font, d.Dot, d.Hit = side*0.036, side*0.016, side*0.065
	foot := d.Font * 3.2 // room for the numbers and the bar
	d.Wide, d.High = x1-x0+d.Font*2, y1-y0+foot
	d.View = numbers(x0-d.Font*2, y0, d.Wide, d.High)
	number := func(i int) string { return strconv.FormatFloat(float64(i)*d.Step/size, 'f', -1, 64) }
	for i := int(math.Round(low.X / d.Step)); float64(i)*d.Step <= high.X+1e-9; i++ {
		l := groundLine{X1: float64(i) * d.Step * 100, Y1: y0, Y2: y1, Main: i%5 == 0}
		if l.X2 = l.X1; l.Main {
			l.Text, l.TX, l.TY = number(i), l.X1, y1+d.Font*1.1
		}
		d.Lines = append(d.Lines, l)
	}
	for i := int(math.Round(low.Y / d.Step)); float64(i)*d.Step <= high.Y+1e-9; i++ {
		l := groundLine{X1: x0, X2: x1, Y1: -float64(i) * d.Step * 100, Main: i%5 == 0}
		if l.Y2 = l.Y1; l.Main {
			l.Text, l.TX, l.TY = number(i), x0-d.Font, l.Y1+d.Font*0.35
		}
		d.Lines = append(d.Lines, l)
	}
	if d.Kind == "offsets" {
		d.Baseline = &groundLine{X1: x0, X2: x1}
	}
	y := y1 + d.Font*2.2
	d.Bar = groundLine{X1: x0, X2: x0 + 5*d.Step*100, Y1: y, Y2: y, Text: number(5), TX: x0 + 5*d.Step*100 + d.Font*0.5, TY: y + d.Font*0.35}
}

func numbers(list ...float64) string {
	text := make([]string, 0, len(list))
	for _, v := range list {
		text = append(text, strconv.FormatFloat(v, 'f', 2, 64))
	}
	return strings.Join(text, " ")
}
