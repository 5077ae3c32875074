package job

import (
	"bytes"
	"slices"
	"strconv"

	"plashet/engine/trace"
)

// finish puts the faults in the order of the file and tells each its line and
// its place in the job's words.
func (d *decoder) finish(j *Job) []trace.Fault {
	slices.SortStableFunc(d.faults, func(a, b located) int { return a.at - b.at })
	faults := make([]trace.Fault, 0, len(d.faults)+1)
	line, upTo := 1, 0
	for _, f := range d.faults {
		line += bytes.Count(d.data[upTo:f.at], []byte{'\n'})
		upTo = f.at
		f.Line = line
		f.Args = append(f.Args, trace.Str("where", j.Where(f.Path)))
		faults = append(faults, f.Fault)
	}
	if d.dropped > 0 {
		faults = append(faults, more(d.dropped, len(faults)))
	}
	if len(faults) == 0 {
		return nil
	}
	return faults
}

// more tells that there are faults beyond those listed.
func more(dropped, listed int) trace.Fault {
	return trace.Fault{Message: trace.Message{Code: CodeMore, Args: []trace.Arg{
		trace.Str("count", strconv.Itoa(dropped)), trace.Str("listed", strconv.Itoa(listed)), trace.Str("where", ""),
	}}}
}

// lineAt counts the lines up to a byte of the file, from 1.
func lineAt(data []byte, at int) int {
	return 1 + bytes.Count(data[:min(at, len(data))], []byte{'\n'})
}
