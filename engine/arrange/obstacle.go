package arrange

import (
	"context"
	"math"
	"slices"
	"strings"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// An obstacle moved, or taken out where moving it does not do. Args: name.
const (
	ChangeObstacleUp    = "arrange.change.obstacle.up"
	ChangeObstacleDown  = "arrange.change.obstacle.down"
	ChangeObstacleLeft  = "arrange.change.obstacle.left" // toward the left wall
	ChangeObstacleRight = "arrange.change.obstacle.right"
	ChangeObstacleFront = "arrange.change.obstacle.front"
	ChangeObstacleBack  = "arrange.change.obstacle.back"
	ChangeObstacleOut   = "arrange.change.obstacle.out"
)

// Codes of several obstacles.
const (
	// ChangeObstaclesOut: several taken out, none of which does alone. Args: names.
	ChangeObstaclesOut = "arrange.change.obstacles.out"
)

// cleared gives what one obstacle moved would mend: each way by the least that does,
// or that it must come out. Where nothing fits without it, nothing does with it
// elsewhere, so that it is first looked at without. With parts glued already none is
// moved: these may touch one.
func (s *search) cleared(ctx context.Context, tell func(Progress)) (out []Change) {
	list := s.in.Vault.Obstacles
	if len(list) == 0 || s.glued.any() {
		return nil
	}
	without := func(keep func(i int) bool) []Layout {
		in := s.in
		in.Instead, in.Vault.Obstacles = nil, nil
		for i, o := range list {
			if keep(i) {
				in.Vault.Obstacles = append(in.Vault.Obstacles, o)
			}
		}
		return one(ctx, in).Layouts
	}
	all := without(func(int) bool { return false })
	if len(all) == 0 {
		return nil
	}
	alone := false
	for i := range list {
		found := all
		if len(list) > 1 {
			found = without(func(k int) bool { return k != i })
		}
		if ctx.Err() != nil || len(found) == 0 {
			continue
		}
		before := len(out)
		alone = true
		for _, g := range s.moves(i) {
			if c, ok := s.stretch(ctx, &g, tell); ok {
				out = append(out, c)
			}
		}
		if len(out) == before && ctx.Err() == nil {
			out = append(out, Change{What: trace.Message{Code: ChangeObstacleOut, Args: named(&list[i])}, Layout: found[0], Obstacle: i + 1})
		}
	}
	if !alone && ctx.Err() == nil {
		if c, ok := s.severalOut(all, without); ok {
			out = append(out, c)
		}
	}
	return out
}

// severalOut gives the obstacles that must come out together, none of which can stay:
// one after the other is put back where a layout fits all the same.
func (s *search) severalOut(found []Layout, without func(keep func(i int) bool) []Layout) (Change, bool) {
	list := s.in.Vault.Obstacles
	back := make([]bool, len(list))
	for i := range list {
		back[i] = true
		if l := without(func(k int) bool { return back[k] }); len(l) > 0 {
			found = l
		} else {
			back[i] = false
		}
	}
	var names []string
	for i, o := range list {
		if !back[i] {
			names = append(names, "“"+o.Name+"”")
		}
	}
	c := Change{What: trace.Message{Code: ChangeObstaclesOut, Args: []trace.Arg{trace.Str("names", strings.Join(names, ", "))}}}
	if len(found) == 0 || len(names) == 0 {
		return c, false
	}
	c.Layout = found[0]
	return c, true
}

func named(o *layout.Obstacle) []trace.Arg { return []trace.Arg{trace.Str("name", o.Name)} }

// moves lists the ways in which an obstacle may go, each as far as it meets a wall or
// another one; within a round vault only up and down.
func (s *search) moves(i int) (out []stretch) {
	o := &s.in.Vault.Obstacles[i]
	for _, m := range [...]struct {
		code string
		way  geom.Vec3
	}{
		{ChangeObstacleUp, geom.Vec3{Z: 1}},
		{ChangeObstacleDown, geom.Vec3{Z: -1}},
		{ChangeObstacleLeft, geom.Vec3{X: -1}},
		{ChangeObstacleRight, geom.Vec3{X: 1}},
		{ChangeObstacleFront, geom.Vec3{Y: -1}},
		{ChangeObstacleBack, geom.Vec3{Y: 1}},
	} {
		if s.in.Vault.Round && m.way.Z == 0 {
			continue
		}
		if most := s.clearOf(i, m.way); most > float64(hundredth) {
			out = append(out, stretch{code: m.code, args: named(o), obstacle: i + 1, shift: m.way, most: math.Min(mostShort, most), made: func(in Input, by unit.Length) Input {
				in.Vault.Obstacles = slices.Clone(in.Vault.Obstacles)
				b := &in.Vault.Obstacles[i].Box
				*b = b.Shift(m.way.Scale(float64(by)))
				return in
			}})
		}
	}
	return out
}

// clearOf gives how far an obstacle goes along an axis until it meets a flat wall or
// another obstacle.
func (s *search) clearOf(i int, way geom.Vec3) float64 {
	box := s.in.Vault.Obstacles[i].Box
	most := math.Inf(1)
	h, at := box.Size().Scale(0.5), box.Centre()
	for k := range s.walls {
		w := &s.walls[k]
		if goes := w.N.Dot(way); !w.slid && goes > 1e-9 {
			reach := w.N.Dot(at) + math.Abs(w.N.X)*h.X + math.Abs(w.N.Y)*h.Y + math.Abs(w.N.Z)*h.Z
			most = math.Min(most, (w.B-reach)/goes)
		}
	}
	for k, o := range s.in.Vault.Obstacles {
		between, apart := o.Box.Centre().Sub(at), o.Box.Size().Scale(0.5).Add(h)
		ahead := between.Dot(way)
		beside := false // it goes past
		for _, axis := range [3]geom.Vec3{{X: 1}, {Y: 1}, {Z: 1}} {
			beside = beside || axis.Dot(way) == 0 && math.Abs(axis.Dot(between)) > axis.Dot(apart)-1e-9
		}
		if k != i && !beside && ahead > 0 {
			most = math.Min(most, ahead-math.Abs(apart.Dot(way)))
		}
	}
	return most
}

// goes tells a chain that an obstacle may go along with the measure.
func (c *chain) goes(g *stretch) {
	if g.obstacle == 0 {
		return
	}
	c.shift = g.shift
	for i := range c.bodies {
		if b := &c.bodies[i]; b.item == itemObstacle-(g.obstacle-1) {
			b.a.upto, b.b.upto = goesAlong, goesAlong
		}
	}
}
