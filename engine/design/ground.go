package design

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// What is dug where the job does not tell. Common practice, no source.
const (
	defaultRoom        = 6 * unit.Inch
	defaultTrenchWide  = 8 * unit.Inch
	defaultTrenchDepth = 18 * unit.Inch
)

// ground fills in what is lined and dug besides the pond.
func (m *model) ground(in *takeoff.Input) {
	for i := range m.job.Watercourses {
		m.course(in, i)
	}
	m.vaultHole(in)
	m.trench(in)
}

// course takes a watercourse as one sheet of liner: its reaches, pools and falls,
// and its box where that is a lined bed.
func (m *model) course(in *takeoff.Input, i int) {
	w, path := &m.job.Watercourses[i], at("/watercourses", i)
	s := takeoff.Stream{Name: w.Name, Bank: m.job.Works.StreamBank.SI, Banked: !m.job.Works.StreamBank.IsZero(), Stone: !m.job.Works.NoRock, Path: path, BankPath: "/works/streamBank"}
	bank := m.job.Works.StreamBank.Or(takeoff.DefaultBank)
	var slopes, drops unit.Length
	for k := range w.Parts {
		p, at := &w.Parts[k], at(path+"/parts", k)
		switch {
		case p.Lip != nil:
			s.Width = max(s.Width, p.Lip.Width.SI)
			drops += p.Lip.Drop.SI
		case p.Reach != nil:
			r := p.Reach
			s.Length, s.Width = s.Length+r.Length.SI, max(s.Width, r.Width.SI)
			slopes += r.Length.SI * unit.Length(r.Slope.SI)
			m.dig(in, r.Name, takeoff.Trench(r.Length.SI, r.Width.SI, bank), 0, "L W b: the bed as deep as its liner goes up",
				term("L", r.Length.SI, unit.KindPlan, at+"/reach/length"), term("W", r.Width.SI, unit.KindPlan, at+"/reach/width"), term("b", bank, unit.KindPlan, "/works/streamBank"))
		case p.Pool != nil:
			m.pool(in, &s, p.Pool, at+"/pool")
		}
	}
	s.Drop = m.faces(w, slopes, drops)
	if len(w.Parts) > 0 && s.Drop == 0 {
		m.find(trace.Finding{Message: trace.Message{Code: takeoff.FindFalls, Args: []trace.Arg{trace.Str("name", w.Name)}}, Path: path, Severity: trace.Info})
	}
	if s.Length > 0 || s.Drop > 0 || len(s.Pools) > 0 {
		in.Streams = append(in.Streams, s)
	}
	m.bed(in, w, path)
}

// faces is how far the liner goes down the faces of the falls: from the first
// crest to the water line less what the reaches slope, but not less than the
// lips' drops together, because a sheet cut short is a new sheet.
func (m *model) faces(w *job.Watercourse, slopes, drops unit.Length) unit.Length {
	line, known := m.survey.Level(m.job.Pond.Water)
	for k := range w.Parts {
		if lip := w.Parts[k].Lip; lip != nil && known {
			if crest, ok := m.survey.Level(lip.Crest); ok {
				drops = max(drops, crest-line-slopes)
			}
			break
		}
	}
	return drops
}

func (m *model) pool(in *takeoff.Input, s *takeoff.Stream, p *job.Pool, path string) {
	b := takeoff.Basin{Name: p.Name, Length: p.Length.SI, Width: p.Width.SI, Depth: p.Depth.SI, Path: path}
	if b.Length <= 0 || b.Width <= 0 || b.Depth <= 0 {
		m.find(trace.Finding{Message: trace.Message{Code: takeoff.FindPoolSizes, Args: []trace.Arg{trace.Str("name", p.Name)}}, Path: path, Severity: trace.Info})
		return
	}
	s.Pools = append(s.Pools, b)
	s.Width = max(s.Width, unit.Millimetre) // a pool between lips of no known width is as wide as itself
	m.basin(in, b)
}

