package arrange_test

import (
	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/verify"
)

// sound tells that a chain is laid without a fault and proved, but for the play
// of pump and pieces, which the rules do not ask for here.
func sound(i layout.Input, rules arrange.Rules) (layout.Assembly, bool) {
	a, _, faults := layout.Lay(i)
	if !a.Laid || len(faults) > 0 {
		return a, false
	}
	report := verify.Prove(i, a)
	return a, len(refused(&report, rules)) == 0
}

// refused gives the failed checks that count under some rules.
func refused(report *verify.Report, rules arrange.Rules) (out []verify.Check) {
	for _, c := range report.Failed() {
		switch c.Code {
		case verify.CheckPlay, verify.CheckSpare:
			if !rules.Play {
				continue
			}
		case verify.CheckUnion:
			if !rules.Union {
				continue
			}
		case verify.CheckWay, verify.CheckMove, verify.CheckRim, verify.CheckOut, verify.CheckSlide, verify.CheckMoveWall:
			if !rules.Out {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}
