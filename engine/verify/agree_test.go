package verify

import (
	"math/rand/v2"
	"testing"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// Random chains: what layout says can be built is proved, what it refuses is
// refuted for the same reason. A clearance found here is never more than
// layout's by over two micrometres.
func TestAgreesWithLayout(t *testing.T) {
	seed := uint64(20250311)
	r := rand.New(rand.NewPCG(seed, 1))
	wanted, drawn, built, lifted, refused := 3000, 0, 0, 0, map[string]int{}
	if testing.Short() {
		wanted = 500
	}
	told := 0
	for drawn < wanted {
		input, ok := anyChain(r)
		if !ok {
			continue
		}
		drawn++
		a, fs, faults := layout.Lay(input)
		if !a.Laid {
			continue
		}
		report := Prove(input, a)
		danger := len(faults) > 0
		for _, f := range fs {
			danger = danger || f.Severity == trace.Danger
		}
		if !danger {
			built++
			if a.LiftOut.Possible {
				lifted++
			}
		}
		for _, c := range report.Failed() {
			refused[c.Code]++
		}
		if untold := report.Untold(fs, faults); len(untold) > 0 {
			t.Errorf("seed %d, chain %d: layout does not tell", seed, drawn)
			show(t, untold)
			told++
		}
		if un := report.Unproved(fs); len(un) > 0 {
			t.Errorf("seed %d, chain %d: not refuted: %+v", seed, drawn, un)
			told++
		}
		if told > 5 {
			t.Fatal("and so on")
		}
	}
	t.Logf("%d chains, %d can be built, %d of them lift out; refused: %v", drawn, built, lifted, refused)
	if built < drawn/20 || lifted < drawn/20 {
		t.Errorf("only %d of %d can be built, %d lift out: the test proves little", built, drawn, lifted)
	}
	for _, code := range []string{
		CheckClosure, CheckAxis, CheckWall, CheckPumpClear, CheckObstacle, CheckParts, CheckPumpWall, CheckPumpObstacle,
		CheckArrow, CheckAttitude, CheckCover, CheckUnion, CheckHand, CheckWay, CheckPlay, CheckSpare,
	} {
		if refused[code] == 0 && !testing.Short() {
			t.Errorf("%s never refused anything", code)
		}
	}
}
