package job

import (
	"bytes"
	"errors"
	"io"
	"math"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// head starts a small job that is complete; a test puts its fields behind it.
const head = `{"format": "plashet job", "version": 1, "name": "Test", "units": "us"`

// decodeWell decodes a job in which no fault is expected.
func decodeWell(t testing.TB, text string) *Job {
	t.Helper()
	j, faults := Decode([]byte(text))
	if len(faults) > 0 {
		t.Fatalf("faults in %s\n%s", text, sayAll(t, faults))
	}
	return j
}

func sayAll(t testing.TB, faults []trace.Fault) string {
	t.Helper()
	var b strings.Builder
	for _, f := range faults {
		b.WriteString(say(t, f, unit.US))
	}
	return b.String()
}

// one expects exactly one fault.
func one(t testing.TB, faults []trace.Fault) trace.Fault {
	t.Helper()
	if len(faults) != 1 {
		t.Fatalf("%d faults, one expected\n%s", len(faults), sayAll(t, faults))
	}
	return faults[0]
}

// arg gives an argument's text.
func arg(f trace.Fault, name string) string {
	for _, a := range f.Args {
		if a.Name == name {
			return a.Text
		}
	}
	return "(no " + name + ")"
}

// TestBrokenJSON holds the code, the line and what is shown of a file that
// cannot be read.
func TestBrokenJSON(t *testing.T) {
	for _, c := range []struct {
		name, text, code string
		line             int
		found            string
	}{
		{"empty", "", CodeNoText, 1, ""},
		{"blank", " \n\t\n", CodeNoText, 1, ""},
		{"list", "\n[1, 2]", CodeNoObject, 2, "[1, 2]"},
		{"number", "55", CodeNoObject, 1, "55"},
		{"null", "null", CodeNoObject, 1, "null"},
		{"comma missing", "{\n\"a\": 1\n\"b\": 2}", CodeComma, 3, `"b": 2}`},
		{"comma missing in list", "{\"a\": [\n1\n2]}", CodeComma, 3, "2]}"},
		{"comma too many", "{\n\"a\": 1,\n}", CodeCommaExtra, 2, ","},
		{"comma too many in list", "{\"a\": [1,\n]}", CodeCommaExtra, 1, ","},
		{"two commas", "{\"a\": 1,\n, \"b\": 2}", CodeCommaExtra, 2, `, "b": 2}`},
		{"colon missing", "{\n\"a\" 1}", CodeColon, 2, "1}"},
		{"value missing", "{\"a\": ,\n\"b\": 1}", CodeCommaExtra, 1, ","},
		{"name without quotes", "{\nname: 1}", CodeQuotes, 2, "name: 1}"},
		{"number as name", "{\n5: 1}", CodeNumber, 2, "5: 1}"},
		{"text without quotes", "{\"a\":\nsixty}", CodeQuotes, 2, "sixty}"},
		{"single quotes", "{'a': 1}", CodeQuotes, 1, "'a': 1}"},
		{"typographic quotes", "{“a”: 1}", CodeQuotes, 1, "“a”: 1}"},
		{"half a word", "{\"a\": tru}", CodeQuotes, 1, "tru}"},
		{"NUL in text", "{\"a\": \"x\x00\"}", CodeLineInText, 1, ""},
		{"capital true", "{\"a\": True}", CodeQuotes, 1, "True}"},
		{"inch mark", "{\n\"a\": \"7-1/2\"\"\n}", CodeInchMark, 2, `"`},
		{"feet and inch marks", "{\n\"a\": \"4' 7\" \", \"b\": 1}", CodeInchMark, 2, `", "b": 1}`},
		{"comment", "{\n// the pond\n\"a\": 1}", CodeComment, 2, "// the pond"},
		{"comment behind", "{\"a\": 1 # deep\n}", CodeComment, 1, "# deep"},
		{"comment in stars", "{\"a\": /* deep */ 1}", CodeComment, 1, "/* deep */ 1}"},
		{"line in text", "{\"a\": \"two\nlines\"}", CodeLineInText, 1, ""},
		{"tab in text", "{\"a\": \"two\tparts\"}", CodeLineInText, 1, "parts\"}"},
		{"escape", "{\"a\": \"c:\\jobs\"}", CodeEscape, 1, `\jobs"}`},
		{"plus sign", "{\"a\": +5}", CodeNumber, 1, "+5}"},
		{"no figure before the point", "{\"a\": .5}", CodeNumber, 1, ".5}"},
		{"no figure behind the point", "{\"a\": 5.}", CodeNumber, 1, "5.}"},
		{"leading zero", "{\"a\": 05}", CodeNumber, 1, "05}"},
		{"unit without quotes", "{\"a\": 60 ft}", CodeQuotes, 1, "60 ft}"},
		{"unit joined", "{\"a\": 60ft}", CodeQuotes, 1, "60ft}"},
		{"fraction without quotes", "{\"a\": 7-1/2}", CodeQuotes, 1, "7-1/2}"},
		{"feet and inches without quotes", "{\"a\": 4' 7}", CodeQuotes, 1, "4' 7}"},
		{"not a number", "{\"a\": NaN}", CodeNumber, 1, "NaN}"},
		{"infinity", "{\"a\": -Infinity}", CodeNumber, 1, "-Infinity}"},
		{"wrong bracket", "{\"a\": [1, 2}\n}", CodeBracket, 1, "}"},
		{"bracket too many", "{\"a\": 1}}", CodeExtra, 1, "}"},
		{"two documents", "{}\n{}", CodeExtra, 2, "{}"},
		{"cut off in object", "{\"a\": 1,\n\"b\":", CodeCutOff, 2, ""},
		{"cut off in text", "{\"a\": 1,\n\"b\": \"six", CodeCutOff, 2, ""},
		{"cut off in list", "{\"a\": [1,\n2\n\n", CodeCutOff, 2, ""},
		{"Latin-1", "{\n\"name\": \"B\xe4chle\"}", CodeEncoding, 2, "E4 63 68 6C"},
		{"UTF-16", "\xff\xfe{\x00}\x00", CodeEncoding, 1, "FF FE 7B 00"},
		{"half a sign", "{\"a\": \"\xe2\x82\"}", CodeEncoding, 1, "E2 82 22 7D"},
		{"surrogate half", `{"a": "\ud800"}`, CodeEscape, 1, `\ud800"}`},
		{"too deep", strings.Repeat("[", 65), CodeTooDeep, 1, ""},
		{"too deep in objects", "{\"a\":\n" + strings.Repeat(`{"a":`, 100), CodeTooDeep, 2, ""},
		{"too deep in what is passed over", "{\"a\": [" + strings.Repeat("1,", MaxList) + strings.Repeat("[", 20_000), CodeTooDeep, 1, ""},
		{"too deep for any stack", strings.Repeat("[", 1_000_000), CodeTooDeep, 1, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, faults := Decode([]byte(c.text))
			f := one(t, faults)
			if j != nil {
				t.Error("a job was read")
			}
			if f.Code != c.code || f.Line != c.line {
				t.Errorf("%s on line %d, expected %s on line %d (found %q)", f.Code, f.Line, c.code, c.line, arg(f, "found"))
			}
			if got := arg(f, "found"); c.found != "" && got != c.found {
				t.Errorf("found %q, expected %q", got, c.found)
			}
			say(t, f, unit.US)
		})
	}
}

