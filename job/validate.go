package job

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Validate looks across the job for what contradicts itself or refers to
// nothing, with no engineering in it: names, shapes, levels in order. It also
// holds each field against its tags, for a job that was made in a program and
// never decoded. The faults stand in the order of the document; they have no
// lines, which Read adds.
func Validate(j *Job) []trace.Fault {
	c := validate(j)
	for i := range c.faults {
		c.faults[i].Args = append(c.faults[i].Args, trace.Str("where", j.Where(c.faults[i].Path)))
	}
	if c.dropped > 0 {
		c.faults = append(c.faults, more(c.dropped, len(c.faults)))
	}
	return c.faults
}

// Read decodes and validates a document: all faults of both, once each, in the
// order of the file. What a fault of Decode has voided is not told again as
// missing.
func Read(data []byte) (*Job, []trace.Fault) {
	j, root, d := decode(data)
	if j == nil {
		return nil, d.finish(nil)
	}
	decoded := make(map[string]bool, len(d.faults))
	for _, f := range d.faults {
		decoded[f.Path] = true
		if entry, ok := strings.CutSuffix(f.Path, "/value"); ok {
			decoded[entry] = true
		}
	}
	c := validate(j)
	for _, f := range c.faults {
		covered := false
		for path := f.Path; path != "" && !covered; path = parent(path) {
			covered = decoded[path]
		}
		if !covered {
			d.found(root, f)
		}
	}
	d.dropped += c.dropped
	return j, d.finish(j)
}

// parent cuts the last token of a JSON pointer.
func parent(path string) string {
	for i := len(path) - 1; i >= 0; i-- {
		if path[i] == '/' {
			return path[:i]
		}
	}
	return ""
}

func validate(j *Job) *checker {
	r := reduce(j)
	r.tellAll()
	c := &r.checker
	c.tags()
	c.twins()
	c.survey()
	c.pond(r.out)
	for i := range j.Watercourses {
		c.watercourse(i, r.out)
	}
	c.vault(r.out)
	c.pumps()
	c.runs()
	c.assembly()
	inOrder(c.faults)
	return c
}

// inOrder sorts faults by their place in the document.
func inOrder(faults []trace.Fault) {
	keys := make(map[string][]int, len(faults))
	for _, f := range faults {
		if _, ok := keys[f.Path]; !ok {
			keys[f.Path] = orderOf(f.Path)
		}
	}
	slices.SortStableFunc(faults, func(a, b trace.Fault) int { return slices.Compare(keys[a.Path], keys[b.Path]) })
}

// orderOf turns a path into numbers that sort as the document does.
func orderOf(path string) []int {
	var key []int
	f := plan
	for _, token := range pointer(path) {
		if n, err := strconv.Atoi(token); err == nil {
			key = append(key, n)
			continue
		}
		k, ok := 0, false
		if f != nil {
			k, ok = f.byName[token]
		}
		if !ok {
			break
		}
		key = append(key, k)
		f = f.fields[k].form
	}
	return key
}

// tags holds every field against its tags, as the decoder does.
func (c *checker) tags() {
	s := c.j.System()
	w := walker{
		part: func(w *walker, f *form, v reflect.Value) {
			given := 0
			for i := range f.fields {
				fd := &f.fields[i]
				empty := fd.empty(v.Field(fd.index))
				if !empty {
					given++
				}
				if fd.must && empty {
					code, args := fd.lacking(s)
					c.add(w.path(fd.name), code, args...)
				}
			}
			if f.union && given != 1 {
				c.union(w.path(), f, v, given)
			}
		},
		leaf: func(w *walker, fd *field, v reflect.Value) {
			if m := fd.check(v); m != nil {
				c.add(w.path(), m.Code, m.Args...)
			}
		},
	}
	w.each(c.j)
}

func (c *checker) union(path string, f *form, v reflect.Value, given int) {
	if given == 0 {
		c.add(path, CodePartNone, trace.Str("known", f.known()))
		return
	}
	var set uint64
	for i := range f.fields {
		if !v.Field(f.fields[i].index).IsNil() {
			set |= 1 << i
		}
	}
	c.add(path, CodePartSeveral, trace.Str("found", f.names(set)), trace.Str("known", f.known()))
}

// check holds a value that stands in a job against the field's limits.
func (f *field) check(v reflect.Value) *trace.Message {
	switch f.shape {
	case shapeText:
		if s := v.String(); s != "" {
			return f.checkText(s)
		}
	case shapeWhole:
		if n := v.Int(); n != 0 && (float64(n) < f.lo || float64(n) > f.hi) {
			return &trace.Message{Code: CodeRange, Args: f.beyond(strconv.FormatInt(n, 10), float64(n))}
		}
	case shapeEntry, shapeLevel:
		r := v.Addr().Interface().(quantity).load()
		if r.Text != "" && !(r.SI >= f.lo && r.SI <= f.hi) { // NaN too
			return &trace.Message{Code: CodeRange, Args: f.beyond(r.Text, r.SI)}
		}
	}
	return nil
}

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
	if line, ok := r.Level(c.j.Pond.RunningLine); ok && haveRim && line > rim {
		c.add("/pond/runningLine", CodeLineHigh, trace.Num("line", line, unit.KindElevation), trace.Num("rim", rim, unit.KindElevation))
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

// pumps holds the names that point at pumps and their attitudes.
func (c *checker) pumps() {
	var names []string
	for _, p := range c.j.Pumps {
		if p.Name != "" {
			names = append(names, p.Name)
		}
	}
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
		var names []string
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
