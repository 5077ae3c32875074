package job

import (
	"slices"
	"strconv"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// survey holds the names of the points, which levels refer to.
func (c *checker) survey() {
	for i, p := range c.j.Survey.Points {
		if oddPointName(p.Name) {
			c.add("/survey/points/"+strconv.Itoa(i)+"/name", CodePointName, trace.Str("found", snippet(p.Name)))
		}
	}
}

// need notes a size that a shape cannot do without.
func (c *checker) need(given bool, path, shape string) {
	if !given {
		c.add(path, CodeShapeNeeds, trace.Str("shape", shape), trace.Str("doc", docOf(path)))
	}
}

// idle notes a field that a shape does not use: left in silence it would look
// as if it counted.
func (c *checker) idle(given bool, path, shape string) {
	if given {
		c.add(path, CodeShapeIdle, trace.Str("shape", shape))
	}
}

func (c *checker) pond(r Reduced) {
	o := &c.j.Pond.Outline
	at := "/pond/outline"
	type size struct {
		name  string
		given bool
	}
	sizes := []size{{"length", !o.Length.IsZero()}, {"width", !o.Width.IsZero()}, {"points", len(o.Points) > 0}, {"offsets", len(o.Offsets) > 0}}
	if needs, ok := map[string][]string{
		"rectangle": {"length", "width"}, "ellipse": {"length", "width"}, "circle": {"length"},
		"points": {"points"}, "offsets": {"offsets"},
	}[o.Shape]; ok {
		for _, s := range sizes {
			if slices.Contains(needs, s.name) {
				c.need(s.given, at+"/"+s.name, o.Shape)
			} else {
				c.idle(s.given, at+"/"+s.name, o.Shape)
			}
		}
		c.idle(o.Smooth && o.Shape != "points" && o.Shape != "offsets", at+"/smooth", o.Shape)
	}
	if n := len(o.Points); o.Shape == "points" && (n == 1 || n == 2) {
		c.add(at+"/points", CodeFewPoints, trace.Str("count", strconv.Itoa(n)), trace.Str("least", "3"))
	}
	if o.Shape == "offsets" && len(o.Offsets) == 1 {
		c.add(at+"/offsets", CodeFewPoints, trace.Str("count", "1"), trace.Str("least", "2"))
	}
	c.section()
	water, haveWater := r.Level(c.j.Pond.Water)
	rim, haveRim := r.Level(c.j.Pond.Rim)
	if haveWater && haveRim && rim < water {
		c.add("/pond/rim", CodeRimLow, trace.Num("rim", rim, unit.KindElevation), trace.Num("water", water, unit.KindElevation))
	}
	c.namesake("/pond/water", nameWater, &c.j.Pond.Water, r)
	c.namesake("/pond/rim", nameRim, &c.j.Pond.Rim, r)
	if line, ok := r.Level(c.j.Pond.RunningLine); ok && haveRim && line > rim {
		c.add("/pond/runningLine", CodeLineHigh, trace.Num("line", line, unit.KindElevation), trace.Num("rim", rim, unit.KindElevation))
	}
}

// namesake holds the pond's water line or rim against the survey point of that
// name: @water must not mean one thing and the pond's water line another.
func (c *checker) namesake(path, name string, l *Level, r Reduced) {
	level, ok := r.Level(*l)
	point, known := r.Point(name)
	if !ok || !known || l.Point == name && l.SI == 0 {
		return
	}
	if d := level - point; d > ClosureUnsaid || d < -ClosureUnsaid {
		c.add(path, CodeLevelDiffers, trace.Str("found", snippet(l.Text)), trace.Str("name", name),
			trace.Num("level", level, unit.KindElevation), trace.Num("point", point, unit.KindElevation))
	}
}

// section holds the pond's side: it goes down, and its depth is the pond's.
func (c *checker) section() {
	steps := c.j.Pond.Section
	for i := 1; i < len(steps); i++ {
		if above, here := steps[i-1].Depth, steps[i].Depth; !above.IsZero() && !here.IsZero() && here.SI < above.SI {
			c.add("/pond/section/"+strconv.Itoa(i)+"/depth", CodeStepRises, trace.Str("found", here.Text), trace.Str("above", above.Text))
		}
	}
	if depth := c.j.Pond.Depth; len(steps) > 0 && !depth.IsZero() {
		last := steps[len(steps)-1].Depth
		const sameDepth unit.Length = 0.005 // a tape's reading, common practice
		if d := depth.SI - last.SI; !last.IsZero() && (d > sameDepth || d < -sameDepth) {
			c.add("/pond/depth", CodeDepthDiffers, trace.Str("found", depth.Text), trace.Str("section", last.Text))
		}
	}
}

// watercourse holds a feed's lips against the pond and against each other, and
// its pools for their size.
func (c *checker) watercourse(i int, r Reduced) {
	water, haveWater := r.Level(c.j.Pond.Water)
	var above *Lip
	for k, p := range c.j.Watercourses[i].Parts {
		path := "/watercourses/" + strconv.Itoa(i) + "/parts/" + strconv.Itoa(k)
		if p.Pool != nil {
			sized := !p.Pool.Area.IsZero() || (!p.Pool.Length.IsZero() && !p.Pool.Width.IsZero())
			if !sized {
				c.add(path+"/pool", CodePoolSize)
			}
		}
		if p.Lip == nil {
			continue
		}
		crest, ok := r.Level(p.Lip.Crest)
		if !ok {
			continue
		}
		if haveWater && crest < water {
			c.add(path+"/lip/crest", CodeLipLow, trace.Str("found", snippet(p.Lip.Crest.Text)),
				trace.Num("crest", crest, unit.KindElevation), trace.Num("water", water, unit.KindElevation), trace.Num("by", water-crest, unit.KindDepth))
		}
		if above != nil {
			if up, _ := r.Level(above.Crest); crest > up {
				c.add(path+"/lip/crest", CodeLipRises, trace.Str("found", snippet(p.Lip.Crest.Text)), trace.Str("above", snippet(above.Name)),
					trace.Num("crest", crest, unit.KindElevation), trace.Num("limit", up, unit.KindElevation), trace.Num("by", crest-up, unit.KindDepth))
			}
		}
		above = p.Lip
	}
}

// vault holds the vault's shape, its hole, its obstacles and its levels.
func (c *checker) vault(r Reduced) {
	v := &c.j.Vault
	if v.Shape == "" {
		return
	}
	c.need(!v.Length.IsZero(), "/vault/length", v.Shape)
	if v.Shape == "box" {
		c.need(!v.Width.IsZero(), "/vault/width", v.Shape)
	} else {
		c.idle(!v.Width.IsZero(), "/vault/width", v.Shape)
		c.idle(!v.FloorWidth.IsZero(), "/vault/floorWidth", v.Shape)
	}
	if c.hatch(v); v.Shape == "round" {
		c.hatchCorners(v)
	}
	c.outlet(v)
	for i, o := range v.Obstacles {
		path := "/vault/obstacles/" + strconv.Itoa(i) + "/to/"
		for _, axis := range []struct {
			name     string
			from, to Length
		}{{"x", o.From.X, o.To.X}, {"y", o.From.Y, o.To.Y}, {"z", o.From.Z, o.To.Z}} {
			if !axis.from.IsZero() && !axis.to.IsZero() && axis.to.SI <= axis.from.SI {
				c.add(path+axis.name, CodeBoxEmpty, trace.Str("found", axis.to.Text), trace.Str("from", axis.from.Text))
			}
		}
	}
	water, haveWater := r.Level(c.j.Pond.Water)
	sill, haveSill := r.Level(v.Sill)
	if haveSill && haveWater && sill > water {
		c.add("/vault/sill", CodeSillHigh, trace.Num("sill", sill, unit.KindElevation), trace.Num("water", water, unit.KindElevation))
	}
	if floor, ok := r.Level(v.Floor); ok && haveSill && floor >= sill {
		c.add("/vault/floor", CodeFloorHigh, trace.Num("floor", floor, unit.KindElevation), trace.Num("sill", sill, unit.KindElevation))
	}
}

// hatch holds the opening against the rim it lies in.
func (c *checker) hatch(v *Vault) {
	width := v.Width
	if v.Shape == "round" {
		width = v.Length
	}
	for _, way := range [...]struct {
		name, off  string
		size, from Length
		rim        Length
	}{{"length", "left", v.Hatch.Length, v.Hatch.Left, v.Length}, {"width", "front", v.Hatch.Width, v.Hatch.Front, width}} {
		switch {
		case way.size.IsZero() || way.rim.IsZero():
		case way.size.SI > way.rim.SI:
			c.add("/vault/hatch/"+way.name, CodeOutside, trace.Str("found", way.size.Text), trace.Num("limit", way.rim.SI, unit.KindTape))
		case way.from.SI > way.rim.SI-way.size.SI+readTape:
			c.add("/vault/hatch/"+way.off, CodeHatch, trace.Str("found", way.from.Text), trace.Num("limit", way.rim.SI-way.size.SI, unit.KindTape))
		}
	}
}

// readTape is what two readings of one tape may differ by and still agree: half
// of a sixteenth of an inch.
const readTape = unit.Inch / 32

// outlet holds the hole against the wall it is in.
func (c *checker) outlet(v *Vault) {
	o := &v.Outlet
	wall := v.Length
	if o.Wall == "left" || o.Wall == "right" {
		wall = v.Width
	}
	if v.Shape == "round" {
		wall = v.Length
	}
	if !o.Along.IsZero() && !wall.IsZero() && o.Along.SI > wall.SI {
		c.add("/vault/outlet/along", CodeOutside, trace.Str("found", o.Along.Text), trace.Num("limit", wall.SI, unit.KindTape))
	}
	if !o.Height.IsZero() && !v.Depth.IsZero() && o.Height.SI > v.Depth.SI {
		c.add("/vault/outlet/height", CodeOutside, trace.Str("found", o.Height.Text), trace.Num("limit", v.Depth.SI, unit.KindTape))
	}
}

// pumpNames are the names of the pumps in hand.
func (c *checker) pumpNames() []string {
	var names []string
	for _, p := range c.j.Pumps {
		if p.Name != "" {
			names = append(names, p.Name)
		}
	}
	return names
}

// pumps holds the name that points at the pump in use.
func (c *checker) pumps() {
	names := c.pumpNames()
	if use := c.j.Use; use != "" && !slices.Contains(names, use) {
		c.noSuch("/use", use, names)
	}
}

// used gives the pump the job is designed with, nil when there is none.
func (j *Job) used() *Pump {
	if j.Use == "" && len(j.Pumps) > 0 {
		return &j.Pumps[0]
	}
	if i := slices.IndexFunc(j.Pumps, func(p Pump) bool { return p.Name == j.Use }); i >= 0 {
		return &j.Pumps[i]
	}
	return nil
}

// assembly holds the pump's attitude and the closing piece.
func (c *checker) assembly() {
	a := &c.j.Assembly
	if p := c.j.used(); p != nil && a.Attitude != "" {
		names := make([]string, 0, len(p.Attitudes))
		for _, t := range p.Attitudes {
			names = append(names, t.Name)
		}
		if !slices.Contains(names, a.Attitude) {
			c.noSuch("/assembly/attitude", a.Attitude, names)
		}
	}
	closes := -1
	for i, l := range a.Parts {
		path := "/assembly/parts/" + strconv.Itoa(i)
		if l.Closes && closes >= 0 {
			c.add(path+"/closes", CodeClosesTwice, trace.Str("number", strconv.Itoa(closes+1)))
		}
		if l.Closes && closes < 0 {
			closes = i
		}
		if !l.Next.IsZero() && l.NextBy == "" {
			c.add(path+"/nextBy", CodeNextBy, trace.Str("found", l.Next.Text))
		}
	}
	if !a.Closing.Gap.IsZero() && closes < 0 {
		c.add("/assembly/closing/gap", CodeGapLoose, trace.Str("found", a.Closing.Gap.Text))
	}
}
