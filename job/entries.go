package job

import (
	"iter"
	"reflect"
	"strconv"
	"strings"
)

// Entries goes through every field of the job that is filled, in document order:
// its path and what stands there, a quantity with the unit that it was read in,
// so that it means the same whatever the job's units become.
func (j *Job) Entries() iter.Seq2[string, string] {
	return func(yield func(string, string) bool) {
		stopped := false
		w := walker{leaf: func(w *walker, fd *field, v reflect.Value) {
			if text := fd.entry(v, j); !stopped && text != "" {
				stopped = !yield(w.path(), text)
			}
		}}
		w.each(j)
	}
}

// entry writes what stands in a field, a bare number with the unit that it was
// read in; "" where it is empty.
func (f *field) entry(v reflect.Value, j *Job) string {
	if f.shape == shapeEntry || f.shape == shapeLevel {
		q, ok := f.figure(v, j.System(), j.Style())
		if ok && q.Bare {
			return q.Text + " " + q.Unit
		}
		return q.Text
	}
	return f.plain(v)
}

// Alike tells whether two texts mean the same in the field at a path: the same
// words, or one quantity.
func (j *Job) Alike(path, a, b string) bool {
	if a == b {
		return true
	}
	fd := fieldAt(path)
	if fd == nil || fd.shape != shapeEntry {
		return false
	}
	x, faultA := fd.parse(a, false, j.System())
	y, faultB := fd.parse(b, false, j.System())
	d := x.SI - y.SI
	return faultA == nil && faultB == nil && d < same && d > -same
}

// same is the difference below which two quantities are one, in SI: what a
// change of units may round by.
const same = 1e-9

// fieldAt gives the plan of the field at a path; nil where there is none.
func fieldAt(path string) *field {
	f := plan
	var fd *field
	for _, token := range pointer(path) {
		if f == nil {
			return nil
		}
		k, ok := f.byName[token]
		if !ok {
			if _, err := strconv.Atoi(strings.TrimSpace(token)); err != nil {
				return nil
			}
			continue
		}
		fd = &f.fields[k]
		f = fd.form
	}
	return fd
}
