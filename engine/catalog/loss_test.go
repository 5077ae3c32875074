package catalog

import (
	"math"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"

	"pgregory.net/rapid"
)

func mustLosses(t *testing.T, name, size string) []Loss {
	t.Helper()
	ls, err := book.Losses(name, size)
	if err != nil {
		t.Fatal(err)
	}
	return ls
}

// TestElbowDisagreement: the 90 elbow of 2 in is 0.57 by Crane, 0.60 by Darby
// at Re 1e5, 0.75 by Perry, 1.0 by the Hydraulic Institute (reference README,
// contradiction 6; each row has its source).
func TestElbowDisagreement(t *testing.T) {
	want := map[string]float64{"Darby 3-K": 0.60, "Crane": 0.57, "fixed K": 0.75, "K table by size": 1.0}
	ls := mustLosses(t, "elbow 90", "2")
	for _, l := range ls {
		w, ok := want[l.Method]
		if !ok {
			continue
		}
		delete(want, l.Method)
		if k := l.Coefficient(1e5, 0.018, 0.0525); !near1e(k, w, 0.005) {
			t.Errorf("K by %s is %.3f, want %.2f (%s)", l.Method, k, w, l.Source.Title)
		}
	}
	if len(want) > 0 || ls[0].Method != "Darby 3-K" {
		t.Errorf("default %s; not found: %v", ls[0].Method, want)
	}
}

func TestDefaultLosses(t *testing.T) {
	for _, c := range []struct {
		name, size, method string
		k, abs             float64 // at Re 1e5, f 0.018, bore 2.067 in
		source             string
	}{
		{"elbow 45", "2", "Darby 3-K", 0.318, 0.001, "500/Re + 0.071 (1 + 4.2/2^0.3), Darby's table"},
		{"tee run", "2", "Darby 3-K", 0.389, 0.001, "200/Re + 0.091 (1 + 4/2^0.3), Darby's table"},
		{"tee branch", "2", "Darby 3-K", 1.169, 0.001, "500/Re + 0.274 (1 + 4/2^0.3), Darby's table"},
		{"check valve swing", "2", "Darby 3-K", 1.970, 0.001, "1500/Re + 0.46 (1 + 4/2^0.3), Darby's table"},
		{"street elbow 90", "2", "Crane", 0.95, 1e-9, "50 fT, from memory; fT of Crane's older table"},
		{"check valve spring", "2", "fixed K", 4.25, 1e-9, "middle of 2.5 to 6, common practice"},
		{"union", "2", "fixed K", 0.04, 1e-9, "Perry's handbook"},
		{"coupling", "2", "fixed K", 0.04, 1e-9, "Perry's handbook"},
		{"male adapter", "2", "equivalent length", 0.018 * 4.5 * 12 / 2.067, 1e-9, "4.5 ft, table of equivalent length in PVC fittings"},
		{"exit", "2", "Crane", 1, 1e-9, "Crane TP-410 p. A-29, from memory; the library has the same"},
		{"entrance", "2", "fixed K", 0.5, 1e-9, "Rishel after the Hydraulic Institute"},
		{"entrance bell mouth", "2", "fixed K", 0.05, 1e-9, "Rishel after the Hydraulic Institute"},
		{"reducer bushing", "2 x 1-1/2", "sudden contraction", 0.19665223, 1e-8, "0.5 (1 - beta^2), reference row C151"},
		{"reducing coupling", "2 x 3", "sudden enlargement", 0.29821373, 1e-8, "(1 - beta^2)^2, reference row C148"},
	} {
		l, err := book.Loss(c.name, c.size)
		if err != nil {
			t.Error(err)
			continue
		}
		if k := l.Coefficient(1e5, 0.018, 2.067*unit.Inch); l.Method != c.method || !near1e(k, c.k, c.abs) {
			t.Errorf("%s %s: %.4f by %s, want %.4f by %s (%s)", c.name, c.size, k, l.Method, c.k, c.method, c.source)
		}
	}
	// Memory and practice are flagged as such.
	for name, basis := range map[string]trace.Basis{
		"check valve spring": trace.BasisPractice, "street elbow 90": trace.BasisMemory, "wye branch": trace.BasisMemory, "cross run": trace.BasisMemory, "elbow 90": trace.BasisPublished,
	} {
		if l, err := book.Loss(name, "2"); err != nil || l.Source.Basis != basis {
			t.Errorf("%s: basis %s (%v), want %s", name, l.Source.Basis, err, basis)
		}
	}
	if l, _ := book.Loss("check valve spring", "2"); l.Low != 2.5 || l.High != 6 {
		t.Errorf("spring check: %g to %g", l.Low, l.High)
	}
	if l, _ := book.Loss("reducer bushing", "1-1/2 x 2"); l.On != "1-1/2" || l.Form != LossEnlargement {
		t.Errorf("a bushing laid against its order enlarges: %+v", l)
	}
}

