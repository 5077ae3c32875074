package cli

import (
	"strings"
	"testing"

	"plashet/offer"
	"plashet/quote"
)

// TestAcceptable: an option in danger is not kept as agreed, the design itself is,
// as on the sheet; what is not whole or not planned is neither.
func TestAcceptable(t *testing.T) {
	whole := quote.Offer{Complete: true, Planned: true}
	for want, p := range map[string]offer.Priced{
		"":               {Offer: whole, Stops: 2},
		"ends in danger": {Offer: whole, Stops: 2, Name: "larger pump"},
		"is at fault":    {Offer: quote.Offer{Complete: true}},
		"has no price":   {Offer: quote.Offer{Planned: true}},
	} {
		err := acceptable(&offer.Document{Designs: []offer.Priced{p}}, 0)
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v, expected %q", p, err, want)
		}
	}
}
