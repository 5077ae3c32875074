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
	for _, f := range d.faults {
		f.Line = d.lines.at(d.data, f.at)
		f.Args = append(f.Args, trace.At("where", j.PlaceOf(f.Path)))
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

// lines counts the lines of a file, from 1, going on from the last place asked
// for where it can.
type lines struct{ place, before int }

func (l *lines) at(data []byte, at int) int {
	if at < l.place {
		*l = lines{}
	}
	l.before += bytes.Count(data[l.place:at], []byte{'\n'})
	l.place = at
	return 1 + l.before
}
