package design

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// named gives a pipe as the catalogue writes it, so that "2 in" and "2", "63"
// and "d63" are one. Names of pipe are compared in this form only. What the
// catalogue does not have stays as typed.
func (m *model) named(p job.PipeName) job.PipeName {
	if _, known := m.book.KindName(p.Kind); !known {
		return p // cheaper than asking for the pipe, which looks for what is near
	}
	if q, err := m.pipe(p); err == nil {
		return job.PipeName{Kind: q.Kind, Size: q.Size}
	}
	return p
}

// fitted gives the names of a fitting on a pipe, which lends it its size where
// it has none of its own. What the catalogue does not have stays as typed.
func (m *model) fitted(fitting, size string, pipe job.PipeName) catalog.Names {
	if size == "" {
		size = m.named(pipe).Size
	}
	if m.book.HasFitting(fitting) {
		if n, err := m.book.Names(fitting, size); err == nil {
			return n
		}
	}
	return catalog.Names{Fitting: fitting, Part: fitting, Size: size}
}

// printed are names by which the material list prints its items and a price
// does not know them.
var printed = map[string]string{
	"solvent cement": takeoff.NameCement, "soil left over": takeoff.NameSoil, "truck loads of soil left over": takeoff.NameLoads,
}

// longestSize is the longest text that is tried as a size, "1-1/2 in x 3/4 in"
// with room to spare.
const longestSize = 40

// item reads the name of a priced item: "elbow 90, 2", "PVC Sch 40 2 in",
// "pipe PVC Sch 40, 2", "liner". What nobody knows stays as typed.
func (m *model) item(text string) (name, size string) {
	text = strings.Join(strings.Fields(text), " ")
	if rest, ok := strings.CutPrefix(text, "pipe "); ok {
		text = rest
	}
	if name, _, known := m.known(text, ""); known {
		return name, ""
	}
	if i := strings.LastIndexByte(text, ','); i > 0 {
		name, size = strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+1:])
		if n, s, known := m.known(name, size); known {
			return n, s
		}
		return name, size
	}
	// The longest name first: "PVC Sch 40 1 1/2" is no "1/2" of anything.
	for i := len(text) - 1; i > max(0, len(text)-longestSize); i-- {
		if text[i] == ' ' {
			if n, s, known := m.known(text[:i], text[i+1:]); known {
				return n, s
			}
		}
	}
	return text, ""
}

// known gives a name and size as the list writes them; false where it is the
// name of nothing.
func (m *model) known(name, size string) (n, s string, known bool) {
	if own, ok := printed[strings.ToLower(name)]; ok {
		name, size = own, ""
	}
	if name := strings.ToLower(name); takeoff.Named(name) {
		if name != takeoff.NameSoil {
			size = "" // the place, or more words, as the list prints them
		}
		return name, strings.ToLower(size), true
	}
	if kind, ok := m.book.KindName(name); ok {
		if size == "" {
			return kind, "", true
		}
		p, err := m.pipe(job.PipeName{Kind: kind, Size: size})
		return kind, p.Size, err == nil
	}
	if !m.book.HasFitting(name) {
		return "", "", false
	}
	names, err := m.book.Names(name, size)
	return names.Part, names.Size, err == nil
}

// each are the words for what is sold by the piece.
var each = []string{"", "each", "ea", "piece", "pc", "stick", "can", "roll", "load"}

// per reads what one price is for, "each", "ft", "10 ft"; zero for each. False
// where it is no unit.
func (m *model) per(text string) (unit.Value, bool) { return PriceUnit(text, m.out.Units) }

// packs are the words for several pieces sold as one: "box of 25".
var packs = []string{"box of ", "pack of ", "bag of ", "set of "}

// mostPack is the most pieces that one pack is taken to hold.
const mostPack = 10_000

// PriceUnit reads what a price or hours are for: "each", which gives the zero
// value, a pack such as "box of 25", which gives the count of its pieces, or an
// amount with its unit, "10 ft", "yd3".
func PriceUnit(text string, s unit.System) (unit.Value, bool) {
	text = strings.ToLower(strings.Join(strings.Fields(text), " "))
	if slices.Contains(each, text) {
		return unit.Value{}, true
	}
	for _, p := range packs {
		if number, ok := strings.CutPrefix(text, p); ok {
			n, err := strconv.Atoi(number)
			return unit.Value{SI: float64(n), Kind: unit.KindCount}, err == nil && n > 0 && n <= mostPack
		}
	}
	for _, k := range []unit.Kind{unit.KindDistance, unit.KindArea, unit.KindEarth, unit.KindMass, unit.KindCement} {
		for _, t := range []string{text, "1 " + text} {
			if r, err := unit.Parse(t, k, s); err == nil && !r.Bare && r.SI > 0 {
				return unit.Value{SI: r.SI, Kind: k}, true
			}
		}
	}
	return unit.Value{}, false
}
