package catalog

import (
	"slices"
	"testing"
)

func TestNames(t *testing.T) {
	b := book
	for _, c := range []struct {
		name, size string
		want       Names
	}{
		{"elbow 90", "2", Names{"elbow 90", "elbow 90", "2"}},
		{"90° elbow", "2 in", Names{"elbow 90", "elbow 90", "2"}},
		{"Ell 90", `1 1/2"`, Names{"elbow 90", "elbow 90", "1-1/2"}},
		{"elbow 90", "50", Names{"elbow 90", "elbow 90", "d50"}},
		{"elbow 90", "50 mm", Names{"elbow 90", "elbow 90", "d50"}},
		{"Tee side", "2", Names{"tee branch", "tee", "2"}},
		{"tee run", "2 in", Names{"tee run", "tee", "2"}},
		{"reducer", "2 in x 1.5", Names{"reducing coupling", "reducing coupling", "2 x 1-1/2"}},
		{"tee branch Sch 80", "2", Names{"tee branch", "tee Sch 80", "2"}},
		{"Sch 40 elbow 90", "2", Names{"elbow 90", "elbow 90", "2"}},
		{"union", "", Names{"union", "union", ""}},
		{"union", "99", Names{"union", "union", "d99"}},
	} {
		if got, err := b.Names(c.name, c.size); err != nil || got != c.want {
			t.Errorf("%s, %s: %+v, %v", c.name, c.size, got, err)
		}
	}
	for name, want := range map[string]bool{"elbow 90": true, "Ell 90": true, "elbow 90 Sch 80": true, "elbow 91": false, "": false} {
		if b.HasFitting(name) != want {
			t.Errorf("%q", name)
		}
	}
	for _, c := range []struct{ name, size, code string }{
		{"elbow 91", "2", CodeFittingUnknown},
		{"", "", CodeFittingUnknown},
		{"elbow 90", "big", CodeSizeUnread},
		{"elbow 90", "DN50", CodeSizeDN},
	} {
		_, err := b.Names(c.name, c.size)
		fails(t, err, c.code)
	}
}

// What Names gives names the same part again.
func TestNamesStay(t *testing.T) {
	b := book
	for _, name := range b.FittingNames() {
		for _, size := range []string{"2", "d63", "1-1/2"} {
			n, err := b.Names(name, size)
			if err != nil || n.Fitting != name {
				t.Fatal(n, err)
			}
			if again, err := b.Names(n.Part, n.Size); err != nil || again.Part != n.Part || again.Size != n.Size {
				t.Errorf("%s, %s becomes %+v, and that %+v (%v)", name, size, n, again, err)
			}
		}
	}
}

func TestKindName(t *testing.T) {
	b := book
	for asked, want := range map[string]string{"sch40 pvc": "PVC Sch 40", "PVC PN10": "PVC PN10", "corrugated hose": "ribbed hose", "glass": "", "": ""} {
		if got, ok := b.KindName(asked); got != want || ok != (want != "") {
			t.Errorf("%q is %q", asked, got)
		}
	}
}

func TestNearOfAll(t *testing.T) {
	b := book
	for _, c := range []struct{ asked, want string }{{"elbow 91", "elbow 90"}, {"PVC Shc 40", "PVC Sch 40"}, {"linr", "liner"}} {
		if got := b.Near(c.asked, "liner", "gravel"); !slices.Contains(got, c.want) {
			t.Errorf("near %q: %q", c.asked, got)
		}
	}
	if got := b.Near("qqq"); len(got) != 0 {
		t.Errorf("near nothing: %q", got)
	}
}
