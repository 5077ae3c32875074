package geom

import (
	"math"

	"plashet/engine/unit"
)

// Rolling is a rolling offset: two parallel pipes, displaced both up and
// sideways, joined by a slanting piece between two equal elbows. The terms are
// the pipe trade's.
type Rolling struct {
	Rise       unit.Length // upright displacement; also called set
	Roll       unit.Length // sideways displacement
	TrueOffset unit.Length // between the axes: sqrt(rise^2 + roll^2)
	Travel     unit.Length // along the slanting piece, centre to centre
	Run        unit.Length // along the first pipe, centre to centre
	RollAngle  unit.Angle  // the slant seen along the first pipe, from upright towards the roll
}

// TrueOffset gives sqrt(rise^2 + roll^2). Either may be negative (down, left);
// the offset is a distance. Source: Pythagoras; the reference's examples E17,
// E20 (apprentice notes on rolling offsets).
func TrueOffset(rise, roll unit.Length) (unit.Length, error) {
	for _, v := range [...]struct {
		name string
		v    unit.Length
	}{{"rise", rise}, {"roll", roll}} {
		if !finite(float64(v.v)) {
			return 0, &Error{Code: CodeNotFinite, Name: v.name, Found: unit.Of(v.v, unit.KindTape)}
		}
	}
	return unit.Length(math.Hypot(float64(rise), float64(roll))), nil
}

// Travel gives the slanting length centre to centre: offset / sin(angle), for
// an offset of zero or more and a fitting angle above 0 up to 90 degrees; an
// *Error outside. At 45 degrees that is the trade's constant 1.414. Source:
// plane trigonometry; examples E18, E21.
func Travel(offset unit.Length, angle unit.Angle) (unit.Length, error) {
	if err := checkSlant(offset, angle); err != nil {
		return 0, err
	}
	s, _ := sinCos(angle)
	return unit.Length(float64(offset) / s), nil
}

// Run gives the advance along the pipe centre to centre: offset / tan(angle),
// over Travel's range; 0 at 90 degrees. Source: plane trigonometry.
func Run(offset unit.Length, angle unit.Angle) (unit.Length, error) {
	if err := checkSlant(offset, angle); err != nil {
		return 0, err
	}
	s, c := sinCos(angle)
	return unit.Length(float64(offset) * c / s), nil
}

// RollingOffset gives all lengths of a rolling offset made with two elbows of
// one angle (above 0, up to 90 degrees).
func RollingOffset(rise, roll unit.Length, angle unit.Angle) (Rolling, error) {
	offset, err := TrueOffset(rise, roll)
	if err != nil {
		return Rolling{}, err
	}
	travel, err := Travel(offset, angle)
	if err != nil {
		return Rolling{}, err
	}
	run, err := Run(offset, angle)
	if err != nil {
		return Rolling{}, err
	}
	return Rolling{
		Rise: rise, Roll: roll, TrueOffset: offset, Travel: travel, Run: run,
		RollAngle: unit.Angle(math.Atan2(float64(roll), float64(rise))),
	}, nil
}

func checkSlant(offset unit.Length, angle unit.Angle) error {
	if err := notNegative("offset", offset, unit.KindTape); err != nil {
		return err
	}
	if !finite(float64(angle)) {
		return &Error{Code: CodeNotFinite, Name: "angle", Found: unit.Of(angle, unit.KindAngle)}
	}
	// A slant below a hundredth of a degree is a straight pipe with a typing
	// slip; its travel would be thousands of offsets.
	if angle < minSlant || angle > 90*unit.Degree+quarterDust {
		limit := minSlant
		if angle > minSlant {
			limit = 90 * unit.Degree
		}
		return &Error{Code: CodeRange, Name: "angle", Found: unit.Of(angle, unit.KindAngle), Limit: unit.Of(limit, unit.KindAngle)}
	}
	return nil
}

const minSlant = 0.01 * unit.Degree
