package design

import (
	"testing"

	"plashet/engine/unit"
	"plashet/job"
)

// TestArrangeFixedHeight: a pump named to stand above the floor is searched at that
// height, and left aside where its top then stands above the rim.
func TestArrangeFixedHeight(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	name, tall := j.Pumps[0].Attitudes[0].Name, j.Pumps[0].Attitudes[0].Height.SI
	j.Assembly.Search.Stands = []job.Stand{{Attitude: name, At: xyz(0.1, 0.1, 0.05)}}
	_, a, ok := filled(t, book, j, ArrangeWant{})
	if !ok || len(a.Input.Standings) != 1 || !a.Input.Standings[0].Fixed || a.Input.Standings[0].Pose.At.Z != 0.05 {
		t.Fatalf("%v %+v", ok, a.Input.Standings)
	}
	j.Assembly.Search.Stands[0].At = xyz(0.1, 0.1, j.Vault.Depth.SI-tall+0.01)
	m, _, ok := filled(t, book, j, ArrangeWant{})
	if ok || len(m.out.Faults) != 1 || m.out.Faults[0].Code != CodePumpLarge {
		t.Fatalf("%v %v", ok, m.out.Faults)
	}
	found, _ := argument(m.out.Faults[0].Message, "found")
	if d := unit.Length(found.Value.SI) - j.Vault.Depth.SI; d < 0.0099 || d > 0.0101 {
		t.Errorf("too high by %v", d)
	}
}
