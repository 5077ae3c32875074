package catalog

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"

	"pgregory.net/rapid"
)

func mustFitting(t *testing.T, name, size string, overrides ...Measured) Fitting {
	t.Helper()
	f, err := book.Fitting(name, size, overrides)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func inches(d Dimension) float64 { return float64(d.Length / unit.Inch) }

// TestFittingSizes holds a few fittings against the standards' figures.
func TestFittingSizes(t *testing.T) {
	for _, c := range []struct {
		name, size     string
		socket, toStop float64 // in
		series         string
		source         string
	}{
		{"elbow 90", "2", 1.156, 1.21875, "Sch 40", "ASTM D2466 Table 1 (as published D2468); laying length from memory"},
		{"elbow 45", "2", 1.156, 0.625, "Sch 40", "ASTM D2466, laying length from memory"},
		{"tee", "1-1/2", 1.094, 0.96875, "Sch 40", "ASTM D2466, laying length from memory"},
		{"coupling", "4", 2.0, 0.1875, "Sch 40", "ASTM D2466 Table 1, published for 4 in; laying length from memory"},
		{"elbow 90 Sch 80", "2", 1.5, 1.21875, "Sch 80", "ASTM D2467, from memory"},
		{"Sch 80 tee", "1", 1.125, 0.6875, "Sch 80", "ASTM D2467, from memory"},
		{"elbow 90 sch 40", "2", 1.156, 1.21875, "Sch 40", "ASTM D2466"},
		{"elbow 90", "d50", 31 / 25.4, 26 / 25.4, "metric", "EN ISO 1452-3 and ISO 264, from memory"},
		{"union", "2", 1.5, 0.3*2.375 + 0.2, "Sch 40", "ASTM D2467 socket, from memory; estimate 0.3 OD + 0.2 in"},
	} {
		f := mustFitting(t, c.name, c.size)
		if !near1e(inches(f.Socket), c.socket, 1e-4) || !near1e(inches(f.ToStop), c.toStop, 1e-4) || f.Series != c.series {
			t.Errorf("%s %s: socket %.4f, to stop %.4f, %s; want %.4f, %.4f, %s (%s)", c.name, c.size, inches(f.Socket), inches(f.ToStop), f.Series, c.socket, c.toStop, c.series, c.source)
		}
		if !f.MeasureFirst || !f.Socket.MeasureFirst || !f.ToStop.MeasureFirst || !f.Hub.MeasureFirst {
			t.Errorf("%s %s: a minimum or an estimate must be measured first", c.name, c.size)
		}
	}
}

// sizesFor gives sizes of both systems that a fitting can have.
func sizesFor(name string) []string {
	m, _, _ := book.find(name)
	var out []string
	for _, series := range []string{"Sch 40", seriesMetric} {
		sizes := book.FittingSizes(series)
		for i, s := range sizes {
			switch {
			case m.form != FormReducer:
				out = append(out, s)
			case i > 0:
				out = append(out, s+" x "+sizes[i-1], sizes[i-1]+" x "+s, s+" x "+sizes[0])
			}
		}
	}
	return out
}

// TestEveryFitting: each printed name has dimensions in each size, each with
// its source, and a shape that can be.
func TestEveryFitting(t *testing.T) {
	if len(book.FittingSizes("Sch 40")) != 9 || len(book.FittingSizes("Sch 80")) != 9 || len(book.FittingSizes(seriesMetric)) != 9 {
		t.Fatal("sizes are missing")
	}
	for _, name := range book.FittingNames() {
		for _, s := range sizesFor(name) {
			f := mustFitting(t, name, s)
			if f.Name != name || strings.TrimSuffix(f.Size, " x "+s) != s && f.Size != s {
				t.Errorf("%s %s is %s %s", name, s, f.Name, f.Size)
			}
			checkShape(t, f)
		}
	}
}

func checkShape(t *testing.T, f Fitting) {
	t.Helper()
	who := f.Name + " " + f.Size
	if f.Form != FormCap && (f.Out < 1 || f.Out >= len(f.Ends)) {
		t.Errorf("%s: the water leaves by end %d of %d", who, f.Out, len(f.Ends))
	}
	if f.Widest.Length < f.Hub.Length {
		t.Errorf("%s: body %.3f in, hub %.3f in", who, inches(f.Widest), inches(f.Hub))
	}
	hasSocket := false
	for i, e := range f.Ends {
		if !(e.Depth.Length > 0) || !e.Depth.Known() || !(e.Hub.Length > 0) || !e.Hub.Known() || e.Size == "" {
			t.Errorf("%s, end %d: %+v", who, i, e)
		}
		if f.Form != FormCap && (!(e.Stop.Length > 0) || !e.Stop.Known()) {
			t.Errorf("%s, end %d: stop %v, %+v", who, i, e.Stop.Length, e.Stop.Source)
		}
		hasSocket = hasSocket || e.Kind == Socket
		if e.Kind == Socket && e.Hub.Length <= book.pipeOD(t, f.Series, e.Size) {
			t.Errorf("%s, end %d: hub %v not over its pipe", who, i, e.Hub.Length)
		}
	}
	if hasSocket != f.Socket.Known() || f.MeasureFirst != (f.Socket.MeasureFirst || f.ToStop.MeasureFirst) {
		t.Errorf("%s: socket %+v, measure first %v", who, f.Socket, f.MeasureFirst)
	}
	if f.Arrow != strings.HasPrefix(f.Name, "check valve") || (f.Attitudes != AttitudesNone) != (f.AttitudesFrom.Basis != "") {
		t.Errorf("%s: arrow %v, attitudes %q", who, f.Arrow, f.Attitudes)
	}
	if (f.Form == FormBulkhead) != f.ToWall.Known() || f.Opens != strings.Contains(f.Body, "union") {
		t.Errorf("%s: to wall %v, opens %v", who, f.ToWall, f.Opens)
	}
}

func (b *Book) pipeOD(t *testing.T, series, sizeText string) unit.Length {
	t.Helper()
	kindName := "PVC " + series
	if series == seriesMetric {
		kindName = "PVC PN16"
	}
	p, err := b.FindPipe(kindName, sizeText)
	if err != nil {
		t.Fatal(err)
	}
	return p.OD
}

// TestLayingFloor: no bend or tee of the book would let its pipes meet.
func TestLayingFloor(t *testing.T) {
	for _, name := range []string{"elbow 90", "elbow 45", "tee", "street elbow 90"} {
		for _, series := range []string{"Sch 40", "Sch 80", seriesMetric} {
			asked := name
			if series == "Sch 80" {
				asked += " Sch 80"
			}
			for _, s := range book.FittingSizes(series) {
				f := mustFitting(t, asked, s)
				if floor := LayingFloor(book.pipeOD(t, series, s), f.Turn); f.ToStop.Length < floor || f.Series != series {
					t.Errorf("%s %s: %.4f m to the stop, under the floor of %.4f m", asked, s, f.ToStop.Length, floor)
				}
			}
		}
	}
}

func TestFittingNames(t *testing.T) {
	for _, c := range []struct{ asked, want string }{
		{"90 elbow", "elbow 90"},
		{"Elbow, 90°", "elbow 90"},
		{"90 ell", "elbow 90"},
		{"elbows 90", "elbow 90"},
		{"elbow", "elbow 90"},
		{"45 degree elbow", "elbow 45"},
		{"street 45", "street elbow 45"},
		{"swing check valve", "check valve swing"},
		{"Check valve, swing", "check valve swing"},
		{"flapper check", "check valve swing"},
		{"spring check", "check valve spring"},
		{"true union", "union"},
		{"bushing", "reducer bushing"},
		{"reducer", "reducing coupling"},
		{"coupler", "coupling"},
		{"MIPT adapter", "male adapter"},
		{"bulkhead", "bulkhead fitting"},
		{"barb adapter", "hose barb adapter"},
		{"lateral", "wye 45"},
		{"end cap", "cap"},
		{"ball valve", "ball valve"},
	} {
		m, _, err := book.find(c.asked)
		if err != nil || m.name != c.want {
			t.Errorf("%q is %v (%v), want %s", c.asked, m, err, c.want)
		}
	}
}

func TestFittingErrors(t *testing.T) {
	for _, c := range []struct{ name, size, code, near string }{
		{"elbo 90", "2", CodeFittingUnknown, "elbow 90"},
		{"check valve", "2", CodeFittingUnknown, "check valve swing"},
		{"entrance", "2", CodeFittingUnknown, ""},
		{"", "2", CodeFittingUnknown, ""},
		{"elbow 90", "8", CodeFittingSize, "1-1/2"},
		{"elbow 90", "3-1/2", CodeFittingSize, "4"},
		{"elbow 90", "d160", CodeFittingSize, "d50"},
		{"elbow 90 Sch 80", "d50", CodeFittingSize, "1-1/2"},
		{"elbow 90", "DN50", CodeSizeDN, ""},
		{"elbow 90", "", CodeSizeUnread, ""},
		{"elbow 90", "2 x 1-1/2", CodeFittingOneSize, ""},
		{"reducer bushing", "2", CodeFittingTwoSizes, ""},
		{"reducer bushing", "2 x 2", CodeFittingTwoSizes, ""},
		{"reducer bushing", "2 x d50", CodeSizeUnread, ""},
		{"tee", "2 x 2 x 1", CodeSizeUnread, ""},
	} {
		_, err := book.Fitting(c.name, c.size, nil)
		if near := fails(t, err, c.code); !strings.Contains(near, c.near) {
			t.Errorf("%s %s: near %q, want %s", c.name, c.size, near, c.near)
		}
	}
}

// TestMeasuredBeatsTable: a fitter's elbow of 1-3/8 deep (issue 2, item 4).
func TestMeasuredBeatsTable(t *testing.T) {
	deep := Measured{Fitting: "90 elbow", Size: "2 in", Socket: 1.375 * unit.Inch, Note: "caliper"}
	f := mustFitting(t, "elbow 90", "2", deep)
	if !near1e(inches(f.Socket), 1.375, 1e-9) || f.Socket.MeasureFirst || f.Socket.Source.Basis != trace.BasisMeasured || f.Socket.Source.Note != "caliper" {
		t.Errorf("socket %+v", f.Socket)
	}
	if !f.MeasureFirst || !f.ToStop.MeasureFirst || f.Ends[1].Depth != f.Socket {
		t.Errorf("the laying length is still the table's: %+v", f.ToStop)
	}
	whole := deep
	whole.ToStop, whole.Hub = 1.25*unit.Inch, 2.875*unit.Inch
	if f = mustFitting(t, "elbow 90", "2", whole); f.MeasureFirst || inches(f.Hub) != inches(f.Widest) || !near1e(inches(f.Hub), 2.875, 1e-9) || f.Ends[0].Hub != f.Hub {
		t.Errorf("all measured: %+v", f)
	}
	// Another size, series or part is not this part.
	for _, o := range []struct{ name, size string }{{"elbow 90", "1-1/2"}, {"elbow 90 Sch 80", "2"}, {"street elbow 90", "2"}, {"elbow 90", "d50"}} {
		if f = mustFitting(t, o.name, o.size, whole); !f.MeasureFirst {
			t.Errorf("%s %s takes the measurement of another part", o.name, o.size)
		}
	}
	// Of two measurements of one dimension the later counts; others stay.
	f = mustFitting(t, "elbow 90", "2", whole, Measured{Fitting: "elbow 90", Size: "2", Socket: 1.5 * unit.Inch})
	if !near1e(inches(f.Socket), 1.5, 1e-9) || !near1e(inches(f.ToStop), 1.25, 1e-9) {
		t.Errorf("socket %v, to stop %v", inches(f.Socket), inches(f.ToStop))
	}
	// The body of a union is its nut; its hubs stay.
	u := mustFitting(t, "union", "2", Measured{Fitting: "union", Size: "2", Hub: 4.125 * unit.Inch})
	if !near1e(inches(u.Widest), 4.125, 1e-9) || u.Hub.Source.Basis == trace.BasisMeasured {
		t.Errorf("union: body %v, hub %+v", inches(u.Widest), u.Hub)
	}
	// A tee is one part whichever way the water goes.
	if f = mustFitting(t, "tee branch", "2", Measured{Fitting: "tee", Size: "2", ToStop: 1.3 * unit.Inch}); f.ToStop.MeasureFirst {
		t.Error("the tee's measurement does not reach the branch")
	}
	v := mustFitting(t, "check valve swing", "2", Measured{Fitting: "check valve swing", Size: "2", Attitudes: AttitudesUpright})
	if v.Attitudes != AttitudesUpright || v.AttitudesFrom.Basis != trace.BasisSheet {
		t.Errorf("attitudes %q from %+v", v.Attitudes, v.AttitudesFrom)
	}
	// A dimension that a part does not have is not made by measuring.
	if c := mustFitting(t, "cap", "2", Measured{Fitting: "cap", Size: "2", ToStop: 1}); c.ToStop.Known() {
		t.Error("a cap has no laying length")
	}
}

func TestMeasuredWrong(t *testing.T) {
	for _, o := range []Measured{
		{Socket: -1}, {ToStop: unit.Length(math.NaN())}, {Hub: unit.Length(math.Inf(1))}, {K: -0.5},
	} {
		o.Fitting, o.Size = "elbow 90", "2"
		_, err := book.Fitting("elbow 90", "2", []Measured{o})
		fails(t, err, CodeMeasured)
		fails(t, book.CheckMeasured(o), CodeMeasured)
	}
	fails(t, book.CheckMeasured(Measured{Fitting: "elbow 91", Size: "2"}), CodeFittingUnknown)
	fails(t, book.CheckMeasured(Measured{Fitting: "elbow 90", Size: "7"}), CodeFittingSize)
	if err := book.CheckMeasured(Measured{Fitting: "elbow 90", Size: "2", Socket: 0.03}); err != nil {
		t.Error(err)
	}
	// What cannot be read is left aside here and named by CheckMeasured.
	mustFitting(t, "elbow 90", "2", Measured{Fitting: "elbow 91", Size: "2", Socket: -1})
}

// TestMeasuredAlwaysCounts: whatever is measured is what the fitting has.
func TestMeasuredAlwaysCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"elbow 90", "elbow 45", "tee", "union", "check valve swing", "ball valve", "coupling", "male adapter", "bulkhead fitting"}).Draw(t, "name")
		s := rapid.SampledFrom(append(book.FittingSizes("Sch 40"), book.FittingSizes(seriesMetric)...)).Draw(t, "size")
		o := Measured{
			Fitting: name, Size: s,
			Socket: unit.Length(rapid.Float64Range(0.005, 0.1).Draw(t, "socket")),
			ToStop: unit.Length(rapid.Float64Range(0.001, 0.3).Draw(t, "toStop")),
			Hub:    unit.Length(rapid.Float64Range(0.02, 0.4).Draw(t, "hub")),
		}
		f, err := book.Fitting(name, s, []Measured{o})
		if err != nil {
			t.Fatal(err)
		}
		if f.Socket.Length != o.Socket || f.ToStop.Length != o.ToStop || f.Widest.Length != o.Hub || f.MeasureFirst || f.Hub.Length > f.Widest.Length {
			t.Fatalf("%+v", f)
		}
	})
}

