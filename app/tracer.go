package app

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/design"
	"plashet/engine/hydro"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/shelf/chart"
)

// tracer reads what was marked.
type tracer struct {
	a      *app
	form   map[string]string
	system unit.System
}

// pixel reads "120.5 340".
func pixel(text string) (chart.Pixel, bool) {
	x, y, ok := strings.Cut(strings.TrimSpace(strings.ReplaceAll(text, ",", " ")), " ")
	px, err := strconv.ParseFloat(x, 64)
	py, err2 := strconv.ParseFloat(strings.TrimSpace(y), 64)
	return chart.Pixel{X: px, Y: py}, ok && err == nil && err2 == nil && math.Abs(px) < 1e6 && math.Abs(py) < 1e6
}

// value reads what stands at a mark.
func (t *tracer) value(name string, k unit.Kind) (float64, string) {
	reading, err := unit.Parse(t.form[name], k, t.system)
	if err != nil {
		return 0, t.a.say("app.picture.value", "found", t.form[name], "where", t.a.say("app.picture.mark."+strings.TrimPrefix(name, "v-")), "example", k.Example(t.system))
	}
	return reading.SI, ""
}

// marks reads the two marks of an axis.
func (t *tracer) marks(one, two string, k unit.Kind) (m [2]chart.Mark, text string) {
	for i, key := range []string{one, two} {
		p, ok := pixel(t.form["at-"+key])
		if !ok {
			return m, t.a.say("app.picture.unset", "where", t.a.say("app.picture.mark."+key))
		}
		v, text := t.value("v-"+key, k)
		if text != "" {
			return m, text
		}
		m[i] = chart.Mark{Pixel: p, Value: v}
	}
	return m, ""
}

// pump makes the pump of what was marked; the sentence tells what is amiss.
func (t *tracer) pump(b *pictureBody) (*job.Job, string) {
	flow, text := t.marks("f1", "f2", unit.KindFlow)
	if text != "" {
		return nil, text
	}
	head, text := t.marks("h1", "h2", unit.KindHead)
	if text != "" {
		return nil, text
	}
	axes, err := chart.NewAxes(flow, head)
	var bad *chart.Error
	if errors.As(err, &bad) {
		return nil, t.a.Language.Say(bad.Message, t.system)
	}
	pixels, text := t.points()
	if text != "" {
		return nil, text
	}
	j := blankPump(b.Units)
	fineFlow, fineHead := axes.Fine()
	b.Fine = t.a.say("app.picture.fine", "flow", exact(fineFlow, fineFlow/10, unit.KindFlow, t.system), "head", exact(fineHead, fineHead/10, unit.KindHead, t.system))
	if s := axes.Slant(); s >= 2 {
		b.Slant = t.a.say("app.picture.slant", "degrees", strconv.FormatFloat(s, 'f', 0, 64))
	}
	if text := t.known(b, axes); text != "" {
		return nil, text
	}
	type read struct{ flow, head float64 }
	var points []read
	for i, p := range pixels {
		q, h := axes.At(p)
		// A finger's width beyond an axis is on it; further out no curve runs.
		if q < -5*fineFlow || h < -5*fineHead {
			return nil, t.a.say("app.picture.outside", "number", strconv.Itoa(i+1))
		}
		points = append(points, read{max(q, 0), max(h, 0)})
	}
	slices.SortFunc(points, func(x, y read) int {
		if x.flow < y.flow {
			return -1
		}
		return 1
	})
	for i, p := range points {
		at := "/pumps/0/curve/" + itoa(i)
		x := chartPoint{exact(p.flow, fineFlow, unit.KindFlow, t.system), exact(p.head, fineHead, unit.KindHead, t.system)}
		for _, e := range []edit{{at + "/flow", x.Flow}, {at + "/head", x.Head}} {
			if f := j.Set(e.path, e.text); f != nil {
				return nil, t.a.Language.Say(f.Message, t.system)
			}
		}
		b.Read = append(b.Read, x)
	}
	if f := j.Set("/pumps/0/note", t.a.say("app.picture.note")); f != nil {
		return nil, t.a.Language.Say(f.Message, t.system)
	}
	c, err := design.SheetCurve(&j.Pumps[0])
	var refused *hydro.Error
	if errors.As(err, &refused) {
		return nil, t.a.ofPump(refused.Message, t.system)
	}
	b.Fitted, b.Drawn = true, drawnOver(c, axes)
	for _, m := range c.Cautions() {
		b.Cautions = append(b.Cautions, t.a.ofPump(m, t.system))
	}
	return j, ""
}

// points reads the places along the curve, one on each line.
func (t *tracer) points() ([]chart.Pixel, string) {
	var out []chart.Pixel
	for line := range strings.Lines(t.form["points"]) {
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		p, ok := pixel(line)
		if !ok {
			return nil, t.a.say("app.picture.pixel", "found", line)
		}
		out = append(out, p)
	}
	switch {
	case len(out) < 2:
		return nil, t.a.say("app.picture.few")
	case len(out) > mostTraced:
		return nil, t.a.say("app.picture.many", "limit", strconv.Itoa(mostTraced))
	}
	return out, ""
}

// known tells how far a place whose values are known is off.
func (t *tracer) known(b *pictureBody, axes *chart.Axes) string {
	p, ok := pixel(b.Known)
	if !ok || b.KnownFlow == "" || b.KnownHead == "" {
		return ""
	}
	q, text := t.value("v-kf", unit.KindFlow)
	if text != "" {
		return text
	}
	h, text := t.value("v-kh", unit.KindHead)
	if text != "" {
		return text
	}
	flow, head := axes.At(p)
	b.Off = t.a.say("app.picture.off", "pixels", strconv.FormatFloat(axes.Off(p, q, h), 'f', 1, 64),
		"flow", unit.Of(unit.Flow(flow), unit.KindFlow).Format(t.system), "head", unit.Of(unit.Head(head), unit.KindHead).Format(t.system))
	return ""
}

// exact writes a quantity with as many decimals as a pixel is worth, in the
// usual unit; never with three, which could be thousands.
func exact(si, fine float64, k unit.Kind, s unit.System) string {
	name := k.UnitName(s)
	one := 1.0
	if r, err := unit.Parse("1 "+name, k, s); err == nil && r.SI > 0 {
		one = r.SI
	}
	decimals := 0
	for d := fine / one; d < 0.999 && decimals < 4; d *= 10 {
		decimals++
	}
	if decimals == 3 {
		decimals = 4
	}
	return strconv.FormatFloat(si/one, 'f', decimals, 64) + " " + name
}

// drawnOver gives the fitted curve in pixels of the picture, for a polyline.
func drawnOver(c *hydro.Curve, axes *chart.Axes) string {
	low, high, _, _ := c.Range()
	var b strings.Builder
	for i := range alongCurve + 1 {
		q := low + (high-low)*unit.Flow(i)/alongCurve
		h, _, _ := c.Head(q)
		p := axes.Back(float64(q), float64(h))
		fmt.Fprintf(&b, "%.1f,%.1f ", p.X, p.Y)
	}
	return strings.TrimSpace(b.String())
}
