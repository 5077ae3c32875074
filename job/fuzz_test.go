package job

import (
	"reflect"
	"strings"
	"testing"

	"plashet/engine/unit"
)

// FuzzDecode: whatever the bytes, nothing panics; each fault has a line of the
// file, a code with a sentence and all the arguments the sentence names; what
// was kept goes round unchanged; and everything else that takes a job takes it.
func FuzzDecode(f *testing.F) {
	for _, folder := range []string{"v0", "v1", "damaged", demoFolder} {
		for _, data := range files(f, folder) {
			f.Add(data)
		}
	}
	for _, seed := range []string{
		"", "{", "[]", "null", `{"a":1}`, "\xff\xfe", "\xEF\xBB\xBF{}", `{"format":"plashet job","version":0,"falls":[],"watercourses":[]}`,
		head + `,"pond":{"depth":{"value":{},"value":[],"tolerance":null}}}`,
		head + `,"pond":{"water":"@rim","rim":"@water - ½"}}`,
		head + `,"watercourses":[{"parts":[{"lip":null},{"lip":{},"pool":{}},[]]}]}`,
		head + `,"site":{"tariff":1e99,"waterTemperature":-0,"daysPerYear":"1_0"}}`,
		head + `,"survey":{"setups":[{"benchmark":"a"}],"points":[{"name":"a","reading":1},{"name":"a"}]}}`,
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		j, faults := Read(data)
		lines := 1 + strings.Count(string(data), "\n")
		for _, x := range faults {
			if x.Code != CodeMore && (x.Line < 1 || x.Line > lines) {
				t.Errorf("%s on line %d of %d", x.Code, x.Line, lines)
			}
			say(t, x, unit.US)
		}
		if j == nil {
			if len(faults) == 0 {
				t.Fatal("neither a job nor a fault")
			}
			return
		}
		kept, err := Encode(j)
		if err != nil {
			t.Fatalf("what was kept cannot be written: %v", err)
		}
		again, _ := Decode(kept)
		if again == nil || !reflect.DeepEqual(j, again) {
			t.Fatalf("what was kept changes:\n%s", kept)
		}
		if second, err := Encode(again); err != nil || string(second) != string(kept) {
			t.Fatalf("the canonical form changes:\n%s\n%s", kept, second)
		}
		if !reflect.DeepEqual(j.Clone(), j) {
			t.Fatal("the clone is another job")
		}
		looked := 0
		for path := range j.Quantities() {
			j.Where(path)
			if looked++; looked > 3 { // a clone for each would take most of the time
				continue
			}
			if m := j.Clone().Set(path, ""); m != nil && m.Code != CodeSetMust {
				t.Errorf("%s cannot be emptied: %v", path, m)
			}
		}
	})
}

// FuzzSet: whatever the path and the text, nothing panics, and a fault changes
// nothing.
func FuzzSet(f *testing.F) {
	for path := range everyField(f).Quantities() {
		f.Add(path, "3 ft")
	}
	f.Add("/units", "metric")
	f.Add("/runs/-/fittings/-/k", "2.1")
	f.Add("/watercourses/0/parts/0/pool/name", "x")
	f.Add("//~1~0/", "\x00")
	data := files(f, "v1")["every-field.json"]
	f.Fuzz(func(t *testing.T, path, text string) {
		j, _ := Decode(data)
		before := j.Clone()
		if m := j.Set(path, text); m != nil {
			say(t, *m, unit.US)
			if !reflect.DeepEqual(j, before) {
				t.Error("a fault changed the job")
			}
			return
		}
		if _, err := Encode(j); err != nil {
			t.Errorf("what was set cannot be written: %v", err)
		}
	})
}

// BenchmarkDecode is the largest demo job: syntax, fields and quantities.
func BenchmarkDecode(b *testing.B) {
	data := files(b, demoFolder)["hillside-cascade.json"]
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if j, _ := Decode(data); j == nil {
			b.Fatal("not decoded")
		}
	}
}

// BenchmarkRead is Decode with the looks across the document.
func BenchmarkRead(b *testing.B) {
	data := files(b, demoFolder)["hillside-cascade.json"]
	b.ReportAllocs()
	for b.Loop() {
		if j, _ := Read(data); j == nil {
			b.Fatal("not read")
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	j, _ := Decode(files(b, demoFolder)["hillside-cascade.json"])
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Encode(j); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkClone(b *testing.B) {
	j, _ := Decode(files(b, demoFolder)["hillside-cascade.json"])
	b.ReportAllocs()
	for b.Loop() {
		if c := j.Clone(); c == nil {
			b.Fatal("no clone")
		}
	}
}
