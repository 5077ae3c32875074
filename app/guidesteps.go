package app

import (
	"slices"
	"strings"

	"plashet/engine/unit"
	"plashet/job"
)

// need is one thing that a step of the guide asks for.
type need struct {
	Code       string // app.ask.<Code>
	Path       string
	Must       bool   // the step is not done without it
	Before     string // put before a bare answer: a height is said from the water line
	US, Metric string // examples; "" for the usual one
	// Tape is said where a bare figure is read as the example is, in inches or
	// millimetres: a pond of “30” is 30 inches deep, not 30 feet.
	Tape bool
}

// guideStep is one step on the way from an empty job to its cut list.
type guideStep struct {
	Code  string // app.guide.<Code>
	Gives []need
	// Sets gives what goes with the answers and is not asked: names, and the
	// datum of the heights.
	Sets func(a *app, j *job.Job) []edit
	// Done tells that the job has it otherwise than by what is asked; nil for no.
	Done func(j *job.Job) bool
	// Needless tells that a field asked for does not count for the shape chosen.
	Needless func(j *job.Job, code string) bool
}

// Heights are asked for from the water line.
const (
	aboveWater = "@water + "
	belowWater = "@water - "
)

// unit is that of a bare figure in a field of the tape; "" for the field's own.
func (g need) unit(j *job.Job) string {
	switch {
	case !g.Tape:
		return ""
	case j.System().Is(unit.Metric):
		return "mm"
	}
	return "in"
}

// taped puts the unit of the tape to a bare figure.
func (g need) taped(j *job.Job, text string) string {
	if u := g.unit(j); u != "" && text != "" && strings.Trim(text, "0123456789 ./,+-") == "" {
		return text + " " + u
	}
	return text
}

// fromWater says a height from the water line; one with a minus lies on the other side.
func (g need) fromWater(text string) string {
	rest, other := strings.CutPrefix(text, "-")
	switch {
	case other && g.Before == aboveWater:
		return belowWater + strings.TrimSpace(rest)
	case other && g.Before == belowWater:
		return aboveWater + strings.TrimSpace(rest)
	}
	return g.Before + text
}

// curveRows are the points of a pump's curve that are asked for, each with an
// invented example that falls as a curve does.
var curveRows = []struct{ flow, head [2]string }{ // US, metric
	{[2]string{"0 gpm", "0 l/h"}, [2]string{"20 ft", "6 m"}},
	{[2]string{"15 gpm", "3500 l/h"}, [2]string{"18 ft", "5.4 m"}},
	{[2]string{"30 gpm", "7000 l/h"}, [2]string{"15 ft", "4.5 m"}},
	{[2]string{"45 gpm", "10000 l/h"}, [2]string{"11 ft", "3.4 m"}},
	{[2]string{"60 gpm", "13500 l/h"}, [2]string{"6 ft", "1.9 m"}},
	{[2]string{"70 gpm", "16000 l/h"}, [2]string{"1 ft", "0.3 m"}},
}

