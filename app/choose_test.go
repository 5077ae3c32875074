package app

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// stockPumps puts invented pumps onto the shelf: the curves of the hillside's
// own pump drawn out in flow and head, at prices that go with them.
func stockPumps(t testing.TB, d *desk, n int) {
	t.Helper()
	var b strings.Builder
	b.WriteString("Name,Flow (gpm),Head (ft),Watts,Price USD\n")
	for i := range n {
		flow, head := 60+0.24*float64(i%250), 22+0.05*float64(i)
		for k := range 5 {
			x := float64(k) / 4
			fmt.Fprintf(&b, "invented %03d,%.1f,%.2f,%.0f,%d\n", i, flow*1.6*x, head*(1-x*x), 300+2.5*float64(i), 200+i)
		}
	}
	table, bad := shelf.ReadTable([]byte(b.String()))
	if bad != nil {
		t.Fatal(bad)
	}
	rows, faults := shelf.ReadPumps(table, shelf.Guess(table, shelf.PumpFields()))
	if len(rows) != n || len(faults) > 0 {
		t.Fatal(len(rows), faults)
	}
	for i, r := range rows {
		if _, err := keep.SavePump(context.Background(), d.store, fmt.Sprint("pump", i), 0, r.Job, store.Change{When: d.given.Now()}); err != nil {
			t.Fatal(err)
		}
	}
}

// A shelf of 500 pumps is compared beside the page: it never waits, tells how
// far it is, and what is best can be taken into the job with its source.
func TestChooseFromTheShelf(t *testing.T) {
	d, runs := withRuns(t)
	const id, at = "example-hillside-cascade", "/jobs/example-hillside-cascade"
	page := d.get(at + "/choose?shelf=shared")
	sound(t, "empty", page)
	if !strings.Contains(page, "No pump on the shelf yet") || len(runs.runs) > 0 {
		t.Error("an empty shelf is not told as one")
	}
	stockPumps(t, d, 500)
	page = d.get(at + "/choose?shelf=shared&pumps=any")
	sound(t, "amid", page)
	if !strings.Contains(page, "data-beside") || !strings.Contains(page, "begun") || !strings.Contains(page, "/choose/stop?shelf=shared&amp;pumps=any") {
		t.Fatal("the page does not show that it runs")
	}
	if code, _ := d.post(at+"/set", "here", "pump", "/note", "typing goes on"); code != http.StatusSeeOther {
		t.Error("an edit waits for the comparison", code)
	}
	d.post(at + "/undo")
	runs.all()
	page = d.get(at + "/choose?shelf=shared&pumps=any")
	sound(t, "after", page)
	if strings.Contains(page, "data-beside") || strings.Count(page, "<th scope=\"row\">invented ") < 2 || !strings.Contains(page, "Take invented ") {
		t.Fatal("nothing was found on the shelf")
	}
	// Take the first: it comes with where it was taken from.
	_, rest, _ := strings.Cut(page, `name="pump" value="`)
	pump, _, _ := strings.Cut(rest, `"`)
	if code, _ := d.post(at+"/shelf/pump", "pump", pump); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	j, faults := job.Read(d.newest(id).Data)
	if p := j.Pumps[len(j.Pumps)-1]; p.Taken != (job.Taken{Shelf: pump, State: 1}) || !strings.HasPrefix(p.Name, "invented ") || len(p.Curve) != 5 || len(faults) > 0 {
		t.Errorf("%+v %v", p, faults)
	}
	// The job has changed: it is compared anew without being asked.
	if page = d.get(at + "/choose?shelf=shared&pumps=any"); !strings.Contains(page, "data-beside") {
		t.Error("what was found for the job as it was is shown")
	}
	runs.all()
	// And so has the shelf.
	if code, _, _ := d.ask(http.MethodPost, "/pumps/pump3/set", url.Values{"base": {"1"}, "/pumps/0/price": {"1"}}); code != http.StatusSeeOther {
		t.Fatal(code)
	}
	if page = d.get(at + "/choose?shelf=shared&pumps=any"); !strings.Contains(page, "data-beside") {
		t.Error("a price changed on the shelf, and what was found before is shown")
	}
	// Stopped: the best so far, said as such, and begun again when told to.
	d.post(at + "/choose/stop?shelf=shared&pumps=any")
	runs.all()
	page = d.get(at + "/choose?shelf=shared&pumps=any")
	sound(t, "stopped", page)
	if strings.Contains(page, "data-beside") || !strings.Contains(page, "Stopped: these are the best so far") || !strings.Contains(page, "0 of 500 pumps") {
		t.Error("a stopped comparison is not told as one")
	}
	clear(runs.stop)
	if code, page := d.post(at + "/choose/again?shelf=shared&pumps=any"); code != http.StatusSeeOther || !strings.Contains(page, "data-beside") {
		t.Error(code)
	}
	runs.all()
	if page = d.get(at + "/choose?shelf=shared&pumps=any"); strings.Contains(page, "Stopped") || !strings.Contains(page, "Take invented ") {
		t.Error("it was not begun again")
	}
	// No room, and a device that can do nothing beside.
	runs.full = true
	if code, page, _ := d.ask(http.MethodGet, at+"/choose?shelf=shared&pumps=one", nil); code != http.StatusServiceUnavailable {
		t.Error(code)
	} else {
		sound(t, "busy", page)
	}
	d.given.Runs = nil
	d.Handler = New(d.given)
	page = d.get(at + "/choose?shelf=shared&pumps=one")
	sound(t, "alone", page)
	if !strings.Contains(page, "more pumps than are compared at once") {
		t.Error("that not all were looked at is not told")
	}
	if len(d.logs) > 0 {
		t.Error(d.logs)
	}
}

// BenchmarkChooseShelf: the pumps of a shelf read out of the store, put into the
// job's form and compared.
func BenchmarkChooseShelf(b *testing.B) {
	d := newDesk(b)
	stockPumps(b, d, 500)
	a := &app{Given: d.given, Language: d.given.Languages[0], cache: newCache()}
	a.Runs = newByHand()
	rev := d.newest("example-hillside-cascade")
	o := &opened{rev, a.solve(rev.Digest, rev.Data)}
	for _, pairs := range []string{"one", "alike", "any"} {
		b.Run(pairs, func(b *testing.B) {
			for b.Loop() {
				body := chooseBody{Shelf: shelfShared, Pairs: pairs}
				_, do, err := a.comparing(b.Context(), o, &body)
				if err != nil {
					b.Fatal(err)
				}
				if x := do(b.Context(), func(string) {}).(*chosen); x.err != nil || len(x.choice.Result.Front) == 0 {
					b.Fatal(x.err)
				}
			}
		})
	}
}
