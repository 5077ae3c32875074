package job

import (
	"bytes"
	"fmt"
	"path/filepath"
	"reflect"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// demoFolder holds the demo jobs, which are written by hand.
var demoFolder = filepath.Join("..", "..", "demo", "jobs")

// TestKept: every document that is kept opens without a fault, in this and any
// later program, and its canonical form is stable.
func TestKept(t *testing.T) {
	for _, folder := range []string{"v0", "v1", demoFolder} {
		for name, data := range files(t, folder) {
			t.Run(filepath.Base(folder)+"/"+name, func(t *testing.T) {
				j, faults := Read(data)
				if len(faults) > 0 {
					t.Fatalf("faults:\n%s", sayAll(t, faults))
				}
				stable(t, j)
			})
		}
	}
}

// stable holds that encoding and decoding change nothing, and gives the
// canonical form.
func stable(t testing.TB, j *Job) []byte {
	t.Helper()
	first, err := Encode(j)
	if err != nil {
		t.Fatalf("encode: %v", err)
	}
	again, _ := Decode(first)
	if again == nil {
		t.Fatalf("the canonical form cannot be read:\n%s", first)
	}
	if !reflect.DeepEqual(j, again) {
		t.Fatalf("decoding the canonical form gives another job:\n%+v\n%+v\n%s", j, again, first)
	}
	second, err := Encode(again)
	if err != nil || !bytes.Equal(first, second) {
		t.Fatalf("encoding again gives other bytes (%v):\n%s\n%s", err, first, second)
	}
	return first
}

// TestEveryFieldIsKept: the documents of today hold every field of the plan
// between them, and the canonical form keeps all of it.
func TestEveryFieldIsKept(t *testing.T) {
	seen := map[*field]bool{}
	w := walker{leaf: func(_ *walker, fd *field, v reflect.Value) {
		if !fd.empty(v) {
			seen[fd] = true
		}
	}}
	for name, data := range files(t, "v1") {
		j, faults := Decode(data)
		if len(faults) > 0 {
			t.Fatalf("%s", sayAll(t, faults))
		}
		w.each(j)
		canonical := stable(t, j)
		if name == "every-field.json" {
			golden(t, filepath.Join("testdata", "canonical.txt"), string(canonical))
		}
	}
	for _, f := range append([]*form{plan}, parts(plan, nil)...) {
		for i := range f.fields {
			if fd := &f.fields[i]; fd.leaf() && !seen[fd] {
				t.Errorf("%s.%s stands in no file of testdata/v1", f.name, fd.name)
			}
		}
	}
}

// TestUpgrade: the draft opens as today's document; a document of today stays
// as it is.
func TestUpgrade(t *testing.T) {
	up, from, faults := Upgrade(files(t, "v0")["draft.json"])
	if from != 0 || len(faults) > 0 {
		t.Fatalf("from version %d: %s", from, sayAll(t, faults))
	}
	golden(t, filepath.Join("testdata", "v0", "draft-as-v1.txt"), string(up))
	again, from, faults := Upgrade(up)
	if from != Version || len(faults) > 0 || !bytes.Equal(up, again) {
		t.Errorf("upgrading again, from %d, changes the document: %s", from, sayAll(t, faults))
	}
	j, faults := Decode(up)
	if len(faults) > 0 || j.Use != "P" || len(j.Watercourses) != 1 || j.Version != Version {
		t.Errorf("%+v %s", j, sayAll(t, faults))
	}
	if _, _, faults := Upgrade([]byte(`{"format": "plashet job", "version": 0, "falls": 3}`)); len(faults) == 0 {
		t.Error("a faulty draft upgrades")
	}
}

// TestDraftWordsOnlyInDraft: a step must not touch newer documents.
func TestDraftWordsOnlyInDraft(t *testing.T) {
	_, faults := Decode([]byte(head + `, "pump": "P"}`))
	if f := one(t, faults); f.Code != CodeUnknownNear || f.Path != "/pump" {
		t.Errorf("%v", f)
	}
}

func TestVersions(t *testing.T) {
	for version, code := range map[string]string{
		"2": CodeNewer, "7": CodeNewer, "99999999999999999999999": CodeNewer, "-1": CodeVersionOdd, "0.5": CodeVersionOdd, "1.5": CodeNewer,
	} {
		j, faults := Decode([]byte(`{"format": "plashet job",` + "\n" + `"version": ` + version + `, "shiny": 1}`))
		if f := one(t, faults); j != nil || f.Code != code || f.Line != 2 || arg(f, "found") != version || arg(f, "newest") != strconv.Itoa(Version) {
			t.Errorf("version %s: %v", version, f)
		}
	}
	for _, version := range []string{`"1"`, `null`, `[1]`} {
		j, faults := Decode([]byte(`{"format": "plashet job", "version": ` + version + `, "name": "x", "units": "us"}`))
		if f := one(t, faults); j == nil || f.Path != "/version" {
			t.Errorf("version %s: %v", version, f)
		}
	}
	if j, faults := Decode([]byte(`{"version": 1, "name": "x", "units": "us"}`)); j == nil || one(t, faults).Path != "/format" {
		t.Errorf("without format: %v", faults)
	}
}

func TestEncodeRefuses(t *testing.T) {
	for name, j := range map[string]*Job{
		"not UTF-8":       {Name: "\xff"},
		"no number":       {Site: Site{DaysPerYear: Ratio{Text: "many", Bare: true}}},
		"two numbers":     {Site: Site{DaysPerYear: Ratio{Text: "1, 2", Bare: true}}},
		"no money":        {Site: Site{Tariff: Money{Text: "{}", Bare: true}}},
		"odd tolerance":   {Site: Site{DaysPerYear: Ratio{Text: "1", Bare: true, Tolerance: "x", BareTol: true}}},
		"deep in a list":  {Runs: []Run{{Name: "a"}, {Name: "\xff"}}},
		"note not UTF-8":  {Site: Site{DaysPerYear: Ratio{Text: "1", Note: "\xff"}}},
		"text not UTF-8":  {Site: Site{DaysPerYear: Ratio{Text: "\xff"}}},
		"value, not bare": {Site: Site{DaysPerYear: Ratio{Text: "x", Bare: true, Note: "n"}}},
	} {
		if _, err := Encode(j); err == nil {
			t.Errorf("%s: encoded", name)
		}
	}
}

// drawJob makes a job with random fields in it, all of them well.
func drawJob(t *rapid.T) *Job {
	j := &Job{}
	serial := 0
	said := Job{Units: rapid.SampledFrom([]string{"us", "metric"}).Draw(t, "units")}
	said.Numbers.Decimal = rapid.SampledFrom([]string{"", "point", "comma"}).Draw(t, "decimal")
	said.Numbers.Thousands = rapid.SampledFrom([]string{"", "none", "comma", "point", "space", "apostrophe"}).Draw(t, "thousands")
	if said.Numbers.Decimal == said.Numbers.Thousands {
		said.Numbers.Thousands = ""
	}
	fillForm(t, plan, reflect.ValueOf(j).Elem(), said.System().Typed(), &serial)
	j.Format, j.Version, j.Units, j.Numbers = FormatName, Version, said.Units, said.Numbers
	return j
}

func fillForm(t *rapid.T, f *form, v reflect.Value, s unit.System, serial *int) {
	only := -1 // of a union, the kind that is given
	if f.union {
		only = rapid.IntRange(0, len(f.fields)-1).Draw(t, "kind")
	}
	for i := range f.fields {
		fd := &f.fields[i]
		if only >= 0 && i != only || only < 0 && !fd.must && !rapid.Bool().Draw(t, fd.name) {
			continue
		}
		fillField(t, fd, v.Field(fd.index), s, serial)
	}
}

func fillField(t *rapid.T, fd *field, v reflect.Value, s unit.System, serial *int) {
	switch fd.shape {
	case shapePart:
		fillForm(t, fd.form, v, s, serial)
	case shapeOne:
		v.Set(reflect.New(fd.form.typ))
		fillForm(t, fd.form, v.Elem(), s, serial)
	case shapeList:
		most := 2
		if *serial > 20 { // keeps a job at a readable size
			most = 1
		}
		n := rapid.IntRange(0, most).Draw(t, "elements")
		for range n {
			e := reflect.New(fd.form.typ).Elem()
			fillForm(t, fd.form, e, s, serial)
			v.Set(reflect.Append(v, e))
		}
	case shapeBool:
		v.SetBool(true)
	case shapeWhole:
		v.SetInt(rapid.Int64Range(int64(fd.lo), int64(fd.hi)).Draw(t, fd.name))
	case shapeMoney:
		v.Set(reflect.ValueOf(Money{Text: strconv.Itoa(rapid.IntRange(0, 9999).Draw(t, "cents")) + ".25", Bare: rapid.Bool().Draw(t, "bare")}))
	case shapeText:
		v.SetString(drawText(t, fd, serial))
	default:
		v.Addr().Interface().(quantity).store(drawQuantity(t, fd, s))
	}
}

func drawText(t *rapid.T, fd *field, serial *int) string {
	switch {
	case len(fd.words) > 0:
		return rapid.SampledFrom(fd.words).Draw(t, fd.name)
	case fd.name == "date", fd.name == "currency":
		return fd.eg
	case fd.key || fd.name == "name":
		*serial++
		return fmt.Sprintf("%s %d", fd.name, *serial)
	}
	return rapid.StringN(1, 40, -1).Draw(t, fd.name)
}

// drawQuantity writes a value well inside the field's range as the engine
// prints it, or as a bare number.
func drawQuantity(t *rapid.T, fd *field, s unit.System) raw {
	si := fd.lo + (fd.hi-fd.lo)*rapid.Float64Range(0.2, 0.8).Draw(t, "part")
	r := raw{Text: unit.Value{SI: si, Kind: fd.kind}.Format(s), Source: Origin(rapid.SampledFrom([]string{"", "measured", "guess"}).Draw(t, "source"))}
	switch rapid.IntRange(0, 3).Draw(t, "form") {
	case 0:
		r.Text, r.Bare = bare(t, fd.kind, si, s), true
	case 1:
		if fd.shape == shapeLevel {
			r.Text = "@a point - " + rapid.SampledFrom([]string{"4 in", "100 mm", "2"}).Draw(t, "offset")
		}
	}
	if rapid.Bool().Draw(t, "more") {
		r.Note = rapid.StringN(0, 20, -1).Draw(t, "note")
		r.Tolerance = rapid.SampledFrom([]string{"", fd.toleranceExample(s)}).Draw(t, "tolerance")
	}
	return r
}

// bare gives the figure that a bare number of the kind has for a value: whole
// for counts.
func bare(t *rapid.T, k unit.Kind, si float64, s unit.System) string {
	zero, err0 := unit.Parse("0", k, s)
	one, err1 := unit.Parse("1", k, s)
	if err0 != nil || err1 != nil {
		t.Fatalf("%s: %v %v", k.Name(), err0, err1)
	}
	decimals := 6
	switch k {
	case unit.KindCount:
		decimals = 0
	case unit.KindPercent: // the ratio itself, at most 1
		si = min(si, 1)
	}
	return strconv.FormatFloat((si-zero.SI)/(one.SI-zero.SI), 'f', decimals, 64)
}

// TestRoundTrip: a well job is decoded without a fault, and is then the same
// job whatever way it goes.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		data, err := Encode(j)
		if err != nil {
			t.Fatal(err)
		}
		read, faults := Decode(data)
		if len(faults) > 0 {
			t.Fatalf("%v in\n%s", faults, data)
		}
		first, err := Encode(read)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := Decode(first)
		second, _ := Encode(again)
		if !reflect.DeepEqual(read, again) || !bytes.Equal(first, second) {
			t.Fatalf("changed by writing and reading:\n%s\n%s", first, second)
		}
		if c := read.Clone(); !reflect.DeepEqual(read, c) {
			t.Fatal("the clone is another job")
		}
	})
}
