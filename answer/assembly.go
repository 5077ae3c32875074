package answer

import (
	"math"
	"strings"

	"plashet/engine/design"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

func (p *printer) assembly(r *design.Result) {
	a := r.Assembly
	if a == nil || !a.Laid {
		return
	}
	p.head("print.head.assembly")
	p.notToCut(r.NotToCut)
	p.pieces(a)
	for _, m := range a.Rolls {
		if m.Arc == 0 {
			p.tell("", "print.roll.none", str("mark", m.Mark))
			continue
		}
		code := "print.roll"
		if m.Hose {
			code = "print.roll.hose"
		}
		p.tell("", code, str("mark", m.Mark), num("angle", m.Angle, unit.KindAngle), num("arc", m.Arc, unit.KindTape), num("other", m.Other, unit.KindTape))
	}
	p.places(a)
	p.play(a)
	p.wayOut(a)
	p.second(r.Second)
}

// second prints how many checks of the second kind passed.
func (p *printer) second(r *verify.Report) {
	if r == nil {
		return
	}
	if n := r.Passed(); n == len(r.Checks) {
		p.tell("", "print.second", count("count", n))
	} else {
		p.tell("", "print.second.fails", count("count", n), count("of", len(r.Checks)))
	}
}

// pieces prints the cut list, with how the socket at each end is known.
func (p *printer) pieces(a *layout.Assembly) {
	rows := [][]string{{
		p.say.Word("print.piece"), p.say.Word("print.piece.from"), p.say.Word("print.piece.to"), p.say.Word("print.piece.cut"),
		p.say.Word("print.piece.marks"), "", p.say.Word("print.piece.sockets"), "", "",
	}}
	all := a.CutList()
	for i := range all {
		c, note := &all[i], ""
		if c.After == layout.NoPart {
			note = p.say.Word("print.hose")
		}
		if c.Closing && !c.InPlace {
			note = p.say.Word("print.closing")
		}
		if c.Made {
			note = p.say.Word("print.made")
		}
		to := c.To
		if a.TwoPipes() {
			to += ", " + p.text("print.piece.pipe", str("size", c.Pipe.Size))
		}
		row := []string{c.Mark, c.From, to, show(p, c.Cut, unit.KindTape), show(p, c.Ends[0].Mark, unit.KindTape), show(p, c.Ends[1].Mark, unit.KindTape), "", "", note}
		for k, e := range c.Ends {
			row[6+k] = show(p, e.Socket, unit.KindTape) + " " + p.say.Word("known."+string(e.By))
		}
		rows = append(rows, row)
	}
	p.table("lllrrrlll", rows)
	for _, s := range a.Stubs {
		p.tell("", "print.stub", str("piece", s.Piece), num("length", s.Length, unit.KindTape))
	}
}

// places prints where the middle of each part stands.
func (p *printer) places(a *layout.Assembly) {
	rows := [][]string{{p.say.Word("print.part"), p.say.Word("print.part.left"), p.say.Word("print.part.front"), p.say.Word("print.part.floor"), ""}}
	for i := range a.Places {
		c, note := a.Places[i].Centre, ""
		if a.Places[i].CoverUp {
			note = p.say.Word("print.part.cover")
		}
		rows = append(rows, []string{
			a.Places[i].Mark, show(p, unit.Length(c.X), unit.KindTape), show(p, unit.Length(c.Y), unit.KindTape), show(p, unit.Length(c.Z), unit.KindTape), note,
		})
	}
	p.table("lrrrl", rows)
}

// play prints what the chain misses the hole by, what errors may add up to and
// what room there is to take them up.
func (p *printer) play(a *layout.Assembly) {
	three := func(v geom.Vec3) string {
		return p.text("print.three", num("length", unit.Length(math.Abs(v.X)), unit.KindTape), num("width", unit.Length(math.Abs(v.Y)), unit.KindTape), num("height", unit.Length(math.Abs(v.Z)), unit.KindTape))
	}
	p.tell("", "print.misses", num("by", unit.Length(a.Closure.Off.Norm()), unit.KindTape))
	p.tell("", "print.errors", str("likely", three(a.Stack.Likely)), str("worst", three(a.Stack.Worst)))
	if a.Room.Stands {
		p.tell("", "print.play.none")
	} else {
		p.tell("", "print.play", num("left", a.Room.Left, unit.KindTape), num("right", a.Room.Right, unit.KindTape),
			num("front", a.Room.Front, unit.KindTape), num("back", a.Room.Back, unit.KindTape))
	}
	p.needed(a)
	p.twice(a.Stack.Shares)
	for _, s := range a.Room.Shorter {
		for i := range a.Pieces {
			if a.Pieces[i].After == s.After {
				p.tell("", "print.shorter", str("piece", a.Pieces[i].Mark), num("spare", s.Spare, unit.KindTape), num("off", a.Stack.Closing, unit.KindTape))
			}
		}
	}
}

// needed prints the play needed beside the play there is.
func (p *printer) needed(a *layout.Assembly) {
	for _, y := range a.Room.Plays {
		p.tell("", "print.needed."+y.Axis, num("needed", y.Needed, unit.KindTape), num("worst", y.Worst, unit.KindTape), num("available", y.Available, unit.KindTape))
	}
}

// What is worth measuring twice is told down to a tenth of the likely error, the
// first three.
const (
	leastShare = 0.1
	mostShares = 3
)

// twice prints which measurement makes most of the likely error.
func (p *printer) twice(shares []layout.Share) {
	var told []string
	for i, s := range shares {
		if i == mostShares || s.Of < leastShare {
			break
		}
		told = append(told, p.text("cause."+string(s.Cause), str("mark", s.Mark), num("share", s.Of, unit.KindPercent)))
	}
	if len(told) > 0 {
		p.tell("", "print.twice", str("what", strings.Join(told, "; ")))
	}
}

// notToCut heads pieces of an assembly that cannot be built.
func (p *printer) notToCut(held bool) {
	if held {
		p.tell("", "print.notcut")
	}
}

// wayOut prints the moves by which the pump comes out.
func (p *printer) wayOut(a *layout.Assembly) {
	o := &a.LiftOut
	if !o.Possible {
		return
	}
	p.moves(o.Union, o.Moves)
}

// moves prints a way out, one move after the other.
func (p *printer) moves(union string, moves []layout.Move) {
	if len(moves) == 0 {
		return
	}
	p.tell("", "print.way", str("union", union))
	for i, text := range p.movesOf(moves) {
		p.line("  %d. %s", i+1, text)
	}
}

// movesOf says the moves of the pump's way out.
func (p *printer) movesOf(moves []layout.Move) (out []string) {
	lean := geom.Vec3{}
	for _, v := range moves {
		lean = lean.Add(v.Along.Scale(float64(v.Turn)))
		way := "print.way.move"
		switch {
		case v.Turn != 0:
			way = "print.way.tilt"
		case v.Along.Z > 0.9 && lean.Norm() > 1e-6:
			way = "print.way.lean"
		case v.Along.Z > 0.9:
			way = "print.way.lift"
		}
		out = append(out, p.text(way, str("toward", p.toward(v.Along)), num("distance", v.Distance, unit.KindTape), num("turn", v.Turn, unit.KindAngle)))
	}
	return out
}

// toward names the way of a move in the vault's frame.
func (p *printer) toward(v geom.Vec3) string {
	ways := []struct {
		code string
		part float64
	}{{"way.up", v.Z}, {"way.down", -v.Z}, {"way.right", v.X}, {"way.left", -v.X}, {"way.back", v.Y}, {"way.front", -v.Y}}
	var names []string
	for _, w := range ways {
		if w.part > 0.1 {
			names = append(names, p.say.Word(w.code))
		}
	}
	return strings.Join(names, ", ")
}