// TestStackInVault: adapter 1.60, union 3.90, check valve 6.20, elbow 2.65 in,
// fittings touching, 14.35 in from the port's face to the elbow's centre:
// arithmetic on four measured parts, common practice, no source.
func TestStackInVault(t *testing.T) {
	part := func(name string, toStop unit.Length) Measured {
		return Measured{Fitting: name, Size: "2", Socket: 1.5 * unit.Inch, ToStop: toStop * unit.Inch}
	}
	all := []Measured{part("male adapter", 0.10), part("union", 0.90), part("check valve swing", 3.20), part("elbow 90", 1.15)}
	length := func(name string) float64 { // from the mate's face at the first end to the outer face of the second
		f := mustFitting(t, name, "2", all...)
		in, out := f.Ends[0], f.Ends[1]
		v := in.Stop.Length + out.Stop.Length + out.Depth.Length
		switch {
		case f.Form == FormBend:
			v = in.Stop.Length + in.Depth.Length // to the centre
		case in.Kind == Socket:
			v += in.Depth.Length
		}
		return float64(v / unit.Inch)
	}
	sum := 0.0
	for _, c := range []struct {
		name string
		want float64
	}{{"male adapter", 1.60}, {"union", 3.90}, {"check valve swing", 6.20}, {"elbow 90", 2.65}} {
		got := length(c.name)
		sum += got
		if !near1e(got, c.want, 1e-9) {
			t.Errorf("%s is %.3f in, want %.2f", c.name, got, c.want)
		}
	}
	if !near1e(sum, 14.35, 1e-9) {
		t.Errorf("the stack is %.3f in, want 14.35", sum)
	}
}

