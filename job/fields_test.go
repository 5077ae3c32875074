package job

import (
	"slices"
	"testing"

	"plashet/engine/unit"
)

func fieldsJob(t *testing.T) *Job {
	t.Helper()
	j := &Job{Format: FormatName, Version: Version, Name: "x", Units: "us"}
	for _, s := range [][2]string{
		{"/runs/-/name", "a"},
		{"/runs/-/name", "b"},
		{"/runs/-/name", "c"},
		{"/runs/0/length", "60 ft"},
		{"/runs/0/length/source", "guess"},
		{"/site/frost", "true"},
		{"/watercourses/-/name", "fall"},
		{"/watercourses/0/parts/-/lip/name", "L1"},
		{"/pond/rim", "@water + 3 in"},
		{"/site/tariff", "0.18"},
	} {
		if f := j.Set(s[0], s[1]); f != nil {
			t.Fatal(s, f)
		}
	}
	return j
}

func names(j *Job) (out []string) {
	for i := range j.Runs {
		out = append(out, j.Runs[i].Name)
	}
	return out
}

// What Fields lists can be set, and every filled field of the job is listed.
func TestFieldsListWhatStandsThere(t *testing.T) {
	j := fieldsJob(t)
	seen := map[string]string{}
	var walk func(path string)
	walk = func(path string) {
		for _, f := range j.Fields(path) {
			switch f.Sort {
			case SortPart, SortKind:
				if f.Filled {
					walk(f.Path)
				}
			case SortList:
				for i := range f.Count {
					walk(f.Path + "/" + string(rune('0'+i)))
				}
			default:
				if f.Filled {
					seen[f.Path] = f.Text
				}
				if f.Doc == "" || f.Label == "" {
					t.Errorf("%s has no words", f.Path)
				}
			}
		}
	}
	walk("")
	filled := 0
	for path := range j.Entries() {
		filled++
		if _, ok := seen[path]; !ok {
			t.Errorf("%s is filled and not listed", path)
		}
	}
	if filled < 9 {
		t.Fatalf("only %d fields are filled: the case holds nothing", filled)
	}
	if seen["/runs/0/length"] != "60 ft" || seen["/pond/rim"] != "@water + 3 in" || seen["/site/frost"] != "true" {
		t.Error("not as typed", seen)
	}
	for _, f := range j.Fields("/runs/0") {
		if f.Name == "length" && (f.Source != "guess" || f.Kind != unit.KindDistance || !f.Must || f.Limits == "" || f.Example == "") {
			t.Errorf("the length is told wrongly: %+v", f)
		}
	}
	if len(j.Fields("/runs/9")) == 0 || len(j.Fields("/runs/-")) == 0 || len(j.Fields("/watercourses/0/parts/0/pool")) == 0 {
		t.Error("an object that is not there yet has fields too")
	}
	for _, path := range []string{"/none", "/runs", "/runs/x", "/runs/0/length", "/runs/-1/pipe", "/name/x"} {
		if j.Fields(path) != nil {
			t.Errorf("%s is no object", path)
		}
	}
}

func TestRemoveAndMove(t *testing.T) {
	j := fieldsJob(t)
	before := j.Clone()
	if f := j.Move("/runs/2", 0); f != nil || !slices.Equal(names(j), []string{"c", "a", "b"}) {
		t.Fatal(f, names(j))
	}
	if f := j.Move("/runs/0", 99); f != nil || !slices.Equal(names(j), []string{"a", "b", "c"}) {
		t.Fatal(f, names(j))
	}
	if f := j.Remove("/runs/1"); f != nil || !slices.Equal(names(j), []string{"a", "c"}) {
		t.Fatal(f, names(j))
	}
	if !slices.Equal(names(before), []string{"a", "b", "c"}) {
		t.Fatal("a copy was changed too", names(before))
	}
	if f := j.Remove("/watercourses/0/parts/0"); f != nil || len(j.Watercourses[0].Parts) != 0 {
		t.Fatal(f)
	}
	for _, path := range []string{"", "/", "/runs", "/runs/7", "/runs/-1", "/runs/x", "/name/0", "/pond/outline/points/0", "/runs/0/length"} {
		if j.Remove(path) == nil || j.Move(path, 0) == nil {
			t.Errorf("%q is no element", path)
		}
	}
}