func TestDepthAtLimit(t *testing.T) {
	j, faults := Decode([]byte(`{"x": ` + strings.Repeat("[", MaxDepth-1) + strings.Repeat("]", MaxDepth-1) + "}"))
	if j == nil {
		t.Fatalf("nesting of exactly MaxDepth is refused: %v", faults)
	}
}

func TestByteOrderMark(t *testing.T) {
	j, faults := Decode([]byte("\xEF\xBB\xBF" + head + ",\n\"x\": 1}"))
	if f := one(t, faults); j == nil || f.Line != 2 || f.Path != "/x" {
		t.Errorf("behind a byte order mark: %v", f)
	}
}

// endless gives zeros for ever and counts them.
type endless struct{ read int64 }

func (e *endless) Read(p []byte) (int, error) {
	clear(p)
	e.read += int64(len(p))
	return len(p), nil
}

// TestHugeInput: a file of 200 MB (or of any size) is refused after the limit,
// without reading or keeping the rest.
func TestHugeInput(t *testing.T) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	r := &endless{}
	j, faults := DecodeReader(io.LimitReader(r, 200<<20))
	runtime.ReadMemStats(&after)
	if f := one(t, faults); j != nil || f.Code != CodeTooLarge {
		t.Fatalf("got %v", f)
	}
	if r.read > 2*MaxBytes {
		t.Errorf("%d bytes were read of a file that is too large", r.read)
	}
	if grown := after.TotalAlloc - before.TotalAlloc; grown > 8*MaxBytes {
		t.Errorf("%d bytes of memory were used to refuse a file", grown)
	}
	if _, faults := Decode(make([]byte, 200<<20)); one(t, faults).Code != CodeTooLarge {
		t.Error("200 MB in memory are not refused")
	}
}

