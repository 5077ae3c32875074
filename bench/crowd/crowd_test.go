// Package crowd has many people work on jobs at once, through the program's
// address as their browsers do: each edit is a form posted and the page read
// that answers it. What was acknowledged must be there in the end.
package crowd

import (
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/url"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"plashet/internal/pgtest"
	"plashet/internal/running"
)

func TestMain(m *testing.M) {
	pgtest.Main(running.Tests{M: m})
}

// person edits through one server.
type person struct {
	client *http.Client
	base   string
}

var (
	revision = regexp.MustCompile(`name="base" value="(\d+)"`)
	places   = regexp.MustCompile(`href="(/jobs/[a-z0-9]+)"`)
)

// get reads a page.
func (p person) get(at string) (int, string, error) {
	r, err := p.client.Get(p.base + at)
	if err != nil {
		return 0, "", fmt.Errorf("get %s: %w", at, err)
	}
	defer func() { _ = r.Body.Close() }()
	raw, err := io.ReadAll(r.Body)
	if err != nil {
		return 0, "", fmt.Errorf("read %s: %w", at, err)
	}
	return r.StatusCode, string(raw), nil
}

// post sends a form and follows to the page that answers it.
func (p person) post(at string, form url.Values) (int, string, error) {
	r, err := p.client.PostForm(p.base+at, form)
	if err != nil {
		return 0, "", fmt.Errorf("post %s: %w", at, err)
	}
	defer func() { _ = r.Body.Close() }()
	raw, err := io.ReadAll(r.Body)
	if err != nil {
		return 0, "", fmt.Errorf("read %s: %w", at, err)
	}
	if r.StatusCode == http.StatusSeeOther {
		return p.get(r.Header.Get("Location"))
	}
	return r.StatusCode, string(raw), nil
}

// job makes a job of an example's copy and gives its address.
func (p person) job(t testing.TB, example string) string {
	t.Helper()
	r, err := p.client.PostForm(p.base+"/jobs/"+example+"/copy", url.Values{})
	if err != nil {
		t.Fatal(err)
	}
	_ = r.Body.Close()
	at := r.Header.Get("Location")
	if !strings.HasPrefix(at, "/jobs/") {
		t.Fatalf("a copy of %s answers %d, leads to %q", example, r.StatusCode, at)
	}
	return at
}

// edit sets a field upon the newest revision of its page and gives the page.
// A refusal because somebody was before gives 409.
func (p person) edit(at, part, path, text, base string) (int, string, error) {
	return p.post(at+"/set", url.Values{"base": {base}, "here": {part}, path: {text}})
}

func baseOf(page string) string {
	if m := revision.FindStringSubmatch(page); m != nil {
		return m[1]
	}
	return ""
}

// result is what one person saw.
type result struct {
	times []time.Duration // from edit to answer
	last  string          // the value acknowledged last
	job   string
	err   error
}

// field is what everybody edits in a job of their own; the answer hangs on it.
const field, part = "/runs/1/length", "pipe"

// work edits one job until the time is over or the count is reached.
func (p person) work(at string, seed uint64, most int, until time.Time, pause time.Duration) (res result) {
	res.job = at
	chance := rand.New(rand.NewPCG(seed, 1))
	_, page, err := p.get(at + "/part/" + part)
	if err != nil {
		res.err = err
		return res
	}
	base := baseOf(page)
	for n := 0; n < most && time.Now().Before(until); n++ {
		text := strconv.Itoa(20+chance.IntN(60)) + "' " + strconv.Itoa(n%12) + "\""
		if text == res.last {
			continue
		}
		began := time.Now()
		code, page, err := p.edit(at, part, field, text, base)
		if err != nil || code != http.StatusOK {
			res.err = fmt.Errorf("edit %d of %s: status %d: %w", n, at, code, err)
			return res
		}
		res.times = append(res.times, time.Since(began))
		res.last, base = text, baseOf(page)
		time.Sleep(time.Duration(chance.Int64N(int64(2*pause) + 1)))
	}
	return res
}

// crowd lets people work, each on a job of their own, and holds what is there
// in the end against what was acknowledged.
func crowd(t testing.TB, people, most int, length, pause time.Duration) []time.Duration {
	t.Helper()
	base := running.Serve(t, filepath.Join(t.TempDir(), "jobs.sqlite")).URL
	results := make([]result, people)
	var all sync.WaitGroup
	until := time.Now().Add(length)
	jobs := make([]string, people)
	for i := range people {
		jobs[i] = person{running.Client(), base}.job(t, "example-hillside-cascade")
	}
	for i := range people {
		all.Go(func() {
			results[i] = person{running.Client(), base}.work(jobs[i], uint64(i), most, until, pause)
		})
	}
	all.Wait()
	var times []time.Duration
	reader := person{running.Client(), base}
	for _, r := range results {
		if r.err != nil {
			t.Error(r.err)
			continue
		}
		times = append(times, r.times...)
		_, page, err := reader.get(r.job + "/part/" + part)
		if err != nil {
			t.Fatal(err)
		}
		if want := `name="` + field + `" value="` + strings.NewReplacer(`"`, "&#34;", "'", "&#39;").Replace(r.last) + `"`; !strings.Contains(page, want) {
			t.Errorf("%s: %q was acknowledged last and does not stand there", r.job, r.last)
		}
		if n := len(r.times) + 1; baseOf(page) != strconv.Itoa(n) {
			t.Errorf("%s: %d edits were acknowledged, the revision is %s", r.job, n-1, baseOf(page))
		}
	}
	slices.Sort(times)
	return times
}

