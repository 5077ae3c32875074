// Package paper lays out the sheets that a job is built by: site and plan, the
// hydraulic answer, cut card, glue card, assembly drawing, roll strips, material
// list, offer, change order, start-up record, the owner's care sheet. A sheet is one or more pages
// for a clipboard with holes at the left, letter or A4, each page a sheet of
// package drawing that a back end turns into bytes. It works out nothing: all
// figures are the design's, all sentences stand in package words, and what the
// job does not have the sheet says. What a person must not miss, where work can
// hurt, stands at the step.
//
// Lengths are mm on the page. Roll strips and the bar beside them are drawn one
// to one: a millimetre of pipe is a millimetre of paper.
package paper

import (
	"errors"
	"slices"

	"plashet/drawing"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
)

// Paper is the size of the pages.
type Paper uint8

// The sizes.
const (
	Letter Paper = iota // 8-1/2 by 11 in
	A4                  // 210 by 297 mm
)

// names are the sizes as a person asks for them.
var names = [...]string{Letter: "letter", A4: "a4"}

// Named gives the size of a name: letter or a4.
func Named(name string) (Paper, bool) {
	i := slices.Index(names[:], name)
	return Paper(max(i, 0)), i >= 0 //nolint:gosec // an index of names
}

// For gives the size that a job asks for; where it asks for none, that goes with
// its units.
func For(j *job.Job) Paper {
	if p, ok := Named(j.Paper); ok {
		return p
	}
	if j.System().Is(unit.Metric) {
		return A4
	}
	return Letter
}

// Name gives the size as a person asks for it.
func (p Paper) Name() string { return names[p] }

// Size gives the width and height of a page, mm.
func (p Paper) Size() (wide, tall float64) {
	if p == A4 {
		return 210, 297
	}
	return 215.9, 279.4
}

// ErrNoSheet tells of a name that no sheet has.
var ErrNoSheet = errors.New("there is no sheet of that name")

// Input is what the sheets are made from.
type Input struct {
	drawing.Input // Say must be set
	Paper         Paper
	Stamp         Stamp
	Unread        []trace.Fault   // what could not be read of the job
	Offer         *offer.Document // for the offer and the change order; nil: they say that there is none
}

// Sheet is one of them.
type Sheet struct {
	Name  string // for a file: "cut"
	Title string
	Pages []drawing.Sheet
}

// kind is one of the sheets that there are.
type kind struct {
	name   string
	fill   func(*flow)
	client bool // it is for the client
}

// sheets lists them in the order of the work.
var sheets = []kind{
	{name: "site", fill: site},
	{name: "water", fill: water},
	{name: "assembly", fill: assembly},
	{name: "cut", fill: cutCard},
	{name: "rolls", fill: rolls},
	{name: "glue", fill: glueCard},
	{name: "material", fill: material},
	{name: "quote", fill: offered, client: true},
	{name: "change", fill: changeOrder, client: true},
	{name: "start", fill: startUp},
	{name: "care", fill: care, client: true},
}

// Names lists the names of the sheets.
func Names() []string {
	out := make([]string, 0, len(sheets))
	for _, s := range sheets {
		out = append(out, s.name)
	}
	return out
}

// OfOffer tells that one of the sheets named, or of all where none is, is made
// from the offer.
func OfOffer(names ...string) bool {
	return len(names) == 0 || slices.Contains(names, "quote") || slices.Contains(names, "change")
}

// wanted tells that a sheet is among those named, or that it says something
// where all are asked for: without an offer that was agreed there is nothing
// that could change.
func (in *Input) wanted(name string, names []string) bool {
	if len(names) > 0 {
		return slices.Contains(names, name)
	}
	return name != "change" || !in.Job.Offer.Agreed.Total.IsZero()
}

// Make lays out the sheets named, or all that the job has something for. The
// error is ErrNoSheet.
func Make(in Input, names ...string) ([]Sheet, error) {
	for _, n := range names {
		if !slices.Contains(Names(), n) {
			return nil, ErrNoSheet
		}
	}
	var out []Sheet
	drawings := artOf(in.Input)
	for i := range sheets {
		s := &sheets[i]
		if !in.wanted(s.name, names) {
			continue
		}
		f := filled(&in, drawings, s)
		out = append(out, Sheet{Name: s.name, Title: f.title, Pages: f.bind()})
	}
	return out, nil
}
