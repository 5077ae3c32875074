package export

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/level"
	"plashet/engine/unit"
	"plashet/internal/reader"
)

// found is what ezdxf finds in a file (testdata/drawing.py).
type found struct {
	Version            string
	Units, Measurement int
	Errors, Fixes      []string
	Layers             []string
	Kinds, OnLayer     map[string]int
	Texts              [][3]any
	Closed             [][5]any // layer, area, length, size across, size up
	Lines              [][4]any // layer, length, from, to
	Hatches            []hatched
	Unknown            []string
	ExtMin, ExtMax     [2]float64
	Low, High          [2]float64
}

// hatched is a filled area: its edge's area and extent, and what is left of it.
type hatched struct {
	Layer       string
	Solid       bool
	Outer, Left float64
	Low, High   [2]float64
}

// Every drawing file of every example job opens without a fault in a reader of
// its own, with the texts of the sheet, its units, and its true sizes.
func TestDrawingsAreReadAgain(t *testing.T) {
	dir := t.TempDir()
	var paths []string
	inputs := map[string]Input{}
	for _, job := range demo.Names() {
		inputs[job] = inputOf(t, demo.Job(job))
		for _, name := range []string{Plan, Section, Isometric} {
			files, err := Make(inputs[job], name)
			if err != nil {
				t.Fatal(job, name, err)
			}
			path := filepath.Join(dir, job+"-"+files[0].Name)
			if err := os.WriteFile(path, files[0].Data, 0o644); err != nil {
				t.Fatal(err)
			}
			paths = append(paths, path)
		}
	}
	if len(paths) == 0 {
		t.Fatal("no drawings")
	}
	var got map[string]found
	if err := json.Unmarshal(reader.Python(t, "ezdxf", "testdata/drawing.py", paths...), &got); err != nil {
		t.Fatal(err)
	}
	for job, in := range inputs {
		perM, units, metric := 1/0.0254, 1, 0 // inches: $INSUNITS 1 (DXF Reference, HEADER section)
		if in.Result.Units.Is(unit.Metric) {
			perM, units, metric = 1000, 4, 1
		}
		for _, name := range []string{Plan, Section, Isometric} {
			f, ok := got[job+"-"+name+".dxf"]
			if !ok {
				t.Fatal("not read:", job, name)
			}
			if f.Version != "AC1021" || len(f.Errors)+len(f.Fixes)+len(f.Unknown) > 0 || f.Units != units || f.Measurement != metric {
				t.Errorf("%s %s: version %s, units %d, errors %v, mended %v, layers not declared %v", job, name, f.Version, f.Units, f.Errors, f.Fixes, f.Unknown)
			}
			for k := range 2 {
				if f.Low[k] < f.ExtMin[k]-1e-3 || f.High[k] > f.ExtMax[k]+1e-3 {
					t.Errorf("%s %s: lines from %v to %v lie outside the extent %v to %v", job, name, f.Low, f.High, f.ExtMin, f.ExtMax)
				}
			}
			sameTexts(t, job+" "+name, in, name, f)
		}
		plan := got[job+"-plan.dxf"]
		o, err := design.OutlineOf(in.Job.Pond.Outline)
		if err != nil {
			t.Fatal(err)
		}
		largest(t, job, plan, float64(o.Area())*perM*perM, float64(o.Perimeter())*perM)
		ponds := slices.DeleteFunc(slices.Clone(plan.Hatches), func(h hatched) bool {
			const chords = 2e-3 // as in largest
			return !h.Solid || h.Layer != "WATER-FILL" || math.Abs(h.Outer-float64(o.Area())*perM*perM) > chords*h.Outer
		})
		if len(ponds) != 1 {
			t.Errorf("%s plan: the pond is hatched %d times, of %+v", job, len(ponds), plan.Hatches)
		}
		vaultHatched(t, job, in, got[job+"-section.dxf"], perM)
		if n := len(got[job+"-isometric.dxf"].Hatches); n > 0 {
			t.Errorf("%s isometric: %d hatches where no water is looked at", job, n)
		}
		section, iso := got[job+"-section.dxf"], got[job+"-isometric.dxf"]
		v := &in.Job.Vault
		// The sizes of the vault stand as dimension lines of their true lengths.
		long(t, job+" section", section, "SIZES", float64(v.Length.SI)*perM)
		across := v.Width.SI
		if v.Shape == "round" {
			across = v.Length.SI
		}
		for _, l := range []unit.Length{v.Length.SI, across, v.Depth.SI} {
			long(t, job+" isometric", iso, "VAULT", float64(l)*perM)
		}
		for _, layer := range []string{"FITTINGS", "PUMP"} {
			if iso.OnLayer[layer] == 0 {
				t.Errorf("%s isometric: nothing on layer %s", job, layer)
			}
		}
	}
}

