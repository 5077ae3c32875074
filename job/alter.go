package job

import (
	"strings"

	"plashet/engine/trace"
)

// Set is one field and what is to stand in it.
type Set struct{ Path, Value string }

// Alter sets fields of a document by their paths and gives it in its canonical
// form, with the faults that still stand in it. Nothing comes back, and the
// faults say why, when a value cannot be read, when the job would get a fault
// that it did not have, or when it has a faulty field besides those set, which
// would be lost.
func Alter(data []byte, list []Set) (next []byte, faults []trace.Fault, err error) {
	sets := make([]Set, len(list))
	for i, s := range list {
		sets[i] = Set{"/" + strings.TrimPrefix(s.Path, "/"), s.Value} // as the faults name it
	}
	j, faults := Decode(data)
	if j == nil {
		return nil, faults, nil
	}
	if lost := losses(faults, sets); len(lost) > 0 {
		return nil, lost, nil
	}
	_, before := Read(data)
	for _, s := range sets {
		if f := j.Set(s.Path, s.Value); f != nil {
			return nil, []trace.Fault{*f}, nil
		}
	}
	if next, err = Encode(j); err != nil {
		return nil, nil, err
	}
	_, after := Read(next)
	if fresh := beyond(after, before); len(fresh) > 0 {
		return nil, fresh, nil
	}
	return next, after, nil
}

// losses picks the faults that would be lost with what was typed, because the
// decoder leaves a faulty field empty: all but those of fields that are set
// anew, and those that say something is missing. Without units even sound
// fields are left empty.
func losses(faults []trace.Fault, sets []Set) []trace.Fault {
	var lost []trace.Fault
	for _, f := range faults {
		missing := f.Code == CodeMissing || f.Code == CodeMissingPart
		anew := false
		for _, s := range sets {
			anew = anew || f.Path == s.Path || strings.HasPrefix(f.Path, s.Path+"/")
		}
		if f.Path == "/units" || !missing && !anew {
			lost = append(lost, f)
		}
	}
	return lost
}

// beyond gives the faults that were not there before.
func beyond(after, before []trace.Fault) []trace.Fault {
	was := map[[2]string]bool{}
	for _, f := range before {
		was[[2]string{f.Code, f.Path}] = true
	}
	var fresh []trace.Fault
	for _, f := range after {
		if !was[[2]string{f.Code, f.Path}] {
			fresh = append(fresh, f)
		}
	}
	return fresh
}
