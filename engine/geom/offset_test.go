package geom

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

func TestRollingOffsetExamples(t *testing.T) {
	in := unit.Inch
	cases := []struct {
		name       string
		got, want  unit.Length
		tol        unit.Length
		rise, roll unit.Length
	}{
		// E17: "Rolling Offsets", apprentice notes, plumbers and pipefitters local 602.
		{name: "E17 true offset", rise: (47.5 - 16.875) * in, roll: (50 - 32.375) * in, want: 35.334561692485 * in, tol: 1e-6 * in},
		// E20: page "How to Figure a Rolling Offset in Piping".
		{name: "E20 true offset", rise: 8 * in, roll: 12 * in, want: 14.42 * in, tol: 0.01 * in},
	}
	for _, c := range cases {
		got, err := TrueOffset(c.rise, c.roll)
		if err != nil || math.Abs(float64(got-c.want)) > float64(c.tol) {
			t.Errorf("%s: got %v in, want %v in (%v)", c.name, got/in, c.want/in, err)
		}
	}
	// E18, the same notes: 35-3/8 in at 45 degrees by the constant 1.414, which
	// is 1.5e-4 below the square root of 2; hence the wider tolerance here.
	got, err := Travel(35.375*in, 45*unit.Degree)
	if err != nil || math.Abs(float64(got/in)-50.02025) > 50.02025*1.6e-4 {
		t.Errorf("E18 travel: got %v in (%v)", got/in, err)
	}
	// The same row's note gives the exact value for 35.33456 in: 49.9706.
	if got, _ := Travel(35.33456*in, 45*unit.Degree); math.Abs(float64(got/in)-49.9706) > 1e-4 {
		t.Errorf("E18 exact: got %v in", got/in)
	}
	// E21: inputs from a page on the 45 degree rolling offset, answer by direct evaluation.
	r, err := RollingOffset(12*in, 16*in, 45*unit.Degree)
	if err != nil || math.Abs(float64(r.Travel/in)-28.284) > 0.01 || math.Abs(float64(r.TrueOffset/in)-20) > 1e-9 {
		t.Errorf("E21: got %+v (%v)", r, err)
	}
}

func TestRollingOffsetProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rise := unit.Length(rapid.Float64Range(-3, 3).Draw(t, "rise"))
		roll := unit.Length(rapid.Float64Range(-3, 3).Draw(t, "roll"))
		angle := unit.Angle(rapid.Float64Range(5, 90).Draw(t, "deg")) * unit.Degree
		r, err := RollingOffset(rise, roll, angle)
		if err != nil {
			t.Fatal(err)
		}
		// The slanting piece closes the box rise x roll x run.
		if d := math.Hypot(math.Hypot(float64(rise), float64(roll)), float64(r.Run)) - float64(r.Travel); math.Abs(d) > near {
			t.Fatalf("travel does not close the box: off by %v", d)
		}
		// Two turns in space end where the lengths say: along x, then the slant
		// at the roll angle, z up and y to the side.
		dir := Vec3{X: 1}.RotateAbout(Vec3{Y: 1}, -angle).RotateAbout(Vec3{X: 1}, -r.RollAngle)
		end := dir.Scale(float64(r.Travel))
		if !closeTo(end, Vec3{float64(r.Run), float64(roll), float64(rise)}) {
			t.Fatalf("the slant ends at %v", end)
		}
	})
}

func TestRollingOffsetRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		rise, roll, deg float64
		code            Code
	}{
		{nan, 1, 45, CodeNotFinite},
		{1, inf, 45, CodeNotFinite},
		{1, 1, nan, CodeNotFinite},
		{1, 1, 0, CodeRange},
		{1, 1, -45, CodeRange},
		{1, 1, 91, CodeRange},
		{1, 1, 1e-9, CodeRange},
	} {
		_, err := RollingOffset(unit.Length(c.rise), unit.Length(c.roll), unit.Angle(c.deg)*unit.Degree)
		var e *Error
		if !errors.As(err, &e) || e.Code != c.code {
			t.Errorf("%+v: got %v", c, err)
		}
	}
	if _, err := Travel(-1, 45*unit.Degree); err == nil {
		t.Error("a negative offset has no travel")
	}
	// No offset is a straight pipe.
	if r, err := RollingOffset(0, 0, 45*unit.Degree); err != nil || r.Travel != 0 || r.Run != 0 {
		t.Errorf("no offset: %+v %v", r, err)
	}
	// At 90 degrees the travel is the offset and the run nothing.
	if r, err := RollingOffset(3, 4, 90*unit.Degree); err != nil || r.Travel != 5 || r.Run != 0 {
		t.Errorf("90 degrees: %+v %v", r, err)
	}
}
