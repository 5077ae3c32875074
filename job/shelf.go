package job

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
)

// ReadShelf reads the pumps of a shelf: a JSON list of pumps in the form of the
// job's own, or a job file, whose pumps it takes. Bare numbers of a list are read
// in the units of the job, bare prices in its currency. ill names, by index, the
// pumps that have a fault: what was read of them is not all that was written, so
// nothing should be worked out from them. The faults of what else stands in a
// job file are left out; the paths of the rest begin with /shelf.
func ReadShelf(data []byte, j *Job) (pumps []Pump, ill map[int]bool, faults []trace.Fault) {
	text := bytes.TrimSpace(bytes.TrimPrefix(data, []byte("\ufeff")))
	var read *Job
	switch {
	case len(data) > MaxBytes || len(text) > 0 && text[0] == '{':
		read, faults = Read(data)
	case len(text) > 0 && text[0] == '[':
		read, faults = Read(asJob(text, data, j))
		if read != nil && !json.Valid(text) { // more than one list
			read, faults = nil, noShelf()
		}
	default:
		faults = noShelf()
	}
	if read == nil {
		return nil, nil, onShelf(faults)
	}
	kept := faults[:0]
	for _, f := range faults {
		if strings.HasPrefix(f.Path, "/pumps") {
			kept = append(kept, f)
		}
	}
	return read.Pumps, IllPumps(kept), onShelf(kept)
}

// onShelf says of faults that they stand on the shelf and not in the job: their
// paths begin with /shelf, and so do the words for where they stand.
func onShelf(faults []trace.Fault) []trace.Fault {
	for i := range faults {
		f := &faults[i]
		f.Path = "/shelf" + f.Path
		f.Args = slices.Clone(f.Args)
		for k := range f.Args {
			if a := &f.Args[k]; a.Name == "where" {
				place := trace.Place{{Word: "shelf"}}
				for _, p := range a.Places {
					place = append(place, p...)
				}
				*a = trace.At(a.Name, place)
			}
		}
	}
	return faults
}

// IllPumps names by index the pumps of a job that have a fault.
func IllPumps(faults []trace.Fault) map[int]bool {
	ill := map[int]bool{}
	for _, f := range faults {
		rest, ok := strings.CutPrefix(f.Path, "/pumps/")
		number, _, _ := strings.Cut(rest, "/")
		if i, err := strconv.Atoi(number); ok && err == nil {
			ill[i] = true
		}
	}
	return ill
}

func noShelf() []trace.Fault {
	return []trace.Fault{{Message: trace.Message{Code: CodeShelf, Args: []trace.Arg{trace.Str("where", "")}}}}
}

// asJob wraps a list of pumps into the least job that holds it, on one line, so
// that the lines of its faults are those of the list.
func asJob(list, data []byte, j *Job) []byte {
	head := map[string]any{"format": FormatName, "version": Version, "name": "shelf", "units": j.Units}
	if j.Site.Currency != "" {
		head["site"] = map[string]string{"currency": j.Site.Currency}
	}
	front, err := json.Marshal(head)
	if err != nil {
		panic(err) // a map of texts and a number always encodes
	}
	var b bytes.Buffer
	before, _, _ := bytes.Cut(data, list)
	b.Write(bytes.Repeat([]byte("\n"), bytes.Count(before, []byte("\n"))))
	b.Write(front[:len(front)-1])
	b.WriteString(`,"pumps":`)
	b.Write(list)
	b.WriteString("}")
	return b.Bytes()
}
