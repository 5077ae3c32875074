package level

import (
	"strconv"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

var booksSource = trace.Source{Title: "balance of water: what the stores take, pond and vault lose", Basis: trace.BasisLibrary}

// Figures gives the levels and margins as figures that can be opened: each
// store's volumes, and for every state the levels with the volumes that made
// them. IDs: level.store.N.running|held|open (N counted from 0 in watercourse
// order), level.transit, level.draw, level.draw.open, level.sill.head,
// level.line.least|held|open, and for a state level.COURSE.MOMENT followed by
// .pond, .vault, .change, .sill, .pump, .passes, .freeboard, .rain (each where it
// applies).
func (l *Levels) Figures() []trace.Figure {
	var out []trace.Figure
	n := len(l.in.Stores)
	running, draw, open := make([]trace.Term, 0, n), make([]trace.Term, 0, n), make([]trace.Term, 0, n)
	for i, s := range l.in.Stores {
		id := "level.store." + strconv.Itoa(i)
		for _, v := range [...]struct {
			part string
			v    unit.Volume
		}{{".running", s.Running}, {".held", s.Held}, {".open", s.HeldOpen}} {
			out = append(out, trace.Figure{ID: id + v.part, Value: unit.Of(v.v, unit.KindWater), Formula: s.Formula, Terms: s.Terms, Source: booksSource})
		}
		symbol := s.Name
		running = append(running, term(symbol, s.Running, unit.KindWater, id+".running"))
		draw = append(draw, term(symbol, s.Running-s.Held, unit.KindWater, id+".held"))
		open = append(open, term(symbol, s.Running-s.HeldOpen, unit.KindWater, id+".open"))
	}
	out = append(out,
		trace.Figure{ID: "level.transit", Value: unit.Of(l.Transit, unit.KindWater), Formula: "sum of the stores, running", Terms: running, Source: booksSource},
		trace.Figure{ID: "level.draw", Value: unit.Of(l.Draw, unit.KindWater), Formula: "sum of running - held", Terms: draw, Source: booksSource},
		trace.Figure{ID: "level.draw.open", Value: unit.Of(l.DrawOpen, unit.KindWater), Formula: "sum of running - held with the pipe open", Terms: open, Source: booksSource},
	)
	if v := l.in.Vault; v != nil && v.Sill != nil {
		out = append(out, trace.Figure{
			ID: "level.sill.head", Value: unit.Of(l.HeadNeeded, unit.KindDepth), Formula: "(Q / (C L))^(2/3)", Source: weirSource,
			Terms: []trace.Term{
				term("Q", l.in.Flow, unit.KindFlow, ""), term("C", unit.Ratio(v.Sill.C), unit.KindRatio, ""), term("L", v.Sill.Width, unit.KindTape, "/vault/weirWidth"),
			},
		})
	}
	for _, v := range [...]struct {
		id      string
		z       unit.Length
		formula string
	}{
		{"least", l.Lines.Least, "running level that keeps vault and pump supplied, reserve included"},
		{"held", l.Lines.GreatestHeld, "running level from which a stop with the valve holding, and the design rain, fill the pond to its rim"},
		{"open", l.Lines.GreatestOpen, "running level from which a stop with the pipe open, and the design rain, fill the pond to its rim"},
	} {
		if l.in.NoRim && v.id != "least" {
			continue
		}
		out = append(out, trace.Figure{ID: "level.line." + v.id, Value: unit.Of(v.z, unit.KindElevation), Formula: v.formula, Source: booksSource})
	}
	for i := range l.States {
		out = l.stateFigures(out, &l.States[i])
	}
	return out
}

// figureOf names the figure of a store that tells what it holds in a state; none
// where it is filled in part only.
func figureOf(i int, s *Store, v unit.Volume) string {
	id := "level.store." + strconv.Itoa(i)
	switch v {
	case s.Running:
		return id + ".running"
	case s.Held:
		return id + ".held"
	case s.HeldOpen:
		return id + ".open"
	}
	return ""
}

func (l *Levels) stateFigures(out []trace.Figure, s *State) []trace.Figure {
	id := "level." + string(s.Course) + "." + string(s.Moment)
	books := []trace.Term{term("total", s.Total, unit.KindWater, "")}
	for i, v := range s.Stores {
		store := &l.in.Stores[i]
		from := ""
		if s.Course != CourseFirst || s.Moment != MomentRest { // dry there
			from = figureOf(i, store, v)
		}
		books = append(books, term(store.Name, v, unit.KindWater, from))
	}
	books = append(books, term("vault", s.VaultVolume, unit.KindWater, ""), term("pond", s.PondVolume, unit.KindWater, ""))
	out = append(out, trace.Figure{
		ID: id + ".pond", Value: unit.Of(s.Pond, unit.KindElevation),
		Formula: "level at which the pond holds total - stores - vault", Terms: books, Source: booksSource,
	})
	if l.in.Vault != nil {
		out = append(out, l.vaultFigure(id, s))
	}
	out = append(out, trace.Figure{
		ID: id + ".change", Value: unit.Of(s.Change, unit.KindDepth), Formula: "pond - pond at the course's beginning",
		Terms: []trace.Term{term("pond", s.Pond, unit.KindElevation, id+".pond")}, Source: booksSource,
	})
	for _, m := range [...]struct {
		part   string
		m      Margin
		source trace.Source
	}{{".sill", s.Sill, weirSource}, {".pump", s.Pump, pumpSheet}} {
		if m.m.Applies {
			out = append(out, trace.Figure{
				ID: id + m.part, Value: unit.Of(m.m.Over, unit.KindDepth), Formula: "present - needed", Source: m.source,
				Terms: []trace.Term{
					term("present", m.m.Present, unit.KindDepth, ""), term("needed", m.m.Needed, unit.KindDepth, ""),
					term("after the reserve", m.m.AfterReserve, unit.KindDepth, ""),
				},
			})
		}
	}
	if s.Moment.Running() {
		out = append(out, trace.Figure{
			ID: id + ".passes", Value: unit.Of(s.Passes, unit.KindFlow), Source: booksSource,
			Formula: "the pump's flow; where the water does not suffice, what comes over the sill: C L over^1.5, with the stores as that flow fills them",
			Terms: []trace.Term{
				term("Q", s.Flow, unit.KindFlow, ""), term("missing", s.Missing, unit.KindWater, ""), term("spare", s.Spare, unit.KindWater, ""),
			},
		})
	}
	if !s.Edge.Known {
		return out
	}
	rimLevel := l.in.RimSource
	return append(out,
		trace.Figure{
			ID: id + ".freeboard", Value: unit.Of(s.Edge.Freeboard, unit.KindDepth), Formula: "rim - pond", Source: rimLevel,
			Terms: []trace.Term{
				term("rim", l.in.Rim, unit.KindElevation, "/pond/rim"), term("pond", s.Pond, unit.KindElevation, id+".pond"),
				term("spill", s.Edge.Spill, unit.KindWater, ""),
			},
		},
		trace.Figure{
			ID: id + ".rain", Value: unit.Of(s.Edge.RainRoom, unit.KindDepth), Formula: "rim - pond with the design rain in it", Source: rimLevel,
			Terms: []trace.Term{
				term("rain", l.in.DesignRain, unit.KindDepth, "/site/designRain"), term("spill", s.Edge.RainSpill, unit.KindWater, ""),
			},
		})
}

func (l *Levels) vaultFigure(id string, s *State) trace.Figure {
	f := trace.Figure{ID: id + ".vault", Value: unit.Of(s.Vault, unit.KindElevation), Source: booksSource, Formula: "at rest the pond's level, or its own below the sill"}
	f.Terms = []trace.Term{term("pond", s.Pond, unit.KindElevation, id+".pond")}
	if !s.Moment.Running() {
		return f
	}
	f.Terms = append(f.Terms, term("screen", l.in.Vault.ScreenLoss, unit.KindDepth, "/vault/screenLoss"))
	f.Formula = "pond - screen"
	if sill := l.in.Vault.Sill; sill != nil {
		f.Formula = "sill + h (1 - (Q/Q1)^(1/0.385))^(2/3) - screen, h the pond over the sill, Q1 the free flow at h; at most the sill - screen where h is what Q needs or less"
		f.Source = drownedSource
		f.Terms = append(f.Terms, term("sill", sill.Crest, unit.KindElevation, "/vault/sill"), term("head needed", l.HeadNeeded, unit.KindDepth, "level.sill.head"))
	}
	return f
}
