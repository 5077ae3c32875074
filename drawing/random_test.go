package drawing

import (
	"testing"

	"pgregory.net/rapid"

	"plashet/demo"
	"plashet/engine/unit"
	"plashet/job"
)

// TestRandomJobs: whatever the sizes, names and units of a job, its sheets hold
// what they promise: all finite, letters on the sheet and not on each other.
func TestRandomJobs(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		j := example(t, rapid.SampledFrom(demo.Names()).Draw(r, "job"))
		vary(r, j)
		_, sheets := draw(t, j)
		for i := range sheets {
			holds(t, &sheets[i])
		}
		if t.Failed() {
			r.Fatal("these sheets do not hold")
		}
	})
}

// vary changes a job at random, within what a job may hold.
func vary(r *rapid.T, j *job.Job) {
	scale := func(name string) unit.Length {
		return unit.Length(rapid.SampledFrom([]float64{0.3, 0.6, 0.9, 1, 1, 1.2, 1.7, 3}).Draw(r, name))
	}
	j.Units = rapid.SampledFrom([]string{"us", "metric"}).Draw(r, "units")
	names := rapid.StringOfN(rapid.RuneFrom([]rune("abcdefghij MWI<&\"äß水")), 1, 50, -1)
	j.Name = names.Draw(r, "name")
	v := &j.Vault
	v.Length.SI *= scale("length")
	v.Width.SI *= scale("width")
	v.Depth.SI *= scale("depth")
	if rapid.Bool().Draw(r, "taper") {
		v.FloorLength, v.FloorWidth = v.Length, v.Width
		v.FloorLength.SI *= 0.8
		v.FloorWidth.SI *= 0.7
	}
	if rapid.IntRange(0, 3).Draw(r, "round") == 0 {
		v.Shape = "round"
	}
	j.Pond.Depth.SI *= scale("pond")
	for i := range j.Pond.Section {
		j.Pond.Section[i].In.SI *= scale("side")
	}
	if rapid.Bool().Draw(r, "obstacle") {
		to := job.XYZ{X: v.Length, Y: v.Width, Z: v.Depth}
		to.X.SI /= 3
		to.Y.SI /= 3
		v.Obstacles = append(v.Obstacles, job.Obstacle{Name: names.Draw(r, "obstacle's name"), To: to})
	}
	flow, head := scale("flow"), scale("head")
	for i := range j.Pumps {
		old := j.Pumps[i].Name
		j.Pumps[i].Name = names.Draw(r, "pump")
		if j.Use == old {
			j.Use = j.Pumps[i].Name
		}
		for k := range j.Pumps[i].Curve {
			j.Pumps[i].Curve[k].Flow.SI *= unit.Flow(flow)
			j.Pumps[i].Curve[k].Head.SI *= head
		}
	}
	for i := range j.Runs {
		j.Runs[i].Length.SI *= scale("run")
	}
	a := &j.Assembly
	for i := range a.Parts {
		if rapid.IntRange(0, 4).Draw(r, "roll?") == 0 {
			a.Parts[i].Roll.SI = unit.Angle(rapid.SampledFrom([]float64{0, 45, 90, 180, 210, 270}).Draw(r, "roll")) * unit.Degree
		}
		if rapid.IntRange(0, 4).Draw(r, "gap?") == 0 && !a.Parts[i].Closes {
			a.Parts[i].Next = job.Length{Text: "x", SI: unit.Length(rapid.Float64Range(0, 0.4).Draw(r, "gap"))}
			a.Parts[i].NextBy = "faces"
		}
	}
	a.Turn.SI = unit.Angle(rapid.SampledFrom([]float64{0, 30, 90, -90}).Draw(r, "turn")) * unit.Degree
}
