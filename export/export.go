// Package export gives what other people's programs need of a job, as files in
// open formats: the answer's rows (CSV, a spreadsheet), drawings (DXF at full size, SVG, PNG), the
// assembly in three dimensions (GLB), the
// job itself with its schema. It computes nothing: it asks packages table,
// drawing and job, and hands what they give to the renderers.
package export

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"

	"plashet/drawing"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/render/csv"
	"plashet/render/dxf"
	"plashet/render/glb"
	"plashet/render/png"
	"plashet/render/svg"
	"plashet/table"
)

// File is one file.
type File struct {
	Name string // "cuts.csv"
	Type string // media type
	Data []byte
}

// Input is what is given out.
type Input struct {
	table.Input
	Drawing drawing.Input
	Bytes   []byte // of the job file, canonical
	// Workbook writes tables as one spreadsheet file. It is handed in because the
	// library behind it is large; without it there is no workbook.
	Workbook func(io.Writer, []table.Table) error
}

// ErrName tells that there is nothing of that name.
var ErrName = errors.New("there is nothing of that name to export")

// ErrNone tells that the answer has nothing of the kind: no assembly was laid,
// no outline is given.
var ErrNone = errors.New("the answer has nothing of that kind")

// Names of what is no table.
const (
	Workbook  = "workbook"
	Plan      = "plan"
	Section   = "section"
	Isometric = "isometric"
	Model     = "model"
	Drawings  = "drawings"
	Job       = "job"
	Schema    = "schema"
)

// Media types of the files.
const (
	typeCSV  = "text/csv; charset=utf-8; header=present"
	typeXLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
	typeDXF  = "image/vnd.dxf"
	typeGLB  = "model/gltf-binary"
	typeSVG  = "image/svg+xml"
	typePNG  = "image/png"
	typeJSON = "application/json"
)

// perMM is the scale of pictures in pixels, 300 to the inch.
const perMM = 300 / 25.4

// Names lists what can be given out.
func Names() []string {
	return append(table.Names(), Workbook, Plan, Section, Isometric, Model, Drawings, Job, Schema)
}

// ends are the endings of what makes one file.
var ends = map[string]string{Workbook: ".xlsx", Plan: ".dxf", Section: ".dxf", Isometric: ".dxf", Model: ".glb", Job: ".json", Schema: ".schema.json"}

// FileName is the name of the file that a name makes; "" for drawings, which make
// several.
func FileName(name string) string {
	switch end := ends[name]; {
	case name == Drawings:
		return ""
	case name == Schema:
		return Job + end
	case end != "":
		return name + end
	}
	return name + ".csv"
}

// Has tells that the answer has something of a name, without making it.
func Has(in Input, name string) bool {
	switch name {
	case Workbook:
		return in.Workbook != nil
	case Job, Schema:
		return true
	case Model:
		_, ok := drawing.ModelOf(in.Drawing)
		return ok
	case Plan, Section, Isometric:
		_, ok := sheetOf(in, name)
		return ok
	case Drawings:
		return len(drawing.Sheets(in.Drawing)) > 0
	}
	t, ok := table.Make(in.Input, name)
	return ok && len(t.Rows) > 0
}

// Make gives the files of a name, one or, of drawings, several. The errors are
// ErrName, ErrNone, and those of the renderers, which tell a fault of ours.
func Make(in Input, name string) ([]File, error) {
	switch name {
	case Workbook:
		return workbook(in)
	case Plan, Section, Isometric:
		return scaled(in, name)
	case Model:
		m, ok := drawing.ModelOf(in.Drawing)
		if !ok {
			return nil, ErrNone
		}
		return one(FileName(Model), typeGLB, func(w io.Writer) error { return glb.Write(w, &m) })
	case Drawings:
		return drawings(in)
	case Job:
		return []File{{FileName(Job), typeJSON, in.Bytes}}, nil
	case Schema:
		data, err := job.Schema()
		return []File{{FileName(Schema), "application/schema+json", data}}, err
	}
	t, ok := table.Make(in.Input, name)
	if !ok {
		return nil, ErrName
	}
	if len(t.Rows) == 0 {
		return nil, ErrNone
	}
	return one(FileName(name), typeCSV, func(w io.Writer) error { return csv.Write(w, &t) })
}

// one makes a list of one file of what f writes.
func one(name, kind string, f func(io.Writer) error) ([]File, error) {
	var b bytes.Buffer
	if err := f(&b); err != nil {
		return nil, fmt.Errorf("export %s: %w", name, err)
	}
	return []File{{name, kind, b.Bytes()}}, nil
}

// workbook has every table that has rows; there is always what it rests on.
func workbook(in Input) ([]File, error) {
	if in.Workbook == nil {
		return nil, ErrName
	}
	var list []table.Table
	for _, name := range table.Names() {
		if t, _ := table.Make(in.Input, name); len(t.Rows) > 0 {
			list = append(list, t)
		}
	}
	return one(FileName(Workbook), typeXLSX, func(w io.Writer) error { return in.Workbook(w, list) })
}

// sheetOf draws what comes out at full size.
func sheetOf(in Input, name string) (drawing.Sheet, bool) {
	switch name {
	case Plan:
		return drawing.Plan(in.Drawing)
	case Section:
		return drawing.Section(in.Drawing)
	}
	return drawing.Assembly(in.Drawing, drawing.FrontLeft)
}

// scaled has a drawing at full size, in inches or millimetres by the job's units.
func scaled(in Input, name string) ([]File, error) {
	s, ok := sheetOf(in, name)
	if !ok {
		return nil, ErrNone
	}
	u := dxf.Inch
	if in.Result.Units.Is(unit.Metric) {
		u = dxf.Millimetre
	}
	return one(FileName(name), typeDXF, func(w io.Writer) error { return dxf.Write(w, &s, u) })
}

// drawings has every drawing twice, as lines and as pixels.
func drawings(in Input) ([]File, error) {
	sheets := drawing.Sheets(in.Drawing)
	if len(sheets) == 0 {
		return nil, ErrNone
	}
	var out []File
	for i := range sheets {
		s := &sheets[i]
		line, err := one(s.Name+".svg", typeSVG, func(w io.Writer) error { return svg.Write(w, s) })
		if err != nil {
			return nil, err
		}
		pixel, err := one(s.Name+".png", typePNG, func(w io.Writer) error { return png.Write(w, s, perMM) })
		if err != nil {
			return nil, err
		}
		out = slices.Concat(out, line, pixel)
	}
	return out, nil
}
