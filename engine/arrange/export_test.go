package arrange

import "context"

// Unsketched is Search without what sketches rule out: every filling of every way
// that bare pipe fits is looked at by itself.
func Unsketched(ctx context.Context, in Input) Outcome {
	s, out := newSearch(in)
	if s.unsketched = true; !s.sound {
		return out
	}
	return s.run(ctx, out, nil)
}

// Listed is Search with the planes of the list alone, in sketches too: nothing is
// let off, and no finer net is asked.
func Listed(ctx context.Context, in Input) Outcome {
	s, out := newSearch(in)
	if s.listed = true; !s.sound {
		return out
	}
	return s.run(ctx, out, nil)
}

// Lacking is what Search looks at where nothing fits, of what the input leaves out.
func Lacking(ctx context.Context, in Input) []Change {
	s, out := newSearch(in)
	if !s.sound || len(out.Faults) > 0 {
		return nil
	}
	return s.instead(ctx, nil)
}
