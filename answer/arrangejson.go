package answer

import (
	"encoding/json"
	"io"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/design"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// ArrangedDocument is what a search for layouts found, as JSON.
type ArrangedDocument struct {
	Format     string         `json:"format" doc:"says that this is an answer"`
	Version    int            `json:"version" doc:"version of the answer's fields"`
	Name       string         `json:"name" doc:"the job's name"`
	Note       string         `json:"note,omitempty" doc:"the job's note"`
	Units      string         `json:"units" one:"us metric" doc:"us or metric: the units of every text"`
	Currency   string         `json:"currency,omitempty" doc:"of every cost"`
	Pump       string         `json:"pump,omitempty" doc:"the pump in use"`
	Flow       Quantity       `json:"flow,omitzero" doc:"at which losses are compared"`
	Layouts    []ArrangedPlan `json:"layouts" doc:"those that no other beats in every respect; by slide, joints, head, cost"`
	Leaned     bool           `json:"leaned,omitempty" doc:"none lifts or slides out: these come out with the pump leaned over"`
	Claim      string         `json:"claim,omitempty" one:"everything family capped stopped" doc:"how far the proof reaches: everything (any number of elbows), family (up to elbows), capped (a limit was met) or stopped; absent where no search was made"`
	Elbows     int            `json:"elbows" doc:"up to which everything was looked at; a hose is one of them"`
	Caps       int            `json:"caps" doc:"chains of fittings left undecided"`
	Gap        *ArrangedGap   `json:"gap,omitempty" doc:"what those take at least; absent where there are none"`
	Tight      int            `json:"tight,omitempty" doc:"looks at chains that could fit only with next to nothing to spare: left out, not ruled out (see docs/layouts.md)"`
	Proof      string         `json:"proof,omitempty" doc:"the claim in a sentence"`
	Stage      string         `json:"stage,omitempty" doc:"where nothing fits, what failed first: body, walls, clear, valve, out or stock (the pipe at hand)"`
	Uncut      []Piece        `json:"uncut,omitempty" doc:"where that is stock, the pieces of a layout that would fit with more pipe"`
	Short      []ArrangedMend `json:"short,omitempty" doc:"where nothing fits, what would mend it, the least first"`
	Unfinished bool           `json:"unfinished,omitempty" doc:"what would mend it was not sought to the end: there may be more"`
	Work       ArrangedWork   `json:"work" doc:"what the search had to do"`
	Findings   []Said         `json:"findings,omitempty" doc:"worth knowing"`
	Assumed    []string       `json:"assumed,omitempty" doc:"defaults in force"`
	Faults     []Fault        `json:"faults,omitempty" doc:"what could not be read or searched"`
}

// ArrangedGap is what the chains that were left undecided take at least, in each
// respect for itself: how much better than those told one of them may be.
type ArrangedGap struct {
	Head   Quantity `json:"head" doc:"none of them loses less"`
	Joints int      `json:"joints" doc:"nor has fewer"`
	Cost   *float64 `json:"cost,omitempty" doc:"nor costs less; absent where not every part has a price"`
}

// ArrangedPlan is one layout.
type ArrangedPlan struct {
	Attitude string         `json:"attitude" doc:"the pump's attitude"`
	Turn     Quantity       `json:"turn" doc:"of the pump about the upright, anticlockwise seen from above"`
	At       Place          `json:"at" doc:"where the corner of its box nearest the origin stands, after turning"`
	Along    Quantity       `json:"holeAlong" doc:"centre of the hole along its wall"`
	Height   Quantity       `json:"holeHeight" doc:"and above the floor"`
	Head     Quantity       `json:"head" doc:"lost in the vault at that flow"`
	Elbows   int            `json:"elbows" doc:"how many, hoses not counted"`
	Hoses    int            `json:"hoses,omitempty" doc:"how many"`
	Joints   int            `json:"joints" doc:"to glue or to screw"`
	Cost     *float64       `json:"cost,omitempty" doc:"of fittings and pipe; absent where one has no price"`
	Slide    Quantity       `json:"slide" doc:"that the pump must be slid before it can be lifted"`
	Lean     *Quantity      `json:"lean,omitempty" doc:"that it must be leaned over on its way out; absent where it need not be"`
	Deep     *Quantity      `json:"unionDepth,omitempty" doc:"of the union's nut under the rim; absent where there is none"`
	Released Quantity       `json:"released" doc:"comes down into the vault when the union is opened; see water of its assembly for whether the runs are counted in"`
	Down     string         `json:"comesDown" doc:"the same in words; where not all runs are known or no valve holds it, that"`
	Chain    []ArrangedPart `json:"chain" doc:"the fittings in order, from the pump to the wall"`
	Pieces   []Piece        `json:"pieces" doc:"the cut list"`
	Way      []Move         `json:"way" doc:"the pump's way out, unplugged and with the union opened, in order"`
	Rolls    []Roll         `json:"rolls" doc:"roll marks of its elbows and hoses"`
	Glue     []GlueStep     `json:"glue,omitempty" doc:"the steps of gluing it up, in order"`
	Told     []Said         `json:"told,omitempty" doc:"what is said of it: what to measure first, what water comes down"`
	Stands   *Assembly      `json:"assembly" doc:"where its parts stand, what it may be off by, its play"`
}

// ArrangedPart is one fitting of a layout.
type ArrangedPart struct {
	Mark    string   `json:"mark" doc:"its mark"`
	Fitting string   `json:"fitting" doc:"its name"`
	Size    string   `json:"size" doc:"its size"`
	Roll    Quantity `json:"roll" doc:"of an elbow's outlet seen along the flow into it, clockwise from up, or from the back wall where its inlet is upright"`
	Piece   string   `json:"piece,omitempty" doc:"mark of the piece of pipe behind it; absent where it goes straight into the next"`
}

// ArrangedMend is one size changed, or one thing done otherwise, so that a layout
// fits.
type ArrangedMend struct {
	Code   string   `json:"code" doc:"what is changed"`
	Text   string   `json:"text" doc:"the same in words"`
	By     Quantity `json:"by,omitzero" doc:"by how much at least, not rounded; absent for what has no size: the pump turned or elsewhere, or fittings besides"`
	Sure   bool     `json:"sure" doc:"a hundredth of an inch short of that does not do; of fittings that do only together: if one of these kinds is left out, nothing fits"`
	Elbows int      `json:"elbows" doc:"of the layout that then fits, hoses not counted"`
	Hoses  int      `json:"hoses,omitempty" doc:"of that layout"`
}

// ArrangedWork counts what the search had to do.
type ArrangedWork struct {
	Orders   int `json:"orders" doc:"orders of fittings"`
	Chains   int `json:"chains" doc:"chains of directions"`
	Programs int `json:"programs" doc:"linear programs"`
	Nodes    int `json:"nodes" doc:"nodes of branch and bound"`
}

// ArrangedJSON prints what a search for layouts found as JSON.
func ArrangedJSON(w io.Writer, a *design.Arranging, read []trace.Fault, l *words.Language) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(BuildArranged(a, read, l))
}

