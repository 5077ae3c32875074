package design

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"plashet/engine/layout"
	"plashet/job"
)

// TestInstead: where nothing fits as the job has the pump stand, or with the
// fittings that it leaves, what is told instead lets a layout fit once it is
// written into the job.
func TestInstead(t *testing.T) {
	for _, c := range []struct {
		name string
		set  map[string]string
		want []string // codes that are told, among others
		not  []string
	}{
		{"turned the wrong way", stood("lying", "90 deg"), []string{ChangeLeft, ChangeRight}, []string{ChangeRound, ChangePlace, ChangeStand, ChangeFitting}},
		{"standing where it should lie", stood("standing", "270 deg"), []string{ChangeStand}, []string{ChangeLeft, ChangeRight, ChangePlace}},
		{"through the wall, turned the wrong way", stood("lying", "90 deg", "4.595", "-1.63125", "0"), []string{ChangeLeft, ChangeTurned}, []string{ChangeRound}},
		{"in a corner", stood("lying", "180 deg", "0", "0", "0"), []string{ChangePlace}, []string{ChangeLeft, ChangeRight, ChangeRound, ChangeTurned}},
		{"in a corner, turned the wrong way", stood("lying", "90 deg", "0", "0", "0"), []string{ChangeTurned}, []string{ChangeLeft, ChangeRight, ChangeRound, ChangePlace}},
		{
			"one elbow short", with(stood("lying", "180 deg"), stocked("elbow 90:1", "union:1", "check valve spring:1")),
			[]string{ChangeMore, ChangeFitting},
			[]string{ChangeLeft, ChangeStand},
		},
	} {
		book, j := read(t, "terrace-spout")
		j.Assembly, j.Stock.Fittings = job.Assembly{Pipe: j.Assembly.Pipe}, nil
		setAll(t, j, c.set)
		want := ArrangeWant{Elbows: 2}
		a := Arrange(t.Context(), book, j, want, nil)
		if a.Outcome == nil || len(a.Outcome.Layouts) > 0 {
			t.Fatalf("%s: was to have nothing that fits: %v", c.name, a.Faults)
		}
		var codes []string
		for n := range a.Outcome.Short {
			s := &a.Outcome.Short[n]
			if codes = append(codes, s.What.Code); s.Instead == 0 {
				continue
			}
			if laid, _, faults := layout.Lay(s.Layout.Chain); !laid.Laid || len(faults) > 0 || s.By != 0 {
				t.Errorf("%s: %s: its layout is not laid: %v", c.name, s.What.Code, faults)
			}
			next := j.Clone()
			list := a.Mend(j, n)
			for _, e := range list {
				if f := next.Set(e.Path, e.Text); f != nil {
					t.Errorf("%s: %s: %v", c.name, e.Path, f)
				}
			}
			if b := Arrange(t.Context(), book, next, want, nil); b.Outcome == nil || len(b.Outcome.Layouts) == 0 {
				t.Errorf("%s: with %v nothing fits: %v", c.name, list, b.Faults)
			}
		}
		for _, w := range c.want {
			if !slices.Contains(codes, w) {
				t.Errorf("%s: %s is not told, but %s", c.name, w, strings.Join(codes, ", "))
			}
		}
		for _, w := range c.not {
			if slices.Contains(codes, w) {
				t.Errorf("%s: %s is told", c.name, w)
			}
		}
	}
}

// stood has the pump stand in an attitude, turned, and perhaps at a place.
func stood(attitude, turn string, at ...string) map[string]string {
	out := map[string]string{"/assembly/search/stands/0/attitude": attitude, "/assembly/search/stands/0/turn": turn}
	for i, x := range at {
		out["/assembly/search/stands/0/at/"+string("xyz"[i])] = x
	}
	return out
}

// stocked has nothing but these fittings, what joins pump and wall, and pipe.
func stocked(fittings ...string) map[string]string {
	out := map[string]string{"/stock/only": "true", "/stock/offcuts/0/pipe/kind": "PVC Sch 40", "/stock/offcuts/0/pipe/size": "1-1/2", "/stock/offcuts/0/length": "10 ft"}
	for i, f := range append(fittings, "male adapter:1", "bulkhead fitting:1") {
		name, count, _ := strings.Cut(f, ":")
		path := at("/stock/fittings", i)
		out[path+"/fitting"], out[path+"/size"], out[path+"/count"] = name, "1-1/2", count
	}
	return out
}

func with(a, b map[string]string) map[string]string {
	maps.Copy(a, b)
	return a
}

func setAll(t *testing.T, j *job.Job, fields map[string]string) {
	t.Helper()
	for _, path := range slices.Sorted(maps.Keys(fields)) { // a list grows by one at a time
		if f := j.Set(path, fields[path]); f != nil {
			t.Fatalf("%s: %v", path, f)
		}
	}
}
