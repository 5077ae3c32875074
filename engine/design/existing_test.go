package design

import (
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/job"
	"plashet/takeoff"
)

// TestExisting: what is there already is worked out like the rest, but stands in
// no list, no trench and no first cost; another pipe in its place is new.
func TestExisting(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	solve := func(existing string) *Result {
		j, faults := job.Read(demo.Job("old-pond"))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if f := j.Set("/runs/0/existing", existing); f != nil {
			t.Fatal(f)
		}
		return Solve(book, j)
	}
	stays := solve("true")
	bought := solve("")
	has := func(r *Result, name string) bool {
		return slices.ContainsFunc(r.Materials, func(i takeoff.Item) bool { return strings.Contains(i.Name+", "+i.Size, name) })
	}
	for _, name := range []string{"ribbed hose", "elbow 90, 1-1/4"} {
		if has(stays, name) || !has(bought, name) {
			t.Errorf("%s is listed: %v where it is there, %v where it is bought", name, has(stays, name), has(bought, name))
		}
	}
	// The assembly's own elbows and valve are bought all the same.
	for _, name := range []string{"elbow 90, 2", "check valve swing, 2"} {
		if !has(stays, name) {
			t.Errorf("%s is not listed", name)
		}
	}
	if stays.Delivery.Flow != bought.Delivery.Flow || len(stays.Options) != len(bought.Options) {
		t.Errorf("the water differs: %v and %v", stays.Delivery.Flow, bought.Delivery.Flow)
	}
	trench := func(r *Result) int {
		n := 0
		for _, f := range r.Figures {
			if strings.Contains(f.Formula, "trench: ") {
				n++
			}
		}
		return n
	}
	if trench(stays) != 0 || trench(bought) != 1 {
		t.Errorf("%d and %d trenches", trench(stays), trench(bought))
	}
	if codes(stays.Findings, takeoff.FindExisting) != 1 || codes(bought.Findings, takeoff.FindExisting) != 0 {
		t.Error("what is there already is not told")
	}
	for i := range stays.Options {
		a, b := &stays.Options[i], &bought.Options[i]
		if a.First.Currency == "" {
			continue
		}
		if less := a.First.Amount.LessThan(b.First.Amount); less != a.Drawn {
			t.Errorf("pump %s on %s: %s where the run stays, %s where it is bought", a.Pump, a.Pipe, a.First, b.First)
		}
	}
}

// TestExistingPump: a pump that is there already costs nothing.
func TestExistingPump(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job("old-pond"))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	first := func() string {
		for _, o := range Solve(book, j).Options {
			if o.AsIs {
				return o.First.String()
			}
		}
		return ""
	}
	if got := first(); got != "360.00 USD" { // its price; the hose stays
		t.Errorf("with a new pump %s", got)
	}
	if f := j.Set("/pumps/0/existing", "true"); f != nil {
		t.Fatal(f)
	}
	if got := first(); got != "0.00 USD" {
		t.Errorf("with the pump that is there %s", got)
	}
}
