package takeoff

import (
	"errors"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// DefaultSoil is the ground where the input does not tell: the middle of the
// book's table of swell. Common practice, no source.
const DefaultSoil = "common earth"

// swellsMost is the ground of the table that swells most, rock apart, which
// nobody overlooks.
const swellsMost = "clay"

// ground gives the soil that is dug in.
func (w *work) ground() (soil string, assumed bool) {
	if w.in.Soil == "" {
		return DefaultSoil, true
	}
	return w.in.Soil, false
}

// soil lists what is dug and what of it is left over, loose:
//
//	dig = sum of the holes
//	soil = (dig - filled in again - mound / shrinkage) (1 + swell), by both ends of the swell
func (w *work) soil() {
	var bank, back unit.Volume
	var terms, fills []trace.Term
	holes := w.in.Holes
	if p := w.in.Pond; p != nil {
		holes = append([]Hole{{Name: PlacePond, Volume: p.Volume, Path: p.Path}}, holes...)
	}
	for _, h := range holes {
		if !w.number(h.Path, "volume", float64(h.Volume), 0, float64(mostVolume), unit.KindEarth) || h.Volume == 0 {
			continue
		}
		bank += h.Volume
		terms = append(terms, term("V "+h.Name, float64(h.Volume), unit.KindEarth, h.Path))
		if w.number(h.Path, "volume", float64(h.Back), 0, float64(h.Volume), unit.KindEarth) && h.Back > 0 {
			back += h.Back
			fills = append(fills, term("back "+h.Name, float64(h.Back), unit.KindEarth, h.Path))
		}
	}
	if bank > 0 {
		dug := Range{float64(bank), float64(bank), unit.KindEarth}
		w.items = append(w.items, Item{
			Code: CodeDig, Name: NameDig, Need: dug, Buy: dug, Formula: "sum of V", Terms: terms,
			Source: trace.Source{Title: "sum of the job's holes", Basis: trace.BasisLibrary},
		})
	}
	left, mound, ok := w.afterMound(bank - back)
	if !ok || left <= 0 {
		return
	}
	soil, _ := w.ground()
	swell, err := w.in.Book.SoilSwell(soil)
	if err != nil {
		w.fault(w.in.Paths.Soil, FaultSoil, trace.Str("soil", soil), trace.Str("near", near(err)))
		return
	}
	loose := Range{float64(LooseVolume(left, swell.Low)), float64(LooseVolume(left, swell.High)), unit.KindEarth}
	it := Item{
		Code: CodeSoil, Name: NameSoil, Size: soil, Need: loose, Buy: loose, Formula: "dig (1 + w), for both w", Source: swell.Source,
		Terms: append([]trace.Term{term("dig", float64(bank), unit.KindEarth, CodeDig+".0")}, span("w", swell, unit.KindPercent)...),
	}
	less := ""
	if fills != nil {
		less, it.Terms = " - what is filled in again", append(it.Terms, fills...)
	}
	if mound != nil {
		less, it.Terms = less+" - mound / r", append(it.Terms, mound...)
	}
	if less != "" {
		it.Formula = "(dig" + less + ") (1 + w), for both w"
	}
	w.items = append(w.items, it)
	w.loads(loose)
}

// loads lists the trips of a truck: loose / truck, rounded up.
func (w *work) loads(loose Range) {
	if w.in.Truck == 0 || !w.number(w.in.Paths.Truck, "truck", float64(w.in.Truck), 10*float64(unit.Litre), float64(mostVolume), unit.KindEarth) {
		return
	}
	n := Range{Loads(unit.Volume(loose.Low), w.in.Truck), Loads(unit.Volume(loose.High), w.in.Truck), unit.KindCount}
	low, high := loose.Values()
	w.items = append(w.items, Item{
		Code: CodeLoads, Name: NameLoads, Need: loose, Buy: n, Pack: unit.Of(w.in.Truck, unit.KindEarth), Formula: "soil / truck, rounded up",
		Terms: []trace.Term{
			{Symbol: "soil low", Value: low, From: CodeSoil + ".0"},
			{Symbol: "soil high", Value: high, From: CodeSoil + ".0"},
			term("truck", float64(w.in.Truck), unit.KindEarth, w.in.Paths.Truck),
		},
		Source: trace.Source{Title: "loose volume over the truck's", Basis: trace.BasisLibrary},
	})
}

// afterMound takes the soil of the mound off; false where the mound cannot be
// worked out.
func (w *work) afterMound(bank unit.Volume) (left unit.Volume, terms []trace.Term, ok bool) {
	m := w.in.Mound
	if m.Volume == 0 {
		return bank, nil, true
	}
	if !w.number(m.Path, "mound", float64(m.Volume), 0, float64(mostVolume), unit.KindEarth) ||
		!w.number(m.Path, "shrinkage", float64(m.Shrinkage), 0.1, 1, unit.KindRatio) {
		return 0, nil, false
	}
	takes := BankForFill(m.Volume, m.Shrinkage)
	if takes > bank {
		w.findings = append(w.findings, trace.Finding{
			Message:  trace.Message{Code: FindSoilShort},
			Path:     m.Path,
			Severity: trace.Caution, Found: unit.Of(bank, unit.KindEarth), Limit: unit.Of(takes, unit.KindEarth),
			LimitSource: trace.Source{Title: "mound over shrinkage", Basis: trace.BasisLibrary},
		})
	}
	return bank - takes, []trace.Term{
		term("mound", float64(m.Volume), unit.KindEarth, m.Path), term("r", float64(m.Shrinkage), unit.KindRatio, m.Path),
	}, true
}

// near gives the names or sizes that the catalogue has close to what was asked.
func near(err error) string {
	if e := (*catalog.Error)(nil); errors.As(err, &e) {
		return e.Arg("near")
	}
	return ""
}
