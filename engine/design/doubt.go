package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Doubt is one thing that the answer is in doubt about: a reading, a figure of
// a sheet or a table.
type Doubt struct {
	trace.Message // Code: one of those below; Args: name
	Path          string
	// Tolerance is how far off it may be to both sides, in 95 of 100 cases; in
	// percent where it goes with the value. Without a kind for a range: any value
	// in it is as likely.
	Tolerance unit.Value
	Own       bool // the job's own tolerance; else a default, listed with the assumptions
}

// Codes of doubts, each naming what is in doubt. Package answer says with each
// what would lessen it.
const (
	DoubtLevel       = "doubt.level"             // a height by rod, laser or tape. Args: name
	DoubtWidth       = "doubt.lip.width"         // a lip's width. Args: name
	DoubtTilt        = "doubt.lip.tilt"          // a lip's tilt. Args: name
	DoubtWeir        = "doubt.lip.c"             // a lip's weir coefficient. Args: name
	DoubtCling       = "doubt.lip.cling"         // how a film clings to a lip. Args: name
	DoubtLength      = "doubt.run.length"        // a run's length. Args: name
	DoubtBore        = "doubt.pipe.bore"         // the inside diameter of a pipe. Args: name
	DoubtRough       = "doubt.pipe.roughness"    // a pipe's wall. Args: name
	DoubtLoss        = "doubt.fitting.k"         // the loss coefficient of a kind of fitting, or of a valve setting. Args: name
	DoubtTemperature = "doubt.water.temperature" // the water's temperature. No args
	DoubtSheetFlow   = "doubt.pump.flow"         // the flow a pump gives against its sheet. Args: name
	DoubtSheetHead   = "doubt.pump.head"         // the head it gives against its sheet. Args: name
	DoubtReading     = "doubt.pump.reading"      // how its curve was read. Args: name
	DoubtWear        = "doubt.pump.wear"         // what it has lost by wear. Args: name
	DoubtShape       = "doubt.pump.shape"        // the shape of a curve known by the box only. Args: name
	DoubtPower       = "doubt.pump.power"        // the power it draws against its sheet. Args: name
	DoubtPond        = "doubt.pond.area"         // the pond's surface. No args
	DoubtVault       = "doubt.vault.area"        // the vault's plan. No args
	DoubtSill        = "doubt.vault.weir"        // the skimmer's weir. No args
	DoubtStore       = "doubt.store"             // the water that a box, pool or stream holds. Args: name
	DoubtStream      = "doubt.reach"             // a stream's slope or roughness. Args: name
)

// Default tolerances, each an assumption once it counts. The job
// sets them otherwise in its list of assumptions, by these codes, or gives a
// tolerance with the entry itself, which beats both.
const (
	AssumeDoubtLevel       = "assume.doubt.level"       // of a rod or laser reading, or a height taped from it. Args: value
	AssumeDoubtTape        = "assume.doubt.tape"        // of a size taped. Args: value
	AssumeDoubtTilt        = "assume.doubt.tilt"        // of a tilt. Args: value
	AssumeDoubtLength      = "assume.doubt.length"      // of a run's length. Args: value
	AssumeDoubtPond        = "assume.doubt.pond"        // of the surface of pond and vault. Args: value
	AssumeDoubtStore       = "assume.doubt.store"       // of the water in boxes, pools and streams. Args: value
	AssumeDoubtBore        = "assume.doubt.bore"        // of a pipe's inside diameter. Args: value
	AssumeDoubtRough       = "assume.doubt.roughness"   // of a roughness: a factor. Args: value
	AssumeDoubtC           = "assume.doubt.hazen"       // of a Hazen-Williams C. Args: value
	AssumeDoubtLoss        = "assume.doubt.k"           // of a loss coefficient. Args: value
	AssumeDoubtWeir        = "assume.doubt.weir"        // of the job's own weir coefficient. Args: value
	AssumeDoubtWeirRange   = "assume.doubt.weirs"       // weir coefficients lie anywhere in their usual range. No args
	AssumeDoubtCling       = "assume.doubt.cling"       // of the flow of a film over a lip. Args: value
	AssumeDoubtSlope       = "assume.doubt.stream"      // of a stream's slope and roughness. Args: value
	AssumeDoubtStreamRange = "assume.doubt.streams"     // a roughness that is not given lies anywhere in its usual range. No args
	AssumeDoubtTemperature = "assume.doubt.temperature" // of a water temperature that is given. No args
	AssumeDoubtSeason      = "assume.doubt.season"      // of one that is not given. No args
	AssumeDoubtSheetFlow   = "assume.doubt.sheet.flow"  // of the flow by a pump's sheet. Args: value
	AssumeDoubtSheetHead   = "assume.doubt.sheet.head"  // of its head. Args: value
	AssumeDoubtSheetPower  = "assume.doubt.sheet.power" // of its power. Args: value
	AssumeDoubtReading     = "assume.doubt.sheet.read"  // of a head read from the curve, of the greatest head. Args: value
	AssumeDoubtWear        = "assume.doubt.wear"        // head that a pump may have lost by wear: anything up to it. Args: value
	AssumeDoubtGuess       = "assume.doubt.guess"       // of a size that the job calls a guess. Args: value
	AssumeDoubtGuessLevel  = "assume.doubt.guesslevel"  // of a height that it calls a guess. Args: value
)