// lossSizes gives sizes for a loss: two where it reduces.
func lossSizes(name string) []string {
	if m := book.models[name]; m != nil && m.form == FormReducer {
		return []string{"2 x 1-1/2", "1-1/2 x 2", "d63 x d50", "3 x 2", "2 x 1/2"}
	}
	return []string{"1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4", "d20", "d50", "d110"}
}

// TestEveryLoss: each printed name has a coefficient in each size by each of
// its methods, finite and above zero.
func TestEveryLoss(t *testing.T) {
	for _, name := range book.LossNames() {
		for _, s := range lossSizes(name) {
			for _, l := range mustLosses(t, name, s) {
				if k := l.Coefficient(5e4, 0.02, 0.05); !(k > 0 && k < 20) {
					t.Errorf("%s %s by %s (%s): K %v", name, s, l.Method, l.As, k)
				}
				if l.Fitting != name || l.Source.Title == "" || l.As == "" || l.Method == "" || l.On == "" {
					t.Errorf("%s %s: %+v", name, s, l)
				}
			}
		}
	}
	// Every fitting that water passes has a loss, or names the ways through it.
	for _, name := range book.FittingNames() {
		m, _, _ := book.find(name)
		s := "2"
		if m.form == FormReducer {
			s = "2 x 1-1/2"
		}
		switch _, err := book.Loss(name, s); name {
		case "cap":
			fails(t, err, CodeLossNone)
		case "tee", "cross", "wye 45":
			if near := fails(t, err, CodeLossWhich); !strings.Contains(near, "branch") || !strings.Contains(near, "run") {
				t.Errorf("%s: %v", name, near)
			}
		default:
			if err != nil {
				t.Error(err)
			}
		}
	}
}

func TestLossErrors(t *testing.T) {
	for _, c := range []struct{ name, size, code string }{
		{"elbow 91", "2", CodeFittingUnknown},
		{"", "2", CodeFittingUnknown},
		{"elbow 90", "two", CodeSizeUnread},
		{"elbow 90", "DN50", CodeSizeDN},
		{"elbow 90", "2 x 1", CodeFittingOneSize},
		{"exit", "2 x 1", CodeFittingOneSize},
		{"reducer bushing", "2", CodeFittingTwoSizes},
		{"reducing coupling", "2 x 7", CodeOutside},
		{"male adapter", "6", CodeLossSize},
		{"elbow 90", "d33", CodeOutside},
	} {
		_, err := book.Losses(c.name, c.size)
		fails(t, err, c.code)
		_, err = book.Loss(c.name, c.size)
		fails(t, err, c.code)
	}
}

func TestMeasuredLoss(t *testing.T) {
	sheet := []Measured{
		{Fitting: "swing check", Size: "2", K: 3, Note: "old sheet"},
		{Fitting: "swing check", Size: "2", K: 2.1},
		{Fitting: "swing check", Size: "2", Socket: 0.03},
		{Fitting: "check valve swing", Size: "3", K: 9},
		{Fitting: "nothing", Size: "2", K: 8},
	}
	l, err := book.LossMeasured("check valve swing", "2", sheet)
	if err != nil || l.Method != "measured" || l.Source.Basis != trace.BasisMeasured || l.Coefficient(1e4, 0, 0) != 2.1 || l.On != "2" {
		t.Errorf("%+v, %v", l, err)
	}
	if l, err = book.LossMeasured("tee branch", "2", []Measured{{Fitting: "tee run", Size: "2", K: 7}}); err != nil || l.Form == LossFixed {
		t.Errorf("the branch takes the run's coefficient: %+v, %v", l, err)
	}
	for _, k := range []unit.Ratio{-1, unit.Ratio(math.NaN()), unit.Ratio(math.Inf(1))} {
		_, err = book.LossMeasured("exit", "2", []Measured{{Fitting: "exit", Size: "2", K: k}})
		fails(t, err, CodeMeasured)
	}
}

