package arrange

import (
	"context"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// one searches for any layout at all, and ends with the first few.
func one(ctx context.Context, in Input) Outcome {
	in.Rules.Brief, in.Rules.First, in.Rules.Best = true, true, 1
	return Search(ctx, in, nil)
}

// clear tells that the elbows alone of any of these orders keep clear of
// everything.
func (s *search) clear(all [][]order) bool {
	for _, orders := range all {
		for from := 0; from < len(orders) && !s.halted(); from += chunk {
			some := orders[from:min(from+chunk, len(orders))]
			found := make([]bool, len(some))
			s.share(len(some), func(w *worker, i int) {
				if c := w.bareChain(&some[i]); c != nil {
					ok, capped := w.within(&trial{}, c, false)
					found[i] = ok || capped
				}
			})
			if slices.Contains(found, true) {
				return true
			}
		}
	}
	return false
}

// failed names the first thing that failed, by looking again with less to keep:
// at the walls alone, or without the way out.
func (s *search) failed(ctx context.Context, passed stage) Stage {
	switch passed {
	case stageClear, stageLaid:
		if !s.in.Rules.Out {
			return StageValve
		}
		in := s.in.free() // that its pieces cannot be cut is another matter
		in.Rules.Out = false
		if len(one(ctx, *in).Layouts) > 0 {
			return StageOut
		}
		return StageValve
	}
	goes := false
	for i := range s.in.Standings {
		goes = goes || s.goesIn(i)
	}
	if !goes {
		return StageBody
	}
	for n := 0; n <= s.in.Rules.Elbows; n++ {
		ways := s.waysOf(n, nil)
		for from := 0; from < len(ways) && !s.halted(); from += chunk {
			some := ways[from:min(from+chunk, len(ways))]
			found := make([]bool, len(some))
			s.share(len(some), func(w *worker, i int) { found[i] = w.walled(&some[i]) })
			if slices.Contains(found, true) {
				return StageClear
			}
		}
	}
	return StageWalls
}

// goesIn tells that the pump's box goes into the vault as it is turned, and where
// it is fixed to a place, that flat walls, floor and lid leave it room there.
func (s *search) goesIn(standing int) bool {
	st := &s.in.Standings[standing]
	for _, turned := range st.turnsOf() {
		_, _, faults := layout.Lay(layout.Input{Vault: s.in.Vault, Pump: st.Pump, Pose: layout.Pose{Turn: turned}, Settings: s.in.Settings})
		if slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Code == layout.FaultPumpLarger }) {
			continue // that it has no parts is told too, and does not count
		}
		if !st.Fixed || s.holds(standing, turned) {
			return true
		}
	}
	return false
}

// holds tells that a pump that is fixed to a place stands within the flat walls.
func (s *search) holds(standing int, turned unit.Angle) bool {
	at := geom.Vec3{X: s.in.Standings[standing].Pose.At.X, Y: s.in.Standings[standing].Pose.At.Y}
	for _, o := range s.compassOf(standing, turned).around {
		for i := range s.walls {
			w := &s.walls[i]
			if o.pump() && !w.slid && w.N.Dot(o.far(w.N).c.Add(at))+o.beyond(w.N) > w.B+1e-7 {
				return false
			}
		}
	}
	return true
}
