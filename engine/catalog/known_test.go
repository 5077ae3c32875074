package catalog

import (
	"slices"
	"testing"
)

func TestPartName(t *testing.T) {
	b := book
	for _, c := range []struct{ name, size, part, want string }{
		{"elbow 90", "2", "elbow 90", "2"},
		{"90° elbow", "2 in", "elbow 90", "2"},
		{"Ell 90", `1 1/2"`, "elbow 90", "1-1/2"},
		{"elbow 90", "50", "elbow 90", "d50"},
		{"elbow 90", "50 mm", "elbow 90", "d50"},
		{"tee branch", "2", "tee", "2"},
		{"tee run", "2 in", "tee", "2"},
		{"reducer", "2 in x 1.5", "reducing coupling", "2 x 1-1/2"},
		{"elbow 90 Sch 80", "2", "elbow 90 Sch 80", "2"},
		{"Sch 40 elbow 90", "2", "elbow 90", "2"},
		{"union", "", "union", ""},
		{"union", "99", "union", "d99"},
	} {
		part, size, err := b.PartName(c.name, c.size)
		if err != nil || part != c.part || size != c.want {
			t.Errorf("%s, %s: %s, %s, %v", c.name, c.size, part, size, err)
		}
	}
	for _, c := range []struct{ name, size, code string }{
		{"elbow 91", "2", CodeFittingUnknown},
		{"", "", CodeFittingUnknown},
		{"elbow 90", "big", CodeSizeUnread},
		{"elbow 90", "DN50", CodeSizeDN},
	} {
		_, _, err := b.PartName(c.name, c.size)
		fails(t, err, c.code)
	}
}

// What PartName gives names the same part again.
func TestPartNameStays(t *testing.T) {
	b := book
	for _, name := range b.FittingNames() {
		for _, size := range []string{"2", "d63", "1-1/2"} {
			part, s, err := b.PartName(name, size)
			if err != nil {
				t.Fatal(err)
			}
			if again, s2, err := b.PartName(part, s); err != nil || again != part || s2 != s {
				t.Errorf("%s, %s becomes %s, %s, and that %s, %s (%v)", name, size, part, s, again, s2, err)
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
