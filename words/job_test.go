package words_test

import (
	"testing"

	"plashet/engine/catalog"
	"plashet/job"
	"plashet/words"
)

// alikeFields are words of the job document that are rightly the same.
var alikeFields = map[string]bool{"conductor": true, "total": true, "volts": true, "watts": true, "x": true, "y": true, "z": true}

// Every field of the job, and what it is for, can be told in Spanish, and so can
// every kind of fitting and hose in the book.
func TestSpanishOfTheJob(t *testing.T) {
	es, seen := words.Spanish(), 0
	field := func(path, word string) {
		if es.Field(word) == word && !alikeFields[word] {
			t.Errorf("%s: the field %q lacks Spanish", path, word)
		}
	}
	j := &job.Job{Units: "us"}
	var walk func(path string, deep int)
	walk = func(path string, deep int) {
		if deep > 7 {
			return
		}
		for _, f := range j.Fields(path) {
			seen++
			field(f.Path, f.Label)
			if es.Doc(f.Doc) == f.Doc {
				t.Errorf("%s: what it is for lacks Spanish: %q", f.Path, f.Doc)
			}
			switch f.Sort {
			case job.SortPart, job.SortKind:
				walk(f.Path, deep+1)
			case job.SortList:
				field(f.Path, job.One(f.Label))
				walk(f.Path+"/-", deep+1)
			}
		}
	}
	walk("", 0)
	if seen < 300 {
		t.Fatalf("only %d fields were seen", seen)
	}
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(book.LossNames(), book.FittingNames()...) {
		if es.Term(name) == name {
			t.Errorf("%q of the book lacks Spanish", name)
		}
	}
}
