package job

import (
	"reflect"
	"strconv"
	"strings"

	"plashet/engine/trace"
)

// walker goes through a job along the plan, in document order, with the path
// at hand. Any of its functions may be nil.
type walker struct {
	leaf func(w *walker, fd *field, v reflect.Value) // each field without fields of its own
	part func(w *walker, f *form, v reflect.Value)   // each object that stands in the job
	list func(w *walker, fd *field, v reflect.Value) // each list

	tokens []string
}

// each starts the walk.
func (w *walker) each(j *Job) { w.object(plan, reflect.ValueOf(j).Elem()) }

func (w *walker) object(f *form, v reflect.Value) {
	if w.part != nil {
		w.part(w, f, v)
	}
	for i := range f.fields {
		fd := &f.fields[i]
		fv := v.Field(fd.index)
		w.tokens = append(w.tokens, fd.name)
		switch fd.shape {
		case shapePart:
			if !fd.form.empty(fv) {
				w.object(fd.form, fv)
			}
		case shapeOne:
			if !fv.IsNil() {
				w.object(fd.form, fv.Elem())
			}
		case shapeList:
			if w.list != nil {
				w.list(w, fd, fv)
			}
			for k := range fv.Len() {
				w.tokens = append(w.tokens, strconv.Itoa(k))
				w.object(fd.form, fv.Index(k))
				w.tokens = w.tokens[:len(w.tokens)-1]
			}
		default:
			if w.leaf != nil {
				w.leaf(w, fd, fv)
			}
		}
		w.tokens = w.tokens[:len(w.tokens)-1]
	}
}

// path is the JSON pointer to where the walk is, with more tokens behind it.
func (w *walker) path(more ...string) string {
	var b strings.Builder
	for _, t := range w.tokens {
		b.WriteByte('/')
		b.WriteString(escape(t))
	}
	for _, t := range more {
		b.WriteByte('/')
		b.WriteString(escape(t))
	}
	return b.String()
}

// checker collects what is found by looking across the job.
type checker struct {
	j       *Job
	faults  []trace.Fault
	dropped int // beyond MaxFaults
}

func (c *checker) add(path, code string, args ...trace.Arg) {
	if len(c.faults) >= MaxFaults {
		c.dropped++
		return
	}
	c.faults = append(c.faults, trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path})
}

// nearest finds the name that was meant, while there are few faults.
func (c *checker) nearest(typed string, known []string) string {
	if len(c.faults) >= nearFaults {
		return ""
	}
	return nearest(typed, known)
}

// noSuch notes a name that refers to nothing, with a near one or those there
// are.
func (c *checker) noSuch(path, found string, known []string) {
	if len(c.faults) >= MaxFaults {
		c.dropped++
		return
	}
	args := []trace.Arg{trace.Str("found", snippet(found)), trace.Str("doc", docOf(path))}
	switch near := c.nearest(found, known); {
	case near != "":
		c.add(path, CodeNoSuchNear, append(args, trace.Str("near", snippet(near)))...)
	case len(known) > 0:
		c.add(path, CodeNoSuch, append(args, trace.Str("known", listed(known)))...)
	default:
		c.add(path, CodeNoSuchAny, args...)
	}
}

// listed joins names for a message, the first of many.
func listed(names []string) string {
	const most = 12
	short := make([]string, 0, most)
	for i, n := range names {
		if i == most {
			short = append(short, "…")
			break
		}
		short = append(short, snippet(n))
	}
	return strings.Join(short, ", ")
}

// docOf gives the sentence of the field at a path.
func docOf(path string) string {
	f, doc := plan, ""
	for _, token := range pointer(path) {
		if f == nil {
			return doc
		}
		k, ok := f.byName[token]
		if !ok {
			continue // the number of an element
		}
		doc, f = f.fields[k].doc, f.fields[k].form
	}
	return doc
}