// bed takes the box at the top where it is a bed in the ground.
func (m *model) bed(in *takeoff.Input, w *job.Watercourse, path string) {
	b := takeoff.Basin{Name: w.Name + ", bed", Length: w.Box.Length.SI, Width: w.Box.Width.SI, Depth: w.Box.Depth.SI, Path: path + "/box"}
	switch {
	case w.Box.Lined:
		in.Beds = append(in.Beds, b)
		m.basin(in, b)
	case w.Box.Void.SI > 0 && w.Box.Void.SI < 1:
		m.find(trace.Finding{Message: trace.Message{Code: takeoff.FindBed, Args: []trace.Arg{trace.Str("name", w.Name)}}, Path: path + "/box/lined", Severity: trace.Info})
	}
}

func (m *model) basin(in *takeoff.Input, b takeoff.Basin) {
	m.dig(in, b.Name, takeoff.Trench(b.Length, b.Width, b.Depth), 0, "L W D, upright sides",
		term("L", b.Length, unit.KindPlan, b.Path+"/length"), term("W", b.Width, unit.KindPlan, b.Path+"/width"), term("D", b.Depth, unit.KindPlan, b.Path+"/depth"))
}

// vaultHole is the hole for the vault, filled in again round it.
func (m *model) vaultHole(in *takeoff.Input) {
	v := &m.job.Vault
	if v.Shape == "" && v.Depth.IsZero() {
		return // the job has none
	}
	length, width := v.Length.SI, v.Width.SI
	if v.Shape == "round" {
		width = length
	}
	if length <= 0 || width <= 0 || v.Depth.SI <= 0 {
		m.find(trace.Finding{Message: trace.Message{Code: takeoff.FindVault}, Path: "/vault", Severity: trace.Info})
		return
	}
	room := m.job.Works.WorkRoom.Or(defaultRoom)
	if m.job.Works.WorkRoom.IsZero() {
		m.assume("/works/workRoom", takeoff.AssumeWorkRoom, unit.Of(room, unit.KindPlan), practice)
	}
	volume, own, formula := takeoff.BoxHole(length, width, v.Depth.SI, room), takeoff.BoxHole(length, width, v.Depth.SI, 0), "(L + 2 r)(W + 2 r) D, upright sides"
	if v.Shape == "round" {
		volume, own, formula = volume*math.Pi/4, own*math.Pi/4, "pi/4 (L + 2 r)² D, upright sides"
	}
	m.dig(in, "vault", volume, volume-own, formula,
		term("L", length, unit.KindTape, "/vault/length"), term("W", width, unit.KindTape, "/vault/width"), term("D", v.Depth.SI, unit.KindTape, "/vault/depth"),
		term("r", room, unit.KindPlan, "/works/workRoom"))
}

// trench is that of all runs but those that are there already, each in its own,
// filled in again.
func (m *model) trench(in *takeoff.Input) {
	var length unit.Length
	for i := range m.job.Runs {
		if !m.job.Runs[i].Existing {
			length += m.job.Runs[i].Length.SI
		}
	}
	wide, deep := m.job.Works.TrenchWidth.Or(defaultTrenchWide), m.job.Works.TrenchDepth.Or(defaultTrenchDepth)
	if length <= 0 || deep <= 0 {
		return
	}
	if m.job.Works.TrenchWidth.IsZero() || m.job.Works.TrenchDepth.IsZero() {
		m.assume("/works/trenchDepth", takeoff.AssumeTrench, unit.Of(deep, unit.KindPlan), practice, trace.Num("width", wide, unit.KindPlan), trace.Num("depth", deep, unit.KindPlan))
	}
	v := takeoff.Trench(length, wide, deep)
	m.dig(in, "trench", v, v, "L w d: all runs, each in a trench of its own",
		term("L", length, unit.KindDistance, "/runs"), term("w", wide, unit.KindPlan, "/works/trenchWidth"), term("d", deep, unit.KindPlan, "/works/trenchDepth"))
}

// dig adds a hole, with its volume as a figure that can be opened.
func (m *model) dig(in *takeoff.Input, name string, v, back unit.Volume, formula string, terms ...trace.Term) {
	if !(v > 0) {
		return // told where its sizes are read
	}
	id := holeID(len(in.Holes))
	in.Holes = append(in.Holes, takeoff.Hole{Name: name, Volume: v, Back: back, Path: id})
	m.figure(id, unit.Of(v, unit.KindEarth), name+": "+formula, sourceGeometry, terms...)
}
