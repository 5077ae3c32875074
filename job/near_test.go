package job

import (
	"testing"

	"pgregory.net/rapid"
)

// TestNearest holds slips of the pen against what was meant; counted by hand.
func TestNearest(t *testing.T) {
	fields := []string{"length", "width", "depth", "inlet", "void", "volume", "inletLoss"}
	for typed, want := range map[string]string{
		"length": "length", "lenth": "length", "lenghth": "length", "legnth": "length", "LENGTH": "length",
		"widht": "width", "dept": "depth", "inletloss": "inletLoss", "inlet loss": "inletLoss", "vol": "", "volumes": "volume",
		"colour": "", "x": "", "": "", "  ": "", "height": "", "z": "",
	} {
		if got := nearest(typed, fields); got != want {
			t.Errorf("%q: %q, expected %q", typed, got, want)
		}
	}
	if got := nearest("O", []string{"M", "N", "o"}); got != "o" {
		t.Errorf("a single letter: %q", got)
	}
}

// TestSlips: known distances, and the laws of the distance over random words.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"abc", "", 3}, {"abc", "abc", 0}, {"abc", "acb", 1}, {"kitten", "sitting", 3}, {"ca", "abc", 3}, {"tee", "tea", 1}} {
		if got := slips([]rune(c.a), []rune(c.b), 99); got != c.want {
			t.Errorf("%q to %q: %d, expected %d", c.a, c.b, got, c.want)
		}
	}
	word := rapid.SliceOfN(rapid.SampledFrom([]rune("abcd")), 0, 12)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		enough := rapid.IntRange(1, 14).Draw(t, "enough")
		d := slips(a, b, 99)
		if back := slips(b, a, 99); d != back {
			t.Fatalf("%d there, %d back", d, back)
		}
		if d > max(len(a), len(b)) || d < abs(len(a)-len(b)) || (d == 0) != (string(a) == string(b)) {
			t.Fatalf("distance %d of %q and %q", d, string(a), string(b))
		}
		if early := slips(a, b, enough); min(d, enough) != min(early, enough) {
			t.Fatalf("stopping at %d: %d, whole %d", enough, early, d)
		}
	})
}
