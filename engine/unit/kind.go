package unit

// Kind says what a number is for, and with that which unit a bare number
// takes, how it is shown in each system and to what step. A Kind is a name for
// a row of the table in kinds.go (the unit people of the trade use for this
// sort of figure).
type Kind uint8

// The kinds.
const (
	KindNone         Kind = iota
	KindTape              // a length cut or taped: feet, inches and sixteenths | mm
	KindPlan              // a size in plan taped on the ground: feet and inches, bare in feet | m
	KindDistance          // a length on the ground: ft | m
	KindElevation         // a height above the datum: ft (hundredths) | m (mm)
	KindDepth             // a depth or difference of level: in | mm
	KindHead              // head of water: ft | m
	KindBore              // a diameter or wall: in (thousandths) | mm
	KindRoughness         // pipe roughness: mm in both systems
	KindArea              // ft² | m²
	KindWater             // a volume of water: gal | L
	KindEarth             // a volume of soil or stone: yd³ | m³
	KindCement            // a volume of cement or primer: pint | mL
	KindFlow              // gpm | L/h
	KindPressure          // psi | kPa
	KindSpeed             // ft/s | m/s
	KindPower             // W
	KindEnergy            // kWh
	KindAngle             // degrees
	KindTemperature       // °F | °C
	KindDuration          // seconds, minutes, hours: written with their unit; bare: minutes
	KindHours             // running hours, cure times: h
	KindMass              // short tons | t
	KindWeight            // lb | kg
	KindVoltage           // V
	KindCurrent           // A
	KindRatio             // a bare factor
	KindPercent           // shown times 100; a bare number of at most 1 is the ratio itself
	KindCount             // whole things
	KindFlowPerWidth      // flow for each length of lip: gph/in | L/h per cm, held as m²/s
	KindMoney             // an amount of money for display; read with ParseMoney, never with Parse
	kindEnd
)

// Value is a number with its kind: what traces, findings and tables carry, so
// that text is made only at the edge.
type Value struct {
	SI    float64
	Kind  Kind
	Bound Bound
}

// Bound says that a value is no figure but an end that the true one lies beyond.
type Bound int8

// The bounds. The zero value is a figure.
const (
	Exact    Bound = 0
	MoreThan Bound = 1
	LessThan Bound = -1
)

// sign is how a bound stands in front of a number where no language is known;
// package words says it in words.
func (b Bound) sign() string {
	switch b {
	case MoreThan:
		return "> "
	case LessThan:
		return "< "
	}
	return ""
}

// Bounded is Of for a value that may be a bound.
func Bounded[Q Quantity](q Q, k Kind, b Bound) Value { return Value{SI: float64(q), Kind: k, Bound: b} }

// Of makes a Value from a typed quantity.
func Of[Q Quantity](q Q, k Kind) Value { return Value{SI: float64(q), Kind: k} }
