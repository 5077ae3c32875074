package design

import (
	"slices"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// offer is in which sizes a layout may be built.
type offer struct {
	sizes []string // the assembly's first
	from  string   // of the pipe that the port leads to
	wall  string   // of the fitting in the hole, where it must be another than the assembly's; empty: it need not
}

// offered gives the sizes: that of the assembly, that of the run that goes on
// beyond the wall where it is another of the same kind, and that of each fitting
// for the hole in the stock. The chain may go over from one to another once.
func (m *model) offered(pipe catalog.Pipe, joins []job.PipeName) offer {
	o := offer{sizes: []string{pipe.Size}, from: pipe.Size}
	for _, n := range joins { // the last end of the adapter; where a reducer follows it, that of the pipe between them
		if f, err := m.book.Fitting(n.Kind, n.Size, m.measured); err == nil && f.Form == catalog.FormReducer {
			o.from = f.Ends[0].Size
		}
	}
	add := func(size string) {
		if _, err := m.pipe(job.PipeName{Kind: pipe.Kind, Size: size}); err == nil && !slices.Contains(o.sizes, size) {
			o.sizes = append(o.sizes, size)
		}
	}
	if i := pumpRun(m.job); i >= 0 {
		if q, err := m.pipe(m.job.Runs[i].Pipe); err == nil && q.Kind == pipe.Kind && q.Size != pipe.Size {
			o.wall = q.Size
			add(q.Size)
			m.assume(at("/runs", i)+"/pipe", AssumeWallSize, unit.Value{}, leftEmpty, trace.Str("size", q.Size), trace.Str("run", m.job.Runs[i].Name))
		}
	}
	for _, s := range m.job.Stock.Fittings {
		if f, err := m.book.Fitting(s.Fitting, s.Size, m.measured); err == nil && f.Name == atWall && !s.None {
			add(f.Size)
		}
	}
	return o
}

// reducers names the fittings from the size at the port to each other, as the
// water meets them.
func (m *model) reducers(o *offer) (out []job.PipeName) {
	for _, to := range o.sizes {
		for _, name := range []string{"reducing coupling", "reducer bushing"} {
			if f, err := m.book.Fitting(name, o.from+" x "+to, m.measured); err == nil && o.from != to {
				out = append(out, job.PipeName{Kind: f.Name, Size: f.Size})
			}
		}
	}
	return out
}

// inFlow writes the size of a fitting that reduces as the water meets it: from
// the size that the port leads to, where that is one of its two.
func (m *model) inFlow(name, size, from string) string {
	f, err := m.book.Fitting(name, size, m.measured)
	if err != nil || f.Form != catalog.FormReducer || f.Ends[1].Size != from {
		return size
	}
	a, b, _ := strings.Cut(f.Size, " x ")
	return b + " x " + a
}

// soldAs is a fitting's size as the counter has it: of one that reduces the larger
// first, whichever way the water runs.
func (m *model) soldAs(name, size string) string {
	if n, err := m.book.Names(name, size); err == nil {
		return n.Size
	}
	return size
}
