package design

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"plashet/engine/band"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/unit"
	"plashet/job"
)

// pumped takes on the doubts of each pump that runs, and gives it a curve of its
// own in the network.
func (s *shaker) pumped() {
	p := s.sys.plumbing
	s.pumpOf(shakenPump{link: p.pump, vault: true}, s.pump, p.curve, s.m.job.Pumps[s.pump].Name, at("/pumps", s.pump))
	for _, o := range p.others {
		s.pumpOf(shakenPump{link: o.link, vault: o.vault}, o.pump, o.curve, s.m.job.FurtherPumps[o.index].Name, at("/furtherPumps", o.index))
	}
}

func (s *shaker) pumpOf(x shakenPump, pump int, curve *hydro.Curve, name, place string) {
	j, path := &s.m.job.Pumps[pump], at("/pumps", pump)
	one := func(code, suffix string, tolerance float64) func() int {
		return func() int { return s.doubt(code, name, place+suffix, percent(tolerance), false) }
	}
	x.redraw, x.flow, x.head, x.power = curve.Redraw(), value{base: 1}, value{base: 1}, value{base: 1}
	flow, head := s.use(AssumeDoubtSheetFlow, path+"/curve"), s.use(AssumeDoubtSheetHead, path+"/curve")
	s.move(&x.flow, band.Normal, flow, one(DoubtSheetFlow, "/curve", flow))
	s.move(&x.head, band.Normal, head, one(DoubtSheetHead, "/curve", head))
	s.wear(&x, j, name, path)
	if x.redraw.Points == 0 {
		s.move(&x.bend, band.Even, 1, func() int { return s.doubt(DoubtShape, j.Name, path+"/curve", unit.Value{}, false) })
	}
	greatest := curve.Peak()
	points := s.points(pump)
	for i := range x.redraw.Points {
		var given *job.CurvePoint
		if len(points) == x.redraw.Points {
			given = &points[i]
		}
		tolerance, own := s.reading(given, x.redraw.Point(i), float64(greatest), path+"/curve", curve)
		v := value{}
		// Two pumps of one kind have one sheet, read once.
		s.together(path+string(rune(i)), &v, band.Normal, tolerance, false, func() int {
			return s.doubt(DoubtReading, j.Name, path+"/curve", unit.Of(unit.Head(tolerance), unit.KindHead), own)
		})
		x.by = append(x.by, v)
	}
	x.heads = make([]unit.Head, len(x.by))
	power := s.use(AssumeDoubtSheetPower, path+"/watts")
	s.move(&x.power, band.Normal, power, one(DoubtPower, "/watts", power))
	law, _ := s.sys.net.Links[x.link].Parts[0].Law.(pumpLaw)
	law.curve = x.redraw.Curve
	s.sys.solver.SetLaw(x.link, 0, law) // no fault: it is the law that stood there
	x.law = law
	s.pumps = append(s.pumps, x)
}

// wear takes on what a pump may have lost: round what the job says, or anything
// up to what is usual.
func (s *shaker) wear(x *shakenPump, j *job.Pump, name, path string) {
	if !j.Wear.IsZero() {
		tolerance, own := float64(j.Wear.Plus), j.Wear.Tolerance != ""
		if !own {
			tolerance = s.use(AssumeDoubtWear, path) / 2
		}
		s.move(&x.head, band.Normal, tolerance, func() int { return s.doubt(DoubtWear, name, path+"/wear", percent(tolerance), own) })
		return
	}
	most := s.use(AssumeDoubtWear, path)
	x.head.base -= most / 2
	s.move(&x.head, band.Even, most/2, func() int { return s.doubt(DoubtWear, name, path+"/wear", percent(most), false) })
}

// points gives the points of the curve that a pump runs on, as the job has
// them, flow rising.
func (s *shaker) points(pump int) []job.CurvePoint {
	points := s.m.job.Pumps[pump].Curve
	if speed, ok := s.m.trial().setSpeed(pump); ok && speed != nil && len(speed.Curve) > 0 {
		points = speed.Curve
	}
	points = slices.Clone(points)
	slices.SortStableFunc(points, func(a, b job.CurvePoint) int { return cmp.Compare(a.Flow.SI, b.Flow.SI) })
	return points
}

