package glb

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"math"
	"testing"

	"plashet/drawing"
	"plashet/engine/geom"
	"plashet/engine/layout"
)

// volume gives what a closed mesh holds, by the divergence theorem: each face
// with the zero makes a pyramid, with a sign by the side it is seen from.
func volume(m *mesh) float64 {
	sum := 0.0
	for _, f := range m.faces {
		sum += m.points[f[0]].Dot(m.points[f[1]].Cross(m.points[f[2]])) / 6
	}
	return sum
}

// closed tells that every edge is passed once each way, by place.
func closed(m *mesh) bool {
	type edge struct{ a, b [3]int64 }
	key := func(v geom.Vec3) [3]int64 {
		return [3]int64{int64(math.Round(v.X * 1e9)), int64(math.Round(v.Y * 1e9)), int64(math.Round(v.Z * 1e9))}
	}
	seen := map[edge]int{}
	for _, f := range m.faces {
		for k := range 3 {
			a, b := key(m.points[f[k]]), key(m.points[f[(k+1)%3]])
			if a == b { // at a pole
				continue
			}
			seen[edge{a, b}]++
			seen[edge{b, a}]--
		}
	}
	for _, n := range seen {
		if n != 0 {
			return false
		}
	}
	return len(seen) > 0
}

// Bodies are closed, look outward and hold what their formulas say: a prism of n
// sides in a circle has area n/2 r² sin(2π/n); a box 8 |u||v||w|; a ball of belts
// comes near 4/3 π r³.
func TestBodiesHoldTheirVolume(t *testing.T) {
	r, long := 0.05, 0.3
	prism := sides / 2.0 * r * r * math.Sin(2*math.Pi/sides) * long
	for _, dir := range []geom.Vec3{{X: 1}, {Y: -1}, {Z: 1}, {X: 1, Y: 2, Z: -3}} {
		from := geom.Vec3{X: 0.2, Y: -0.1, Z: 0.4}
		var m mesh
		m.tube(layout.Cylinder{From: from, To: from.Add(dir.Unit().Scale(long)), Radius: 0.05})
		check(t, "tube", &m, prism, 1e-9)
	}
	var b mesh
	b.block(layout.Block{Centre: geom.Vec3{X: 1, Y: 2, Z: 3}, U: geom.Vec3{X: 0.1, Y: 0.1}, V: geom.Vec3{X: -0.2, Y: 0.2}, W: geom.Vec3{Z: 0.3}})
	check(t, "box", &b, 8*math.Hypot(0.1, 0.1)*math.Hypot(0.2, 0.2)*0.3, 1e-9)
	var o mesh
	o.ball(drawing.Ball{Centre: geom.Vec3{X: 1}, Radius: 0.1})
	check(t, "ball", &o, 4.0/3*math.Pi*1e-3, 0.05)
}

func check(t *testing.T, what string, m *mesh, want, rel float64) {
	t.Helper()
	if got := volume(m); math.Abs(got-want) > rel*want {
		t.Errorf("%s holds %v, want %v", what, got, want)
	}
	if !closed(m) {
		t.Errorf("%s is not closed", what)
	}
	for i, n := range m.normals {
		if math.Abs(n.Norm()-1) > 1e-9 {
			t.Errorf("%s: the normal at %v is %v long", what, m.points[i], n.Norm())
		}
	}
	for _, f := range m.faces { // the face is seen from the side its normals look to
		a, b, c := m.points[f[0]], m.points[f[1]], m.points[f[2]]
		if front := b.Sub(a).Cross(c.Sub(a)); front.Norm() > 1e-12 && front.Dot(m.normals[f[0]].Add(m.normals[f[1]]).Add(m.normals[f[2]])) < 0 {
			t.Errorf("%s: a face is seen from behind", what)
			return
		}
	}
}

