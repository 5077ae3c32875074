package design

import (
	"math"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/cut"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// material takes the list off from all that was designed.
func (m *model) material() {
	j := m.job
	in := takeoff.Input{
		Book: m.book, Currency: j.Site.Currency, Overlap: j.Works.LinerOverlap.SI, Layers: j.Works.UnderlayLayers,
		Soil: j.Works.Soil, Spare: j.Works.SpareFittings.SI,
	}
	in.Fittings = m.fittings()
	in.Pipe = m.pipeNeeded()
	in.Joints, in.Threads = m.joints()
	in.Pond = m.hole()
	for i := range j.Watercourses {
		for k := range j.Watercourses[i].Parts {
			if r := j.Watercourses[i].Parts[k].Reach; r != nil {
				in.Streams = append(in.Streams, takeoff.Stream{
					Name: r.Name, Length: r.Length.SI, Width: r.Width.SI, Drop: r.Length.SI * unit.Length(r.Slope.SI), Stone: !j.Works.NoRock,
					Path: at(at("/watercourses", i)+"/parts", k) + "/reach",
				})
			}
		}
	}
	in.Prices = m.prices()
	items, findings, faults := takeoff.List(in)
	m.out.Materials = items
	m.out.Findings = append(m.out.Findings, findings...)
	m.out.Faults = append(m.out.Faults, faults...)
	m.out.Assumptions = append(m.out.Assumptions, takeoff.Assumed(in)...)
}

// counter adds up fittings in the order they are met.
type counter struct {
	order []job.PipeName
	count map[job.PipeName]int
}

func (c *counter) add(fitting, size string, n int) {
	key := job.PipeName{Kind: fitting, Size: size}
	if _, known := c.count[key]; !known {
		c.order = append(c.order, key)
	}
	c.count[key] += n
}

// fittings counts what is built in. The run that starts at the pump goes
// through the vault: what it and the assembly both name is one and the same
// fitting, so the larger count stands. A tee is named by two runs, once for its
// run and once for its branch, and is one tee.
func (m *model) fittings() []takeoff.Fitting {
	inVault, assembly, rest := counter{count: map[job.PipeName]int{}}, counter{count: map[job.PipeName]int{}}, counter{count: map[job.PipeName]int{}}
	tees := counter{count: map[job.PipeName]int{}}
	for _, r := range m.job.Runs {
		for _, f := range r.Fittings {
			size := f.Size
			if size == "" {
				size = r.Pipe.Size
			}
			n := max(1, f.Count)
			switch {
			case strings.HasPrefix(f.Fitting, "tee "):
				tees.add(f.Fitting, size, n)
			case r.From == "pump":
				inVault.add(f.Fitting, size, n)
			default:
				rest.add(f.Fitting, size, n)
			}
		}
	}
	for _, l := range m.job.Assembly.Parts {
		size := l.Size
		if size == "" {
			size = m.job.Assembly.Pipe.Size
		}
		assembly.add(l.Fitting, size, 1)
	}
	for _, key := range inVault.order {
		if extra := inVault.count[key] - assembly.count[key]; extra > 0 {
			assembly.add(key.Kind, key.Size, extra)
		}
	}
	for _, key := range tees.order {
		run := job.PipeName{Kind: "tee run", Size: key.Size}
		branch := job.PipeName{Kind: "tee branch", Size: key.Size}
		if n := max(tees.count[run], tees.count[branch]); rest.count[job.PipeName{Kind: "tee", Size: key.Size}] == 0 {
			rest.add("tee", key.Size, n)
		}
	}
	for _, key := range rest.order {
		assembly.add(key.Kind, key.Size, rest.count[key])
	}
	var out []takeoff.Fitting
	for _, key := range assembly.order {
		out = append(out, takeoff.Fitting{Name: key.Kind, Size: key.Size, Count: assembly.count[key], Path: "/runs"})
	}
	return out
}

// pipeNeeded lists the new sticks of the cutting plans and, beyond the pieces
// that are cut by a plan, the rest of the runs. Pieces that come from offcuts
// need nothing.
func (m *model) pipeNeeded() []takeoff.Pipe {
	var out []takeoff.Pipe
	planned := map[job.PipeName]unit.Length{}
	for _, c := range m.out.Cutting {
		byStick := map[unit.Length]int{} // index into out
		for _, b := range c.Plan.Bars {
			for _, k := range b.Cuts {
				planned[c.Name] += k.Length
			}
			if b.From == cut.FromOffcut {
				continue
			}
			n, known := byStick[b.Length]
			if !known {
				n = len(out)
				byStick[b.Length] = n
				out = append(out, takeoff.Pipe{Kind: c.Name.Kind, Size: c.Name.Size, Stick: b.Length, Path: "/stock"})
			}
			out[n].Sticks++
			for _, k := range b.Cuts {
				out[n].Length += k.Length
			}
		}
	}
	for i, r := range m.job.Runs {
		length := r.Length.SI - planned[r.Pipe]
		planned[r.Pipe] = max(0, planned[r.Pipe]-r.Length.SI)
		if length <= 0 {
			continue
		}
		p := takeoff.Pipe{Kind: r.Pipe.Kind, Size: r.Pipe.Size, Length: length, Path: at("/runs", i)}
		if s, ok := m.stick(r.Pipe); ok {
			p.Stick = s.Length.SI
		}
		out = append(out, p)
	}
	return out
}

// stick gives the stick that a pipe is bought in: the one its cutting plan opens,
// or the first of the stock. Where a plan opens two lengths it is the longer.
func (m *model) stick(name job.PipeName) (job.Stick, bool) {
	var used unit.Length
	for _, c := range m.out.Cutting {
		for _, b := range c.Plan.Bars {
			if c.Name == name && b.From == cut.FromStick {
				used = max(used, b.Length)
			}
		}
	}
	for _, s := range m.job.Stock.Sticks {
		if s.Pipe == name && (used == 0 || math.Abs(float64(s.Length.SI-used)) < float64(stickTold)) {
			return s, true
		}
	}
	return job.Stick{}, false
}

// stickTold is how far a stick's length may be rounded to a cutting plan's grid.
const stickTold = unit.Inch / 16

// joints counts the cemented sockets and taped threads: those of the gluing
// plan, and the sockets of the fittings beyond the assembly.
func (m *model) joints() ([]takeoff.Joints, []takeoff.Threads) {
	sockets, threads := counter{count: map[job.PipeName]int{}}, counter{count: map[job.PipeName]int{}}
	if m.out.Glue != nil {
		for _, x := range m.out.Glue.Joints {
			switch {
			case x.Kind == glue.Cement:
				sockets.add("", x.Size, 1)
			case x.Kind == glue.Thread && x.Thread != nil && x.Thread.Tape:
				standard := "NPT"
				if x.Thread.Family != layout.NPT {
					standard = "BSPT"
				}
				threads.add(standard, x.Size, 1)
			}
		}
	}
	for _, r := range m.job.Runs {
		if r.From == "pump" {
			continue // in the vault: the gluing plan has them
		}
		for _, f := range r.Fittings {
			size := f.Size
			if size == "" {
				size = r.Pipe.Size
			}
			name, n := f.Fitting, max(1, f.Count)
			if name == "tee branch" {
				continue // the run that names its other ends has it
			}
			part, err := m.book.Fitting(strings.TrimSuffix(name, " run"), size, m.measured)
			if err != nil {
				continue // told where its loss was looked up
			}
			for _, e := range part.Ends {
				if e.Kind == catalog.Socket {
					sockets.add("", size, n)
				}
			}
		}
	}
	var out []takeoff.Joints
	for _, key := range sockets.order {
		out = append(out, takeoff.Joints{Size: key.Size, Count: sockets.count[key], Path: "/runs"})
	}
	var taped []takeoff.Threads
	for _, key := range threads.order {
		taped = append(taped, takeoff.Threads{Standard: key.Kind, Size: key.Size, Count: threads.count[key], Path: "/assembly"})
	}
	return out, taped
}

// hole gives the pond as the list takes it; nil when its shape is not known.
func (m *model) hole() *takeoff.Pond {
	outline, err := outlineOf(m.job.Pond.Outline)
	line, known := m.survey.Level(m.job.Pond.Water)
	if err != nil || !known {
		return nil // told by the levels
	}
	quiet := m.quiet
	m.quiet = true
	curve := m.pond(line)
	m.quiet = quiet
	if curve == nil {
		return nil
	}
	box := outline.Bounds()
	return &takeoff.Pond{
		Length: unit.Length(box.Max.X - box.Min.X), Width: unit.Length(box.Max.Y - box.Min.Y), Depth: line - curve.Floor(), Volume: curve.Drawn(), Stone: !m.job.Works.NoRock, Path: "/pond",
	}
}

// prices splits the items of the job's prices into name and size and reads what
// they are for.
func (m *model) prices() []takeoff.Price {
	var out []takeoff.Price
	for i, p := range m.job.Prices {
		amount, err := p.Price.Amount(m.job.Site.Currency)
		if err != nil {
			m.refuse(at("/prices", i), err)
			continue
		}
		name, size := m.itemName(p.Item)
		if _, sticks := m.stick(job.PipeName{Kind: name, Size: size}); sticks {
			continue // bought in sticks: the stick's own price stands below
		}
		out = append(out, takeoff.Price{Name: name, Size: size, Amount: amount, Per: m.per(p.Unit), Path: at("/prices", i)})
	}
	seen := map[job.PipeName]bool{}
	for i, s := range m.job.Stock.Sticks {
		bought, ok := m.stick(s.Pipe)
		if !ok || seen[s.Pipe] || bought.Price.IsZero() {
			continue
		}
		seen[s.Pipe] = true
		if amount, err := bought.Price.Amount(m.job.Site.Currency); err == nil {
			out = append(out, takeoff.Price{Name: s.Pipe.Kind, Size: s.Pipe.Size, Amount: amount, Path: at("/stock/sticks", i)})
		}
	}
	return out
}

// itemName parts "elbow 90, 2" and "PVC Sch 40 2" into name and size.
func (m *model) itemName(item string) (name, size string) {
	if i := strings.LastIndex(item, ", "); i > 0 {
		return item[:i], item[i+2:]
	}
	for _, kind := range m.book.Kinds() {
		if rest, ok := strings.CutPrefix(item, kind+" "); ok && len(kind) > len(name) {
			name, size = kind, rest
		}
	}
	if name != "" {
		return name, size
	}
	return item, ""
}

// per reads what one price is for; zero for each.
func (m *model) per(text string) unit.Value {
	if text == "" || text == "each" {
		return unit.Value{}
	}
	for _, k := range []unit.Kind{unit.KindDistance, unit.KindArea, unit.KindEarth, unit.KindMass, unit.KindCement} {
		if r, err := unit.Parse("1 "+text, k, m.out.Units); err == nil && !r.Bare {
			return unit.Value{SI: r.SI, Kind: k}
		}
	}
	return unit.Value{}
}