// guideSteps stand in the order of the work. Each asks for what one screen holds.
var guideSteps = []guideStep{
	{
		Code: "pond",
		Gives: []need{
			{Code: "shape", Path: "/pond/outline/shape", Must: true},
			{Code: "length", Path: "/pond/outline/length", Must: true, US: "16' 6\"", Metric: "5 m"},
			{Code: "width", Path: "/pond/outline/width", Must: true, US: "11 ft", Metric: "3.5 m"},
			{Code: "depth", Path: "/pond/depth", Must: true, US: "30 in", Metric: "800 mm", Tape: true},
			{Code: "rim", Path: "/pond/rim", Must: true, Before: aboveWater, US: "3 in", Metric: "80 mm", Tape: true},
		},
		Sets: func(_ *app, j *job.Job) []edit { return datum(j) },
		Done: func(j *job.Job) bool {
			return len(j.Pond.Outline.Points) > 2 || len(j.Pond.Outline.Offsets) > 1 || len(j.Pond.Section) > 0
		},
		Needless: func(j *job.Job, code string) bool { return code == "width" && j.Pond.Outline.Shape == "circle" },
	},
	{
		Code: "fall",
		Gives: []need{
			{Code: "lipwidth", Path: "/watercourses/0/parts/0/lip/width", Must: true, US: "18 in", Metric: "450 mm"},
			{Code: "lipheight", Path: "/watercourses/0/parts/0/lip/crest", Must: true, Before: aboveWater, US: "2' 6\"", Metric: "800 mm", Tape: true},
			{Code: "flow", Path: "/watercourses/0/parts/0/lip/wanted", US: "30 gpm", Metric: "7000 l/h"},
		},
		Sets: func(a *app, _ *job.Job) []edit {
			return []edit{{"/watercourses/0/name", a.say("app.guide.name.fall")}, {"/watercourses/0/parts/0/lip/name", "L1"}}
		},
		Done: func(j *job.Job) bool {
			return slices.ContainsFunc(j.Watercourses, func(c job.Watercourse) bool { return slices.ContainsFunc(c.Parts, wholeLip) })
		},
	},
	{
		Code: "pipe",
		Gives: []need{
			{Code: "pipekind", Path: "/runs/0/pipe/kind", Must: true, US: "PVC Sch 40", Metric: "PVC PN10"},
			{Code: "pipesize", Path: "/runs/0/pipe/size", Must: true, US: "2", Metric: "50"},
			{Code: "pipelength", Path: "/runs/0/length", Must: true, US: "40 ft", Metric: "12 m"},
		},
		Sets: func(a *app, j *job.Job) []edit {
			to := a.say("app.guide.name.fall")
			if len(j.Watercourses) > 0 {
				to = j.Watercourses[0].Name
			}
			return []edit{{"/runs/0/name", a.say("app.guide.name.run")}, {"/runs/0/from", "pump"}, {"/runs/0/to", to}}
		},
	},
	{
		Code:  "pump",
		Gives: pumpGives(),
		Sets:  func(_ *app, _ *job.Job) []edit { return []edit{{"/pumps/0/name", "P1"}} },
		Done: func(j *job.Job) bool {
			return slices.ContainsFunc(j.Pumps, func(p job.Pump) bool { return len(p.Curve) > 1 || !p.BoxFlow.IsZero() && !p.MaxHead.IsZero() })
		},
	},
	{
		Code: "vault",
		Gives: []need{
			{Code: "vshape", Path: "/vault/shape", Must: true},
			{Code: "vlength", Path: "/vault/length", Must: true, US: "24 in", Metric: "600 mm"},
			{Code: "vwidth", Path: "/vault/width", Must: true, US: "18 in", Metric: "450 mm"},
			{Code: "vdepth", Path: "/vault/depth", Must: true, US: "26 in", Metric: "650 mm"},
			{Code: "vfloor", Path: "/vault/floor", Must: true, Before: belowWater, US: "22 in", Metric: "550 mm", Tape: true},
			{Code: "vsill", Path: "/vault/sill", Before: belowWater, US: "4 in", Metric: "100 mm", Tape: true},
			{Code: "vweir", Path: "/vault/weirWidth", US: "16 in", Metric: "400 mm"},
		},
		Sets:     func(_ *app, j *job.Job) []edit { return datum(j) },
		Needless: func(j *job.Job, code string) bool { return code == "vwidth" && j.Vault.Shape == "round" },
	},
	{
		Code: "hole",
		Gives: []need{
			{Code: "hwall", Path: "/vault/outlet/wall", Must: true},
			{Code: "halong", Path: "/vault/outlet/along", Must: true, US: "9 in", Metric: "230 mm"},
			{Code: "hheight", Path: "/vault/outlet/height", Must: true, US: "18 in", Metric: "450 mm"},
		},
	},
	{
		Code: "stands",
		Gives: []need{
			{Code: "psize", Path: "/pumps/0/port/size", Must: true, US: "2", Metric: "1-1/2"},
			{Code: "pthread", Path: "/pumps/0/port/thread", Must: true},
			{Code: "plength", Path: "/pumps/0/attitudes/0/length", Must: true, US: "12 in", Metric: "300 mm"},
			{Code: "pwidth", Path: "/pumps/0/attitudes/0/width", Must: true, US: "7 in", Metric: "180 mm"},
			{Code: "pheight", Path: "/pumps/0/attitudes/0/height", Must: true, US: "8 in", Metric: "200 mm"},
			{Code: "ppoints", Path: "/pumps/0/attitudes/0/points", Must: true},
			{Code: "px", Path: "/pumps/0/attitudes/0/port/x", Must: true, US: "6 in", Metric: "150 mm"},
			{Code: "py", Path: "/pumps/0/attitudes/0/port/y", Must: true, US: "3-1/2 in", Metric: "90 mm"},
			{Code: "pz", Path: "/pumps/0/attitudes/0/port/z", Must: true, US: "8 in", Metric: "200 mm"},
		},
		Sets: func(a *app, _ *job.Job) []edit {
			return []edit{{"/pumps/0/name", "P1"}, {"/pumps/0/attitudes/0/name", a.say("app.guide.name.stands")}}
		},
	},
	{
		Code: "layout",
		Done: func(j *job.Job) bool { return len(j.Assembly.Parts) > 0 },
	},
	{
		Code: "sticks",
		Gives: []need{
			{Code: "skind", Path: "/stock/sticks/0/pipe/kind", Must: true},
			{Code: "ssize", Path: "/stock/sticks/0/pipe/size", Must: true},
			{Code: "slength", Path: "/stock/sticks/0/length", Must: true, US: "10 ft", Metric: "3 m"},
		},
	},
}