// The vault's walls and floor are seen from inside.
func TestVaultIsSeenFromInside(t *testing.T) {
	var m mesh
	ring := func(z, s float64) []geom.Vec3 {
		return []geom.Vec3{{X: s, Y: s, Z: z}, {X: 1 - s, Y: s, Z: z}, {X: 1 - s, Y: 1 - s, Z: z}, {X: s, Y: 1 - s, Z: z}}
	}
	m.box(ring(0, 0.1), ring(1, 0))
	mid := turn(geom.Vec3{X: 0.5, Y: 0.5, Z: 0.5})
	if len(m.faces) != 10 {
		t.Fatal(len(m.faces))
	}
	for _, f := range m.faces {
		a, b, c := m.points[f[0]], m.points[f[1]], m.points[f[2]]
		front := b.Sub(a).Cross(c.Sub(a))
		if front.Dot(mid.Sub(a)) <= 0 || front.Dot(m.normals[f[0]]) <= 0 {
			t.Error("a wall is seen from outside", a, b, c)
		}
	}
}

// Up in the vault is up in the file, and right stays right of front.
func TestFrame(t *testing.T) {
	x, y, z := turn(geom.Vec3{X: 1}), turn(geom.Vec3{Y: 1}), turn(geom.Vec3{Z: 1})
	if z != (geom.Vec3{Y: 1}) || x.Cross(y) != z {
		t.Error(x, y, z)
	}
}

// The file read by its own rules (glTF 2.0, chapter 4, binary glTF): the chunks
// fill it, and places lie within the bounds that are told.
func TestFileIsWhole(t *testing.T) {
	m := drawing.Model{
		Title: "<\"½\" \x00>", Floor: []geom.Vec3{{}, {X: 1}, {X: 1, Y: 1}}, Rim: []geom.Vec3{{Z: 1}, {X: 1, Z: 1}, {X: 1, Y: 1, Z: 1}},
		Solids: []drawing.Solid{
			{Kind: drawing.KindPipe, Mark: "P1", Title: "a pipe", Tubes: []layout.Cylinder{{To: geom.Vec3{X: 1}, Radius: 0.1}}},
			{Kind: drawing.KindPump, Blocks: []layout.Block{{}}}, // nothing to see: no node
		},
	}
	var b bytes.Buffer
	if err := Write(&b, &m); err != nil {
		t.Fatal(err)
	}
	data := b.Bytes()
	word := func(at int) int { return int(binary.LittleEndian.Uint32(data[at:])) }
	if word(0) != magic || word(4) != 2 || word(8) != len(data) {
		t.Fatal("head", word(0), word(4), word(8), len(data))
	}
	text := data[20 : 20+word(12)]
	var d document
	if err := json.Unmarshal(text, &d); err != nil {
		t.Fatal(err)
	}
	if len(d.Nodes) != 2 || d.Nodes[0].Name != "P1" || d.Nodes[1].Name != "vault" {
		t.Fatal(d.Nodes)
	}
	bin := data[20+word(12)+8:]
	if word(20+word(12)) != len(bin) || d.Buffers[0].Length != len(bin) {
		t.Error("binary part", len(bin))
	}
	for _, a := range d.Accessors {
		if a.Min == nil {
			continue
		}
		at := d.BufferViews[a.View].Offset
		for i := range 3 * a.Count {
			v := number(math.Float32frombits(binary.LittleEndian.Uint32(bin[at+4*i:])))
			if v < a.Min[i%3] || v > a.Max[i%3] {
				t.Errorf("%v lies outside %v to %v", v, a.Min[i%3], a.Max[i%3])
			}
		}
	}
	m.Solids[0].Tubes[0].Radius = math.MaxFloat64 // runs over in 64 bits
	m.Solids[0].Tubes[0].To = geom.Vec3{X: math.Inf(1)}
	m.Solids[0].Balls = []drawing.Ball{{Centre: geom.Vec3{X: math.NaN()}, Radius: 1}}
	b.Reset()
	if err := Write(&b, &m); !errors.Is(err, ErrNotFinite) || b.Len() > 0 {
		t.Error(err, b.Len())
	}
}
