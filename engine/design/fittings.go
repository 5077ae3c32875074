package design

import (
	"slices"
	"strings"

	"plashet/engine/catalog"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/job"
	"plashet/takeoff"
)

// Codes of the counting.
const (
	// FindVaultSize: the run from the pump and the assembly name one fitting in two sizes. Args: where, fitting, run, assembly.
	FindVaultSize = "design.material.size"
)

// part is a fitting that is built in.
type part struct {
	name   job.PipeName // as the catalogue writes it
	count  int
	welded bool   // on pipe that is joined with solvent cement
	path   string // where the job names it first
}

// parts adds up parts in the order they are met.
type parts struct{ list []part }

func (c *parts) add(p part) {
	for i := range c.list {
		if c.list[i].name == p.name && c.list[i].welded == p.welded {
			c.list[i].count += p.count
			return
		}
	}
	c.list = append(c.list, p)
}

// runParts counts the fittings of the runs, those from the pump apart. A part
// with several ways through it (tee, cross, wye) is named by two runs, once for
// its run and once for its branch, and is one part: the way that is named most
// often tells how many there are. An entrance or exit is no part, and what a run
// has that is there already is not counted, but for what the run from the pump and
// the assembly both name.
func (m *model) runParts() (vault, beyond parts) {
	type ways map[string]int // by the name of the way
	named, atPump := map[job.PipeName]ways{}, map[job.PipeName]ways{}
	var order []part
	for i, r := range m.job.Runs {
		if r.Existing && r.From != job.FromPump {
			continue
		}
		pipe, err := m.pipe(r.Pipe)
		for k, f := range r.Fittings {
			n := m.fitted(f.Fitting, f.Size, r.Pipe)
			if !m.book.HasFitting(f.Fitting) && m.endLoss(f.Fitting, n.Size) {
				continue
			}
			p := part{name: job.PipeName{Kind: n.Part, Size: n.Size}, welded: err == nil && pipe.SolventWeld, path: at(at("/runs", i)+"/fittings", k)}
			if f.Fitting == "" { // told in reading: the list names it by the pipe that it is on
				p.name = job.PipeName{Kind: takeoff.NameUnnamed, Size: strings.TrimSpace(r.Pipe.Kind + " " + n.Size)}
			}
			if named[p.name] == nil {
				named[p.name], atPump[p.name] = ways{}, ways{}
				order = append(order, p)
			}
			named[p.name][n.Fitting] += max(1, f.Count)
			if r.From == "pump" {
				atPump[p.name][n.Fitting] += max(1, f.Count)
			}
		}
	}
	most := func(w ways) (n int) {
		for _, c := range w {
			n = max(n, c)
		}
		return n
	}
	for _, p := range order {
		all, near := most(named[p.name]), most(atPump[p.name])
		if p.count = near; near > 0 {
			vault.add(p)
		}
		if p.count = all - near; p.count > 0 {
			beyond.add(p)
		}
	}
	return vault, beyond
}

// endLoss tells a loss that is no fitting: an entrance or an exit.
func (m *model) endLoss(name, size string) bool {
	_, err := m.loss(name, size)
	return err == nil
}

