package job

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"plashet/engine/unit"
)

// TestExamplesAreRead: the example of every field is well in both systems, as
// the messages, the schema and the docs show it.
func TestExamplesAreRead(t *testing.T) {
	checked := 0
	for _, f := range append([]*form{plan}, parts(plan, nil)...) {
		for i := range f.fields {
			fd := &f.fields[i]
			if !fd.leaf() || fd.shape == shapeBool {
				continue
			}
			for _, s := range []unit.System{unit.US, unit.Metric} {
				eg := fd.example(s)
				if eg == "" {
					t.Errorf("%s.%s has no example", f.name, fd.name)
					continue
				}
				checked++
				set := setter{system: s, text: eg}
				if m := set.leaf(fd, reflect.New(f.typ).Elem().Field(fd.index), nil); m != nil {
					t.Errorf("%s.%s: the example %q is refused: %v", f.name, fd.name, eg, m)
				}
				if fd.shape == shapeEntry || fd.shape == shapeLevel {
					var r raw
					if m := fd.read(eg, false, s, &r); m != nil {
						t.Fatal(m)
					}
					tol := fd.toleranceExample(s)
					if fd.shape == shapeLevel || fd.kind == unit.KindElevation || fd.kind == unit.KindTemperature || tol == "5 %" || fd.kind.Dim() == unit.DimLength {
						if m := fd.readTolerance(tol, false, s, &r); m != nil {
							t.Errorf("%s.%s: the tolerance %q is refused: %v", f.name, fd.name, tol, m)
						}
					}
				}
			}
		}
	}
	if checked < 150 {
		t.Errorf("only %d examples looked at", checked)
	}
}

// TestRangesAreSane: the limits of every quantity hold in both systems when
// they are read back as printed, with a step of the print to spare.
func TestRangesAreSane(t *testing.T) {
	for _, f := range append([]*form{plan}, parts(plan, nil)...) {
		for i := range f.fields {
			fd := &f.fields[i]
			if fd.shape != shapeEntry && fd.shape != shapeLevel {
				continue
			}
			mid := fd.lo + (fd.hi-fd.lo)/2
			for _, s := range []unit.System{unit.US, unit.Metric} {
				text := unit.Value{SI: mid, Kind: fd.kind}.Format(s)
				var r raw
				if m := fd.read(text, false, s, &r); m != nil {
					t.Errorf("%s.%s: the middle of its range, %s, is refused: %v", f.name, fd.name, text, m)
				}
			}
		}
	}
}

// TestExampleMarks: a fault shows how to write a number with the marks that the job's
// own numbers have, said or usual with its currency, but for three decimals where a
// comma could part thousands too.
func TestExampleMarks(t *testing.T) {
	const job = `{"format": "plashet job", "version": 1, "name": "x", "units": "metric", "site": {"currency": "EUR", "altitude": "x", "tariff": "x"}, "pond": {"depth": "x"}%s}`
	for more, want := range map[string]string{
		"": "243.840 m 0,18 0,76 m", `, "numbers": {"decimal": "comma"}`: "243,840 m 0,18 0,76 m", `, "numbers": {"decimal": "point"}`: "243.840 m 0.18 0.76 m",
	} {
		_, faults := Read(fmt.Appendf(nil, job, more))
		var got []string
		for _, f := range faults {
			for _, a := range f.Args {
				if a.Name == "example" {
					got = append(got, a.Text)
				}
			}
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%s: %q, want %q", more, s, want)
		}
	}
}