// rule is a default tolerance: a length, or a part of the value.
type rule struct {
	kind   unit.Kind // none: the sentence tells the tolerance
	value  float64
	source trace.Source
}

var (
	sourceTest = trace.Source{
		Title: "ISO 9906:2012, Rotodynamic pumps, acceptance tests, grade 3B: flow 9 percent, head 7 percent, power 9 percent either way",
		Basis: trace.BasisMemory, Note: "a sheet that names a better grade deserves less; one that names none may deserve more",
	}
	sourceBore = trace.Source{
		Title: "ASTM D1785, Sch 40 pipe: outside diameter within 0.006 in at 2 in, wall 0 to 0.020 in over the least",
		Basis: trace.BasisMemory, Note: "some 1 percent of the bore",
	}
)

var rules = map[string]rule{
	AssumeDoubtLevel:       {unit.KindDepth, 0.003, practice},
	AssumeDoubtTape:        {unit.KindDepth, 0.003, practice},
	AssumeDoubtTilt:        {unit.KindDepth, 0.0015, practice},
	AssumeDoubtLength:      {unit.KindPercent, 0.02, practice},
	AssumeDoubtPond:        {unit.KindPercent, 0.03, practice},
	AssumeDoubtStore:       {unit.KindPercent, 0.10, practice},
	AssumeDoubtBore:        {unit.KindPercent, 0.01, sourceBore},
	AssumeDoubtRough:       {unit.KindRatio, 2, practice},
	AssumeDoubtC:           {unit.KindPercent, 0.10, practice},
	AssumeDoubtLoss:        {unit.KindPercent, 0.25, practice},
	AssumeDoubtWeir:        {unit.KindPercent, 0.05, practice},
	AssumeDoubtWeirRange:   {unit.KindNone, 0, practice},
	AssumeDoubtCling:       {unit.KindPercent, float64(hydro.ClingBand), hydro.SourceCling},
	AssumeDoubtSlope:       {unit.KindPercent, 0.20, practice},
	AssumeDoubtStreamRange: {unit.KindNone, 0, memoryChow},
	AssumeDoubtTemperature: {unit.KindNone, 2, practice},
	AssumeDoubtSeason:      {unit.KindNone, 8, practice},
	AssumeDoubtSheetFlow:   {unit.KindPercent, 0.09, sourceTest},
	AssumeDoubtSheetHead:   {unit.KindPercent, 0.07, sourceTest},
	AssumeDoubtSheetPower:  {unit.KindPercent, 0.09, sourceTest},
	AssumeDoubtReading:     {unit.KindPercent, 0.01, practice},
	AssumeDoubtWear:        {unit.KindPercent, 0.05, practice},
	AssumeDoubtGuess:       {unit.KindPercent, 0.20, practice},
	AssumeDoubtGuessLevel:  {unit.KindDepth, 0.05, practice},
}

// doubtful keeps the default tolerances of a job as they count.
type doubtful struct {
	m    *model
	read map[string]float64 // by code
}

// use gives a default tolerance and lists it as an assumption the first time.
func (d *doubtful) use(code, path string) float64 {
	if v, met := d.read[code]; met {
		return v
	}
	r := rules[code]
	v := unit.Value{SI: r.value, Kind: r.kind}
	switch r.kind {
	case unit.KindDepth:
		v.SI = float64(setting[unit.Length](d.m, code, r))
	case unit.KindPercent, unit.KindRatio:
		v.SI = float64(setting[unit.Ratio](d.m, code, r))
	case unit.KindNone:
		v.SI = 0
		d.m.assume(path, code, v, r.source)
		d.read[code] = r.value
		return r.value
	}
	d.m.assume(path, code, v, r.source)
	d.read[code] = v.SI
	return v.SI
}

// setting gives the job's own default for a tolerance, or the usual one.
func setting[Q unit.Quantity](m *model, code string, r rule) Q {
	var own layout.Set[Q]
	set(m, code, r.kind, &own)
	if own.Given {
		return own.Value
	}
	return Q(r.value)
}

// isDoubt tells that a code of the job's assumptions is of a default tolerance.
func isDoubt(code string) bool {
	_, known := rules[code]
	return known
}

// off gives how far off an entry may be, and whether the job itself says so.
func off[Q unit.Quantity](d *doubtful, e job.Entry[Q], code, path string) (tolerance float64, own bool) {
	switch {
	case e.Tolerance != "":
		return float64(e.Plus), true
	case e.Source == job.OriginGuess && rules[code].kind == unit.KindDepth && code == AssumeDoubtLevel:
		code = AssumeDoubtGuessLevel
	case e.Source == job.OriginGuess:
		code = AssumeDoubtGuess
	}
	v := d.use(code, path)
	if rules[code].kind == unit.KindPercent {
		v *= max(float64(e.SI), -float64(e.SI))
	}
	return v, false
}

// doubt gives the index of a doubt among those of the answer, taken on once.
func (s *shaker) doubt(code, name, path string, tolerance unit.Value, own bool) int {
	i := slices.IndexFunc(s.doubts, func(d Doubt) bool { return d.Code == code && d.Path == path })
	if i < 0 {
		i = len(s.doubts)
		s.doubts = append(s.doubts, Doubt{
			Message: trace.Message{Code: code, Args: []trace.Arg{trace.Str("name", name)}}, Path: path, Tolerance: tolerance, Own: own,
		})
	}
	return i
}
