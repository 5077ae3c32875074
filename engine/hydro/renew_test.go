package hydro

import (
	"testing"
)

// TestRenew: an element renewed in its place is the one prepared afresh, and
// one that is refused stays as it was.
func TestRenew(t *testing.T) {
	cold, err := WaterAt(4)
	if err != nil {
		t.Fatal(err)
	}
	warm, err := WaterAt(25)
	if err != nil {
		t.Fatal(err)
	}
	pipe, err := PipeLaw{Bore: 0.05, Length: 10, Roughness: 1e-6}.Prepare(cold)
	if err != nil {
		t.Fatal(err)
	}
	other, err := PipeLaw{Bore: 0.04, Length: 7, Roughness: 1e-4}.Prepare(warm)
	if err != nil {
		t.Fatal(err)
	}
	if err := pipe.Renew(other.PipeLaw, warm); err != nil || *pipe != *other {
		t.Errorf("pipe %+v, want %+v (%v)", *pipe, *other, err)
	}
	if err := pipe.Renew(PipeLaw{Bore: -1, Length: 7}, warm); err == nil || *pipe != *other {
		t.Error("a pipe without bore is taken")
	}
	minor, err := MinorLaw{Bore: 0.05, K: 3, K1: 100}.Prepare(cold)
	if err != nil {
		t.Fatal(err)
	}
	want, err := MinorLaw{Bore: 0.04, K: 2}.Prepare(warm)
	if err != nil {
		t.Fatal(err)
	}
	if err := minor.Renew(want.MinorLaw, warm); err != nil || *minor != *want {
		t.Errorf("fittings %+v, want %+v (%v)", *minor, *want, err)
	}
	lip, err := LipLaw{Width: 0.5, C: 1.7}.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	tilted, err := LipLaw{Width: 0.6, C: 1.5, Tilt: 0.004}.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	if err := lip.Renew(tilted.LipLaw); err != nil || *lip != *tilted {
		t.Errorf("lip %+v, want %+v (%v)", *lip, *tilted, err)
	}
	hose, err := HazenWilliamsLaw{Bore: 0.05, Length: 10, C: 110}.Prepare(cold)
	if err != nil {
		t.Fatal(err)
	}
	worn, err := HazenWilliamsLaw{Bore: 0.04, Length: 7, C: 100}.Prepare(warm)
	if err != nil {
		t.Fatal(err)
	}
	if n := testing.AllocsPerRun(10, func() {
		w, _ := WaterAt(25)
		_, _, _, _ = hose.Renew(worn.HazenWilliamsLaw, w), pipe.Renew(other.PipeLaw, w), minor.Renew(want.MinorLaw, w), lip.Renew(tilted.LipLaw)
	}); n > 0 || *hose != *worn {
		t.Errorf("%v allocations", n)
	}
}
