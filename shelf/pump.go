package shelf

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
)

// NewPump makes a pump for the shelf, with nothing but its name.
func NewPump(name, units, currency string) (*job.Job, *trace.Fault) {
	j := &job.Job{Format: job.FormatName, Version: job.Version, Units: units}
	for _, s := range [][2]string{{"/name", name}, {"/pumps/0/name", name}} {
		if f := j.Set(s[0], s[1]); f != nil {
			return nil, f
		}
	}
	j.Site.Currency = currency
	return j, nil
}

// local are the fields of a pump that belong to the place where it runs and not
// to the pump: they neither come to the shelf nor go from it.
var local = []string{"outside", "speed", "wear", "cordPath", "existing", "taken"}

// Local tells that a field of a pump, by its path in the pump, is the place's.
func Local(path string) bool { return slices.Contains(local, head(path)) }

// CopyPump copies the pump at one place of a job to a place of another, quantity
// by quantity with the unit it was read in, so that it means the same whatever
// units the other job has. What belongs to the place where it runs stays behind
// on the one side and as it is on the other; a pump that stands there keeps its
// name, by which the job calls it. left tells that the price is in another
// currency and was left out. With a fault the target stays as it was.
func CopyPump(to *job.Job, at string, from *job.Job, of string) (left bool, f *trace.Fault) {
	fresh := to.Clone()
	name := ""
	var kept []item
	if n := index(at); n < len(fresh.Pumps) {
		name = fresh.Pumps[n].Name
		kept = slices.DeleteFunc(items(to, at), func(x item) bool { return !Local(x.path) || head(x.path) == "taken" })
		fresh.Pumps[n] = job.Pump{}
	}
	copied := slices.DeleteFunc(items(from, of), func(x item) bool { return Local(x.path) })
	for _, x := range append(copied, kept...) {
		switch x.path {
		case "name":
			if name != "" {
				x.text = name
			}
		case "price":
			if fresh.Site.Currency == "" {
				fresh.Site.Currency = from.Site.Currency
			}
			if left = from.Site.Currency != fresh.Site.Currency; left {
				continue
			}
		}
		if f := x.set(fresh, at); f != nil {
			return left, f
		}
	}
	*to = *fresh
	return left, nil
}

// item is a field of a pump that is filled, by its path in the pump.
type item struct {
	path, text              string
	source, tolerance, note string
}

// items lists them in the order of the document.
func items(j *job.Job, at string) []item {
	var out []item
	told := map[string]job.Field{} // the fields of the object last met
	object := ""
	for path, text := range j.Entries() {
		rest, in := strings.CutPrefix(path, at+"/")
		if !in {
			continue
		}
		if parent := path[:strings.LastIndexByte(path, '/')]; parent != object {
			object = parent
			for _, f := range j.Fields(parent) {
				told[f.Path] = f
			}
		}
		f := told[path]
		out = append(out, item{rest, text, f.Source, f.Tolerance, f.Note})
	}
	return out
}

// set puts a field into the pump at a place of a job.
func (x item) set(j *job.Job, at string) *trace.Fault {
	if f := j.Set(at+"/"+x.path, x.text); f != nil {
		return f
	}
	for _, s := range [][2]string{{"source", x.source}, {"tolerance", x.tolerance}, {"note", x.note}} {
		if s[1] == "" {
			continue
		}
		if f := j.Set(at+"/"+x.path+"/"+s[0], s[1]); f != nil {
			return f
		}
	}
	return nil
}

// head is the first token of a path.
func head(path string) string {
	first, _, _ := strings.Cut(path, "/")
	return first
}

// index reads the number that a path ends with; a high one where there is none.
func index(at string) int {
	n, err := strconv.Atoi(at[strings.LastIndexByte(at, '/')+1:])
	if err != nil || n < 0 {
		return job.MaxList
	}
	return n
}

// Difference is a field of a pump, by its path in it, before and after; "" where
// it is empty.
type Difference struct{ Path, Before, After string }

// Differs lists the fields in which two pumps differ, by what they mean and not
// by how it was typed; of what belongs to the place and of the name, which each
// job gives as it likes, nothing.
func Differs(a *job.Job, at string, b *job.Job, of string) []Difference {
	old, now := map[string]string{}, map[string]string{}
	var out []Difference
	before, after := compared(a, at), compared(b, of)
	for _, x := range before {
		old[x.path] = x.text
	}
	for _, x := range after {
		now[x.path] = x.text
		if !a.Alike(at+"/"+x.path, old[x.path], x.text) {
			out = append(out, Difference{x.path, old[x.path], x.text})
		}
	}
	for _, x := range before {
		if _, stays := now[x.path]; !stays {
			out = append(out, Difference{x.path, x.text, ""})
		}
	}
	return out
}

func compared(j *job.Job, at string) []item {
	list := slices.DeleteFunc(items(j, at), func(x item) bool { return Local(x.path) || x.path == "name" })
	for i := range list {
		if list[i].path == "price" && j.Site.Currency != "" {
			list[i].text += " " + j.Site.Currency
		}
	}
	return list
}

// Update gives a pump of the shelf what another says of it, and keeps the rest:
// the points of a curve as a whole, any other field by itself.
func Update(old, fresh *job.Job) (*job.Job, *trace.Fault) {
	next := old.Clone()
	if len(fresh.Pumps[0].Curve) > 0 {
		next.Pumps[0].Curve = nil
	}
	for _, x := range items(fresh, "/pumps/0") {
		switch x.path {
		case "name":
			continue
		case "price":
			next.Site.Currency = fresh.Site.Currency
		}
		if f := x.set(next, "/pumps/0"); f != nil {
			return nil, f
		}
	}
	return next, nil
}