// BuildArranged gives what a search for layouts found as values: what
// ArrangedJSON writes.
func BuildArranged(a *design.Arranging, read []trace.Fault, l *words.Language) ArrangedDocument {
	p := &arranging{printer{say: l, unit: a.Units}, a, false}
	m := maker{unit: a.Units, say: l}
	d := ArrangedDocument{Format: FormatName, Version: FormatVersion, Name: a.Name, Note: a.Note, Units: systemName(a.Units), Currency: a.Currency, Layouts: []ArrangedPlan{}}
	if o := a.Outcome; o != nil {
		d.Pump, d.Flow = a.Pump, of(m, a.Flow, unit.KindFlow)
		d.Leaned = o.Leaned
		d.Elbows, d.Caps, d.Tight, d.Stage = o.Proof.Elbows, o.Proof.Caps, o.Tally.Tight, string(o.Stage)
		d.Work = ArrangedWork{o.Tally.Orders, o.Tally.Chains, o.Tally.Programs, o.Tally.Nodes}
		if g := o.Proof.Open; d.Caps > 0 {
			d.Gap = &ArrangedGap{Head: of(m, g.Head, unit.KindHead), Joints: g.Joints}
			if g.Cost > 0 {
				d.Gap.Cost = &g.Cost
			}
		}
		if o.Uncut != nil {
			all := o.Uncut.Laid.CutList()
			for i := range all {
				d.Uncut = append(d.Uncut, m.piece(&o.Uncut.Laid, &all[i]))
			}
		}
		if d.Claim = claims[o.Proof.Claim]; d.Claim != "" {
			stem := "found.claim."
			if len(o.Layouts) == 0 {
				stem = "found.none."
			}
			if d.Proof = p.text(stem+d.Claim, count("elbows", d.Elbows), count("caps", d.Caps)); a.Input.Hose != nil && o.Proof.Claim != arrange.Everything {
				d.Proof += " " + p.text("found.hose")
			}
		}
		for i := range o.Layouts {
			x := p.planJSON(m, &o.Layouts[i])
			if i < len(a.Told) {
				x.Glue = m.steps(&a.Told[i].Glue)
				for _, f := range a.Told[i].Findings {
					x.Told = append(x.Told, Said{f.Code, f.Severity.String(), l.Finding(f, a.Units)})
				}
			}
			d.Layouts = append(d.Layouts, x)
		}
		d.Unfinished = a.Stopped || o.Unfinished
		for i := range o.Short {
			s := &o.Short[i]
			x := ArrangedMend{Code: s.What.Code, Text: l.Say(s.What, a.Units), Sure: s.Sure, Elbows: s.Layout.Worth.Elbows, Hoses: s.Layout.Worth.Hoses}
			if s.By != 0 {
				x.By = of(m, s.By, unit.KindTape)
				x.By.Text = of(m, layout.Enough(s.By, a.Units), unit.KindTape).Text
			}
			d.Short = append(d.Short, x)
		}
	}
	for _, f := range a.Findings {
		d.Findings = append(d.Findings, Said{f.Code, f.Severity.String(), l.Finding(f, a.Units)})
	}
	for _, x := range a.Assumptions {
		d.Assumed = append(d.Assumed, l.Assumption(x, a.Units))
	}
	for _, f := range append(slices.Clone(read), a.Faults...) {
		d.Faults = append(d.Faults, FaultOf(f, a.Units, l))
	}
	return whole(d)
}

