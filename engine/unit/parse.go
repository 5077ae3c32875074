package unit

// Reading is what a text was read as.
type Reading struct {
	SI      float64 // in the SI unit of the kind's dimension
	Unit    string  // unit it was written in, or the one a bare number took
	Bare    bool    // no unit was written: Unit is the kind's own in that system
	Kind    Kind    //
	Density float64 // kg/m³ of water assumed to turn a pressure into a head or back; 0 when none was
}

// Parse reads what people write.
func Parse(text string, k Kind, s System) (Reading, error) {
	return Reading{}, &ParseError{Code: CodeNumber, Text: text, Kind: k, System: s}
}

// Read reads a text as a typed quantity.
func Read[Q Quantity](text string, k Kind, s System) (Q, Reading, error) {
	r, err := Parse(text, k, s)
	return Q(r.SI), r, err
}
