package words

import (
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// What a network gets wrong reads as a sentence with its names and figures in
// the reader's units.
func TestNetworkSentences(t *testing.T) {
	link := trace.Str("link", "riser")
	for _, c := range []struct {
		m    trace.Message
		must []string
	}{
		{trace.Message{Code: "network.levels.differ", Args: []trace.Arg{
			link, trace.Str("node", "pond"), trace.Str("other", "bog"),
			trace.Num("level", unit.Length(1.2), unit.KindElevation), trace.Num("found", unit.Length(0.9), unit.KindElevation),
		}}, []string{"“pond”", "1.200 m", "“bog”", "0.900 m", "“riser”"}},
		{trace.Message{Code: "network.levels.noPipe", Args: []trace.Arg{link, trace.Str("node", "pond"), trace.Str("other", "bog")}}, []string{"“pond”", "“bog”", "“riser”"}},
		{trace.Message{Code: "network.link.noLoss", Args: []trace.Arg{link}}, []string{"“riser”", "loop"}},
		{trace.Message{Code: "network.pump.deadHead", Args: []trace.Arg{link}}, []string{"“riser”", "overheats"}},
		{trace.Message{Code: "network.link.dead", Args: []trace.Arg{link}}, []string{"“riser”", "leads nowhere"}},
		{trace.Message{Code: "network.node.cut", Args: []trace.Arg{trace.Str("node", "bog")}}, []string{"“bog”", "no open pipe"}},
		{trace.Message{Code: "network.several.state", Args: []trace.Arg{
			link, trace.Num("found", 2*unit.LitrePerSecond, unit.KindFlow), trace.Num("head", unit.Head(5.3), unit.KindHead),
		}}, []string{"“riser”", "5.3"}},
		{trace.Message{Code: "network.several.open", Args: []trace.Arg{
			link, trace.Num("low", 1*unit.LitrePerSecond, unit.KindFlow), trace.Num("high", 2*unit.LitrePerSecond, unit.KindFlow),
		}}, []string{"“riser”"}},
	} {
		got := English().Say(c.m, unit.Metric)
		for _, w := range c.must {
			if !strings.Contains(got, w) {
				t.Errorf("%s: %q lacks %q", c.m.Code, got, w)
			}
		}
		if strings.ContainsAny(got, "{}") {
			t.Errorf("%s: %q has an open place", c.m.Code, got)
		}
	}
}
