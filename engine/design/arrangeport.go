package design

import (
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/job"
)

// portFittings names what joins the pump's port to the pipe: an adapter onto a
// thread, and a reducer where their sizes differ.
func (m *model) portFittings(a *Arranging, pump int, pipe catalog.Pipe) (out []job.PipeName) {
	end := a.Input.Standings[0].Pump.Outlet
	var adapter string
	switch end.Kind {
	case layout.FemaleThread:
		adapter = "male adapter"
	case layout.MaleThread:
		adapter = "female adapter"
	case layout.Spigot:
		return append(out, job.PipeName{Kind: "coupling", Size: pipe.Size})
	case layout.Socket:
		if end.Size != pipe.Size {
			return append(out, job.PipeName{Kind: "reducer bushing", Size: end.Size + " x " + pipe.Size})
		}
		return nil
	default:
		m.noAdapter(pump, pipe)
		return nil
	}
	for _, size := range m.book.FittingSizes(seriesOf(m.book, pipe)) {
		f, err := m.book.Fitting(adapter, size, m.measured)
		if err != nil || f.Ends[0].Size != end.Size {
			continue
		}
		if f.Ends[1].Size == pipe.Size {
			return []job.PipeName{{Kind: adapter, Size: size}}
		}
		// The first that screws on, with the reducer to the pipe.
		if reducer, err := m.book.Fitting("reducing coupling", f.Ends[1].Size+" x "+pipe.Size, m.measured); err == nil && len(out) == 0 {
			out = []job.PipeName{{Kind: adapter, Size: size}, {Kind: reducer.Name, Size: reducer.Size}}
		}
	}
	if len(out) == 0 {
		m.noAdapter(pump, pipe)
	}
	return out
}

// noAdapter tells that nothing joins the pump's port to the pipe.
func (m *model) noAdapter(pump int, pipe catalog.Pipe) {
	p := &m.job.Pumps[pump]
	m.fault(at("/pumps", pump)+"/port", CodeArrangePort, trace.Str("name", p.Name), trace.Str("size", p.Port.Size), trace.Str("thread", p.Port.Thread), trace.Str("pipe", pipe.Kind+" "+pipe.Size))
}

// seriesOf gives the series of the fittings that go with a pipe.
func seriesOf(book *catalog.Book, pipe catalog.Pipe) string {
	if f, err := book.Fitting("elbow 90", pipe.Size, nil); err == nil {
		return f.Series
	}
	return ""
}