func TestReducersFollowTheFlow(t *testing.T) {
	for _, name := range []string{"reducer bushing", "reducing coupling"} {
		down, up := mustFitting(t, name, "2 x 1-1/2"), mustFitting(t, name, "1-1/2 × 2")
		if down.Ends[0].Size != "2" || down.Ends[1].Size != "1-1/2" || up.Ends[0].Size != "1-1/2" || up.Ends[1].Size != "2" {
			t.Errorf("%s: ends %s-%s and %s-%s", name, down.Ends[0].Size, down.Ends[1].Size, up.Ends[0].Size, up.Ends[1].Size)
		}
		if down.ToStop.Length != up.ToStop.Length || down.Socket != up.Socket || !near1e(inches(down.Socket), 1.094, 1e-9) {
			t.Errorf("%s: the same part in both directions", name)
		}
	}
	if b := mustFitting(t, "reducer bushing", "2 x 1-1/2"); b.Ends[0].Kind != Spigot || b.Ends[1].Kind != Socket {
		t.Errorf("bushing: %v", b.Ends)
	}
}

func TestEnds(t *testing.T) {
	kinds := func(f Fitting) (out []EndKind) {
		for _, e := range f.Ends {
			out = append(out, e.Kind)
		}
		return out
	}
	for _, c := range []struct {
		name, size string
		want       []EndKind
		thread     string
	}{
		{"male adapter", "2", []EndKind{NPTMale, Socket}, "2"},
		{"female adapter", "2", []EndKind{NPTFemale, Socket}, "2"},
		{"male adapter", "d50", []EndKind{BSPTMale, Socket}, "1-1/2"},
		{"female adapter", "d63", []EndKind{BSPPFemale, Socket}, "2"},
		{"hose barb adapter", "1-1/4", []EndKind{NPTMale, Barb}, "1-1/4"},
		{"hose barb adapter", "32 mm", []EndKind{BSPTMale, Barb}, "1-1/4"},
		{"street elbow 90", "2", []EndKind{Socket, Spigot}, ""},
		{"cross", "2", []EndKind{Socket, Socket, Socket, Socket}, ""},
	} {
		f := mustFitting(t, c.name, c.size)
		if !slices.Equal(kinds(f), c.want) || (c.thread != "" && f.Ends[0].Size != c.thread) {
			t.Errorf("%s %s: ends %v, first %s", c.name, c.size, kinds(f), f.Ends[0].Size)
		}
	}
	street := mustFitting(t, "street elbow 90", "2")
	if spigot := street.Ends[1]; !near1e(inches(spigot.Stop), 1.21875+1.156, 1e-9) || !near1e(inches(spigot.Depth), 1.156, 1e-9) {
		t.Errorf("street elbow's spigot: %+v", spigot)
	}
	w := mustFitting(t, "wye 45", "2")
	if r := 2.375 / 2; !near1e(inches(w.ToStop), r/math.Tan(math.Pi/8)*1.03, 1e-9) || !near1e(inches(w.Ends[0].Stop), r*math.Tan(math.Pi/8)*1.03, 1e-9) {
		t.Errorf("wye: %.3f and %.3f", inches(w.ToStop), inches(w.Ends[0].Stop))
	}
}

func BenchmarkFitting(b *testing.B) {
	measured := []Measured{{Fitting: "union", Size: "2", Socket: 0.038}, {Fitting: "elbow 90", Size: "2", Socket: 0.035}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := book.Fitting("elbow 90", "2", measured); err != nil {
			b.Fatal(err)
		}
	}
}
