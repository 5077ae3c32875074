package app

import (
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/trace"
)

// The stamp at a fall is that of what was found of its flow, in every example,
// and no line of the answer says stop where nothing that was found does.
func TestStampsAgree(t *testing.T) {
	d := newDesk(t)
	a := &app{Given: d.given, Language: d.given.Languages[0], cache: newCache()}
	seen := map[string]int{}
	for _, name := range demo.Names() {
		rev := d.newest("example-" + name)
		s := a.solve(rev.Digest, rev.Data)
		y := a.tally(s, rev.ID, nil)
		for i, f := range y.Falls {
			want := ""
			for k := range s.doc.Findings {
				x := &s.doc.Findings[k]
				if x.Path != "/watercourses/"+itoa(i) || !strings.HasPrefix(x.Code, "design.flow.") || x.Severity == trace.Info.String() {
					continue
				}
				want = map[string]string{trace.Danger.String(): "stop", trace.Caution.String(): "watch"}[x.Severity]
				break
			}
			seen[want]++
			if f.Stamp != want {
				t.Errorf("%s, %s: stamped %q, found %q", name, f.Name, f.Stamp, want)
			}
		}
		for _, r := range append(append([]row{}, y.Levels...), y.Fit...) {
			if r.Mark == "stop" && y.Stop == 0 {
				t.Errorf("%s: %q says stop, and nothing that was found does", name, r.Label)
			}
		}
	}
	if seen["watch"] == 0 || seen["stop"] == 0 || seen[""] == 0 {
		t.Errorf("the examples do not have a fall of each kind: %v", seen)
	}
}
