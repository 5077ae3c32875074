package drawing

import "math"

// sectionView draws pond and vault in section, to one scale both ways: the
// pond's side by the vault, broken off in the pond, and the vault beside it.
type sectionView struct {
	*page
	b     basin
	scale float64 // mm per m
	x0    float64 // mm, at the break
	top   float64 // mm, at the highest elevation drawn
	high  float64 // m, that elevation
	edge  float64 // m from the break: the pond's edge
	wall  float64 // m from the break: the vault's left wall
	right float64 // m from the break: the end of the ground drawn
	list  float64 // mm: where the names of the heights begin
}

// Room for the section, mm; the list of heights stands to its right.
const (
	sectionTall = 66.0
	sectionGap  = 9.0
	listEnd     = wide - margin
)

func newSection(p *page, b basin) *sectionView {
	s := &sectionView{page: p, b: b, x0: margin, top: p.y + row + 3}
	low := min(b.floor, b.vaultFloor)
	s.high = float64(max(b.rim, b.run.Pond, b.line))
	if b.vault {
		s.high = max(s.high, float64(b.vaultTop))
	}
	for _, z := range b.reach {
		s.high = max(s.high, float64(z))
	}
	tall := s.high - float64(low)
	in := float64(b.side[len(b.side)-1].In.SI)
	s.edge = 0.3*tall + in
	if !b.vault && b.pump { // it stands in the pond
		s.edge += float64(b.pumpTo)
	}
	s.wall = s.edge + 0.1*tall
	s.right = s.wall + float64(b.length) + 0.16*tall
	if b.vault && b.pump { // also where it stands out of the vault
		s.wall += max(0, -float64(b.pumpFrom)-s.edge)
		s.right = max(s.right, s.wall+float64(b.pumpTo))
	}
	s.list = listEnd - s.listWidth()
	s.scale = min((s.list-sectionGap-s.x0)/s.right, sectionTall/tall)
	return s
}

func (s *sectionView) at(xM, elevationM float64) Point {
	return Point{s.x0 + xM*s.scale, s.top + (s.high-elevationM)*s.scale}
}

// Section draws pond and vault in section to scale, alone: as it stands at the
// head of Levels. Without levels there is no sheet.
func Section(in Input) (Sheet, bool) {
	if in.Result == nil {
		return Sheet{}, false
	}
	b, ok := basinOf(in)
	if !ok {
		return Sheet{}, false
	}
	p := newPage(in, "section", in.say("section.alone"))
	s := newSection(p, b)
	s.draw()
	// Heights count from the survey's zero, lengths from the pond's edge.
	p.sheet.Scale = Scale{PerM: s.scale, Zero: s.at(s.edge, 0)}
	return p.done([]string{in.say("section.alonedesc")}), true
}

// draw draws the section.
func (s *sectionView) draw() {
	s.group("water", s.waters)
	s.group("ground", s.ground)
	if s.b.pump {
		s.group("pump", s.pump)
	}
	s.group("heights", s.heights)
	foot := s.at(0, float64(min(s.b.floor, s.b.vaultFloor))).Y
	if s.b.vault {
		foot = s.lengthOfVault(foot + 4.5)
	}
	s.y = max(s.y, foot) + 5
}

// lengthOfVault draws the vault's inner length as a dimension and gives its foot.
func (s *sectionView) lengthOfVault(y float64) float64 {
	z := float64(s.b.vaultTop)
	a, b := s.at(s.vaultWall(z, false), z).X, s.at(s.vaultWall(z, true), z).X
	s.group("length of the vault", func() {
		s.add(Line{Point{a, y}, Point{b, y}, fine})
		for _, x := range [...]float64{a, b} {
			s.add(Line{Point{x - 0.9, y + 0.9}, Point{x + 0.9, y - 0.9}, line})
		}
		s.text(Text{At: Point{(a + b) / 2, y + small + 0.6}, Size: small, Anchor: Middle, Text: s.tape(s.b.length)})
	})
	return y + small
}

// profile gives the pond's side from the break along its floor and up to an
// elevation, as points in m.
func (s *sectionView) profile(up float64) [][2]float64 {
	line := float64(s.b.line)
	out := [][2]float64{{0, float64(s.b.floor)}}
	for i := len(s.b.side) - 1; i >= 0; i-- {
		out = append(out, [2]float64{s.edge - float64(s.b.side[i].In.SI), line - float64(s.b.side[i].Depth.SI)})
	}
	out = append(out, [2]float64{s.edge, line})
	for len(out) > 1 && out[len(out)-1][1] > up { // the water stands lower: cut the side off there
		a, b := out[len(out)-2], out[len(out)-1]
		out = out[:len(out)-1]
		if a[1] < up {
			t := (up - a[1]) / (b[1] - a[1])
			out = append(out, [2]float64{a[0] + t*(b[0]-a[0]), up})
			return out
		}
	}
	if up > line {
		out = append(out, [2]float64{s.edge, up})
	}
	return out
}

func (s *sectionView) points(world [][2]float64) []Point {
	out := make([]Point, 0, len(world))
	for _, w := range world {
		out = append(out, s.at(w[0], w[1]))
	}
	return out
}

// vaultWall gives the inner face of the vault's left or right wall at an elevation.
func (s *sectionView) vaultWall(elevation float64, right bool) float64 {
	depth := float64(s.b.vaultTop - s.b.vaultFloor)
	in := float64(s.b.length-s.b.floorLength) / 2 * (float64(s.b.vaultTop) - elevation) / depth
	if right {
		return s.wall + float64(s.b.length) - in
	}
	return s.wall + in
}