func TestReaderBreaksOff(t *testing.T) {
	j, faults := DecodeReader(iotest.ErrReader(errors.New("the stick was pulled out")))
	if f := one(t, faults); j != nil || f.Code != CodeUnreadable || arg(f, "found") != "the stick was pulled out" {
		t.Errorf("got %v", f)
	}
	if j, faults := DecodeReader(strings.NewReader(head + "}")); j == nil || faults != nil {
		t.Errorf("a good stream gives %v", faults)
	}
}

// TestHostileSizes: many values, long lists, long texts and many faults end in
// clear faults, not in minutes of work.
func TestHostileSizes(t *testing.T) {
	t.Run("values", func(t *testing.T) {
		row := "[" + strings.Repeat("[],", 9_000) + "[]]"
		_, faults := Decode([]byte(head + `, "x": [` + strings.Repeat(row+",", 30) + "1]}"))
		if f := one(t, faults); f.Code != CodeTooMany {
			t.Errorf("got %v", f)
		}
	})
	t.Run("list", func(t *testing.T) {
		j, faults := Decode([]byte(head + `, "assumptions": [` + strings.Repeat(`{"code":"a","value":"1"},`, MaxList) + `{"code":"b","value":"1"}]}`))
		if len(j.Assumptions) != MaxList {
			t.Errorf("%d elements kept", len(j.Assumptions))
		}
		if faults[0].Code != CodeListLong || arg(faults[0], "count") != "10001" {
			t.Errorf("got %v", faults[0])
		}
	})
	t.Run("text", func(t *testing.T) {
		j, faults := Decode([]byte(head + `, "note": "` + strings.Repeat("ä", MaxRunes+1) + `"}`))
		if f := one(t, faults); f.Code != CodeLong || f.Path != "/note" || j.Note != "" {
			t.Errorf("got %v", f)
		}
		decodeWell(t, head+`, "note": "`+strings.Repeat("ä", MaxRunes)+`"}`)
	})
	t.Run("faults", func(t *testing.T) {
		var b strings.Builder
		b.WriteString(head)
		for range 20_000 {
			b.WriteString(",\n\"xname\": 1")
		}
		_, faults := Decode([]byte(b.String() + "}"))
		last := faults[len(faults)-1]
		if len(faults) != MaxFaults+1 || last.Code != CodeMore || arg(last, "count") != "19000" {
			t.Errorf("%d faults, the last %v", len(faults), last)
		}
	})
	t.Run("names that refer to nothing", func(t *testing.T) {
		j := &Job{Format: FormatName, Version: Version, Name: "x", Units: "us"}
		for range 3_000 {
			j.Runs = append(j.Runs, Run{Name: "run", From: "somewhere over the hill", To: "nowhere at all"})
		}
		if faults := Validate(j); faults[len(faults)-1].Code != CodeMore {
			t.Error("more faults than the limit are not told")
		}
	})
}

// near compares two lengths to a hair of the reader's rounding.
func near(got, want unit.Length) bool { return math.Abs(float64(got-want)) < 1e-12 }

