package answer

import (
	"plashet/engine/cut"
	"plashet/engine/design"
	"plashet/engine/geom"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// Piece is a piece of pipe of the assembly.
type Piece struct {
	Mark    string      `json:"mark" doc:"mark on the piece"`
	From    string      `json:"from" doc:"part at its pump end"`
	To      string      `json:"to" doc:"part at its wall end"`
	Pipe    string      `json:"pipe" doc:"size of its pipe"`
	Cut     Quantity    `json:"cut" doc:"length to cut"`
	Marks   [2]Quantity `json:"insertionMarks" doc:"from each end"`
	Sockets [2]Socket   `json:"sockets" doc:"the sockets it goes into"`
	Closing bool        `json:"closing,omitempty" doc:"measure its gap in place before cutting"`
	Made    bool        `json:"made,omitempty" doc:"it is glued already: not to be cut"`
	Hose    bool        `json:"hose,omitempty" doc:"it is a hose: cut along its middle, from stop to stop"`
	Stub    *Quantity   `json:"stub,omitempty" doc:"length of the stub that stands for it in the dry fit"`
}

// Socket is the socket at one end of a piece.
type Socket struct {
	Depth  Quantity `json:"depth" doc:"its depth, by which the cut was worked out"`
	Known  string   `json:"known" doc:"measured, sheet, table, least (of a table) or memory"`
	Source Source   `json:"source" doc:"of the depth"`
}

// Roll is a roll mark.
type Roll struct {
	Mark  string   `json:"mark" doc:"the elbow or hose"`
	Hose  bool     `json:"hose,omitempty" doc:"it is a hose's: marked on the hose itself, the side to which it bends"`
	Angle Quantity `json:"angle" doc:"clockwise, looking along the flow"`
	Arc   Quantity `json:"arc" doc:"along the pipe's outside, clockwise"`
	Other Quantity `json:"other" doc:"the same mark the other way round"`
}

// Assembly is the chain as it stands in the vault.
type Assembly struct {
	Parts   []Part   `json:"parts" doc:"where each part stands, from the pump"`
	Off     Place    `json:"closingError" doc:"the chain's end less the middle of the hole, as drawn"`
	Likely  Place    `json:"errorLikely" doc:"what errors of saw, seats, rolls and elbows are likely to move it by, either way"`
	Worst   Place    `json:"errorWorst" doc:"the same at worst"`
	Closing Quantity `json:"errorClosing" doc:"what a closing piece measured in place may still be off by"`
	Shares  []Cause  `json:"errorShares,omitempty" doc:"what each source makes of the likely error, the largest first; what a closing piece takes up is not counted"`
	Needed  []Needed `json:"playNeeded,omitempty" doc:"play the chain needs to go together, and the play there is; absent where the pump stands in something"`
	Play    *Play    `json:"play,omitempty" doc:"how far the pump can be moved on the floor; absent where it stands in something"`
	Shorter []Spare  `json:"spare,omitempty" doc:"how much a closing piece can be cut shorter"`
	WayOut  WayOut   `json:"wayOut" doc:"how the pump comes out"`
	Second  *Second  `json:"secondCheck,omitempty" doc:"the same worked out a second time, by another method"`
	Water   InPipe   `json:"water" doc:"what stands in the pipe with the pump off, and what comes down"`
}

// Second is the second check of the assembly.
type Second struct {
	Checks int      `json:"checks" doc:"how many were made"`
	Passed int      `json:"passed" doc:"of them passed"`
	Failed []Failed `json:"failed,omitempty" doc:"those that did not: told among the findings"`
}

// Failed is a check that did not pass.
type Failed struct {
	Code   string   `json:"code" doc:"stable code"`
	Path   string   `json:"path" doc:"where in the job"`
	Parts  []string `json:"parts,omitempty" doc:"marks and names that it is about"`
	Found  Quantity `json:"found,omitzero" doc:"what was found, at least; below zero: they stand in each other"`
	Limit  Quantity `json:"limit,omitzero" doc:"what it is held against"`
	Margin Quantity `json:"margin,omitzero" doc:"below zero: it fails by that much"`
}

func (m maker) second(r *verify.Report) *Second {
	if r == nil {
		return nil
	}
	x := &Second{Checks: len(r.Checks), Passed: r.Passed()}
	for _, c := range r.Failed() {
		f := Failed{Code: c.Code, Path: c.Path, Found: m.value(c.Found), Limit: m.value(c.Limit), Margin: m.value(c.Margin)}
		for _, a := range c.Args {
			if a.Text != "" {
				f.Parts = append(f.Parts, a.Text)
			}
		}
		x.Failed = append(x.Failed, f)
	}
	return x
}

// Place is a point or a way in the vault: from its left front corner on the floor.
type Place struct {
	X Quantity `json:"x" doc:"to the right, along the length"`
	Y Quantity `json:"y" doc:"to the back, along the width"`
	Z Quantity `json:"z" doc:"up"`
}

// Part is where one part stands.
type Part struct {
	Mark    string `json:"mark" doc:"mark on the part"`
	Inlet   Place  `json:"inlet" doc:"the stop of its inlet"`
	Centre  Place  `json:"centre" doc:"its middle"`
	Outlet  Place  `json:"outlet" doc:"the stop of its outlet"`
	CoverUp bool   `json:"coverUp,omitempty" doc:"a valve that needs its cover on top"`
}

// Play is room to move the pump.
type Play struct {
	Left  Quantity `json:"left" doc:"to the left wall"`
	Right Quantity `json:"right" doc:"to the right"`
	Front Quantity `json:"front" doc:"to the front"`
	Back  Quantity `json:"back" doc:"to the back"`
}

// Cause is what one source of error makes of the likely error.
type Cause struct {
	Cause string  `json:"cause" doc:"saw, seat, roll or elbow"`
	Mark  string  `json:"mark" doc:"of the piece or the part"`
	Share float64 `json:"share" doc:"a part of 1"`
}

// Needed is the play that the chain needs along an axis.
type Needed struct {
	Axis      string   `json:"axis" doc:"length or width"`
	Needed    Quantity `json:"needed" doc:"likely, either way"`
	Worst     Quantity `json:"worst" doc:"at worst, nothing measured in place"`
	Available Quantity `json:"available" doc:"on the side with less room"`
}

// Spare is how much a closing piece can be cut shorter.
type Spare struct {
	Piece string   `json:"piece" doc:"its mark"`
	Spare Quantity `json:"spare" doc:"until the hubs meet"`
}

// WayOut is how the pump comes out.
type WayOut struct {
	Union    string `json:"union,omitempty" doc:"mark of the part that is opened"`
	Checked  bool   `json:"checked" doc:"it was looked for"`
	Possible bool   `json:"possible" doc:"there is one"`
	Moves    []Move `json:"moves,omitempty" doc:"in order"`
	Blocker  string `json:"blocker,omitempty" doc:"what stands over the pump"`
	Narrow   bool   `json:"narrow,omitempty" doc:"nothing stands over the pump, but the opening above is too narrow for it"`
}

// Move is one straight move.
type Move struct {
	Way      [3]float64 `json:"way" doc:"direction of length 1: right, back, up"`
	Distance Quantity   `json:"distance" doc:"how far; nothing for a tilt"`
	Turn     *Quantity  `json:"turn,omitempty" doc:"of a tilt: by how much it leans over that way"`
	About    *Place     `json:"about,omitempty" doc:"of a tilt: a point of the level line over which it leans, square to that way"`
	Text     string     `json:"text" doc:"the same in words"`
}

// InPipe is the water in the pipe with the pump off. What is not known is absent.
type InPipe struct {
	Order    string    `json:"order" doc:"noValve, valveFirst (towards the pump), unionFirst, noUnion or reversed"`
	RunKnown bool      `json:"runsCounted" doc:"the runs beyond the wall and the boxes are counted in"`
	Standing *Quantity `json:"standing,omitempty" doc:"held up by the valve: it can freeze"`
	Released *Quantity `json:"released,omitempty" doc:"comes down into the vault when the union is opened"`
	Returns  *Quantity `json:"returns,omitempty" doc:"comes down through the pump at every stop, with no valve to hold it"`
	Boxes    *Quantity `json:"boxes,omitempty" doc:"of what comes down, out of the boxes at the top"`
	Between  *Quantity `json:"between,omitempty" doc:"between valve and union"`
}

func (m maker) assembly(d *Document, r *design.Result) {
	d.NotToCut, d.Withheld = r.NotToCut, r.Glue != nil && r.Glue.Withheld
	if a := r.Assembly; a != nil && a.Laid {
		d.Assembly = m.stands(a)
		d.Assembly.Second = m.second(r.Second)
		all := a.CutList()
		for i := range all {
			d.Pieces = append(d.Pieces, m.piece(a, &all[i]))
		}
		d.Rolls = m.rolls(a)
	}
	if r.Glue != nil {
		d.Glue = m.steps(r.Glue)
		d.GlueTimes = m.times(r.Glue)
	}
	for _, c := range r.Cutting {
		x := Cutting{Pipe: c.Pipe, NotToCut: c.NotToCut, Proven: c.Plan.Proof.Proven(), Method: m.say.Word("cutting.method"), Cautions: []string{m.say.Word(glue.CautionSaw)}}
		for _, b := range c.Plan.Bars {
			bar := Bar{From: "stick", Length: of(m, b.Length, unit.KindTape), Remnant: of(m, b.Remnant, unit.KindTape)}
			if b.From == cut.FromOffcut {
				bar.From = "offcut"
			}
			for _, k := range b.Cuts {
				bar.Cuts = append(bar.Cuts, CutOff{Mark: c.Pieces[k.Piece].Mark, Length: of(m, k.Length, unit.KindTape)})
			}
			x.Bars = append(x.Bars, bar)
		}
		d.Cutting = append(d.Cutting, x)
	}
}

func (m maker) place(v geom.Vec3) Place {
	return Place{of(m, unit.Length(v.X), unit.KindTape), of(m, unit.Length(v.Y), unit.KindTape), of(m, unit.Length(v.Z), unit.KindTape)}
}

// rolls gives the roll marks of a chain.
func (m maker) rolls(a *layout.Assembly) (out []Roll) {
	for _, x := range a.Rolls {
		out = append(out, Roll{
			Mark: x.Mark, Hose: x.Hose, Angle: of(m, x.Angle, unit.KindAngle), Arc: of(m, x.Arc, unit.KindTape), Other: of(m, x.Other, unit.KindTape),
		})
	}
	return out
}

// steps gives the steps of gluing up.
func (m maker) steps(plan *glue.Plan) (out []GlueStep) {
	for _, g := range plan.Steps {
		x := GlueStep{
			Number: g.Number, Code: g.Code, Text: m.say.Say(g.Message, m.unit), Where: string(g.Where), Parts: g.Parts, Joints: g.Joints,
			Tilt: string(g.Tilt), Hold: some(m, g.Hold, unit.KindDuration), Set: some(m, g.Set, unit.KindDuration), NoReturn: g.NoReturn,
		}
		for _, c := range g.Cautions {
			x.Cautions = append(x.Cautions, m.say.Word(c))
		}
		out = append(out, x)
	}
	return out
}

func (m maker) piece(a *layout.Assembly, c *layout.Piece) Piece {
	x := Piece{Mark: c.Mark, From: c.From, To: c.To, Pipe: c.Pipe.Size, Cut: of(m, c.Cut, unit.KindTape), Closing: c.Closing && !c.InPlace && !c.Made, Made: c.Made, Hose: c.After == layout.NoPart}
	for k, e := range c.Ends {
		x.Marks[k] = of(m, e.Mark, unit.KindTape)
		x.Sockets[k] = Socket{Depth: of(m, e.Socket, unit.KindTape), Known: string(e.By), Source: e.Source}
	}
	for _, s := range a.Stubs {
		if s.Piece == c.Mark {
			x.Stub = new(of(m, s.Length, unit.KindTape))
		}
	}
	return x
}

func (m maker) stands(a *layout.Assembly) *Assembly {
	x := &Assembly{
		Off: m.place(a.Closure.Off), Likely: m.place(a.Stack.Likely), Worst: m.place(a.Stack.Worst), Closing: of(m, a.Stack.Closing, unit.KindTape),
		WayOut: WayOut{Union: a.LiftOut.Union, Checked: a.LiftOut.Checked, Possible: a.LiftOut.Possible, Blocker: a.LiftOut.Blocker, Narrow: a.LiftOut.Blocker == layout.BlockedByRim},
		Water:  m.inPipe(&a.Water),
	}
	for i := range a.Places {
		p := &a.Places[i]
		x.Parts = append(x.Parts, Part{Mark: p.Mark, Inlet: m.place(p.Inlet), Centre: m.place(p.Centre), Outlet: m.place(p.Outlet), CoverUp: p.CoverUp})
	}
	if r := &a.Room; !r.Stands {
		x.Play = &Play{of(m, r.Left, unit.KindTape), of(m, r.Right, unit.KindTape), of(m, r.Front, unit.KindTape), of(m, r.Back, unit.KindTape)}
	}
	for _, s := range a.Stack.Shares {
		x.Shares = append(x.Shares, Cause{string(s.Cause), s.Mark, float64(s.Of)})
	}
	for _, y := range a.Room.Plays {
		x.Needed = append(x.Needed, Needed{y.Axis, of(m, y.Needed, unit.KindTape), of(m, y.Worst, unit.KindTape), of(m, y.Available, unit.KindTape)})
	}
	for _, s := range a.Room.Shorter {
		for i := range a.Pieces {
			if a.Pieces[i].After == s.After {
				x.Shorter = append(x.Shorter, Spare{a.Pieces[i].Mark, of(m, s.Spare, unit.KindTape)})
			}
		}
	}
	x.WayOut.Moves = m.moves(a.LiftOut.Moves)
	return x
}

func (m maker) moves(list []layout.Move) (out []Move) {
	p := printer{say: m.say, unit: m.unit}
	for i, text := range p.movesOf(list) {
		v := &list[i]
		x := Move{Way: [3]float64{v.Along.X, v.Along.Y, v.Along.Z}, Distance: of(m, v.Distance, unit.KindTape), Text: text}
		if v.Turn != 0 {
			x.Turn, x.About = new(of(m, v.Turn, unit.KindAngle)), new(m.place(v.About))
		}
		out = append(out, x)
	}
	return out
}

// orders names how valve and union follow each other.
var orders = map[layout.Order]string{
	layout.NoValve: "noValve", layout.ValveFirst: "valveFirst", layout.UnionFirst: "unionFirst", layout.NoUnion: "noUnion", layout.Reversed: "reversed",
}

func (m maker) inPipe(w *layout.Water) InPipe {
	x := InPipe{Order: orders[w.Order], RunKnown: w.RunKnown}
	if !w.Known || w.Order == layout.Reversed {
		return x
	}
	water := func(v unit.Volume) *Quantity { return new(of(m, v, unit.KindWater)) }
	x.Boxes = water(w.Boxes)
	if w.Order == layout.NoValve {
		x.Returns = water(w.Returns)
		return x
	}
	x.Standing = water(w.Standing)
	if w.Order != layout.NoUnion {
		x.Released, x.Between = water(w.Released), water(w.Between)
	}
	return x
}
