package chart

import "plashet/engine/trace"

// Faults of the marks.
const (
	FaultNear     = "chart.near"     // FaultNear: the two marks of an axis are closer than can be read. Args: axis, least
	FaultAlike    = "chart.alike"    // FaultAlike: the two marks of an axis have one value. Args: axis
	FaultParallel = "chart.parallel" // FaultParallel: the axes run almost the same way. No args.
	FaultNumber   = "chart.number"   // FaultNumber: a mark or a value is no finite number. No args.
)

// Faults of a picture.
const (
	FaultSort   = "chart.picture.sort"   // FaultSort: neither PNG nor JPEG. Args: sort
	FaultHeader = "chart.picture.header" // FaultHeader: its beginning is damaged or cut off. No args.
	FaultBytes  = "chart.picture.bytes"  // FaultBytes: larger than is taken. Args: found, limit
	FaultPixels = "chart.picture.pixels" // FaultPixels: more pixels than are shown. Args: found, limit
	FaultSmall  = "chart.picture.small"  // FaultSmall: too few pixels to read anything from. Args: found, least
)

// Error is a fault of this package.
type Error struct{ trace.Message }

func (e *Error) Error() string { return e.Code }

func fail(code string, pairs ...string) error {
	e := &Error{trace.Message{Code: code}}
	for i := 0; i+1 < len(pairs); i += 2 {
		e.Args = append(e.Args, trace.Str(pairs[i], pairs[i+1]))
	}
	return e
}
