package layout

import "plashet/engine/catalog"

// kindOf gives the kind for a name of the catalogue; ok is false for what no
// chain can hold.
func kindOf(name string) (k Kind, ok bool) {
	switch name {
	case "reducing coupling", "reducer bushing":
		return Reducer, true
	case "hose barb adapter":
		return Straight, true
	case "check valve swing union-ended":
		return CheckSwing, true
	case "check valve spring union-ended":
		return CheckSpring, true
	case string(Reducer), string(Straight), string(Hose): // kinds of this package, names of no fitting
		return "", false
	}
	_, ok = Kind(name).Turn()
	return Kind(name), ok
}

// PartOf makes a part of a fitting of the catalogue. ok is false for a fitting
// that no chain can hold (tee, cross, wye, cap). A threaded end carries its
// take-off made up, so that no engagement is counted off again.
func PartOf(f catalog.Fitting, mark string) (p Part, ok bool) {
	k, ok := kindOf(f.Name)
	if !ok || len(f.Ends) < 2 || f.Out < 1 || f.Out >= len(f.Ends) {
		return Part{}, false
	}
	p = Part{
		Mark: mark, Kind: k, Size: f.Size, In: endOf(f.Ends[0]), Out: endOf(f.Ends[f.Out]),
		Body: Body{Diameter: measureOf(f.Widest)},
	}
	switch f.Attitudes {
	case catalog.AttitudesAny:
		p.Allowed = AllowedAny
	case catalog.AttitudesUpright:
		p.Allowed = AllowedUp
	case catalog.AttitudesLevelOrUpright:
		p.Allowed = AllowedLevelOrUp
	}
	p.AllowedFrom = f.AttitudesFrom
	switch {
	case k == Union:
		p.Splits = []Split{{}}
	case f.Opens && k.IsCheck():
		p.Splits = nutsOf(&p)
	}
	if k == Bulkhead {
		// The centre moves to the wall's inner face: the socket's face stands
		// ToWall off it, the stop a socket's depth behind that.
		p.In.TakeOff = measureOf(f.ToWall)
		p.In.TakeOff.Length -= p.In.Depth.Length
		p.In.TakeOff.Least = p.In.TakeOff.Least || p.In.Depth.Least
		p.Out = End{}
	}
	return p, true
}

// nutAt is where the nuts of a union-ended valve part it, as a share of the way
// from its middle to the stops: from memory, no published value found. What lies
// between a nut and its stop stays on the pipe, so that nothing else hangs on it
// but the valve's room on the pump's way out.
const nutAt = 0.8

// nutsOf gives the two places where a union-ended valve opens.
func nutsOf(p *Part) []Split {
	return []Split{{Offset: -nutAt * p.In.TakeOff.Length}, {Offset: nutAt * p.Out.TakeOff.Length}}
}

// PipeOf makes the pipe of a size from the catalogue's.
func PipeOf(p catalog.Pipe) Pipe { return Pipe{Kind: p.Kind, Size: p.Size, OD: p.OD, Bore: p.Bore} }

func measureOf(d catalog.Dimension) Measure {
	return Measure{Length: d.Length, Source: d.Source, Least: d.MeasureFirst}
}

func endOf(e catalog.End) End {
	out := End{Size: e.Size, TakeOff: measureOf(e.Stop), Depth: measureOf(e.Depth), Hub: measureOf(e.Hub)}
	switch e.Kind {
	case catalog.Socket:
		out.Kind = Socket
	case catalog.Spigot:
		out.Kind = Spigot
	case catalog.NPTMale:
		out.Kind, out.Thread = MaleThread, NPT
	case catalog.BSPTMale:
		out.Kind, out.Thread = MaleThread, BSPT
	case catalog.NPTFemale:
		out.Kind, out.Thread = FemaleThread, NPT
	case catalog.BSPPFemale:
		out.Kind, out.Thread = FemaleThread, BSPP
	case catalog.Barb:
		out.Kind = HoseTail
	}
	if out.Kind == FemaleThread {
		// The catalogue counts to the tip of the male thread in it, a chain to its face.
		out.TakeOff.Length += out.Depth.Length
		out.TakeOff.Least = out.TakeOff.Least || out.Depth.Least
	}
	return out
}

// Port makes a pump's outlet from the job document's words: "NPT female",
// "socket" ... with the depth of its socket where it has one. ok is false for
// a word that is none of them.
func Port(connects, size string, socket Measure) (e End, ok bool) {
	threads := map[string]End{
		"NPT female": {Kind: FemaleThread, Thread: NPT}, "NPT male": {Kind: MaleThread, Thread: NPT},
		"BSPT female": {Kind: FemaleThread, Thread: BSPT}, "BSPT male": {Kind: MaleThread, Thread: BSPT},
		"BSPP female": {Kind: FemaleThread, Thread: BSPP}, "BSPP male": {Kind: MaleThread, Thread: BSPP},
		"socket": {Kind: Socket}, "spigot": {Kind: Spigot}, "hose": {Kind: HoseTail},
	}
	if e, ok = threads[connects]; !ok {
		return End{}, false
	}
	e.Size = size
	if e.Kind == Socket {
		// Its stop lies a socket's depth behind the port's face.
		e.Depth = socket
		e.TakeOff = Measure{Length: -socket.Length, Source: socket.Source, Least: socket.Least}
	}
	return e, true
}

// Swapped gives the part the other way round: what was its outlet comes first.
func (p Part) Swapped() Part {
	p.In, p.Out = p.Out, p.In
	p.Body.Offset = -p.Body.Offset
	splits := make([]Split, len(p.Splits))
	for i, s := range p.Splits {
		splits[i] = Split{Offset: -s.Offset, Lip: s.Lip}
	}
	p.Splits = splits
	return p
}

// Facing gives the part the way round in which it goes onto the end before it:
// as it is where that fits, swapped where only that fits, as it is where
// neither does. A bulkhead fitting and a check valve are never swapped.
func (p Part) Facing(before End, beforeSize string) Part {
	if p.Kind == Bulkhead || p.Kind.IsCheck() {
		return p
	}
	fits := func(q Part) bool {
		return mates(before.Kind, q.In.Kind) && q.inSize() == or(before.Size, beforeSize)
	}
	if q := p.Swapped(); !fits(p) && fits(q) {
		return q
	}
	return p
}

// mates tells that two kinds of ends go together.
func mates(a, b EndKind) bool {
	switch a {
	case Socket:
		return b == Socket || b == Spigot
	case Spigot:
		return b == Socket
	case MaleThread:
		return b == FemaleThread
	case FemaleThread:
		return b == MaleThread
	}
	return false
}