// reading gives how far off the head of a point of the curve was read; a doubt
// of its flow counts as head by the slope of the curve. A curve brought to
// another speed takes its tolerances with it.
func (s *shaker) reading(given *job.CurvePoint, point hydro.CurvePoint, greatest float64, path string, curve *hydro.Curve) (tolerance float64, own bool) {
	if given == nil || given.Flow.Tolerance == "" && given.Head.Tolerance == "" {
		return s.use(AssumeDoubtReading, path) * greatest, false
	}
	scale := func(now, typed float64) float64 {
		if typed > 0 {
			return now / typed
		}
		return 1
	}
	_, slope, _ := curve.Head(point.Flow)
	head := float64(given.Head.Plus) * scale(float64(point.Head), float64(given.Head.SI))
	return math.Hypot(head, slope*float64(given.Flow.Plus)*scale(float64(point.Flow), float64(given.Flow.SI))), true
}

// feed takes on the lips of a watercourse.
func (s *shaker) feed(i int) {
	p := s.sys.plumbing
	f := shakenFeed{node: p.feeds[i], crest: heightCrests + i}
	for k := range p.lips[i] {
		l := &p.lips[i][k]
		path := at(at("/watercourses", i)+"/parts", l.index) + "/lip"
		x := shakenLip{law: l.law, width: value{base: float64(l.law.Width)}, c: value{base: l.law.C}, tilt: value{base: float64(l.law.Tilt)}}
		taped(s, &x.width, l.part.Width, AssumeDoubtTape, DoubtWidth, l.part.Name, path+"/width")
		s.weir(&x, l, path)
		if !l.part.Tilt.IsZero() {
			taped(s, &x.tilt, l.part.Tilt, AssumeDoubtTilt, DoubtTilt, l.part.Name, path+"/tilt")
		}
		if d := s.m.out.Delivery; k < len(d.Feeds[i].Lips) {
			if h := d.Feeds[i].Lips[k].Sheet.Head; h > 0 && h < hydro.ClingHead {
				cling := s.use(AssumeDoubtCling, path)
				s.move(&x.c, band.Normal, cling*x.c.base, func() int { return s.doubt(DoubtCling, l.part.Name, path, percent(cling), false) })
			}
		}
		f.lips = append(f.lips, x)
	}
	s.feeds = append(s.feeds, f)
}

// weir takes on the doubt of a lip's weir coefficient: the job's own, or
// anywhere in the range of its kind.
func (s *shaker) weir(x *shakenLip, l *feedLip, path string) {
	if !l.part.C.IsZero() {
		taped(s, &x.c, l.part.C, AssumeDoubtWeir, DoubtWeir, l.part.Name, path+"/c")
		return
	}
	kind := hydro.CrestKind(l.part.Kind)
	if kind == "" {
		kind = hydro.CrestBroad
	}
	c, err := kind.Coefficient()
	if err != nil {
		return // refused already
	}
	s.use(AssumeDoubtWeirRange, path+"/c")
	s.within(&x.c, c.Low, c.High, func() int { return s.doubt(DoubtWeir, l.part.Name, path+"/c", unit.Value{}, false) })
}

// within lets a value lie anywhere in a range.
func (s *shaker) within(v *value, low, high float64, doubt func() int) {
	v.base = (low + high) / 2
	s.move(v, band.Even, (high-low)/2, doubt)
}

// water takes on the temperature.
func (s *shaker) water() {
	e, path := s.m.job.Site.WaterTemperature, "/site/waterTemperature"
	s.temperature.base = float64(s.m.water.Temperature)
	tolerance, own := float64(e.Plus), e.Tolerance != ""
	switch {
	case own:
	case e.IsZero():
		tolerance = s.use(AssumeDoubtSeason, path)
	default:
		tolerance = s.use(AssumeDoubtTemperature, path)
	}
	s.move(&s.temperature, band.Normal, tolerance, func() int { return s.doubt(DoubtTemperature, "", path, unit.Value{}, own) })
}

// run takes on a run of pipe.
func (s *shaker) run(i int) {
	r, path, pp := &s.m.job.Runs[i], at("/runs", i), &s.sys.pipes[i]
	link := s.sys.runs[i]
	x := shakenRun{
		pipe: pp.law, byC: pp.byC, minor: lawOf[*hydro.Minor](&s.sys.net, link),
		bore: value{base: float64(pp.bore)}, length: value{base: float64(pp.length)}, rough: value{base: float64(pp.roughness)}, c: value{base: float64(pp.c)},
	}
	kind := r.Pipe.Kind + " " + r.Pipe.Size
	if r.Bore.IsZero() {
		bore := s.use(AssumeDoubtBore, path+"/bore")
		s.together("bore "+kind, &x.bore, band.Normal, bore*x.bore.base, false, func() int { return s.doubt(DoubtBore, kind, path+"/bore", percent(bore), false) })
	} else {
		taped(s, &x.bore, r.Bore, AssumeDoubtBore, DoubtBore, r.Name, path+"/bore")
	}
	taped(s, &x.length, r.Length, AssumeDoubtLength, DoubtLength, r.Name, path+"/length")
	s.wall(&x, r, path)
	for n := range pp.losses {
		s.loss(&x, &pp.losses[n], r.Name)
	}
	s.runs = append(s.runs, x)
}

