package drawing

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/unit"
)

// height is one line of the list beside the section.
type height struct {
	name string
	at   unit.Length // elevation
	x    float64     // m from the break: where its lead starts
}

// heights lists what stands at which height from the water line, with leads.
func (s *sectionView) heights() {
	b := &s.b
	list := []height{
		{s.say("levels.rim"), b.rim, s.right},
		{s.say("levels.line"), b.line, s.edge},
		{s.runName("levels.pondrun", "levels.pondat"), b.run.Pond, s.edge},
		{s.say("levels.pondfloor"), b.floor, s.edge - float64(b.side[len(b.side)-1].In.SI)},
	}
	if b.vault {
		list[1].x, list[2].x = s.wall, s.wall
		list = append(list, height{s.say("levels.vaultfloor"), b.vaultFloor, s.vaultWall(float64(b.vaultFloor), true)})
		if b.moving || math.Abs(float64(b.run.Vault-b.run.Pond)) > 5e-5 {
			list = append(list, height{s.runName("levels.vaultrun", "levels.vaultat"), b.run.Vault, s.vaultWall(float64(b.run.Vault), true)})
		}
		if b.sill {
			list = append(list, height{s.say("levels.sill"), b.sillAt, s.wall})
		}
		if b.minKnown {
			list = append(list, height{s.say("levels.minwater"), b.minWater, s.vaultWall(float64(b.minWater), true)})
		}
	}
	slices.SortStableFunc(list, func(a, b height) int { return cmp.Compare(b.at, a.at) })
	at := make([]float64, len(list))
	for i, h := range list {
		at[i] = s.at(0, float64(h.at)).Y
	}
	at = spread(at, row, s.top-1, math.Inf(1))
	s.text(Text{At: Point{listEnd, s.y + small - 1}, Size: small, Anchor: End, Text: s.say("levels.from", "unit", s.depthUnit())})
	for i, h := range list {
		from := s.at(h.x, float64(h.at))
		bend := Point{s.list - sectionGap + 1.5, from.Y}
		if from.X < s.at(s.wall, 0).X+1 && b.vault && h.at > b.vaultFloor { // on its way through the vault
			s.add(Line{from, s.at(s.right, float64(h.at)), dots})
			from = s.at(s.right, float64(h.at))
		}
		s.add(Polyline{[]Point{from, bend, {s.list - 4, at[i]}, {s.list - 1.5, at[i]}}, help})
		s.text(Text{At: Point{s.list, at[i] + small*0.36}, Size: small, Text: h.name})
		s.text(Text{At: Point{listEnd, at[i] + small*0.36}, Size: small, Anchor: End, Text: s.fromLine(h.at)})
	}
	s.y = at[len(at)-1] + 2
}

// runName names a level as it runs every day, or of one moment.
func (s *sectionView) runName(every, moment string) string {
	if s.b.moving {
		return s.say(moment)
	}
	return s.say(every)
}

// fromLine shows an elevation as its height above or below the water line.
func (s *sectionView) fromLine(elevation unit.Length) string {
	return signed(elevation-s.b.line, s.in.Result.Units)
}

// signed shows a difference of level with its sign and without its unit.
func signed(d unit.Length, sys unit.System) string {
	num, _ := unit.Of(d, unit.KindDepth).Number(sys)
	zero, _ := unit.Of(unit.Length(0), unit.KindDepth).Number(sys)
	if d > 0 && num != zero {
		return "+" + num
	}
	return minus(num)
}

func (p *page) depthUnit() string { return unit.KindDepth.UnitName(p.in.Result.Units) }

// listWidth gives the room that the list of heights needs.
func (s *sectionView) listWidth() float64 {
	var numbers []string
	for _, z := range append([]unit.Length{s.b.rim, s.b.line, s.b.floor, s.b.vaultFloor, s.b.run.Pond, s.b.run.Vault, s.b.sillAt, s.b.minWater}, s.b.reach...) {
		numbers = append(numbers, s.fromLine(z))
	}
	names := []string{s.say("levels.rim"), s.say("levels.line"), s.say("levels.pondrun"), s.say("levels.vaultrun"), s.say("levels.pondfloor"), s.say("levels.vaultfloor"), s.say("levels.sill"), s.say("levels.minwater")}
	return widestOf(names...) + 3 + widestOf(numbers...)
}