// pumpGives asks for the points of a curve, two of them needed.
func pumpGives() []need {
	list := []need{{Code: "pname", Path: "/pumps/0/name", US: "P1", Metric: "P1"}}
	for i, x := range curveRows {
		at := "/pumps/0/curve/" + itoa(i)
		list = append(list,
			need{Code: "cflow", Path: at + "/flow", Must: i < 2, US: x.flow[0], Metric: x.flow[1]},
			need{Code: "chead", Path: at + "/head", Must: i < 2, US: x.head[0], Metric: x.head[1]})
	}
	return list
}

// wholeLip tells that a part of a watercourse is a lip with its width and height.
func wholeLip(p job.Part) bool { return p.Lip != nil && !p.Lip.Width.IsZero() && !p.Lip.Crest.IsZero() }

// datum makes the water line the zero of the heights, where the job has none.
func datum(j *job.Job) []edit {
	if !j.Pond.Water.IsZero() {
		return nil
	}
	zero := "0 ft"
	if j.System().Is(unit.Metric) {
		zero = "0 m"
	}
	at := "/survey/points/" + itoa(len(j.Survey.Points))
	return []edit{{at + "/name", "water"}, {at + "/elevation", zero}, {"/pond/water", "@water"}}
}

// pumpAt is the number of the pump in use.
func pumpAt(j *job.Job) int {
	return max(0, slices.IndexFunc(j.Pumps, func(p job.Pump) bool { return p.Name == j.Use }))
}

// at gives the path of a field asked for: of the pump in use.
func (g need) at(j *job.Job) string {
	if rest, ok := strings.CutPrefix(g.Path, "/pumps/0/"); ok {
		return "/pumps/" + itoa(pumpAt(j)) + "/" + rest
	}
	return g.Path
}

// given reads the text of a path; "" where nothing stands.
func given(j *job.Job, path string) string { return fieldAt(j, path).Text }

// fieldAt finds the field of a path, which a step of the guide names.
func fieldAt(j *job.Job, path string) (found job.Field) {
	for _, f := range j.Fields(path[:strings.LastIndexByte(path, '/')]) {
		if f.Path == path {
			found = f
		}
	}
	return found
}

// done tells that a job has what a step asks for.
func (s *guideStep) done(j *job.Job) bool {
	if s.Done != nil && s.Done(j) {
		return true
	}
	for _, g := range s.Gives {
		if g.Must && given(j, g.at(j)) == "" && (s.Needless == nil || !s.Needless(j, g.Code)) {
			return false
		}
	}
	return len(s.Gives) > 0
}
