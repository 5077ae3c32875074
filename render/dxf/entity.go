package dxf

import (
	"math"
	"strings"

	"plashet/drawing"
)

// drawn is an item in the order of drawing, with its layer.
type drawn struct {
	item  drawing.Item
	layer string
}

// layerOf names a layer by a group's name; the outermost group decides.
func layerOf(group string) string {
	kind, _, _ := strings.Cut(group, " ")
	switch kind {
	case "pond", "water", "ground", "pump", "heights", "vault", "sizes", "marks":
		return strings.ToUpper(kind)
	case "part":
		return "FITTINGS"
	case "piece":
		return "PIPE"
	case "length":
		return "SIZES"
	case "beside": // drawn to scale, but where it stands no job tells
		return "NOT-PLACED"
	}
	return "OBSTACLES"
}

// listed gives all items with their layers.
func listed(items []drawing.Item, layer string) []drawn {
	var out []drawn
	for _, it := range items {
		g, ok := it.(drawing.Group)
		if !ok {
			out = append(out, drawn{it, layer})
			continue
		}
		of := layer
		if layer == "NOTES" {
			of = layerOf(g.Name)
		}
		out = append(out, listed(g.Items, of)...)
	}
	return out
}

// sheet writes the entities of a sheet.
func (e *encoder) sheet(s *drawing.Sheet) {
	items := listed(s.Items, "NOTES")
	hiding := covers(items)
	for i, it := range items {
		for len(hiding) > 0 && hiding[0].after <= i {
			hiding = hiding[1:]
		}
		switch v := it.item.(type) {
		case drawing.Line:
			e.chain(it.layer, []drawing.Point{v.From, v.To}, false, v.Pen, hiding)
		case drawing.Polyline:
			e.chain(it.layer, v.Points, false, v.Pen, hiding)
		case drawing.Polygon:
			if isWater(it.layer, v.Fill) {
				e.hatch(v.Points, hiding)
			}
			e.solid(it.layer, v)
			e.chain(it.layer, v.Points, true, v.Pen, hiding)
		case drawing.Arc:
			if isWater(it.layer, v.Fill) {
				e.hatch(flat(v), hiding)
			}
			e.arc(it.layer, v, hiding)
		case drawing.Text:
			e.text(it.layer, v)
		}
	}
}

// begin starts an entity.
func (e *encoder) begin(kind, layer, class string, pen drawing.Pen) {
	e.put(0, kind)
	e.put(5, e.next())
	e.put(330, hModel)
	e.put(100, "AcDbEntity")
	e.put(8, layer)
	switch pen.Dash {
	case drawing.Dashed:
		e.put(6, "DASHED")
	case drawing.Dotted:
		e.put(6, "DOTTED")
	}
	switch pen.Ink {
	case drawing.Pencil:
		e.whole(62, 8)
	case drawing.Water:
		e.whole(62, 5)
	}
	if w := weight(pen.Wide); w > 0 {
		e.whole(370, w)
	}
	if class != "" { // else more of what all entities have follows
		e.put(100, class)
	}
}

// weight is the width of a line in hundredths of a millimetre, the nearest of
// those that the format knows; 0 for none.
func weight(mm float64) int {
	best := 0
	for _, w := range [...]int{5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100} {
		if mm > 0 && (best == 0 || math.Abs(float64(w)-mm*100) < math.Abs(float64(best)-mm*100)) {
			best = w
		}
	}
	return best
}

func none(p drawing.Pen) bool { return p.Ink == drawing.Clear || p.Wide <= 0 }

// chain writes what is seen of a chain of lines.
func (e *encoder) chain(layer string, points []drawing.Point, closed bool, pen drawing.Pen, later []cover) {
	if none(pen) || len(points) < 2 {
		return
	}
	for _, p := range points {
		if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
			e.bad = true
			return
		}
	}
	whole := points
	if closed {
		whole = append(append([]drawing.Point{}, points...), points[0])
	}
	parts, all := visible(whole, later)
	if all && closed {
		e.polyline(layer, points, true, pen)
		return
	}
	for _, p := range parts {
		e.polyline(layer, p, false, pen)
	}
}

