package design

import (
	"math"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/job"
)

// TestSystemMeetsPump: the system curve is worked out point by point, the
// operating point by the whole design; they must meet: between the points next
// to it, the system's head is the pump's. The system's head never falls with
// the flow.
func TestSystemMeetsPump(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range demo.Names() {
		j, _ := job.Read(demo.Job(name))
		r := Solve(book, j)
		c := CurvesOf(book, j, r, 101)
		if len(c.System) != 101 || len(c.Pumps) != len(j.Pumps) {
			t.Fatalf("%s: %d points, %d pumps", name, len(c.System), len(c.Pumps))
		}
		d, met := r.Delivery, false
		for i := 1; i < len(c.System); i++ {
			a, b := c.System[i-1], c.System[i]
			if b.Head < a.Head-1e-9 {
				t.Errorf("%s: the head falls from %v to %v as the flow grows", name, a, b)
			}
			if a.Flow <= d.Flow && d.Flow <= b.Flow {
				met = true
				// The head rises between the two points and is convex there: a
				// straight line is off by less than their difference.
				if d.Head < a.Head-1e-6 || d.Head > b.Head+1e-6 {
					t.Errorf("%s: the pump gives %v at %v, the system asks for %v to %v", name, d.Head, d.Flow, a, b)
				}
			}
		}
		if !met {
			t.Errorf("%s: the operating point %v lies off the system curve", name, d.Flow)
		}
		for _, p := range c.Pumps {
			if !p.Used {
				continue
			}
			if h, _, _ := p.Curve.Head(d.Flow); math.Abs(float64(h-d.Head)) > 1e-6 {
				t.Errorf("%s: the pump's curve has %v at %v, the answer %v", name, h, d.Flow, d.Head)
			}
		}
	}
}

func TestSystemOfBadJobs(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{-1, 0, 1} {
		j, _ := job.Read(demo.Job("old-pond"))
		if c := CurvesOf(book, j, Solve(book, j), n); len(c.System) > 1 {
			t.Errorf("n %d gives %d points", n, len(c.System))
		}
	}
	for _, spoil := range []func(*job.Job){
		func(j *job.Job) { j.Pumps = nil },
		func(j *job.Job) { j.Runs = nil },
		func(j *job.Job) { j.Watercourses = nil },
		func(j *job.Job) { j.Pond = job.Pond{} },
		func(j *job.Job) { j.Pumps[0].Curve = nil; j.Pumps[0].BoxFlow = job.Flow{} },
		func(j *job.Job) { j.Runs[0].Pipe.Kind = "glass" },
		func(j *job.Job) { *j = job.Job{} },
	} {
		j, _ := job.Read(demo.Job("old-pond"))
		spoil(j)
		CurvesOf(book, j, Solve(book, j), 11)
	}
}

// The valve set as told gives every feed the told part of what it wants: the
// answer is put back into the job and solved again. The vault's level moves by
// millimetres with the flow, which is the rest.
func TestThrottleSharesWhatIsReached(t *testing.T) {
	const settled = 2e-3 // relative
	book, j := read(t, "hillside-cascade")
	d := Solve(book, j).Delivery
	if d == nil || d.Share == nil || d.Share.Reach >= 1 || d.Share.At != d.Share.Reach {
		t.Fatalf("the demo's pump was to fall short: %+v", d.Share)
	}
	set := false
	for i, f := range d.Feeds {
		for k := range j.Runs {
			if j.Runs[k].To == f.Name && f.K > 0 {
				j.Runs[k].Throttle.SI += f.K
				set = true
				t.Logf("feed %d: K %g", i, float64(f.K))
			}
		}
	}
	if !set {
		t.Fatal("no valve to set")
	}
	for _, f := range Solve(book, j).Delivery.Feeds {
		if got, want := float64(f.Flow/f.Wanted), float64(d.Share.At); math.Abs(got/want-1) > settled {
			t.Errorf("%s gets %g of what is wanted, %g was told", f.Name, got, want)
		}
	}
}
