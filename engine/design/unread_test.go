package design

import (
	"reflect"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/job"
)

// A field that was typed and cannot be read is never taken for one that was
// left empty: what stands on it is not worked out.
func TestUnread(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	const flow, levels, fit, cutting = 1, 2, 4, 8
	for _, c := range []struct {
		old, with string
		code      string // told
		void      int
	}{
		{`"waterTemperature": "60 F"`, `"waterTemperature": "warm"`, FindNoFlow, flow | levels},
		{`"glueTemperature": "55 F"`, `"glueTemperature": "-20 F"`, FindWithheld, fit},
		{`"throttle": 60`, `"throttle": "sixty"`, FindNoFlow, flow | levels},
		{`"makeUp": "1/8"`, `"makeUp": "1/8x"`, FindWithheld, fit},
		{`"socket": "1-1/2", "toStop": "1.15 in"`, `"socket": "1-1/2x", "toStop": "1.15 in"`, FindWithheld, flow | levels | fit},
		{`"kerf": "1/16"`, `"kerf": "1/16x"`, FindNoCutting, cutting},
		{`"setup": "A", "reading": "9.40 ft"`, `"setup": "A", "reading": "11.90 ft"`, FindNoFlow, flow | levels}, // the lower lip below the pond
		{`"name": "bed line"`, `"name": "main"`, FindNoFlow, flow | levels},
		{`"length": "56 ft"`, `"lengt": "56 ft"`, FindNoFlow, flow | levels},
		{`"sill": "@water - 4 in"`, `"sill": "@watr - 4 in"`, FindNoLevels, levels},
		{`"drop": "26 in"`, `"drop": "deep"`, "", 0},
		{`"note": "invented curve"`, `"nott": "invented curve"`, "", 0},
	} {
		text := string(demo.Job("hillside-cascade"))
		if strings.Count(text, c.old) == 0 {
			t.Fatalf("the example has no %s", c.old)
		}
		j, faults := job.Read([]byte(strings.Replace(text, c.old, c.with, 1)))
		if j == nil || len(faults) == 0 {
			t.Fatalf("%s passed", c.with)
		}
		r := Solve(book, j, faults...)
		void := 0
		for bit, gone := range map[int]bool{
			flow: r.Delivery == nil, levels: r.Levels == nil, fit: r.NotToCut && r.Glue != nil && r.Glue.Withheld, cutting: len(r.Cutting) == 0,
		} {
			if gone {
				void |= bit
			}
		}
		if void != c.void {
			t.Errorf("%s voids %04b, want %04b", c.with, void, c.void)
		}
		if c.code != "" && codes(r.Findings, c.code) != 1 {
			t.Errorf("%s: %s is not told", c.with, c.code)
		}
	}
}

// Every place that a document can have is either listed or voids nothing on
// purpose: a new part of the document must be thought of here.
func TestStandsOnEveryPart(t *testing.T) {
	nothing := map[string]bool{
		"/format": true, "/version": true, "/name": true, "/note": true, "/clientNote": true, "/client": true, "/place": true, "/date": true, "/units": true, "/paper": true, "/numbers": true,
		"/survey":  true,                                                                                          // a point that cannot be read has no level, and what hangs on it says so
		"/circuit": true, "/prices": true, "/assumptions": true, "/accepted": true, "/site": true, "/offer": true, // the price is worked out by package offer, on a design that it does not change
	}
	doc := reflect.TypeFor[job.Job]()
	for i := range doc.NumField() {
		name, _, _ := strings.Cut(doc.Field(i).Tag.Get("json"), ",")
		place := "/" + name
		if !nothing[place] && voids(place) == 0 && !listed(place) {
			t.Errorf("%s is not listed", place)
		}
	}
}

func listed(place string) bool {
	for _, row := range standsOn {
		if begins(row.place, place) {
			return true
		}
	}
	return false
}
