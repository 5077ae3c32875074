package layout

import (
	"math"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

func book(t *testing.T) *catalog.Book {
	t.Helper()
	b, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func fitting(t *testing.T, b *catalog.Book, name string, measured ...catalog.Measured) catalog.Fitting {
	t.Helper()
	f, err := b.Fitting(name, "2", measured)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return f
}

// Every fitting that a chain can hold is complete: laid between two couplings
// (or on a port) it has no size missing. The others are refused.
func TestPartsOfTheCatalogue(t *testing.T) {
	b := book(t)
	laid, reduced := 0, 0
	for _, name := range b.FittingNames() {
		for _, size := range []string{"1-1/2", "2", "3", "d50", "2 x 1-1/2", "1-1/2 x 2", "d50 x d63"} {
			f, err := b.Fitting(name, size, nil)
			if err != nil {
				continue // two sizes are wanted, or the table has none
			}
			p, ok := PartOf(f, "X")
			branched := f.Form == catalog.FormTee || f.Form == catalog.FormCross || f.Form == catalog.FormWye || f.Form == catalog.FormCap
			if ok == branched {
				t.Errorf("%s %s: taken %v", name, size, ok)
			}
			if !ok {
				continue
			}
			laid++
			if p.inSize() != p.outSize() && p.Kind == Reducer {
				reduced++
			}
			input := hillside(touching(p))
			input.Pump.Outlet = End{Kind: map[EndKind]EndKind{
				Socket: Socket, Spigot: Socket, MaleThread: FemaleThread, FemaleThread: MaleThread,
			}[p.In.Kind], Size: p.inSize(), Thread: p.In.Thread, Depth: by(in), TakeOff: by(-in)}
			input.Pipes = []Pipe{{Size: p.inSize(), OD: 2 * in}, {Size: p.outSize(), OD: 2 * in}}
			a, _, faults := Lay(input)
			noFaults(t, faults)
			if !a.Laid {
				t.Errorf("%s %s: not laid", name, size)
			}
		}
	}
	if laid < 36 || reduced < 6 {
		t.Errorf("only %d fittings looked at, %d of them reduce", laid, reduced)
	}
}

// The hillside demo by names and measured sizes, as the job document has them.
func TestHillsideFromTheCatalogue(t *testing.T) {
	b := book(t)
	measured := []catalog.Measured{
		{Fitting: "male adapter", Size: "2", Socket: 1.5 * in, ToStop: 0.10 * in, Hub: 2.875 * in},
		{Fitting: "union", Size: "2", Socket: 1.5 * in, ToStop: 0.90 * in, Hub: 4.125 * in},
		{Fitting: "elbow 90", Size: "2", Socket: 1.5 * in, ToStop: 1.15 * in, Hub: 2.875 * in},
		{Fitting: "check valve swing", Size: "2", Socket: 1.5 * in, ToStop: 3.20 * in, Hub: 4 * in, Attitudes: catalog.AttitudesLevelOrUpright},
		{Fitting: "bulkhead fitting", Size: "2", Socket: 1.5 * in},
	}
	part := func(name, mark string) Part {
		p, ok := PartOf(fitting(t, b, name, measured...), mark)
		if !ok {
			t.Fatalf("%s is not taken", name)
		}
		return p
	}
	input := levelCheck()
	for i, name := range []string{"male adapter", "union", "elbow 90", "check valve swing", "bulkhead fitting"} {
		input.Parts[i].Part = part(name, input.Parts[i].Mark)
	}
	a, fs, faults := Lay(input)
	noFaults(t, faults)
	wantIn(t, "port to the adapter's stop", unit.Length(a.Places[0].Outlet.Z)-9.5*in, 0.10, 1e-9)
	for i, want := range []float64{3.00, 3.35, 3.00} {
		wantIn(t, a.Pieces[i].Mark, a.Pieces[i].StopToStop, want, 1e-6)
	}
	// Only the bulkhead fitting's stand-off is not measured.
	if f := finding(t, fs, FindMeasureFirst); arg(t, f.Message, "parts").Text != "B1" {
		t.Errorf("%+v", f)
	}
	if a.Assumptions[len(a.Assumptions)-1].Code == AssumeAttitude {
		t.Error("the valve's attitude is given")
	}
}

// A male adapter screwed into a female one: tip and face meet in the catalogue's
// terms as in ours; stop to stop is the sum of both laying lengths.
func TestThreadsOfTheCatalogue(t *testing.T) {
	b := book(t)
	fm, ff := fitting(t, b, "male adapter"), fitting(t, b, "female adapter")
	male, _ := PartOf(fm, "M")
	female, _ := PartOf(ff, "F")
	female = female.Swapped()
	input := hillside(touching(female), touching(male))
	input.Pump.Outlet = End{Kind: Socket, Size: "2", Depth: by(in), TakeOff: by(-in)}
	a, _, faults := Lay(input)
	noFaults(t, faults)
	got := a.Places[1].Outlet.Sub(a.Places[0].Inlet).Norm()
	// The catalogue counts the male one from the port's face, the female one to
	// the male's tip: the face lies one engagement before the tip.
	want := float64(fm.ToStop.Length + ff.ToStop.Length + ff.Ends[0].Depth.Length)
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("stop to stop %v in, want %v in", got/0.0254, want/0.0254)
	}
}

func TestFacing(t *testing.T) {
	b := book(t)
	p, _ := PartOf(fitting(t, b, "street elbow 90"), "S")
	socket := End{Kind: Socket, Size: "2"}
	if p.In.Kind != Socket || p.Facing(socket, "2").In.Kind != Socket {
		t.Error("it stays as it is where it fits")
	}
	if got := p.Facing(End{Kind: Spigot}, "2"); got.In.Kind != Socket {
		t.Error("a socket goes onto a spigot")
	}
	q := p.Swapped()
	if q.In.Kind != Spigot || q.Facing(End{Kind: Spigot}, "2").In.Kind != Socket {
		t.Error("a spigot does not go onto a spigot: turned round")
	}
	m, _ := PartOf(fitting(t, b, "male adapter"), "A")
	if m.Facing(socket, "2").In.Kind != Socket {
		t.Error("at the far end a male adapter goes in by its socket")
	}
	v, _ := PartOf(fitting(t, b, "check valve swing"), "V")
	if v.Facing(End{Kind: MaleThread}, "2").In.Kind != Socket {
		t.Error("a valve has its direction")
	}
	ended := Part{Splits: []Split{{Offset: 1}, {Offset: -2, Lip: 3}}}
	s := ended.Swapped()
	if s.Splits[0].Offset != -1 || s.Splits[1] != (Split{Offset: 2, Lip: 3}) || ended.Splits[0].Offset != 1 {
		t.Errorf("%+v", s.Splits)
	}
}

func TestPort(t *testing.T) {
	e, ok := Port("NPT female", "2", Measure{})
	if !ok || e.Kind != FemaleThread || e.Thread != NPT || e.Size != "2" {
		t.Errorf("%+v", e)
	}
	e, ok = Port("socket", "2", by(1.25*in))
	if !ok || e.TakeOff.Length != -1.25*in || e.Depth.Length != 1.25*in || e.TakeOff.Source.Basis != trace.BasisMeasured {
		t.Errorf("%+v", e)
	}
	if _, ok = Port("glued", "2", Measure{}); ok {
		t.Error("a word that is none")
	}
}
