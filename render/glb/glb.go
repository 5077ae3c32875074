// Package glb writes a model of package drawing as one binary file of glTF 2.0
// (Khronos Group; ISO/IEC 12113), an open standard that phones, browsers and
// drawing programs show in three dimensions: metres, y up, a node for each part
// with its name, the vault's walls to be seen through. The same model always
// gives the same bytes.
package glb

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"io"
	"math"

	"plashet/drawing"
	"plashet/engine/geom"
)

// ErrNotFinite tells that a coordinate is not a number, or infinite.
var ErrNotFinite = errors.New("the model holds a coordinate that is not a number")

// Numbers of the standard.
const (
	magic     = 0x46546c67 // "glTF"
	chunkJSON = 0x4e4f534a
	chunkBIN  = 0x004e4942

	typeShort, typeLong, typeFloat = 5123, 5125, 5126
	targetVertex, targetIndex      = 34962, 34963
)

// document is the JSON part; its names are the standard's.
type document struct {
	Asset       asset        `json:"asset"`
	Scene       int          `json:"scene"`
	Scenes      []scene      `json:"scenes"`
	Nodes       []node       `json:"nodes"`
	Meshes      []meshRow    `json:"meshes"`
	Materials   []material   `json:"materials"`
	Accessors   []accessor   `json:"accessors"`
	BufferViews []bufferView `json:"bufferViews"`
	Buffers     []buffer     `json:"buffers"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type scene struct {
	Name  string `json:"name"`
	Nodes []int  `json:"nodes"`
}

// extras tell of a node what a viewer may show.
type extras struct {
	Kind  string `json:"kind"`
	Mark  string `json:"mark,omitempty"`
	Title string `json:"title,omitempty"`
}

type node struct {
	Name   string  `json:"name"`
	Mesh   int     `json:"mesh"`
	Extras *extras `json:"extras,omitempty"`
}

type meshRow struct {
	Name       string      `json:"name"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes map[string]int `json:"attributes"`
	Indices    int            `json:"indices"`
	Material   int            `json:"material"`
}

type material struct {
	Name        string   `json:"name"`
	PBR         metallic `json:"pbrMetallicRoughness"`
	AlphaMode   string   `json:"alphaMode,omitempty"`
	DoubleSided bool     `json:"doubleSided,omitempty"`
}

type metallic struct {
	Colour    [4]float64 `json:"baseColorFactor"`
	Metallic  float64    `json:"metallicFactor"`
	Roughness float64    `json:"roughnessFactor"`
}

type accessor struct {
	View  int        `json:"bufferView"`
	Type  int        `json:"componentType"`
	Count int        `json:"count"`
	Shape string     `json:"type"`
	Min   *[3]number `json:"min,omitempty"`
	Max   *[3]number `json:"max,omitempty"`
}

// number is written as the 32-bit number that the binary part holds.
type number float32

type bufferView struct {
	Buffer int `json:"buffer"`
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
	Target int `json:"target"`
}

type buffer struct {
	Length int `json:"byteLength"`
}

// look is a material by kind, in linear light: the notebook's water for pipe,
// clay for the pump, greys for fittings.
type look struct {
	kind    string
	r, g, b float64
	alpha   float64
}

const kindVault = "vault"

var looks = []look{
	{string(drawing.KindPipe), 0.08, 0.27, 0.36, 1},
	{string(drawing.KindFitting), 0.55, 0.58, 0.60, 1},
	{string(drawing.KindValve), 0.62, 0.40, 0.08, 1},
	{string(drawing.KindUnion), 0.12, 0.36, 0.16, 1},
	{string(drawing.KindPump), 0.10, 0.12, 0.14, 1},
	{string(drawing.KindObstacle), 0.45, 0.30, 0.25, 1},
	{kindVault, 0.55, 0.65, 0.70, 0.22},
}

// Write writes the model. The errors are ErrNotFinite, with nothing written, and
// those of the writer.
func Write(w io.Writer, m *drawing.Model) error {
	e := &encoder{}
	e.doc.Asset = asset{"2.0", "Plashet"}
	e.doc.Scenes = []scene{{Name: m.Title, Nodes: []int{}}}
	used := map[string]int{}
	for _, l := range looks {
		if l.kind != kindVault && !has(m, l.kind) {
			continue
		}
		x := material{Name: l.kind, PBR: metallic{[4]float64{l.r, l.g, l.b, l.alpha}, 0, 0.6}}
		if l.alpha < 1 {
			x.AlphaMode, x.DoubleSided = "BLEND", true
		}
		used[l.kind] = len(e.doc.Materials)
		e.doc.Materials = append(e.doc.Materials, x)
	}
	for i := range m.Solids {
		s := &m.Solids[i]
		e.node(s.Name(), of(s), used[string(s.Kind)], &extras{string(s.Kind), s.Mark, s.Title})
	}
	var vault mesh
	vault.box(m.Floor, m.Rim)
	e.node(kindVault, vault, used[kindVault], &extras{Kind: kindVault}) // last: what is seen through is drawn over the rest
	if e.bad {
		return ErrNotFinite
	}
	return e.write(w)
}

