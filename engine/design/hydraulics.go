package design

import (
	"strings"

	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// pumpLaw is a pump as the solver sees it: it gives head, so its loss is
// negative and rises with the flow.
type pumpLaw struct{ curve *hydro.Curve }

func (p pumpLaw) Loss(q unit.Flow) (unit.Head, float64) {
	h, d, _ := p.curve.Head(q)
	return -h, -d
}

func (p pumpLaw) Bounds() (low, high unit.Flow) {
	low, high, _, _ = p.curve.Range()
	return low, high
}

// plumbing is the network of a job with the way back to the document.
type plumbing struct {
	net    network.Network
	curve  *hydro.Curve
	source int   // node of the water the pump draws from
	pump   int   // link
	runs   []int // link of each run, -1 when it could not be made
	feeds  []int // node of each watercourse, -1 likewise
	pipes  []pipeParts
	lips   [][]feedLip
}

// pipeParts tells which parts of a run's link are pipe (the rest is fittings).
type pipeParts struct {
	bore   unit.Length
	length unit.Length
	pipe   *hydro.Pipe // nil when the pipe is known only by its C
	c      unit.Ratio  // that C
	k, k1  unit.Ratio  // of the fittings: K = k + k1/Re
}

type feedLip struct {
	index  int
	law    *hydro.Lip
	part   *job.Lip
	crest  unit.Length
	source trace.Source // of its weir coefficient
}

// build makes the network: pump from the vault's water into the node "pump",
// each run a link, each watercourse a free lip.
func (m *model) build(pumpIndex int, vault unit.Length) (*plumbing, bool) {
	p := &plumbing{}
	curve, ok := m.curve(pumpIndex)
	if !ok {
		return nil, false
	}
	p.curve = curve
	p.source = p.net.AddNode(network.Node{Name: "vault", Kind: network.FixedLevel, Level: vault})
	nodes := map[string]int{"pump": p.net.AddNode(network.Node{Name: "pump"})}
	for i := range m.job.Watercourses {
		p.feeds = append(p.feeds, -1)
		p.lips = append(p.lips, m.lips(i))
		w := &m.job.Watercourses[i]
		if len(p.lips[i]) == 0 {
			m.fault(at("/watercourses", i), CodeNoLip, trace.Str("name", w.Name))
			continue
		}
		first := p.lips[i][0]
		n := network.Node{Name: w.Name, Kind: network.FreeLip, Level: first.crest, Law: first.law}
		// Above the lip the pipe pours in from over the water.
		if !w.Box.Inlet.IsZero() && !w.Box.Depth.IsZero() && w.Box.Inlet.SI >= w.Box.Depth.SI {
			n.Pours, n.Inlet = true, first.crest+w.Box.Inlet.SI-w.Box.Depth.SI
		}
		p.feeds[i] = p.net.AddNode(n)
		nodes[w.Name] = p.feeds[i]
	}
	p.pump = p.net.AddLink(network.Link{
		Name: "pump", From: p.source, To: nodes["pump"],
		Parts: []network.Part{{Name: "pump", Law: pumpLaw{curve}, Role: network.Pump}},
	})
	for i := range m.job.Runs {
		r := &m.job.Runs[i]
		p.runs = append(p.runs, -1)
		p.pipes = append(p.pipes, pipeParts{})
		parts, pp, ok := m.run(i)
		if !ok {
			continue
		}
		ends := [2]int{}
		for k, name := range []string{r.From, r.To} {
			if _, known := nodes[name]; !known {
				nodes[name] = p.net.AddNode(network.Node{Name: name})
			}
			ends[k] = nodes[name]
		}
		p.pipes[i] = pp
		p.runs[i] = p.net.AddLink(network.Link{Name: r.Name, From: ends[0], To: ends[1], Parts: parts})
	}
	return p, true
}

func (m *model) curve(i int) (*hydro.Curve, bool) {
	pump := &m.job.Pumps[i]
	d := hydro.PumpData{Reading: curveReading, BoxFlow: pump.BoxFlow.SI, MaxHead: pump.MaxHead.SI, Watts: pump.Watts.SI}
	for _, c := range pump.Curve {
		d.Points = append(d.Points, hydro.CurvePoint{Flow: c.Flow.SI, Head: c.Head.SI, Watts: c.Watts.SI})
	}
	c, err := hydro.NewCurve(d)
	if err != nil {
		m.refuse(at("/pumps", i), err)
		return nil, false
	}
	for _, msg := range c.Cautions() {
		m.remark(at("/pumps", i), trace.Caution, msg)
	}
	return c, true
}

// lips makes the weirs of a watercourse, in order; a faulty one is left out.
func (m *model) lips(i int) []feedLip {
	var out []feedLip
	for k := range m.job.Watercourses[i].Parts {
		l := m.job.Watercourses[i].Parts[k].Lip
		path := at(at("/watercourses", i)+"/parts", k) + "/lip"
		if l == nil || l.Width.IsZero() {
			continue
		}
		crest, known := m.survey.Level(l.Crest)
		if !known {
			m.fault(path+"/crest", CodeNoLevel, trace.Str("name", l.Name))
			continue
		}
		kind := hydro.CrestKind(l.Kind)
		if l.Kind == "" {
			kind = hydro.CrestBroad
			m.assume(path+"/kind", AssumeCrest, unit.Value{}, practice, trace.Str("name", l.Name), trace.Str("kind", string(kind)))
		}
		c, err := kind.Coefficient()
		if err != nil {
			m.refuse(path, err)
			continue
		}
		law, err := hydro.LipLaw{Width: l.Width.SI, C: float64(l.C.Or(unit.Ratio(c.C))), Tilt: l.Tilt.SI}.Prepare()
		if err != nil {
			m.refuse(path, err)
			continue
		}
		src := c.Source
		if !l.C.IsZero() {
			src = trace.Source{Title: "typed in the job", Basis: trace.Basis(l.C.Source)}
		}
		out = append(out, feedLip{index: k, law: law, part: l, crest: crest, source: src})
	}
	return out
}

// run makes the laws of a run: pipe, fittings, valve setting, exit.
func (m *model) run(i int) ([]network.Part, pipeParts, bool) {
	r, path := &m.job.Runs[i], at("/runs", i)
	pipe, err := m.pipe(r.Pipe)
	if err != nil {
		m.refuse(path+"/pipe", err)
		return nil, pipeParts{}, false
	}
	bore := r.Bore.Or(pipe.Bore)
	pp := pipeParts{bore: bore, length: r.Length.SI}
	var parts []network.Part
	switch c := r.C.Or(unit.Ratio(pipe.HazenWilliamsC)); {
	case r.Length.IsZero():
		m.fault(path+"/length", CodeNoLevel, trace.Str("name", r.Name))
		return nil, pp, false
	case c > 0 && r.Roughness.IsZero():
		law, err := hydro.HazenWilliamsLaw{Bore: bore, Length: r.Length.SI, C: c}.Prepare(m.water)
		if err != nil {
			m.refuse(path, err)
			return nil, pp, false
		}
		parts = append(parts, network.Part{Name: "pipe", Law: law})
		pp.c = c
	default:
		law, err := hydro.PipeLaw{Bore: bore, Length: r.Length.SI, Roughness: r.Roughness.Or(pipe.Roughness)}.Prepare(m.water)
		if err != nil {
			m.refuse(path, err)
			return nil, pp, false
		}
		parts = append(parts, network.Part{Name: "pipe", Law: law})
		pp.pipe = law
	}
	k, k1, check := r.Throttle.SI, unit.Ratio(0), false
	for n, f := range r.Fittings {
		count := unit.Ratio(max(1, f.Count))
		check = check || strings.HasPrefix(f.Fitting, "check valve")
		rest, perRe, ok := m.fitting(at(path+"/fittings", n), r, f, bore)
		if !ok {
			continue
		}
		k, k1 = k+count*rest, k1+count*perRe
	}
	if box, ok := m.feedOf(r.To); ok {
		exit := box.InletLoss.Or(exitLoss)
		if box.InletLoss.IsZero() {
			m.assume(path, AssumeExit, unit.Of(exit, unit.KindRatio),
				trace.Source{Title: "Borda-Carnot: all of the velocity head is lost in still water", Basis: trace.BasisPublished}, trace.Str("name", r.Name))
		}
		k += exit
	}
	pp.k, pp.k1 = k, k1
	if k > 0 || k1 > 0 {
		law, err := hydro.MinorLaw{Bore: bore, K: k, K1: k1}.Prepare(m.water)
		if err != nil {
			m.refuse(path, err)
			return nil, pp, false
		}
		parts = append(parts, network.Part{Name: "fittings", Law: law})
	}
	if check {
		parts = append(parts, network.Part{Name: "check valve", Role: network.CheckValve})
	}
	return parts, pp, true
}

// fitting gives the two parts of a fitting's K on the speed in the run's bore.
func (m *model) fitting(path string, r *job.Run, f job.Fitted, bore unit.Length) (rest, perRe unit.Ratio, ok bool) {
	size, own := f.Size, bore
	if size == "" {
		size = r.Pipe.Size
	} else if p, err := m.pipe(job.PipeName{Kind: r.Pipe.Kind, Size: size}); err == nil {
		own = p.Bore
	}
	// K counts on the speed in the fitting's own bore: K v²/2g, v as 1/bore².
	scale := unit.Ratio(bore/own) * unit.Ratio(bore/own)
	if !f.K.IsZero() {
		return f.K.SI * scale * scale, 0, true
	}
	l, err := m.loss(f.Fitting, size)
	if err != nil {
		m.refuse(path, err)
		return 0, 0, false
	}
	// The friction factor matters to equivalent lengths only; 0.02 is that of
	// smooth pipe near Re 60,000 (Colebrook-White).
	a, b := l.Split(0.02, own)
	// K1/Re with Re in the fitting's own bore: Re grows as 1/bore.
	return unit.Ratio(b) * scale * scale, unit.Ratio(a) * scale * scale * unit.Ratio(own/bore), true
}

func (m *model) feedOf(name string) (*job.Box, bool) {
	for i := range m.job.Watercourses {
		if m.job.Watercourses[i].Name == name {
			return &m.job.Watercourses[i].Box, true
		}
	}
	return nil, false
}

// wanted gives the flow wanted in a feed: the most that one of its lips wants.
func (m *model) wanted(i int, lips []feedLip) unit.Flow {
	most := m.job.Watercourses[i].Wanted.SI
	for _, l := range lips {
		most = max(most, l.part.Wanted.SI)
		if l.part.Sheet.IsZero() {
			continue
		}
		where := hydro.SheetAt(l.part.SheetAt)
		if where == "" {
			where = hydro.AtUpstream
		}
		if q, err := l.law.FlowForSheet(l.part.Sheet.SI, where); err == nil {
			most = max(most, q)
		}
	}
	return most
}
