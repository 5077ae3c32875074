package checks

import (
	"context"
	"fmt"
	"math"

	"plashet/engine/cut"
	"plashet/engine/cut/testdata/orlib"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// cutting holds the number of sticks against the best number of bins known for
// published bin packing problems. A plan without a proof counts as none.
func cutting() ([]Check, error) {
	var out []Check
	for _, set := range []func() ([]orlib.Instance, error){orlib.U120, orlib.T60} {
		all, err := set()
		if err != nil {
			return nil, err
		}
		for _, in := range all {
			got, err := sticksFor(in)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", in.Name, err)
			}
			want, source := in.Least()
			out = append(out, Check{
				ID: in.Name, Group: "cutting",
				What: fmt.Sprintf("fewest sticks of %g for %d pieces, proven", float64(in.Capacity)/10, len(in.Pieces)),
				Unit: "sticks", Want: float64(want), Got: got,
				Source: source, Basis: trace.BasisPublished,
			})
		}
	}
	return out, nil
}

// sticksFor gives the fewest sticks, or NaN when they are not proven to be the
// fewest. The longest remnant is wanted after that, as the design wants it.
func sticksFor(in orlib.Instance) (float64, error) {
	p := cut.Problem{
		Grid: unit.Millimetre, Basis: cut.ByCount,
		Sticks: []cut.Stick{{Length: unit.Length(in.Capacity) * unit.Millimetre}},
	}
	for _, l := range in.Pieces {
		p.Pieces = append(p.Pieces, cut.Piece{Length: unit.Length(l) * unit.Millimetre, Count: 1})
	}
	plan, err := cut.Solve(context.Background(), p)
	if err != nil {
		return 0, err
	}
	if !plan.Proof.Proven() {
		return math.NaN(), nil
	}
	return float64(plan.NewSticks), nil
}
