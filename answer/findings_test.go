package answer

import (
	"bytes"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// TestLimitOnlyWhereThereIsOne: a source without a limit is told as a source,
// not as a limit of 0.
func TestLimitOnlyWhereThereIsOne(t *testing.T) {
	for _, c := range []struct {
		limit unit.Value
		want  string
	}{
		{unit.Value{}, "    by the trade (practice)"},
		{unit.Of(unit.Length(0), unit.KindDepth), "    limit 0.00 in: the trade (practice)"},
	} {
		var b bytes.Buffer
		p := &printer{w: &b, say: words.English(), unit: unit.US}
		p.finding(trace.Finding{Message: trace.Message{Code: "x"}, Limit: c.limit, LimitSource: trace.Source{Title: "the trade", Basis: trace.BasisPractice}})
		if got := strings.Split(b.String(), "\n")[1]; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