// TestUnitsInAnyOrder: bare numbers behind and before "units" are read alike.
func TestUnitsInAnyOrder(t *testing.T) {
	first := `{"units": "metric", "format": "plashet job", "version": 1, "name": "x", "pond": {"depth": 2}}`
	last := `{"pond": {"depth": 2}, "name": "x", "version": 1, "format": "plashet job", "units": "metric"}`
	a, b := decodeWell(t, first), decodeWell(t, last)
	if a.Pond.Depth != b.Pond.Depth || a.Pond.Depth.SI != 2 {
		t.Errorf("read as %v and %v, 2 m expected", a.Pond.Depth, b.Pond.Depth)
	}
	us := decodeWell(t, head+`, "pond": {"depth": 2}}`)
	if !near(us.Pond.Depth.SI, 2*unit.Foot) {
		t.Errorf("2 in a us job is %v, 2 ft expected", us.Pond.Depth.SI)
	}
}

// TestUnitsUnknown: what is written with its unit is kept, what is not is left
// empty, and the reader is told once.
func TestUnitsUnknown(t *testing.T) {
	j, faults := Decode([]byte(`{"format": "plashet job", "version": 1, "name": "x", "units": "imperial",
		"pond": {"depth": 20, "outline": {"shape": "circle", "length": "9 ft"}, "rim": "20"}}`))
	if f := one(t, faults); f.Path != "/units" {
		t.Errorf("got %v", f)
	}
	if !j.Pond.Depth.IsZero() || !j.Pond.Rim.IsZero() || !near(j.Pond.Outline.Length.SI, 9*unit.Foot) {
		t.Errorf("kept %v, %v and %v", j.Pond.Depth, j.Pond.Rim, j.Pond.Outline.Length)
	}
}

// TestFaultKeepsTheRest: a fault leaves its field empty and nothing else.
func TestFaultKeepsTheRest(t *testing.T) {
	j, faults := Decode([]byte(head + `, "pond": {"outline": {"shape": "rectangle", "length": "16 fet", "width": "11 ft"}, "depth": "2 ft"},
		"pumps": [{"name": "A"}, 5, {"name": "C", "watts": "640 W"}]}`))
	if len(faults) != 2 || faults[0].Path != "/pond/outline/length" || faults[1].Path != "/pumps/1" {
		t.Fatalf("faults: %s", sayAll(t, faults))
	}
	if o := j.Pond.Outline; !o.Length.IsZero() || !near(o.Width.SI, 11*unit.Foot) || !near(j.Pond.Depth.SI, 2*unit.Foot) {
		t.Errorf("pond kept: %+v", j.Pond)
	}
	if len(j.Pumps) != 3 || j.Pumps[2].Watts.SI != 640 {
		t.Errorf("the third pump is not in its place: %+v", j.Pumps)
	}
}

func TestWhereWithoutNames(t *testing.T) {
	for path, want := range map[string]string{
		"":                                  "",
		"/units":                            "units",
		"/watercourses/0/parts/2/lip/width": "watercourse 1, part 3, lip, width",
		"/pond/section/1/in":                "pond, section 2, in",
		"/pond/depth/tolerance":             "pond, depth, tolerance",
		"/pumps/x/name":                     "pump x, name",
		"/no~1such~0field/at/all":           "no/such~field, at, all",
		"/assembly/parts/99999999999999999999/at": "assembly, part 99999999999999999999, at",
	} {
		if got := (*Job)(nil).Where(path); got != want {
			t.Errorf("Where(%q) = %q, expected %q", path, got, want)
		}
		if got := (&Job{}).Where(path); got != want {
			t.Errorf("Where(%q) of an empty job = %q, expected %q", path, got, want)
		}
	}
}

// TestFaultsInOrder: faults stand in the order of the file, whatever found
// them.
func TestFaultsInOrder(t *testing.T) {
	data := []byte(head + `,
		"use": "nobody",
		"zzz": 1,
		"runs": [{"name": "r"}],
		"units ": 1}`)
	_, faults := Read(data)
	line := 0
	for _, f := range faults {
		if f.Line < line {
			t.Errorf("%s on line %d stands behind line %d", f.Code, f.Line, line)
		}
		line = f.Line
	}
	if len(faults) != 6 { // use, zzz, four of the run, of which "from", "to", "pipe" and "length" are missing ... and "units "
		t.Logf("%s", sayAll(t, faults))
	}
	if !bytes.Contains(data, []byte("units ")) || line != 5 {
		t.Errorf("the last fault is on line %d", line)
	}
}