// polyline writes a chain; two points are a line.
func (e *encoder) polyline(layer string, points []drawing.Point, closed bool, pen drawing.Pen) {
	if len(points) == 2 {
		e.begin("LINE", layer, "AcDbLine", pen)
		e.at(10, e.world(points[0]))
		e.at(11, e.world(points[1]))
		return
	}
	e.begin("LWPOLYLINE", layer, "AcDbPolyline", pen)
	e.whole(90, len(points))
	flags := 0
	if closed {
		flags = 1
	}
	e.whole(70, flags)
	for _, p := range points {
		q := e.world(p)
		e.real(10, q.x)
		e.real(20, q.y)
	}
}

// solid writes an arrow's head or a bar that is filled with the ink of lines.
// Of other fills only water is written (hatch).
func (e *encoder) solid(layer string, v drawing.Polygon) {
	if v.Fill != drawing.Black && v.Fill != drawing.Water || len(v.Points) < 3 || len(v.Points) > 4 {
		return
	}
	e.begin("SOLID", layer, "AcDbTrace", drawing.Pen{Ink: v.Fill})
	order := []int{0, 1, 2, 2}
	if len(v.Points) == 4 {
		order = []int{0, 1, 3, 2} // the format goes across
	}
	for k, i := range order {
		e.at(10+k, e.world(v.Points[i]))
	}
}

// arc writes a circle, an arc, an ellipse or, where a part of it is hidden, the
// rest as chains. The sheet's angles run clockwise, the file's the other way.
func (e *encoder) arc(layer string, a drawing.Arc, later []cover) {
	if none(a.Pen) {
		return
	}
	if sum := a.Centre.X + a.Centre.Y + a.RX + a.RY + a.Turn + a.From + a.Sweep; math.IsNaN(sum) || math.IsInf(sum, 0) {
		e.bad = true
		return
	}
	points := flat(a)
	parts, all := visible(points, later)
	const thin = 1e-4 // an ellipse seen from its side
	if !all || math.Min(a.RX, a.RY) < thin*math.Max(a.RX, a.RY) {
		for _, p := range parts {
			e.polyline(layer, p, false, a.Pen)
		}
		return
	}
	from, to := -(a.From + a.Sweep), -a.From
	if a.Sweep < 0 {
		from, to = to, from
	}
	round := math.Abs(a.Sweep) >= 360
	if math.Abs(a.RX-a.RY) < 1e-9*a.RX {
		class := "AcDbCircle"
		kind := "ARC"
		if round {
			kind = "CIRCLE"
		}
		e.begin(kind, layer, class, a.Pen)
		e.at(10, e.world(a.Centre))
		e.real(40, a.RX*e.perMM)
		e.reach(points)
		if !round {
			e.put(100, "AcDbArc")
			e.real(50, turned(from-a.Turn))
			e.real(51, turned(to-a.Turn))
		}
		return
	}
	e.ellipse(layer, a, from, to, round)
	e.reach(points)
}

// ellipse writes an ellipse by its longer axis.
func (e *encoder) ellipse(layer string, a drawing.Arc, from, to float64, round bool) {
	long, short, turn := a.RX, a.RY, -a.Turn
	if short > long {
		long, short, turn = short, long, turn-90
		from, to = from+90, to+90
	}
	e.begin("ELLIPSE", layer, "AcDbEllipse", a.Pen)
	e.at(10, e.world(a.Centre))
	sin, cos := math.Sincos(turn * math.Pi / 180)
	e.at(11, point{long * cos * e.perMM, long * sin * e.perMM})
	e.real(40, short/long)
	if round {
		e.real(41, 0)
		e.real(42, 2*math.Pi)
		return
	}
	e.real(41, turned(from)*math.Pi/180)
	e.real(42, turned(to)*math.Pi/180)
}

// turned brings an angle between 0 and 360 degrees.
func turned(degrees float64) float64 {
	d := math.Mod(degrees, 360)
	if d < 0 {
		d += 360
	}
	return d
}

// reach widens the extent to points that are not written themselves.
func (e *encoder) reach(points []drawing.Point) {
	for _, p := range points {
		e.world(p)
	}
}
