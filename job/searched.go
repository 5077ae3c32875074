package job

import (
	"slices"
	"strconv"

	"plashet/engine/trace"
)

// searched holds what the search for layouts may choose from: attitudes that
// the pump has, glued parts at the ends of the chain, fittings that are not
// both there and not.
func (c *checker) searched() {
	a := &c.j.Assembly
	if p := c.j.used(); p != nil {
		names := make([]string, 0, len(p.Attitudes))
		for _, t := range p.Attitudes {
			names = append(names, t.Name)
		}
		for i, s := range a.Search.Stands {
			if s.Attitude != "" && !slices.Contains(names, s.Attitude) {
				c.noSuch("/assembly/search/stands/"+strconv.Itoa(i)+"/attitude", s.Attitude, names)
			}
		}
	}
	// Glued parts make one row from the pump and one up to the wall.
	fromPump := true
	for i, l := range a.Parts {
		fromPump = fromPump && l.Glued == gluedPump
		if l.Glued == gluedPump && !fromPump {
			c.add("/assembly/parts/"+strconv.Itoa(i)+"/glued", CodeGluedApart, trace.Str("found", l.Glued))
		}
	}
	toWall := true
	for i := len(a.Parts) - 1; i >= 0; i-- {
		toWall = toWall && a.Parts[i].Glued == gluedWall
		if a.Parts[i].Glued == gluedWall && !toWall {
			c.add("/assembly/parts/"+strconv.Itoa(i)+"/glued", CodeGluedApart, trace.Str("found", gluedWall))
		}
	}
	for i, f := range c.j.Stock.Fittings {
		if f.None && f.Count > 0 {
			c.add("/stock/fittings/"+strconv.Itoa(i)+"/none", CodeNoneCount, trace.Str("count", strconv.Itoa(f.Count)))
		}
	}
}

// The sides on which a part may be glued already.
const (
	gluedPump = "pump"
	gluedWall = "wall"
)

// Glued gives how many of the assembly's parts are glued already, counted from
// the pump and from the wall.
func (a *Assembly) Glued() (fromPump, toWall int) {
	for _, l := range a.Parts {
		if l.Glued != gluedPump {
			break
		}
		fromPump++
	}
	for i := len(a.Parts) - 1; i >= fromPump && a.Parts[i].Glued == gluedWall; i-- {
		toWall++
	}
	return fromPump, toWall
}
