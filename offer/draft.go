package offer

import (
	"slices"
	"strings"

	"plashet/engine/trace"
)

// Draft is what keeps an offer from being one that a client can sign: a sum that
// is not the whole is nothing to sign.
type Draft struct {
	Lacks  []string      // lines of cost without a price, each once
	Faults []trace.Fault // what is wrong in prices and offer
}

// Draft gives what some of the designs lack, and whether they do. Paper, text and
// JSON for the client all ask here, so that none is whole where another is not.
func (d *Document) Draft(list []Priced) (Draft, bool) {
	x := Draft{Faults: slices.Clone(d.Faults)}
	whole := true
	for i := range list {
		o := &list[i].Offer
		whole = whole && o.Complete && o.Planned
		x.Faults = append(x.Faults, list[i].Faults...)
		for _, l := range o.Lines {
			if !l.Counts && !slices.Contains(x.Lacks, l.Name) {
				x.Lacks = append(x.Lacks, l.Name)
			}
		}
	}
	x.Faults = append(x.Faults, d.money...)
	return x, !whole || len(x.Faults) > 0
}

// ofMoney picks the faults of the fields that an offer is made from.
func ofMoney(list []trace.Fault) (out []trace.Fault) {
	for _, f := range list {
		if aboutMoney(f.Path) {
			out = append(out, f)
		}
	}
	return out
}

func aboutMoney(path string) bool {
	return strings.HasPrefix(path, "/prices") || strings.HasPrefix(path, "/offer") || strings.HasPrefix(path, "/site/currency") || strings.HasSuffix(path, "/price")
}
