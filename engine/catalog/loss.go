package catalog

import (
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// LossForm is the law by which a loss coefficient is found.
type LossForm string

// The forms. Re is the Reynolds number in the pipe of the fitting's size, f
// its Darcy friction factor, D its bore.
const (
	LossFixed       LossForm = "fixed"             // K
	LossCrane       LossForm = "n fT"              // K = n fT, fT by nominal size (Crane TP-410)
	LossCraneBore   LossForm = "n fT at the bore"  // K = n fT, fT of the bore (CraneFT)
	LossHooper      LossForm = "2-K"               // K = K1/Re + Ki (1 + 1/D), D the bore in inches (Hooper 1981)
	LossDarby       LossForm = "3-K"               // K = K1/Re + Ki (1 + Kd/Dn^0.3), Dn the nominal size in inches (Darby)
	LossEquivalent  LossForm = "equivalent length" // K = f Leq/D
	LossContraction LossForm = "contraction"       // K = 0.5 (1 - beta^2) on the smaller pipe
	LossEnlargement LossForm = "enlargement"       // K = (1 - beta^2)^2 on the smaller pipe
)

// Loss is the resistance of a fitting by one method: the head lost is
// K v^2/(2 g), v being the mean speed in the pipe of size On.
type Loss struct {
	Fitting string // name as the book prints it
	Size    string
	On      string // the size of pipe whose speed K is meant for; the smaller one where sizes change
	Method  string // "Darby 3-K", "Crane"
	As      string // the row's own words: "90 elbow, threaded standard r/D=1"
	Form    LossForm

	K           float64     // LossFixed
	Low, High   float64     // range of a fixed K that is given as one, else 0
	N           float64     // L/D of the Crane forms
	FT          float64     // of LossCrane
	K1, Ki, Kd  float64     // of LossHooper and LossDarby
	NominalIn   float64     // nominal size in inches, which Darby's Dn and Crane's table go by
	EquivLength unit.Length // of LossEquivalent: length of pipe of the same size and bore
	Beta        float64     // smaller bore / larger bore, of Sch 40 or PN16 pipe

	// OpensFullyAt is the speed of water below which a check valve does not
	// open fully and loses more than K tells; 0 where that is not known or does
	// not apply.
	OpensFullyAt unit.Speed

	Source trace.Source
}

// Split gives the two parts of K = perRe/Re + rest, so that a solver can form
// the head loss without dividing by a flow of zero. f is the Darcy friction
// factor of the pipe (used by LossEquivalent only; any value else), bore its
// inside diameter (used by LossHooper, LossCraneBore and LossEquivalent). Both
// parts are NaN when a value the form needs is not finite and above 0, or when
// the Loss is empty.
func (l Loss) Split(f float64, bore unit.Length) (perRe, rest float64) {
	switch l.Form {
	case LossFixed:
		return 0, l.K
	case LossCrane:
		return 0, l.N * l.FT
	case LossCraneBore:
		return 0, l.N * CraneFT(bore)
	case LossHooper:
		if positive(bore) {
			return l.K1, l.Ki * (1 + float64(unit.Inch/bore))
		}
	case LossDarby:
		if positive(l.NominalIn) {
			return l.K1, l.Ki * (1 + l.Kd/math.Pow(l.NominalIn, 0.3))
		}
	case LossEquivalent:
		if positive(bore) && positive(f) {
			return 0, f * float64(l.EquivLength/bore)
		}
	case LossContraction:
		return 0, ContractionK(l.Beta)
	case LossEnlargement:
		return 0, EnlargementK(l.Beta)
	}
	return math.NaN(), math.NaN()
}

// Coefficient gives K at a Reynolds number Re > 0; f and bore as in Split.
// NaN outside.
func (l Loss) Coefficient(re, f float64, bore unit.Length) float64 {
	if !(re > 0) {
		return math.NaN()
	}
	perRe, rest := l.Split(f, bore)
	return perRe/re + rest
}

// ContractionK = 0.5 (1 - beta^2), on the speed in the smaller pipe, beta =
// smaller / larger diameter. Range 0 <= beta <= 1; NaN outside. Source: Crane
// TP-410, p. A-26.
func ContractionK(beta float64) float64 {
	if !(beta >= 0 && beta <= 1) {
		return math.NaN()
	}
	return 0.5 * (1 - beta*beta)
}

// EnlargementK = (1 - beta^2)^2, on the speed in the smaller pipe, beta =
// smaller / larger diameter. Range 0 <= beta <= 1; NaN outside. Source:
// Hydraulic Institute, Engineering Data Library, Eq. 3.B.3 (Borda-Carnot).
func EnlargementK(beta float64) float64 {
	if !(beta >= 0 && beta <= 1) {
		return math.NaN()
	}
	return (1 - beta*beta) * (1 - beta*beta)
}

// CraneFT is the friction factor in complete turbulence of clean commercial
// steel pipe of a bore, as the general-purpose library fluids 1.0.22 (ft_Crane)
// fits the table of Crane TP-410, 2009 on: the Colebrook-White law at Re = 7.5e6
// D and e/D = 3.4126825352925e-5 D^-1.0112, D in m. Range: bores of 10 mm to
// 1 m; NaN outside.
func CraneFT(bore unit.Length) float64 {
	d := float64(bore)
	if !(d >= 0.01 && d <= 1) {
		return math.NaN()
	}
	re, rough := 7.5e6*d, 3.4126825352925e-5*math.Pow(d, -1.0112)
	// x = 1/sqrt(f) by repeated substitution, which gains two digits a turn
	// here. The full law of pipe friction stands above this package.
	x := 7.0
	for range 12 {
		x = -2 * math.Log10(rough/3.7+2.51*x/re)
	}
	return 1 / (x * x)
}

// CvToK = 890 d^4 / Cv^2, d in inches: the loss coefficient of a valve from the
// flow coefficient on its sheet (US gallons a minute at 1 psi). Range both above
// 0; NaN outside. Source: Crane TP-410, Cv and K.
func CvToK(cv float64, bore unit.Length) float64 {
	if !positive(cv) || !positive(bore) {
		return math.NaN()
	}
	return 890 * math.Pow(float64(bore/unit.Inch), 4) / (cv * cv)
}

// SwingCheckOpens = 35/sqrt(rho) ft/s, rho in lb/ft3: the speed above which a
// swing check valve stands fully open. Range density above 0, in kg/m3; NaN
// outside. Source: Crane TP-410, p. A-27.
func SwingCheckOpens(densityKgM3 float64) unit.Speed {
	if !positive(densityKgM3) {
		return nan[unit.Speed]()
	}
	perCubicFoot := densityKgM3 * float64(unit.CubicFoot) / float64(unit.Pound)
	return unit.Speed(35/math.Sqrt(perCubicFoot)) * unit.FootPerSecond
}

// LossNames names the fittings that have a loss coefficient; the losses at a
// pipe's end (entrance, exit) are among them.
func (b *Book) LossNames() []string { return slices.Clone(b.lossNames) }

// Loss gives the resistance of a fitting by the method taken by default: the
// first of Losses. Errors: as Losses.
func (b *Book) Loss(name, sizeText string) (Loss, error) {
	return b.LossMeasured(name, sizeText, nil)
}

// LossMeasured is Loss, but a coefficient that the fitter read on the part's
// sheet beats the table (the later of two). Errors: as Losses, and CodeMeasured.
func (b *Book) LossMeasured(name, sizeText string, overrides []Measured) (Loss, error) {
	c, err := b.lossCase(name, sizeText)
	if err != nil {
		return Loss{}, err
	}
	for i := len(overrides) - 1; i >= 0; i-- {
		o := overrides[i]
		if o.K == 0 {
			continue
		}
		d, err := b.lossCase(o.Fitting, o.Size)
		if err != nil || d.name != c.name || d.sizes != c.sizes {
			continue
		}
		if !(o.K > 0) || math.IsInf(float64(o.K), 0) {
			return Loss{}, fault(CodeMeasured, trace.Str("fitting", o.Fitting), trace.Str("size", o.Size), trace.Str("value", "k"))
		}
		l := c.start()
		l.Method, l.Form, l.K = "measured", LossFixed, float64(o.K)
		l.Source = trace.Source{Title: "measured by the fitter, or read on its sheet", Basis: trace.BasisMeasured, Note: o.Note}
		return l, nil
	}
	for l := range b.eachLoss(c) {
		return l, nil
	}
	return Loss{}, c.noSuchSize()
}

// Losses gives the resistance of a fitting by every method that has the size,
// the default first, so that their disagreement can be shown. An inch table is
// used for metric sizes by the nominal size that goes with them (d50 as 1-1/2).
// Errors: CodeFittingUnknown, CodeLossNone, CodeLossWhich, CodeLossSize,
// CodeSizeUnread, CodeSizeDN, CodeFittingTwoSizes, CodeFittingOneSize,
// CodeOutside.
func (b *Book) Losses(name, sizeText string) ([]Loss, error) {
	c, err := b.lossCase(name, sizeText)
	if err != nil {
		return nil, err
	}
	all := slices.Collect(b.eachLoss(c))
	if all == nil {
		return nil, c.noSuchSize()
	}
	return all, nil
}