func has(m *drawing.Model, kind string) bool {
	for i := range m.Solids {
		if string(m.Solids[i].Kind) == kind {
			return true
		}
	}
	return false
}

type encoder struct {
	doc document
	bin bytes.Buffer
	bad bool
}

// node adds a mesh as a node; one without faces is left out.
func (e *encoder) node(name string, m mesh, look int, x *extras) {
	if len(m.faces) == 0 {
		return
	}
	p := primitive{Attributes: map[string]int{"POSITION": e.vectors(m.points, true), "NORMAL": e.vectors(m.normals, false)}, Indices: e.indices(&m), Material: look}
	e.doc.Scenes[0].Nodes = append(e.doc.Scenes[0].Nodes, len(e.doc.Nodes))
	e.doc.Nodes = append(e.doc.Nodes, node{name, len(e.doc.Meshes), x})
	e.doc.Meshes = append(e.doc.Meshes, meshRow{name, []primitive{p}})
}

// vectors adds an accessor of vectors; of places with their bounds.
func (e *encoder) vectors(list []geom.Vec3, bounds bool) int {
	start := e.bin.Len()
	inf := number(math.Inf(1))
	low, high := [3]number{inf, inf, inf}, [3]number{-inf, -inf, -inf}
	for _, v := range list {
		if !v.IsFinite() {
			e.bad = true
		}
		for k, x := range [3]float64{v.X, v.Y, v.Z} {
			f := float32(x)
			if f == 0 {
				f = 0 // without sign
			}
			low[k], high[k] = min(low[k], number(f)), max(high[k], number(f))
			e.bin.Write(binary.LittleEndian.AppendUint32(nil, math.Float32bits(f)))
		}
	}
	a := accessor{View: e.view(start, targetVertex), Type: typeFloat, Count: len(list), Shape: "VEC3"}
	if bounds {
		a.Min, a.Max = &low, &high
	}
	e.doc.Accessors = append(e.doc.Accessors, a)
	return len(e.doc.Accessors) - 1
}

// indices adds an accessor of the faces' corners.
func (e *encoder) indices(m *mesh) int {
	start := e.bin.Len()
	kind := typeShort
	if len(m.points) > math.MaxUint16 {
		kind = typeLong
	}
	for _, f := range m.faces {
		for _, i := range f {
			if kind == typeLong {
				e.bin.Write(binary.LittleEndian.AppendUint32(nil, uint32(i)))
				continue
			}
			e.bin.Write(binary.LittleEndian.AppendUint16(nil, uint16(i)))
		}
	}
	e.doc.Accessors = append(e.doc.Accessors, accessor{View: e.view(start, targetIndex), Type: kind, Count: 3 * len(m.faces), Shape: "SCALAR"})
	return len(e.doc.Accessors) - 1
}

// view closes a part of the binary, filled up to four bytes.
func (e *encoder) view(start, target int) int {
	length := e.bin.Len() - start
	pad(&e.bin, 0)
	e.doc.BufferViews = append(e.doc.BufferViews, bufferView{0, start, length, target})
	return len(e.doc.BufferViews) - 1
}

func pad(b *bytes.Buffer, with byte) {
	for b.Len()%4 != 0 {
		b.WriteByte(with)
	}
}

// write puts head and chunks together.
func (e *encoder) write(w io.Writer) error {
	e.doc.Buffers = []buffer{{e.bin.Len()}}
	text, err := json.Marshal(&e.doc)
	if err != nil {
		return err
	}
	head := bytes.NewBuffer(text)
	pad(head, ' ')
	var out bytes.Buffer
	for _, x := range []int{magic, 2, 12 + 8 + head.Len() + 8 + e.bin.Len(), head.Len(), chunkJSON} {
		out.Write(binary.LittleEndian.AppendUint32(nil, uint32(x)))
	}
	out.Write(head.Bytes())
	for _, x := range []int{e.bin.Len(), chunkBIN} {
		out.Write(binary.LittleEndian.AppendUint32(nil, uint32(x)))
	}
	out.Write(e.bin.Bytes())
	_, err = w.Write(out.Bytes())
	return err
}
