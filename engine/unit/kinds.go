package unit

// KindByName finds a kind by its name in the job document ("tape", "flow").
func KindByName(name string) (Kind, bool) { return KindNone, false }

// Name is the kind's stable lower-case name.
func (k Kind) Name() string { return "" }

// Dim is the kind's dimension.
func (k Kind) Dim() Dim { return DimNone }

// UnitName is the unit that a bare number takes and that the kind is shown in.
func (k Kind) UnitName(s System) string { return "" }

// Example is a text that Parse reads, as people write the kind.
func (k Kind) Example(s System) string { return "" }
