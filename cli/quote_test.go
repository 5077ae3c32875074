package cli

import (
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/offer"
	"plashet/quote"
	"plashet/words"
)

// TestAcceptable: an option in danger is not kept as agreed, the design itself is,
// as on the sheet; what the sheet calls a draft is not, whichever of its designs
// and whatever of the offer makes it one, and why is said.
func TestAcceptable(t *testing.T) {
	whole := quote.Offer{Complete: true, Planned: true}
	lacking := quote.Offer{Planned: true, Lines: []quote.Line{{Cost: quote.Cost{Name: "yard gate"}}}}
	option := trace.Fault{Message: trace.Message{Code: offer.FaultAgreed, Args: []trace.Arg{trace.Str("name", "gold")}}}
	for want, d := range map[string]offer.Document{
		"":                        {Designs: []offer.Priced{{Offer: whole, Stops: 2}}},
		"ends in danger":          {Designs: []offer.Priced{{Offer: whole, Stops: 2, Name: "larger pump"}}},
		"could not be worked out": {Designs: []offer.Priced{{Offer: quote.Offer{Complete: true}}}},
		"has a price, so":         {Designs: []offer.Priced{{Offer: lacking}}},
		"\"yard gate\"":           {Designs: []offer.Priced{{Offer: whole}, {Name: "larger pump", Offer: lacking}}},
		"option \u201cgold\u201d": {Designs: []offer.Priced{{Offer: whole}}, Faults: []trace.Fault{option}},
	} {
		err := acceptable(&d, 0, unit.US, words.English())
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v, expected %q", d, err, want)
		}
	}
}