// waters lays in the water as it runs every day, and the water line.
func (s *sectionView) waters() {
	pond, vault := float64(s.b.run.Pond), float64(s.b.run.Vault)
	mouth := s.b.vault && s.b.sill && pond > float64(s.b.sillAt)
	up := pond
	if mouth {
		up = float64(s.b.sillAt)
	}
	area := s.points(s.profile(up))
	if mouth {
		area = append(area, s.at(s.vaultWall(up, false), up), s.at(s.vaultWall(pond, false), pond))
	}
	surface := area[len(area)-1]
	s.add(Polygon{Points: append(area, s.at(0, pond)), Fill: Wash})
	if s.b.vault {
		floor, level := float64(s.b.vaultFloor), min(vault, float64(s.b.vaultTop))
		s.add(Polygon{Points: []Point{
			s.at(s.vaultWall(floor, false), floor), s.at(s.vaultWall(floor, true), floor),
			s.at(s.vaultWall(level, true), level), s.at(s.vaultWall(level, false), level),
		}, Fill: Wash})
		s.add(Line{s.at(s.vaultWall(level, false), level), s.at(s.vaultWall(level, true), level), stream})
	}
	s.add(Line{s.at(0, pond), surface, stream})
	s.mark(s.x0+6, s.at(0, pond).Y)
	if math.Abs(pond-float64(s.b.line))*s.scale > 0.6 {
		s.add(Line{s.at(0, float64(s.b.line)), s.at(s.edge, float64(s.b.line)), hidden})
	}
	if s.b.minKnown {
		z := float64(s.b.minWater)
		s.add(Line{s.at(s.vaultWall(z, false), z), s.at(s.vaultWall(z, true), z), hidden})
	}
}

// mark sets the sign of a water surface: a triangle standing on it.
func (s *sectionView) mark(x, y float64) {
	s.add(Polygon{Points: []Point{{x, y - 0.6}, {x - 1.5, y - 3.2}, {x + 1.5, y - 3.2}}, Pen: fine, Fill: Paper})
	for i, w := range [...]float64{1.5, 0.9, 0.4} {
		dy := 1.1 + 0.8*float64(i)
		s.add(Line{Point{x - w, y + dy}, Point{x + w, y + dy}, fine})
	}
}

// ground draws the pond's side, the vault and the ground between and beside.
func (s *sectionView) ground() {
	rim := float64(s.b.rim)
	profile := s.profile(rim)
	if !s.b.vault {
		s.add(Polyline{append(s.points(profile), s.at(s.right, rim)), thick})
		s.hatch(s.edge, s.right, rim)
		s.broken()
		return
	}
	floor, top := float64(s.b.vaultFloor), float64(s.b.vaultTop)
	sill := rim
	if s.b.sill {
		sill = float64(s.b.sillAt)
		profile = s.profile(min(sill, rim))
	}
	// The pond's side over the sill into the vault, along its floor and up.
	outline := profile
	outline = append(outline, [2]float64{s.vaultWall(min(sill, top), false), sill},
		[2]float64{s.vaultWall(floor, false), floor}, [2]float64{s.vaultWall(floor, true), floor},
		[2]float64{s.vaultWall(top, true), top})
	s.add(Polyline{s.points(outline), thick})
	beside := s.vaultWall(min(rim, top), true)
	if rim > top { // the lid lies below the ground
		s.add(Line{s.at(beside, top), s.at(beside, rim), thick})
	}
	s.add(Line{s.at(beside, rim), s.at(s.right, rim), thick})
	s.hatch(beside, s.right, rim)
	s.add(Line{s.at(s.vaultWall(top, false), top), s.at(s.vaultWall(top, true), top), line})
	s.broken()
}

// hatch marks earth below a level piece of ground.
func (s *sectionView) hatch(from, to, elevation float64) {
	a, b := s.at(from, elevation), s.at(to, elevation)
	for x := a.X + 1; x+1.4 < b.X; x += 1.7 {
		s.add(Line{Point{x + 1.2, a.Y + 0.6}, Point{x, a.Y + 2.6}, fine})
	}
}

// broken draws the line along which the pond is broken off.
func (s *sectionView) broken() {
	top, foot := s.at(0, s.high), s.at(0, float64(s.b.floor))
	mid := (top.Y + foot.Y) / 2
	s.add(Polyline{[]Point{{top.X, top.Y - 2}, {top.X, mid - 3}, {top.X - 1.6, mid - 1}, {top.X + 1.6, mid + 1}, {top.X, mid + 3}, {foot.X, foot.Y + 2}}, help})
}

// pump draws the pump on its floor with its name.
func (s *sectionView) pump() {
	left := 0.15 * (s.high - float64(s.b.floor)) // in the pond, off the break
	if s.b.vault {
		left = s.wall
	}
	a, b := s.at(left+float64(s.b.pumpFrom), float64(s.b.pumpTop)), s.at(left+float64(s.b.pumpTo), float64(s.b.vaultFloor))
	s.add(polygonOf(rectangle(a.X, a.Y, b.X, b.Y), line, Paper))
	t := Text{At: Point{(a.X + b.X) / 2, (a.Y+b.Y)/2 + small*0.36}, Size: small, Anchor: Middle, Text: s.b.pumpName}
	if t.Width() < b.X-a.X-1 && small < b.Y-a.Y {
		s.text(t)
	}
}