// TestCoefficientFallsWithReynolds: 2-K and 3-K fall as the flow grows, the
// others do not depend on it; the head lost always grows with the flow.
func TestCoefficientFallsWithReynolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(book.LossNames()).Draw(t, "name")
		s := rapid.SampledFrom(lossSizes(name)).Draw(t, "size")
		ls, err := book.Losses(name, s)
		if err != nil {
			t.Fatal(err)
		}
		l := rapid.SampledFrom(ls).Draw(t, "method")
		re := rapid.Float64Range(1, 1e7).Draw(t, "Re")
		more := re * rapid.Float64Range(1.001, 100).Draw(t, "times")
		f := rapid.Float64Range(0.008, 0.1).Draw(t, "f")
		bore := unit.Length(rapid.Float64Range(0.012, 0.3).Draw(t, "bore"))
		low, high := l.Coefficient(re, f, bore), l.Coefficient(more, f, bore)
		follows := l.Form == LossDarby || l.Form == LossHooper
		if (follows && !(high < low)) || (!follows && high != low) {
			t.Fatalf("%s by %s: K %v at Re %g, %v at %g", name, l.Method, low, re, high, more)
		}
		if !(high*more*more > low*re*re) {
			t.Fatalf("%s by %s: the loss falls as the flow grows", name, l.Method)
		}
		perRe, rest := l.Split(f, bore)
		if k := perRe/re + rest; k != low {
			t.Fatalf("%s by %s: %v split, %v whole", name, l.Method, k, low)
		}
	})
}

func TestLossOutsideRange(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	darby, _ := book.Loss("elbow 90", "2")
	var hooper, crane, length Loss
	for _, l := range mustLosses(t, "elbow 90", "2") {
		switch l.Form {
		case LossHooper:
			hooper = l
		case LossCraneBore:
			crane = l
		case LossEquivalent:
			length = l
		}
	}
	for i, v := range []float64{
		darby.Coefficient(0, 0, 0), darby.Coefficient(-1, 0, 0), darby.Coefficient(nan, 0, 0), hooper.Coefficient(1e5, 0, 0), hooper.Coefficient(1e5, 0, unit.Length(nan)),
		crane.Coefficient(1e5, 0, 0.009), crane.Coefficient(1e5, 0, 1.1), crane.Coefficient(1e5, 0, unit.Length(nan)), length.Coefficient(1e5, 0, 0.05),
		length.Coefficient(1e5, 0.02, 0), length.Coefficient(1e5, inf, 0.05), Loss{}.Coefficient(1e5, 0.02, 0.05), Loss{Form: LossDarby, K1: 1, Ki: 1}.Coefficient(1e5, 0, 0),
		ContractionK(-0.1), ContractionK(1.1), ContractionK(nan), EnlargementK(2), EnlargementK(nan), CvToK(0, 0.05), CvToK(50, 0), CvToK(nan, 0.05),
		float64(SwingCheckOpens(0)), float64(SwingCheckOpens(nan)),
	} {
		if !math.IsNaN(v) {
			t.Errorf("case %d outside the range gives %v, want NaN", i, v)
		}
	}
	if ContractionK(1) != 0 || EnlargementK(1) != 0 || ContractionK(0) != 0.5 || EnlargementK(0) != 1 {
		t.Error("no change of bore loses nothing; out of a tank 0.5 and into one 1 (Crane TP-410)")
	}
}

// TestCvToK against the definitions: Cv is the flow in US gpm at 1 psi, K the
// loss in velocity heads; water at 60 F, 999.0 kg/m3 (IAPWS, as steam tables
// print it).
func TestCvToK(t *testing.T) {
	for _, c := range []struct{ cv, bore float64 }{{50, 2}, {12, 1}, {300, 4}} {
		area := math.Pi / 4 * (c.bore * 0.0254) * (c.bore * 0.0254)
		v := c.cv * float64(unit.USGallonPerMinute) / area
		want := float64(unit.PSI) / (0.5 * 999.0 * v * v)
		if got := CvToK(c.cv, unit.Length(c.bore)*unit.Inch); !near1e(got/want, 1, 0.002) {
			t.Errorf("Cv %g in %g in: K %g, want %g", c.cv, c.bore, got, want)
		}
	}
}

func TestSwingCheckOpens(t *testing.T) {
	// 35/sqrt(62.4) = 4.43 ft/s for water, Crane TP-410 (the note of the row says 4.4).
	if v := float64(SwingCheckOpens(1000) / unit.FootPerSecond); !near1e(v, 4.43, 0.01) {
		t.Errorf("a swing check opens fully at %.2f ft/s, want 4.43", v)
	}
	if l, _ := book.Loss("check valve swing", "2"); l.OpensFullyAt == 0 {
		t.Error("the loss does not tell the speed")
	}
	if l, _ := book.Loss("elbow 90", "2"); l.OpensFullyAt != 0 {
		t.Error("an elbow opens")
	}
}

func BenchmarkLoss(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := book.Loss("elbow 90", "2"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCoefficient(b *testing.B) {
	for _, l := range []string{"elbow 90", "union", "reducing coupling"} {
		size := "2"
		if l == "reducing coupling" {
			size = "2 x 1"
		}
		loss, err := book.Loss(l, size)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(loss.Method, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if loss.Coefficient(1e5, 0.02, 0.05) <= 0 {
					b.Fatal("no loss")
				}
			}
		})
	}
}
