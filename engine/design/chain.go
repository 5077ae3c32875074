package design

import (
	"slices"
	"strconv"

	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/job"
)

// MarkOf gives the mark of a part of the assembly: its own, or one made from
// its place in the chain, counted from 0.
func MarkOf(parts []job.Laid, i int) string {
	if parts[i].Mark != "" {
		return parts[i].Mark
	}
	return "F" + strconv.Itoa(i)
}

// chain fills the parts of the assembly, and of the assembly's kind the pipe
// of every size that goes into one of their ends.
func (m *model) chain(in *layout.Input) bool {
	a := &m.job.Assembly
	before, beforeSize := in.Pump.Outlet, in.Pump.Outlet.Size
	fromPump, toWall := a.Glued()
	in.Start = joinOf(&job.Laid{Next: a.Start, NextBy: a.StartBy, Closes: a.StartCloses}, a)
	in.Start.Made = fromPump > 0
	for i := range a.Parts {
		l, path := &a.Parts[i], at("/assembly/parts", i)
		size, sizePath := l.Size, path+"/size"
		if size == "" {
			size, sizePath = a.Pipe.Size, "/assembly/pipe"
		}
		if l.Fitting == "" {
			return false // told in reading
		}
		if l.Fitting == hoseName {
			p, ok := m.hosePart(i, size)
			if !ok || !m.lend(in, size, sizePath) {
				return false
			}
			before, beforeSize = p.Out, p.Size
			in.Parts = append(in.Parts, layout.Laid{Part: p, Roll: l.Roll.SI, Next: layout.Join{Made: i < fromPump-1 || i >= len(a.Parts)-toWall}})
			continue
		}
		f, err := m.book.Fitting(l.Fitting, size, m.measured)
		if err != nil {
			m.refuse(path+"/fitting", err)
			return false
		}
		p, ok := layout.PartOf(f, MarkOf(a.Parts, i))
		if !ok {
			m.fault(path+"/fitting", CodeChain, trace.Str("name", l.Fitting))
			return false
		}
		p = p.Facing(before, beforeSize)
		if out := l.Spigot == "wall"; l.Spigot != "" && (p.In.Kind == layout.Spigot) != (p.Out.Kind == layout.Spigot) && out == (p.In.Kind == layout.Spigot) {
			p = p.Swapped()
		}
		before, beforeSize = p.Out, p.Size
		laid := layout.Laid{Part: p, Roll: l.Roll.SI, Reverse: l.Reverse, Next: joinOf(l, a)}
		// Made is what lies between two glued parts, and beyond the last at the wall.
		laid.Next.Made = i < fromPump-1 || i >= len(a.Parts)-toWall
		in.Parts = append(in.Parts, laid)
		for _, e := range f.Ends {
			if (e.Kind == catalog.Socket || e.Kind == catalog.Spigot) && !m.lend(in, e.Size, sizePath) {
				return false
			}
		}
	}
	seatHoses(in)
	return true
}

// lend adds the assembly's pipe of a size, once.
func (m *model) lend(in *layout.Input, size, path string) bool {
	pipe, err := m.pipe(job.PipeName{Kind: m.job.Assembly.Pipe.Kind, Size: size})
	if err != nil {
		m.refuse(path, err)
		return false
	}
	if p := layout.PipeOf(pipe); !slices.Contains(in.Pipes, p) {
		in.Pipes = append(in.Pipes, p)
	}
	return true
}

// joinOf gives the joint behind a part.
func joinOf(l *job.Laid, a *job.Assembly) layout.Join {
	j := layout.Join{By: joinBy(l.NextBy), Distance: l.Next.SI, Closing: l.Closes}
	if l.NextBy == "" && !l.Next.IsZero() {
		j.By = layout.Centres
	}
	if l.Closes && !a.Closing.Gap.IsZero() {
		j.Measured = layout.Is(a.Closing.Gap.SI)
	}
	return j
}

func joinBy(word string) layout.By {
	switch word {
	case "centres":
		return layout.Centres
	case "faces":
		return layout.Faces
	case "stops":
		return layout.Stops
	case "pipe":
		return layout.PipeLength
	}
	return layout.Touching
}
