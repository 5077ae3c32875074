package answer

import (
	"slices"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Bands tell how sure the answer is.
type Bands struct {
	Draws   int      `json:"draws" doc:"how many times the job was solved with its inputs drawn"`
	Failed  int      `json:"failed" doc:"draws that came to no answer; they count in no band"`
	Seed    uint64   `json:"seed" doc:"of the draws: the same seed gives the same bands"`
	Doubts  []Doubt  `json:"doubts" doc:"what may be off"`
	Figures []Band   `json:"figures" doc:"figures with their bands"`
	Moved   int      `json:"movedDraws,omitempty" doc:"how many draws were followed through start and stop"`
	Motion  []Band   `json:"motion,omitempty" doc:"bands of start and stop, of those draws, not calibrated: the least level in the vault and the greatest of the pond from the water line, and when the pump draws air; no shares"`
	Chances []Chance `json:"chances" doc:"how often the draws come to a verdict"`
	Again   []Again  `json:"again,omitempty" doc:"what would lessen the doubt that counts most, the most first"`
}

// Again is one thing to measure again.
type Again struct {
	Path   string  `json:"path" doc:"where in the job"`
	Text   string  `json:"text" doc:"what to do"`
	Figure string  `json:"figure" doc:"ID of the figure about which it counts most"`
	Name   string  `json:"name" doc:"that figure in words"`
	Part   float64 `json:"part" doc:"of the doubt about it, 0 to 1"`
}

// Doubt is one thing that may be off.
type Doubt struct {
	Code      string   `json:"code" doc:"stable code"`
	Path      string   `json:"path" doc:"where in the job"`
	Text      string   `json:"text" doc:"what it is"`
	Tolerance Quantity `json:"tolerance" doc:"how far off it may be to both sides, in 95 of 100 cases; without a text it lies anywhere in its usual range"`
	Own       bool     `json:"own,omitempty" doc:"the job's own tolerance; else a default, which stands with the assumptions"`
	Lessen    string   `json:"lessen" doc:"what would lessen it"`
}

// Band is a figure with its band.
type Band struct {
	Figure   string      `json:"figure" doc:"ID of the figure"`
	Name     string      `json:"name,omitempty" doc:"of the feed, lip, run or pump"`
	Text     string      `json:"text,omitempty" doc:"what it is, in words; only of those that are printed"`
	Value    Quantity    `json:"value" doc:"as designed"`
	Low      Quantity    `json:"low" doc:"5 of 100 lie below"`
	Middle   Quantity    `json:"middle" doc:"as many lie below as above"`
	High     Quantity    `json:"high" doc:"5 of 100 lie above"`
	Shares   []DoubtPart `json:"shares,omitempty" doc:"which doubt makes which part of the spread, most first; under a thousandth left out"`
	Together float64     `json:"together" doc:"part that the doubts make together, which no straight line tells"`
}

// DoubtPart is the part of a doubt in a spread.
type DoubtPart struct {
	Doubt int     `json:"doubt" doc:"among the doubts, counted from 0"`
	Part  float64 `json:"part" doc:"of the variance, 0 to 1"`
}

// Chance is how often the draws come to a verdict.
type Chance struct {
	Code string  `json:"code" doc:"of the finding that tells the verdict"`
	Path string  `json:"path" doc:"where in the job"`
	Name string  `json:"name,omitempty" doc:"of the feed"`
	Part float64 `json:"part" doc:"of the draws, 0 to 1"`
	Now  bool    `json:"now,omitempty" doc:"the design as it stands comes to it"`
}

// leastPart is a share below which it is left out.
const leastPart unit.Ratio = 0.001

func (m maker) bands(d *Document, r *design.Result) {
	b := r.Bands
	if b == nil {
		return
	}
	p := &printer{say: m.say, unit: m.unit}
	out := &Bands{Draws: b.Draws, Failed: b.Failed, Seed: b.Seed}
	for i := range b.Doubts {
		x := &b.Doubts[i]
		out.Doubts = append(out.Doubts, Doubt{
			Code: x.Code, Path: x.Path, Text: m.say.Say(x.Message, m.unit), Tolerance: m.value(x.Tolerance), Own: x.Own,
			Lessen: m.say.Say(trace.Message{Code: lessen(x), Args: x.Args}, m.unit),
		})
	}
	for i := range b.Outputs {
		o := &b.Outputs[i]
		x := Band{Figure: o.Figure, Name: o.Name, Value: m.value(o.Value), Low: m.value(o.Low), Middle: m.value(o.Middle), High: m.value(o.High), Together: float64(o.Together)}
		if slices.Contains(told, kindOf(o.Figure)) {
			x.Text = p.label(o)
		}
		for _, s := range o.Shares {
			if s.Part >= leastPart {
				x.Shares = append(x.Shares, DoubtPart{s.Doubt, float64(s.Part)})
			}
		}
		out.Figures = append(out.Figures, x)
	}
	out.Moved = b.Moved
	for i := range b.Motion {
		o := &b.Motion[i]
		out.Motion = append(out.Motion, Band{Figure: o.Figure, Value: m.value(o.Value), Low: m.value(o.Low), Middle: m.value(o.Middle), High: m.value(o.High)})
	}
	for _, c := range b.Chances {
		out.Chances = append(out.Chances, Chance{c.Code, c.Path, c.Name, float64(c.Part), c.Now})
	}
	for _, w := range again(r, p) {
		x := &b.Doubts[w.doubt]
		out.Again = append(out.Again, Again{x.Path, m.say.Say(trace.Message{Code: lessen(x), Args: x.Args}, m.unit), w.in.Figure, p.label(w.in), float64(rounded(w.most))})
	}
	d.Bands = out
}
