package job

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
)

// Validate looks across the job for what contradicts itself or refers to
// nothing, with no engineering in it: names, shapes, levels in order. It also
// holds each field against its tags, for a job that was made in a program and
// never decoded. The faults stand in the order of the document; they have no
// lines, which Read adds.
func Validate(j *Job) []trace.Fault {
	c := validate(j)
	for i := range c.faults {
		c.faults[i].Args = append(c.faults[i].Args, trace.At("where", j.PlaceOf(c.faults[i].Path)))
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
	c.searched()
	c.money()
	c.numbers()
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
