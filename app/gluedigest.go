package app

import (
	"encoding/json"
	"strings"

	"plashet/answer"
	"plashet/engine/unit"
)

// stepsMark begins a digest of what steps are, in nobody's language.
const stepsMark = "steps "

// steps is a digest of what the steps of gluing ask for: codes and values, these
// as the job's units show them, so that ticks are not carried over to a card
// that says something else and hold in every language.
func (o *opened) steps() string {
	system := o.job.System()
	var all [][]string
	for i := range o.stepCount() {
		s := &o.result.Glue.Steps[i]
		line := []string{s.Code, itoa(s.Number), string(s.Where), string(s.Tilt), strings.Join(s.Parts, " "), strings.Join(s.Cautions, " ")}
		for _, j := range s.Joints {
			line = append(line, itoa(j))
		}
		for _, d := range []unit.Duration{s.Hold, s.Set} {
			line = append(line, unit.Of(d, unit.KindDuration).Format(system))
		}
		for _, x := range s.Args {
			text := x.Text
			if x.Value.Kind != unit.KindNone {
				text = x.Value.Format(system)
			}
			line = append(line, x.Name, text)
		}
		all = append(all, line)
	}
	data, err := json.Marshal(all)
	if err != nil {
		return ""
	}
	return stepsMark + digest(data)[:16]
}

func (o *opened) stepCount() int {
	if o.result.Glue == nil {
		return 0
	}
	return len(o.result.Glue.Steps)
}

// toldSteps tells whether an earlier digest, of what the steps said in one
// language and one system of units, is of these steps.
func (a *app) toldSteps(o *opened, old string) bool {
	if strings.HasPrefix(old, stepsMark) {
		return false
	}
	for _, l := range a.Languages {
		for _, system := range []unit.System{unit.US, unit.Metric} {
			r := *o.result
			r.Units = system
			data, err := json.Marshal(answer.Build(&r, o.faults, l).Glue)
			if err == nil && digest(data)[:16] == old {
				return true
			}
		}
	}
	return false
}
