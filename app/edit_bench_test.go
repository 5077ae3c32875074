package app

import (
	"slices"
	"strconv"
	"syscall"
	"testing"
	"time"

	"plashet/demo"
)

// spent is the processor time that this process has used.
func spent(b *testing.B) time.Duration {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkPartEdit sets a field of the largest example and asks for the page of a
// part, each part in turn and the answer: processor time of both, of all cores
// together, the median and the 95th of a hundred.
func BenchmarkPartEdit(b *testing.B) {
	d, name := newDesk(b), ""
	for _, n := range demo.Names() {
		if name == "" || len(demo.Job(n)) > len(demo.Job(name)) {
			name = n
		}
	}
	at, n := "/jobs/example-"+name, 0
	keys := []string{"answer"} // no part: the form leads to the answer
	for _, p := range parts {
		keys = append(keys, p.Key)
	}
	for _, key := range keys {
		b.Run(key, func(b *testing.B) {
			var all []time.Duration
			for range b.N {
				n++
				was := spent(b)
				if code, _ := d.post(at+"/set", "here", key, "/runs/0/length", strconv.Itoa(200+n)+" in"); code != 303 {
					b.Fatal(code)
				}
				all = append(all, spent(b)-was)
			}
			slices.Sort(all)
			b.ReportMetric(float64(all[len(all)/2].Microseconds())/1000, "p50-ms")
			b.ReportMetric(float64(all[len(all)*95/100].Microseconds())/1000, "p95-ms")
		})
	}
}