func (p *arranging) planJSON(m maker, l *arrange.Layout) ArrangedPlan {
	w, c := &l.Worth, &l.Chain
	x := ArrangedPlan{
		Attitude: p.a.Attitudes[l.Standing], Turn: of(m, c.Pose.Turn, unit.KindAngle), At: m.place(c.Pose.At),
		Along: of(m, c.Vault.Outlet.Along, unit.KindTape), Height: of(m, c.Vault.Outlet.Height, unit.KindTape),
		Head: of(m, w.Head, unit.KindHead), Elbows: w.Elbows, Hoses: w.Hoses, Joints: w.Joints,
		Slide: of(m, w.Slide, unit.KindTape), Released: of(m, w.Released, unit.KindWater), Down: p.down(l),
		Stands: m.stands(&l.Laid), Rolls: m.rolls(&l.Laid),
	}
	x.Stands.Second = m.second(&l.Proved)
	if opens(l) {
		x.Deep = new(of(m, w.Deep, unit.KindTape))
	}
	if w.Priced {
		x.Cost = &w.Cost
	}
	if w.Lean > 0 {
		x.Lean = new(of(m, w.Lean, unit.KindAngle))
	}
	for i := range c.Parts {
		q := &c.Parts[i]
		part := ArrangedPart{Mark: l.Laid.Places[i].Mark, Fitting: p.a.PartName(&q.Part), Size: p.a.PartSize(&q.Part), Roll: of(m, q.Roll, unit.KindAngle)}
		if k := slices.IndexFunc(l.Laid.Pieces, func(c layout.Piece) bool { return c.After == i }); k >= 0 {
			part.Piece = l.Laid.Pieces[k].Mark
		}
		x.Chain = append(x.Chain, part)
	}
	all := l.Laid.CutList()
	for i := range all {
		x.Pieces = append(x.Pieces, m.piece(&l.Laid, &all[i]))
	}
	x.Way = m.moves(l.Way)
	return x
}