// TestCrowd has ten people make four edits each at once.
func TestCrowd(t *testing.T) {
	if times := crowd(t, 10, 4, time.Minute, 0); len(times) != 40 {
		t.Errorf("%d edits of 40 were acknowledged", len(times))
	}
}

// BenchmarkCrowd has 50 people edit 50 jobs for a minute, an edit every two
// seconds on the mean, and tells the times from edit to answer. The people and
// the program share the machine.
func BenchmarkCrowd(b *testing.B) {
	for range b.N {
		times := crowd(b, 50, 1<<30, time.Minute, 2*time.Second)
		if len(times) == 0 {
			b.Fatal("nobody edited anything")
		}
		at := func(q float64) float64 {
			return float64(times[min(len(times)-1, int(q*float64(len(times))))].Microseconds()) / 1000
		}
		b.ReportMetric(at(0.5), "ms-median")
		b.ReportMetric(at(0.95), "ms-p95")
		b.ReportMetric(at(0.99), "ms-p99")
		b.ReportMetric(float64(len(times)), "edits")
		b.ReportMetric(float64(runtime.NumCPU()), "cores")
	}
}

// pairFields are fields of one job that two sides edit, each its own.
var pairFields = []struct{ part, path, unit string }{
	{"pipe", "/runs/1/length", " ft"}, {"pond", "/pond/outline/length", " ft"}, {"pump", "/pumps/0/boxFlow", " gpm"}, {"falls", "/watercourses/0/parts/0/lip/width", " in"},
}

// TestTwoServers has two servers on one PostgreSQL database, and people on both
// who race on one job, each on a field of their own: a save upon a revision that
// is no longer the newest is merged, as the fields differ, or refused and tried
// again. All that was acknowledged stands in the end, one revision each.
func TestTwoServers(t *testing.T) {
	database := pgtest.Database(t)
	servers := []*running.Server{running.Serve(t, database), running.Serve(t, database)}
	at := person{running.Client(), servers[0].URL}.job(t, "example-hillside-cascade")
	const rounds = 6
	saved := make([]int, len(pairFields))
	last := make([]string, len(pairFields))
	var all sync.WaitGroup
	for i, f := range pairFields {
		all.Go(func() {
			p := person{running.Client(), servers[i%len(servers)].URL}
			for n := range rounds {
				text := strconv.Itoa(30+10*i+n) + f.unit
				for try := 0; ; try++ {
					_, page, err := p.get(at + "/part/" + f.part)
					if err != nil {
						t.Error(err)
						return
					}
					code, _, err := p.edit(at, f.part, f.path, text, baseOf(page))
					if err == nil && code == http.StatusOK {
						saved[i]++
						last[i] = text
						break
					}
					if err != nil || code != http.StatusConflict || try > 200 {
						t.Errorf("%s to %q, try %d: status %d, %v", f.path, text, try, code, err)
						return
					}
				}
			}
		})
	}
	all.Wait()
	sum := 1
	for i, f := range pairFields {
		sum += saved[i]
		for _, s := range servers {
			_, page, err := person{running.Client(), s.URL}.get(at + "/part/" + f.part)
			if err != nil {
				t.Fatal(err)
			}
			if want := `name="` + f.path + `" value="` + last[i] + `"`; !strings.Contains(page, want) {
				t.Errorf("%s: %q was acknowledged and is not on the server %s", f.path, last[i], s.URL)
			}
		}
	}
	_, page, err := person{running.Client(), servers[1].URL}.get(at + "/part/pond")
	if err != nil {
		t.Fatal(err)
	}
	if baseOf(page) != strconv.Itoa(sum) {
		t.Errorf("%d saves were acknowledged, the revision is %s", sum-1, baseOf(page))
	}
}

// BenchmarkLongList opens the list of 10,000 jobs: its first page, a page found by
// the name of one job, and the page after the hundredth.
func BenchmarkLongList(b *testing.B) {
	base := running.Serve(b, filepath.Join(b.TempDir(), "jobs.sqlite")).URL
	p := person{running.Client(), base}
	p.job(b, "example-hillside-cascade")
	for range 9999 {
		p.job(b, "example-courtyard-rill")
	}
	next := regexp.MustCompile(`href="(/\?before=\d+)"`)
	far := "/"
	for range 100 {
		_, page, err := p.get(far)
		m := next.FindStringSubmatch(page)
		if err != nil || m == nil {
			b.Fatalf("%s leads no further: %v", far, err)
		}
		far = m[1]
	}
	for _, c := range []struct{ name, at string }{{"first", "/"}, {"find", "/?text=hillside"}, {"far", far}} {
		b.Run(c.name, func(b *testing.B) {
			for range b.N {
				if code, page, err := p.get(c.at); err != nil || code != http.StatusOK || !places.MatchString(page) {
					b.Fatalf("status %d, %v", code, err)
				}
			}
		})
	}
}
