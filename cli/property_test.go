package cli

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
)

// TestNewIsReadable: whatever the sizes, a job that new prints reads without
// faults and its flow and levels come out; else it prints nothing and says why.
func TestNewIsReadable(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	made := 0
	rapid.Check(t, func(t *rapid.T) {
		// One field in some jobs is nonsense; the rest is as a person would type it.
		wrong := rapid.IntRange(0, 20).Draw(t, "nonsense in")
		field := 0
		size := func(name string, low, high float64) string {
			metres := rapid.Float64Range(low, high).Draw(t, name)
			if field++; field == wrong {
				return rapid.SampledFrom([]string{"-1 ft", "3 gpm", "wide", "4 furlongs", "1e9 m"}).Draw(t, "nonsense")
			}
			u := rapid.SampledFrom([]string{"ft", "in", "m", "cm", "mm"}).Draw(t, name+" unit")
			return fmt.Sprintf("%.2f %s", metres*map[string]float64{"ft": 1 / 0.3048, "in": 1 / 0.0254, "m": 1, "cm": 100, "mm": 1000}[u], u)
		}
		args := []string{"new", "--name", "x", "--pipe-kind", "PVC Sch 40", "--pipe-size", "2"}
		args = append(args,
			"--units", rapid.SampledFrom([]string{"us", "metric"}).Draw(t, "units"),
			"--shape", rapid.SampledFrom([]string{"rectangle", "ellipse"}).Draw(t, "shape"),
			"--length", size("length", 1, 20), "--width", size("width", 1, 20), "--depth", size("depth", 0.1, 3),
			"--rim", size("rim", 0, 1), "--lip-width", size("lip width", 0.1, 10), "--lip-height", size("lip height", 0, 12),
			"--flow", fmt.Sprintf("%d gpm", rapid.IntRange(0, 200).Draw(t, "flow")), "--pipe-length", size("pipe", 1, 80),
		)
		flow, head := 0, rapid.IntRange(5, 40).Draw(t, "shutoff")
		for range rapid.IntRange(2, 6).Draw(t, "points") {
			args = append(args, "--point", fmt.Sprintf("%d gpm @ %d ft", flow, head))
			flow += rapid.IntRange(1, 30).Draw(t, "further")
			head = max(0, head-rapid.SampledFrom([]int{1, 2, 3, 5, 8, 0, -1}).Draw(t, "lower"))
		}
		var out, errs bytes.Buffer
		switch code := Run(args, strings.NewReader(""), &out, &errs); {
		case code == ExitJob && out.Len() == 0 && errs.Len() > 0:
		case code == ExitDone:
			made++
			j, faults := job.Read(out.Bytes())
			if len(faults) > 0 {
				t.Fatalf("%q makes a job with faults: %v", args, faults)
			}
			if r := design.Solve(book, j); r.Delivery == nil || r.Levels == nil && r.Delivery.Drawn > 0 {
				t.Fatalf("%q makes a job that cannot be designed: %v", args, r.Faults)
			}
		default:
			t.Fatalf("%q: exit %d, %d bytes of output, errors %q", args, code, out.Len(), errs.String())
		}
	})
	if made == 0 {
		t.Error("not one job came about: the property was not tried")
	}
}

// TestSetKeepsTheRest: setting one quantity of a job changes its text and no
// other, or prints nothing.
func TestSetKeepsTheRest(t *testing.T) {
	data := demo.Job("hillside-cascade")
	j, _ := job.Read(data)
	before := map[string]string{}
	var paths []string
	for path, q := range j.Quantities() {
		before[path] = q.Text
		paths = append(paths, path)
	}
	done := 0
	rapid.Check(t, func(t *rapid.T) {
		path := rapid.SampledFrom(paths).Draw(t, "path")
		value := rapid.OneOf(rapid.SampledFrom([]string{"12 in", "3 gpm", "0.5", "40 %", "4 ft"}), rapid.StringN(1, 8, -1)).Draw(t, "value")
		var out, errs bytes.Buffer
		code := Run([]string{"set", "--", "-", path, value}, bytes.NewReader(data), &out, &errs)
		if code == ExitJob && out.Len() == 0 && errs.Len() > 0 {
			return
		}
		next, faults := job.Read(out.Bytes())
		if code != ExitDone || len(faults) > 0 {
			t.Fatalf("%s %q: exit %d, errors %q, faults %v", path, value, code, errs.String(), faults)
		}
		done++
		var left []string
		for at, q := range next.Quantities() {
			left = append(left, at)
			if want := before[at]; at == path && q.Text != value || at != path && q.Text != want {
				t.Fatalf("%s %q: %s is now %q", path, value, at, q.Text)
			}
		}
		if !slices.Equal(left, paths) {
			t.Fatalf("%s %q: the job has other quantities than before", path, value)
		}
	})
	if done == 0 {
		t.Error("not one value was set: the property was not tried")
	}
}
