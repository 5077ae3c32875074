package answer

import (
	"fmt"
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
	p.head("Assembly in the vault")
	p.notToCut(r.NotToCut)
	p.pieces(a)
	for _, m := range a.Rolls {
		if m.Arc == 0 {
			p.line("roll %-4s on the pipe's line itself", m.Mark)
			continue
		}
		p.line("roll %-4s %s clockwise: %s clockwise round the pipe's outside, or %s the other way", m.Mark, show(p, m.Angle, unit.KindAngle),
			show(p, m.Arc, unit.KindTape), show(p, m.Other, unit.KindTape))
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
		p.line("checked a second way: %d checks passed", n)
	} else {
		p.line("checked a second way: %d of %d checks passed; see the findings for what fails", n, len(r.Checks))
	}
}

// pieces prints the cut list, with how the socket at each end is known.
func (p *printer) pieces(a *layout.Assembly) {
	rows := [][]string{{"piece", "from", "to", "cut", "insertion marks", "", "sockets", "", ""}}
	for i := range a.Pieces {
		c, note := &a.Pieces[i], ""
		if c.Closing && !c.InPlace {
			note = "closing piece: measure the gap in place before cutting"
		}
		row := []string{c.Mark, c.From, c.To, show(p, c.Cut, unit.KindTape), show(p, c.Ends[0].Mark, unit.KindTape), show(p, c.Ends[1].Mark, unit.KindTape), "", "", note}
		for k, e := range c.Ends {
			row[6+k] = show(p, e.Socket, unit.KindTape) + " " + p.say.Word("known."+string(e.By))
		}
		rows = append(rows, row)
	}
	p.table("lllrrrlll", rows)
	for _, s := range a.Stubs {
		p.line("stub for the dry fit in place of %s: %s", s.Piece, show(p, s.Length, unit.KindTape))
	}
}

// places prints where the middle of each part stands.
func (p *printer) places(a *layout.Assembly) {
	rows := [][]string{{"part, its middle", "from the left wall", "from the front wall", "above the floor", ""}}
	for i := range a.Places {
		c, note := a.Places[i].Centre, ""
		if a.Places[i].CoverUp {
			note = "cover on top"
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
		return fmt.Sprintf("%s in length, %s in width, %s in height", show(p, unit.Length(math.Abs(v.X)), unit.KindTape), show(p, unit.Length(math.Abs(v.Y)), unit.KindTape), show(p, unit.Length(math.Abs(v.Z)), unit.KindTape))
	}
	p.line("as drawn the chain's end misses the hole by %s", show(p, unit.Length(a.Closure.Off.Norm()), unit.KindTape))
	p.line("errors of saw, seats and rolls may move it, likely %s; at worst %s", three(a.Stack.Likely), three(a.Stack.Worst))
	if a.Room.Stands {
		p.line("the pump stands in something, so there is no room to move it")
	} else {
		p.line("the pump can be moved %s to the left, %s to the right, %s to the front, %s to the back", show(p, a.Room.Left, unit.KindTape),
			show(p, a.Room.Right, unit.KindTape), show(p, a.Room.Front, unit.KindTape), show(p, a.Room.Back, unit.KindTape))
	}
	for _, s := range a.Room.Shorter {
		for i := range a.Pieces {
			if a.Pieces[i].After == s.After {
				p.line("closing piece %s can be cut shorter by %s; measured in place it may still be off by %s", a.Pieces[i].Mark, show(p, s.Spare, unit.KindTape), show(p, a.Stack.Closing, unit.KindTape))
			}
		}
	}
}

// notToCut heads pieces of an assembly that cannot be built.
func (p *printer) notToCut(held bool) {
	if held {
		p.line("NOT TO BE CUT: the pieces of the assembly, which cannot be built as it is laid; see its dangers and faults")
	}
}

// wayOut prints the moves by which the pump comes out.
func (p *printer) wayOut(a *layout.Assembly) {
	o := &a.LiftOut
	if !o.Possible {
		return
	}
	p.line("the pump's way out, unplugged and with %s opened:", o.Union)
	for i, v := range o.Moves {
		way := "move it " + p.toward(v.Along)
		if v.Along.Z > 0.9 {
			way = "lift it straight up"
		}
		p.line("  %d. %s, %s", i+1, way, show(p, v.Distance, unit.KindTape))
	}
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
