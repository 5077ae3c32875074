package job

import (
	"reflect"
	"strconv"

	"plashet/engine/trace"
)

// twins finds the elements of one list that cannot be told apart: two survey
// points, pumps, runs, feeds of one name; two lips of one name in a feed.
func (c *checker) twins() {
	w := walker{list: func(w *walker, fd *field, v reflect.Value) {
		if v.Len() < 2 || (len(fd.form.keys) == 0 && !fd.form.union) {
			return
		}
		first := make(map[string]int, v.Len())
		for i := range v.Len() {
			id, under, f, elem := identity(fd.form, v.Index(i))
			if id == "" {
				continue
			}
			at, twice := first[id]
			if !twice {
				first[id] = i
				continue
			}
			tokens := append([]string{strconv.Itoa(i)}, under...)
			tokens = append(tokens, f.fields[f.keys[0]].name)
			c.add(w.path(tokens...), CodeNameTwice,
				trace.Str("name", nameOf(f, elem)), trace.Str("number", strconv.Itoa(at+1)))
		}
	}}
	w.each(c.j)
}

// identity gives what tells an element of a list apart ("" when that was left
// empty) and where it stands: for one of several kinds, under its kind.
func identity(f *form, v reflect.Value) (id string, under []string, in *form, elem reflect.Value) {
	if f.union {
		for i := range f.fields {
			fd := &f.fields[i]
			if p := v.Field(fd.index); !p.IsNil() {
				id, _, in, elem = identity(fd.form, p.Elem())
				if id != "" {
					id = fd.name + "\x00" + id
				}
				return id, []string{fd.name}, in, elem
			}
		}
		return "", nil, f, v
	}
	for _, k := range f.keys {
		s := v.Field(f.fields[k].index).String()
		if s == "" {
			return "", nil, f, v
		}
		id += s + "\x00"
	}
	return id, nil, f, v
}
