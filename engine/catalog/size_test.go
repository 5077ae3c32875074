package catalog

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseSize(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"2", "2"},
		{"1-1/2", "1-1/2"},
		{"1 1/2", "1-1/2"},
		{"1.5", "1-1/2"},
		{"1.50", "1-1/2"},
		{"1½", "1-1/2"},
		{"½", "1/2"},
		{"3/4", "3/4"},
		{"0.75", "3/4"},
		{`1-1/2"`, "1-1/2"},
		{"1-1/2 in", "1-1/2"},
		{"1-1/2in.", "1-1/2"},
		{" 2 INCH ", "2"},
		{"NPS 2", "2"},
		{"2''", "2"},
		{"d50", "d50"},
		{"D50", "d50"},
		{"Ø50", "d50"},
		{"50 mm", "d50"},
		{"50mm", "d50"},
		{"d50 mm", "d50"},
		{"DN50", "DN50"},
		{"dn 50", "DN50"},
		{"1.3", "1.3"},
		{"63", "63"},
	} {
		s, ok := parseSize(c.text)
		if !ok || s.String() != c.want {
			t.Errorf("%q is read as %v (%v), want %s", c.text, s, ok, c.want)
		}
	}
	for _, text := range []string{
		"", " ", "two", "0.0000001", "-2", "+2", "0", "0/1", "1/0", "2/1", "1-", "-1/2", "1/2/3", "1-1/2-3", "1e3", "NaN", "Inf", "d", "dn", "in", "mm", "d2 in",
		"2..5", ".", "9999", "2 x 1", "٣", strings.Repeat("1", 400),
	} {
		if s, ok := parseSize(text); ok {
			t.Errorf("%q is read as %v", text, s)
		}
	}
}

func TestSizeRange(t *testing.T) {
	for _, c := range []struct {
		text      string
		low, high float64
	}{{"1/2-1-1/4", 0.5, 1.25}, {"1-1/2-3", 1.5, 3}, {"2-1/2-8", 2.5, 8}, {"10-16", 10, 16}, {"60-100", 60, 100}, {"0-40", 0, 40}, {"2", 2, 2}} {
		low, high, ok := sizeRange(c.text)
		if !ok || low != c.low || high != c.high {
			t.Errorf("%q is read as %g to %g (%v)", c.text, low, high, ok)
		}
	}
	if _, _, ok := sizeRange("all"); ok {
		t.Error(`"all" is read as a range`)
	}
}

// TestSizeRoundTrip: what is printed reads back as the same size.
func TestSizeRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := size{
			rapid.SampledFrom([]system{bare, metric, dn}).Draw(t, "system"),
			rapid.Int64Range(1, 2000).Draw(t, "eighths") * 125000,
		}
		back, ok := parseSize(s.String())
		if !ok || back != s {
			t.Fatalf("%v reads back as %v (%v)", s, back, ok)
		}
	})
}

func FuzzParseSize(f *testing.F) {
	for _, s := range []string{"1-1/2", "1 1/2 in", "d50", "DN50", "50 mm", "½", "1-1/2-3", "1/0", `2"`, "2 x 1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, ok := parseSize(text)
		if !ok {
			return
		}
		if back, ok := parseSize(s.String()); s.micros <= 0 || !ok || back.micros != s.micros {
			t.Errorf("%q is read as %v, which reads back as %v", text, s, back)
		}
		_, _ = book.FindPipe("PVC Sch 40", text)
		_, _ = book.Fitting("elbow 90", text, nil)
		_, _ = book.Losses("reducer bushing", text)
		_, _ = book.Loss(text, "2")
		_, _ = book.FindPipe(text, "2")
	})
}