// wall takes on the roughness of a run, or its C.
func (s *shaker) wall(x *shakenRun, r *job.Run, path string) {
	switch {
	case x.byC != nil && r.C.IsZero():
		c := s.use(AssumeDoubtC, path+"/c")
		s.together("c "+r.Pipe.Kind, &x.c, band.Normal, c*x.c.base, false, func() int { return s.doubt(DoubtRough, r.Pipe.Kind, path+"/c", percent(c), false) })
	case x.byC != nil:
		taped(s, &x.c, r.C, AssumeDoubtC, DoubtRough, r.Name, path+"/c")
	case r.Roughness.Tolerance != "":
		taped(s, &x.rough, r.Roughness, AssumeDoubtRough, DoubtRough, r.Name, path+"/roughness")
	default: // known to a factor
		times, name := max(1, s.use(AssumeDoubtRough, path+"/roughness")), r.Pipe.Kind
		if !r.Roughness.IsZero() {
			name = r.Name
		}
		s.together("rough "+name, &x.rough, band.Normal, math.Log(times), true, func() int {
			return s.doubt(DoubtRough, name, path+"/roughness", unit.Of(unit.Ratio(times), unit.KindRatio), false)
		})
	}
}

// loss takes on the coefficient of a fitting. All of a kind and size are off
// alike, since one figure stands for them; one that the job gives is off on its
// own.
func (s *shaker) loss(x *shakenRun, l *Loss, run string) {
	n := float64(l.Count)
	x.rest, x.perRe = append(x.rest, n*float64(l.Rest)), append(x.perRe, n*float64(l.PerRe))
	v := value{base: 1}
	name := l.Name + " " + l.Size
	own, tolerance, given := l.Path, 0.0, false
	if l.Method == "" {
		name = l.Name + ", " + run
	} else {
		own = name
		if t, err := s.m.loss(l.Name, l.Size); err == nil && t.High > t.Low && t.Low > 0 && t.K > 0 {
			v.base = (t.Low + t.High) / (2 * t.K)
			s.together("k "+own, &v, band.Even, (t.High-t.Low)/(2*t.K), false, func() int { return s.doubt(DoubtLoss, name, l.Path, unit.Value{}, false) })
			x.losses = append(x.losses, v)
			return
		}
	}
	if e, met := s.typedLoss(l.Path); met && e.SI > 0 && l.Method == "" {
		tolerance, given = off(s.doubtful, *e, AssumeDoubtLoss, l.Path)
		tolerance /= float64(e.SI)
	}
	if !given && tolerance == 0 {
		tolerance = s.use(AssumeDoubtLoss, l.Path)
	}
	s.together("k "+own, &v, band.Normal, tolerance, false, func() int { return s.doubt(DoubtLoss, strings.TrimSpace(name), l.Path, percent(tolerance), given) })
	x.losses = append(x.losses, v)
}

// typedLoss finds the entry of a coefficient that the job gives.
func (s *shaker) typedLoss(path string) (*job.Ratio, bool) {
	for i := range s.m.job.Runs {
		r := &s.m.job.Runs[i]
		if path == at("/runs", i)+"/throttle" {
			return &r.Throttle, true
		}
		for k := range r.Fittings {
			if path == at(at("/runs", i)+"/fittings", k) {
				return &r.Fittings[k].K, true
			}
		}
	}
	for i := range s.m.job.Watercourses {
		if path == at("/watercourses", i)+"/box/inletLoss" {
			return &s.m.job.Watercourses[i].Box.InletLoss, true
		}
	}
	return nil, false
}

