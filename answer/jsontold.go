package answer

import (
	"plashet/engine/design"
	"plashet/engine/trace"
)

// Source is where a value comes from.
type Source = trace.Source

// Finding is one result of a check.
type Finding struct {
	Code        string   `json:"code" doc:"stable code"`
	Severity    string   `json:"severity" one:"info caution danger" doc:"danger, caution or info"`
	Path        string   `json:"path" doc:"where in the job"`
	Text        string   `json:"text" doc:"the sentence"`
	Found       Quantity `json:"found,omitzero" doc:"what was found"`
	Limit       Quantity `json:"limit,omitzero" doc:"what it is held against"`
	LimitSource Source   `json:"limitSource,omitzero" doc:"whose limit it is"`
	Accepted    string   `json:"accepted,omitempty" doc:"why the user accepts it"`
	Remedies    []Remedy `json:"remedies,omitempty" doc:"what would mend it, the best first"`
	More        int      `json:"moreRemedies,omitempty" doc:"remedies left out: see options"`
}

// Remedy is one way to mend a finding.
type Remedy struct {
	Text   string   `json:"text" doc:"the sentence"`
	Effect []Effect `json:"effect" doc:"what it moves, computed"`
}

// Effect is a figure before and after.
type Effect struct {
	Figure string   `json:"figure" doc:"ID of the figure, or of the line of the material list"`
	Before Quantity `json:"before" doc:"now"`
	After  Quantity `json:"after" doc:"with the remedy"`
}

// Assumption is a default in force.
type Assumption struct {
	Code   string   `json:"code" doc:"stable code"`
	Path   string   `json:"path" doc:"where the job could say better"`
	Text   string   `json:"text" doc:"the sentence"`
	Value  Quantity `json:"value,omitzero" doc:"the value in force"`
	Source Source   `json:"source" doc:"where it comes from"`
	Weight []Effect `json:"weight,omitempty" doc:"what moves at the other end of its usual range"`
	Turns  bool     `json:"turns,omitempty" doc:"that would turn a verdict"`
}

// Figure is a number opened.
type Figure struct {
	ID      string   `json:"id" doc:"stable"`
	Value   Quantity `json:"value,omitzero" doc:"the figure"`
	Formula string   `json:"formula" doc:"in the symbols of the terms"`
	Terms   []Term   `json:"terms,omitempty" doc:"the values in it"`
	Source  Source   `json:"source" doc:"of the formula"`
}

// Term is one value in a figure.
type Term struct {
	Symbol string   `json:"symbol" doc:"as in the formula"`
	Value  Quantity `json:"value,omitzero" doc:"its value"`
	From   string   `json:"from,omitempty" doc:"path in the job, or ID of a figure"`
}

func (m maker) told(d *Document, r *design.Result, read []trace.Fault) {
	for sev := trace.Danger; ; sev-- {
		for _, f := range r.Findings {
			if f.Severity == sev {
				d.Findings = append(d.Findings, m.finding(f))
			}
		}
		if sev == trace.Info {
			break
		}
	}
	for _, a := range r.Assumptions {
		d.Assumptions = append(d.Assumptions, Assumption{
			Code: a.Code, Path: a.Path, Text: m.say.Assumption(a, m.unit), Value: m.value(a.Value), Source: a.Source, Weight: m.effects(a.Weight), Turns: a.Turns,
		})
	}
	for _, list := range [][]trace.Fault{read, r.Faults} {
		for _, f := range list {
			d.Faults = append(d.Faults, FaultOf(f, m.unit, m.say))
		}
	}
	for _, f := range r.Figures {
		x := Figure{ID: f.ID, Value: m.value(f.Value), Formula: f.Formula, Source: f.Source}
		for _, t := range f.Terms {
			x.Terms = append(x.Terms, Term{Symbol: t.Symbol, Value: m.value(t.Value), From: t.From})
		}
		d.Figures = append(d.Figures, x)
	}
}

func (m maker) finding(f trace.Finding) Finding {
	x := Finding{
		Code: f.Code, Severity: f.Severity.String(), Path: f.Path, Text: m.say.Finding(f, m.unit),
		Found: m.value(f.Found), Limit: m.value(f.Limit), LimitSource: f.LimitSource,
		Accepted: f.Accepted, More: f.MoreRemedies,
	}
	for _, r := range f.Remedies {
		x.Remedies = append(x.Remedies, Remedy{Text: m.say.Say(r.Message, m.unit), Effect: m.effects(r.Effect)})
	}
	return x
}

func (m maker) effects(list []trace.Effect) []Effect {
	var out []Effect
	for _, e := range list {
		out = append(out, Effect{Figure: e.Figure, Before: m.value(e.Before), After: m.value(e.After)})
	}
	return out
}