// vaultHatched holds the water in the vault's section against the levels of the
// answer and the sizes of the job: from wall to wall, from the floor to the level
// of everyday running, less the pump that stands in it.
func vaultHatched(t *testing.T, job string, in Input, f found, perM float64) {
	t.Helper()
	var up float64
	for _, c := range []level.Course{level.CourseTopped, level.CourseKept, level.CourseOpen} {
		if s, ok := in.Result.Levels.Find(c, level.MomentRun); ok {
			up = float64(s.Vault)
			break
		}
	}
	survey, _ := in.Job.Elevations()
	floor, _ := survey.Level(in.Job.Vault.Floor)
	long := float64(in.Job.Vault.Length.SI)
	var seen []string
	for _, h := range f.Hatches {
		seen = append(seen, fmt.Sprintf("%+v", h))
		if h.Layer != "WATER-FILL" || !h.Solid {
			t.Errorf("%s section: %+v", job, h)
		}
		near := func(got, want float64) bool { return math.Abs(got/perM-want) < 1e-4 }
		if near(h.Low[1], float64(floor)) && near(h.High[1], up) && near(h.High[0]-h.Low[0], long) {
			if h.Left <= 0 || h.Left >= h.Outer {
				t.Errorf("%s section: of %v in the vault %v is left beside the pump", job, h.Outer, h.Left)
			}
			return
		}
	}
	t.Errorf("%s section: nothing is hatched from %v to %v m, %v m wide: %q", job, floor, up, long, seen)
}

// sameTexts holds the texts found against those of the sheet, as many times each.
func sameTexts(t *testing.T, what string, in Input, name string, f found) {
	t.Helper()
	draw := map[string]func(drawing.Input) (drawing.Sheet, bool){
		Plan: drawing.Plan, Section: drawing.Section,
		Isometric: func(d drawing.Input) (drawing.Sheet, bool) { return drawing.Assembly(d, drawing.FrontLeft) },
	}[name]
	s, _ := draw(in.Drawing)
	var want, got []string
	s.Each(func(it drawing.Item) {
		if x, ok := it.(drawing.Text); ok && strings.TrimSpace(x.Text) != "" {
			want = append(want, strings.TrimRight(x.Text, " "))
		}
	})
	for _, x := range f.Texts {
		text, _ := x[0].(string)
		got = append(got, text)
		if tall, _ := x[1].(float64); tall <= 0 {
			t.Errorf("%s: %q is %v tall", what, text, tall)
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(want, got) {
		t.Errorf("%s: texts\n%q\nwant\n%q", what, got, want)
	}
}

// largest holds the pond's edge against the outline's area and length.
func largest(t *testing.T, job string, f found, area, round float64) {
	t.Helper()
	best := 0.0
	length := 0.0
	for _, c := range f.Closed {
		if a, _ := c[1].(float64); c[0] == "POND" && a > best {
			best = a
			length, _ = c[2].(float64)
		}
	}
	const chords = 2e-3 // a smooth edge is drawn in straight pieces
	if math.Abs(best-area) > chords*area || math.Abs(length-round) > chords*round {
		t.Errorf("%s plan: the pond has area %v and edge %v, want %v and %v", job, best, length, area, round)
	}
}

// long looks for a line of a length on a layer.
func long(t *testing.T, what string, f found, layer string, want float64) {
	t.Helper()
	var all []float64
	for _, l := range f.Lines {
		if got, _ := l[1].(float64); l[0] == layer {
			all = append(all, got)
			if math.Abs(got-want) < 1e-4*want {
				return
			}
		}
	}
	t.Errorf("%s: no line of %v on layer %s, only %v", what, want, layer, all)
}
