package design

import (
	"context"
	"errors"
	"slices"

	"plashet/engine/cut"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// cutting plans the pieces of the assembly and those typed in, pipe by pipe.
func (m *model) cutting(a *layout.Assembly) {
	type lot struct {
		name     job.PipeName
		pieces   []cut.Piece
		notToCut bool
	}
	var lots []lot
	add := func(n job.PipeName, p cut.Piece, notToCut bool) {
		i := slices.IndexFunc(lots, func(l lot) bool { return l.name == n })
		if i < 0 {
			i = len(lots)
			lots = append(lots, lot{name: n})
		}
		lots[i].pieces = append(lots[i].pieces, p)
		lots[i].notToCut = lots[i].notToCut || notToCut
	}
	if a != nil && a.Laid {
		for _, p := range a.Pieces {
			if p.Cut > 0 && !p.Made {
				add(m.named(job.PipeName{Kind: p.Pipe.Kind, Size: p.Pipe.Size}), cut.Piece{Length: p.Cut, Mark: p.Mark, Count: 1}, m.out.NotToCut)
			}
		}
	}
	if a != nil && a.Laid {
		hoses, from := m.hosesToCut(a)
		for i, h := range hoses {
			if m.fromStock(from[i], h.Cut) {
				add(from[i], cut.Piece{Length: h.Cut, Mark: h.Mark, Count: 1}, m.out.NotToCut)
			}
		}
	}
	for _, p := range m.job.Stock.Pieces {
		add(m.named(p.Pipe), cut.Piece{Length: p.Length.SI, Mark: p.Mark, Count: max(1, p.Count)}, false)
	}
	if m.job.Stock.Kerf.IsZero() && len(lots) > 0 {
		m.assume("/stock/kerf", AssumeKerf, unit.Of(m.job.Stock.Kerf.SI, unit.KindTape), leftEmpty)
	}
	for _, l := range lots {
		m.plan(l.name, l.pieces, l.notToCut)
	}
}

// cutGrid gives the step to which lengths are rounded for a cutting plan, on the
// safe side.
func (m *model) cutGrid() unit.Length {
	if m.job.System().Is(unit.Metric) {
		return unit.Millimetre / 2
	}
	return unit.Inch / 64
}

func (m *model) plan(name job.PipeName, pieces []cut.Piece, notToCut bool) {
	s := &m.job.Stock
	p := cut.Problem{Pieces: pieces, Kerf: s.Kerf.SI, Keep: s.Keep.SI, Grid: m.cutGrid(), Round: true}
	for _, k := range s.Sticks {
		if m.named(k.Pipe) == name {
			stick := cut.Stick{Length: k.Length.SI, Limit: k.Count}
			if price, err := k.Price.Amount(m.job.Style()); err == nil && !k.Price.IsZero() {
				digits, _ := unit.MinorUnit(price.Currency)
				stick.Cost = price.Amount.Shift(int32(digits)).Round(0).IntPart()
			}
			p.Sticks = append(p.Sticks, stick)
		}
	}
	for _, o := range s.Offcuts {
		if m.named(o.Pipe) == name {
			p.Offcuts = append(p.Offcuts, cut.Offcut{Length: o.Length.SI, Count: max(1, o.Count)})
		}
	}
	label := name.Kind + " " + name.Size
	if len(p.Sticks)+len(p.Offcuts) == 0 {
		m.fault("/stock/sticks", CodeNoSticks, trace.Str("pipe", label))
		return
	}
	plan, err := cut.Solve(context.Background(), p)
	if err != nil {
		var short *cut.Error
		if !errors.As(err, &short) {
			m.refuse("/stock", err)
			return
		}
		for _, f := range short.Faults {
			f.Path = "/stock" + f.Path
			m.out.Faults = append(m.out.Faults, f)
		}
		return
	}
	if !plan.Proof.Proven() {
		m.find(trace.Finding{Message: trace.Message{Code: FindUnproven, Args: []trace.Arg{trace.Str("pipe", label)}}, Path: "/stock", Severity: trace.Info})
	}
	m.out.Cutting = append(m.out.Cutting, Cutting{Name: name, Pipe: label, Pieces: pieces, Plan: plan, NotToCut: notToCut})
}
