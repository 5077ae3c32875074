package design

import (
	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// pipeParts is what a run is made of.
type pipeParts struct {
	bore        unit.Length
	length      unit.Length
	roughness   unit.Length
	roughSource trace.Source
	law         *hydro.Pipe          // nil when the pipe is known only by its C
	byC         *hydro.HazenWilliams // else nil
	c           unit.Ratio
	losses      []Loss
}

// k gives the sum of the coefficients: K = rest + perRe/Re, on the speed in the
// run's bore.
func (p *pipeParts) k() (rest, perRe unit.Ratio) {
	for _, l := range p.losses {
		rest, perRe = rest+unit.Ratio(l.Count)*l.Rest, perRe+unit.Ratio(l.Count)*l.PerRe
	}
	return rest, perRe
}

// run makes the laws of a run: pipe, fittings, valve setting, exit.
func (m *model) run(i int) ([]network.Part, pipeParts, bool) {
	r, path := &m.job.Runs[i], at("/runs", i)
	pipe, err := m.pipe(r.Pipe)
	if err != nil {
		m.refuse(path+"/pipe", err)
		return nil, pipeParts{}, false
	}
	if r.Length.IsZero() {
		m.fault(path+"/length", CodeNoLength, trace.Str("name", r.Name))
		return nil, pipeParts{}, false
	}
	pp := pipeParts{bore: r.Bore.Or(pipe.Bore), length: r.Length.SI}
	parts, ok := m.barrel(path, r, pipe, &pp)
	if !ok {
		return nil, pp, false
	}
	check := false
	for n, f := range r.Fittings {
		check = check || isCheck(f.Fitting)
		l, ok := m.fitting(at(path+"/fittings", n), r, f, &pp)
		if !ok {
			return nil, pp, false
		}
		pp.losses = append(pp.losses, l)
	}
	if r.Throttle.SI > 0 {
		pp.losses = append(pp.losses, Loss{Name: "valve setting", Path: path + "/throttle", Count: 1, Rest: r.Throttle.SI, Source: typed(r.Throttle.Source)})
	}
	m.exit(r, &pp)
	if k, k1 := pp.k(); k > 0 || k1 > 0 {
		law, err := hydro.MinorLaw{Bore: pp.bore, K: k, K1: k1}.Prepare(m.water)
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

// barrel makes the law of the pipe itself.
func (m *model) barrel(path string, r *job.Run, pipe catalog.Pipe, pp *pipeParts) ([]network.Part, bool) {
	var law network.Law
	var err error
	if c := r.C.Or(unit.Ratio(pipe.HazenWilliamsC)); c > 0 && r.Roughness.IsZero() {
		pp.c = c
		pp.byC, err = hydro.HazenWilliamsLaw{Bore: pp.bore, Length: pp.length, C: c}.Prepare(m.water)
		law = pp.byC
	} else {
		pp.roughness, pp.roughSource = pipe.Roughness, pipe.RoughnessSource
		if !r.Roughness.IsZero() {
			pp.roughness, pp.roughSource = r.Roughness.SI, typed(r.Roughness.Source)
		}
		pp.law, err = hydro.PipeLaw{Bore: pp.bore, Length: pp.length, Roughness: pp.roughness}.Prepare(m.water)
		law = pp.law
	}
	if err != nil {
		m.refuse(path, err)
		return nil, false
	}
	return []network.Part{{Name: "pipe", Law: law}}, true
}

// exit adds the loss where the run lets go into a box.
func (m *model) exit(r *job.Run, pp *pipeParts) {
	for i := range m.job.Watercourses {
		w := &m.job.Watercourses[i]
		if w.Name != r.To {
			continue
		}
		borda := trace.Source{Title: "Borda-Carnot: all of the velocity head is lost in still water", Basis: trace.BasisPublished}
		l := Loss{Name: "exit into the box", Path: at("/watercourses", i) + "/box/inletLoss", Count: 1, Rest: exitLoss, Source: borda}
		if w.Box.InletLoss.IsZero() {
			m.assume(l.Path, AssumeExit, unit.Of(exitLoss, unit.KindRatio), borda, trace.Str("name", r.Name))
		} else {
			l.Rest, l.Source = w.Box.InletLoss.SI, typed(w.Box.InletLoss.Source)
		}
		pp.losses = append(pp.losses, l)
	}
}

// smoothFactor stands for the friction factor in an equivalent length: smooth
// pipe near Re 60,000 by Colebrook-White.
const smoothFactor = 0.02

// fitting gives the loss of a fitting on the speed in the run's bore.
func (m *model) fitting(path string, r *job.Run, f job.Fitted, pp *pipeParts) (Loss, bool) {
	out, ok := m.fittingLoss(path, r, f, pp)
	if m.tees != nil && isTee(f.Fitting) {
		by := m.tees(path)
		out.Rest, out.PerRe = out.Rest*by, out.PerRe*by
	}
	return out, ok
}

func (m *model) fittingLoss(path string, r *job.Run, f job.Fitted, pp *pipeParts) (Loss, bool) {
	size, own := f.Size, pp.bore
	if size == "" {
		size = r.Pipe.Size
	} else if p, err := m.pipe(job.PipeName{Kind: r.Pipe.Kind, Size: size}); err == nil {
		own = p.Bore
	}
	// K counts on the speed in the fitting's own bore: K v²/2g, v as 1/bore².
	narrow := unit.Ratio(pp.bore / own)
	scale := narrow * narrow * narrow * narrow
	out := Loss{Name: f.Fitting, Size: size, Path: path, Count: max(1, f.Count)}
	if !f.K.IsZero() {
		out.Rest, out.Source = f.K.SI*scale, typed(f.K.Source)
		return out, true
	}
	l, err := m.loss(f.Fitting, size)
	if err != nil {
		m.refuse(path+"/fitting", err)
		return out, false
	}
	perRe, rest := l.Split(smoothFactor, own)
	// K1/Re with Re in the fitting's own bore, which grows as 1/bore.
	out.Rest, out.PerRe = unit.Ratio(rest)*scale, unit.Ratio(perRe)*scale/narrow
	out.Method, out.Source, out.Opens = l.Method, l.Source, l.OpensFullyAt
	if l.High > l.Low && l.Low > 0 {
		m.assume(path+"/k", AssumeLossRange, unit.Of(unit.Ratio(l.K), unit.KindRatio), l.Source, trace.Str("name", f.Fitting),
			trace.Num("low", unit.Ratio(l.Low), unit.KindRatio), trace.Num("high", unit.Ratio(l.High), unit.KindRatio))
	}
	if isTee(f.Fitting) {
		m.assume(path, AssumeTee, unit.Value{}, practice)
	}
	return out, true
}