// built counts what is built in: the assembly, and the fittings of the runs
// beyond it. The run that starts at the pump goes through the vault, so what it
// and the assembly both name is one and the same, also where they differ on its
// size, which is told. What is glued already is counted no more.
func (m *model) built() (assembly, beyond parts) {
	a := &m.job.Assembly
	pipe, err := m.pipe(a.Pipe)
	for i, l := range a.Parts {
		if l.Fitting == hoseName {
			continue // sold by its length
		}
		n := m.fitted(l.Fitting, l.Size, a.Pipe)
		assembly.add(part{job.PipeName{Kind: n.Part, Size: n.Size}, 1, err == nil && pipe.SolventWeld, at("/assembly/parts", i)})
	}
	left := make([]int, len(assembly.list)) // of the assembly, not yet met in the run
	for i, p := range assembly.list {
		left[i] = p.count
	}
	vault, rest := m.runParts()
	for _, alike := range []func(run, laid job.PipeName) bool{
		func(run, laid job.PipeName) bool { return run == laid },
		func(run, laid job.PipeName) bool { return run.Kind == laid.Kind },
	} {
		for k := range vault.list {
			v := &vault.list[k]
			for i, p := range assembly.list {
				n := min(v.count, left[i])
				if n == 0 || !alike(v.name, p.name) {
					continue
				}
				v.count, left[i] = v.count-n, left[i]-n
				if v.name != p.name {
					m.sizesDiffer(*v, p)
				}
			}
		}
	}
	if m.pumpRunStays() {
		vault.list = nil
	}
	for _, p := range slices.Concat(vault.list, rest.list) {
		if p.count > 0 {
			beyond.add(p)
		}
	}
	for _, l := range a.Parts { // what is glued already is there
		n := m.fitted(l.Fitting, l.Size, a.Pipe)
		k := slices.IndexFunc(assembly.list, func(p part) bool { return p.name == job.PipeName{Kind: n.Part, Size: n.Size} })
		if l.Glued != "" && k >= 0 && assembly.list[k].count > 0 {
			assembly.list[k].count--
		}
	}
	assembly.list = slices.DeleteFunc(assembly.list, func(p part) bool { return p.count == 0 })
	return assembly, beyond
}

// pumpRunStays tells that the run from the pump is there already.
func (m *model) pumpRunStays() bool {
	return slices.ContainsFunc(m.job.Runs, func(r job.Run) bool { return r.From == job.FromPump && r.Existing })
}

func (m *model) sizesDiffer(run, laid part) {
	m.find(trace.Finding{
		Message: trace.Message{Code: FindVaultSize, Args: []trace.Arg{
			trace.At("where", m.job.PlaceOf(run.path)), trace.Str("fitting", run.name.Kind), trace.Str("run", run.name.Size), trace.Str("assembly", laid.name.Size),
		}},
		Path: run.path, Severity: trace.Caution,
	})
}

// fittings lists what is built in.
func fittings(all ...parts) (out []takeoff.Fitting) {
	for _, c := range all {
		for _, p := range c.list {
			out = append(out, takeoff.Fitting{Name: p.name.Kind, Size: p.name.Size, Count: p.count, Path: p.path})
		}
	}
	return out
}

// joints counts the cemented sockets and taped threads: those of the gluing
// plan, and the sockets of the fittings beyond the assembly. Without a plan the
// assembly's sockets are counted like the others.
func (m *model) joints(assembly, beyond parts) (out []takeoff.Joints, taped []takeoff.Threads) {
	var sockets, threads parts
	count := beyond.list
	if m.out.Glue == nil {
		count = slices.Concat(assembly.list, beyond.list)
	} else {
		for _, x := range m.out.Glue.Joints {
			p := part{name: job.PipeName{Size: x.Size}, count: 1, path: "/assembly"}
			switch {
			case x.Kind == glue.Cement:
				sockets.add(p)
			case x.Kind == glue.Thread && x.Thread != nil && x.Thread.Tape:
				p.name.Kind = "NPT"
				if x.Thread.Family != layout.NPT {
					p.name.Kind = "BSPT"
				}
				threads.add(p)
			}
		}
	}
	for _, p := range count {
		f, err := m.book.Fitting(p.name.Kind, p.name.Size, m.measured)
		if err != nil || !p.welded {
			continue // an unknown one is told where its loss was looked up
		}
		for _, e := range f.Ends {
			if e.Kind == catalog.Socket {
				sockets.add(part{name: job.PipeName{Size: e.Size}, count: p.count, path: p.path})
			}
		}
	}
	for _, p := range sockets.list {
		out = append(out, takeoff.Joints{Size: p.name.Size, Count: p.count, Path: p.path})
	}
	for _, p := range threads.list {
		taped = append(taped, takeoff.Threads{Standard: p.name.Kind, Size: p.name.Size, Count: p.count, Path: p.path})
	}
	return out, taped
}
