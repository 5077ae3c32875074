package unit

// Format prints the value in the units of the system: "4' 7-1/2\"", "55.0 gpm".
func (v Value) Format(s System) string { n, _ := v.Number(s); return n }

// Number gives the printed number and its unit apart.
func (v Value) Number(s System) (num, unit string) { return "", "" }

// Both gives the system's form with the other system's in brackets.
func (v Value) Both(s System) string { return "" }

// FormatTape prints feet, inches and a reduced fraction: 4' 7-1/2".
func FormatTape(l Length, denominator int) string { return "" }

// FormatFlow prints a flow with the second unit the trade talks in: "55.0 gpm (3,300 gph)".
func FormatFlow(f Flow, s System) string { return "" }