// basin takes on pond, vault, skimmer and stores.
func (s *shaker) basin() {
	in, j := s.levels, s.m.job
	s.pondBy, s.bodyBy = value{base: 1}, value{base: 1}
	area, own := s.use(AssumeDoubtPond, "/pond/outline"), false
	if a := j.Pond.Outline.Area; a.SI > 0 {
		t, given := off(s.doubtful, a, AssumeDoubtPond, "/pond/outline/area")
		area, own = t/float64(a.SI), given
	}
	s.move(&s.pondBy, band.Normal, area, func() int { return s.doubt(DoubtPond, "", "/pond/outline", percent(area), own) })
	if in.Vault != nil {
		t := s.use(AssumeDoubtPond, "/pond/outline")
		s.move(&s.bodyBy, band.Normal, t, func() int { return s.doubt(DoubtVault, "", "/vault/length", percent(t), false) })
	}
	if in.Vault != nil && in.Vault.Sill != nil {
		s.sillBy[0].base = float64(in.Vault.Sill.Width)
		taped(s, &s.sillBy[0], j.Vault.WeirWidth, AssumeDoubtTape, DoubtSill, "", "/vault/weirWidth")
		if c, err := hydro.CrestBroad.Coefficient(); err == nil {
			s.use(AssumeDoubtWeirRange, "/vault/weirWidth")
			s.within(&s.sillBy[1], c.Low, c.High, func() int { return s.doubt(DoubtSill, "", "/vault/weirWidth", unit.Value{}, false) })
		}
	}
	closed := s.m.closed()
	if joined, ok := s.m.joined(); ok {
		s.joined, s.falls = joined, make([]level.Below, len(joined.Vessels))
	}
	for i := range in.Stores {
		s.store(&in.Stores[i])
		x := &s.stores[i]
		x.box = in.Stores[i].Kind == level.KindBox && !closed.places[j.Watercourses[x.feed].Name]
	}
	s.draw = *in
	s.draw.Stores = append([]level.Store(nil), in.Stores...)
	if in.Boxes != nil {
		s.draw.Boxes = &level.Boxes{Joined: &s.joined, Store: in.Boxes.Store}
	}
}

// store takes on one store: what was taped of it, and what the flow makes of it.
func (s *shaker) store(st *level.Store) {
	j := s.m.job
	x := shakenStore{size: value{base: 1}, run: -1, lip: -1}
	if st.Kind == level.KindRun {
		for i := range j.Runs {
			if st.Path == at("/runs", i) {
				x.run = i
			}
		}
		s.stores = append(s.stores, x)
		return
	}
	tolerance := s.use(AssumeDoubtStore, st.Path)
	for i := range j.Watercourses {
		if strings.HasPrefix(st.Path, at("/watercourses", i)+"/") {
			x.feed = i
			s.flowing(&x, st, i)
		}
	}
	where := st.Path
	if st.Kind == level.KindLip && x.lip == 0 {
		where = at("/watercourses", x.feed) + "/box" // the same area as the box's
	}
	s.together("store "+where, &x.size, band.Normal, tolerance, false, func() int { return s.doubt(DoubtStore, st.Name, where, percent(tolerance), false) })
	s.stores = append(s.stores, x)
}

// flowing finds the lip or reach of a store.
func (s *shaker) flowing(x *shakenStore, st *level.Store, feed int) {
	for k := range s.feeds[feed].lips {
		l := &s.m.out.Delivery.Feeds[feed]
		if st.Kind == level.KindLip && k < len(l.Lips) && l.Lips[k].Path == st.Path {
			x.lip, x.head = k, l.Lips[k].Sheet.Head
		}
	}
	w := &s.m.job.Watercourses[feed]
	for k := range w.Parts {
		r, path := w.Parts[k].Reach, at(at("/watercourses", feed)+"/parts", k)+"/reach"
		if r == nil || path != st.Path || !r.Depth.IsZero() || r.Slope.IsZero() {
			continue
		}
		size, ok := s.m.trial().reach(path, r, s.m.out.Delivery.Feeds[feed].Flow)
		if !ok || size.Depth <= 0 {
			continue
		}
		x.depth = size.Depth
		x.channel = &hydro.Channel{Width: size.Wetted, Slope: r.Slope.SI, N: r.N.Or(defaultReachN)}
		x.slope, x.n = value{base: float64(r.Slope.SI)}, value{base: float64(x.channel.N)}
		taped(s, &x.slope, r.Slope, AssumeDoubtSlope, DoubtStream, r.Name, path+"/slope")
		if r.N.IsZero() {
			s.use(AssumeDoubtStreamRange, path+"/n")
			s.within(&x.n, reachLowN, reachHighN, func() int { return s.doubt(DoubtStream, r.Name, path+"/n", unit.Value{}, false) })
		} else {
			taped(s, &x.n, r.N, AssumeDoubtSlope, DoubtStream, r.Name, path+"/n")
		}
	}
}

// The usual range of Manning's n of a garden stream, as defaultReachN has it.
const (
	reachLowN  = 0.03
	reachHighN = 0.07
)
