package design

import (
	"strings"

	"github.com/shopspring/decimal"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/glue"
	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// ArrangeWant is what a search for layouts is to keep to; zero is the usual.
type ArrangeWant struct {
	Elbows int // at most; 0: four
	Best   int // layouts wanted; 0: five
	Nodes  int // of branch and bound for one order of fittings; 0: the usual
	Cores  int // to share the work among; the outcome is the same; 0: one
}

// usualBest is how many layouts are told where nobody says. The search gives all
// that no other beats: the claim is about all of them.
const (
	usualBest   = 5
	everyLayout = 1 << 16
)

// The limits of a search: beyond them it would not end in a working day.
const (
	mostElbows = 8
	mostBest   = 40
)

// Arranging is what a search for layouts found, with what it searched.
type Arranging struct {
	Name     string
	Note     string
	Units    unit.System
	Style    unit.Style // of amounts of money
	Currency string
	Pump     string
	Flow     unit.Flow // at which losses are compared
	Input    arrange.Input
	Stopped  bool             // before it was done, perhaps while looking for what would mend it
	Outcome  *arrange.Outcome // nil where the search could not be put together

	Told        []LaidOut // of each layout, what is said of it and how it is glued
	Shown       int       // how many layouts are to be told
	Attitudes   []string  // of Input.Standings
	Names       []string  // of Input.Fittings, as the catalogue and the job write them
	Findings    []trace.Finding
	Assumptions []trace.Assumption
	Faults      []trace.Fault

	wanted   []int             // of Input.Standings, which of the job's stands it is; -1: none
	instead  []instead         // of Input.Instead, how it is told and written
	excluded []excluded        // fittings that the stock leaves out
	fittings []arrange.Fitting // with their prices, where Input leaves them out
	pipes    []arrange.Pipe    // likewise
	hose     arrange.Hose      // likewise
}

// LaidOut is what is said of a layout beyond its worth.
type LaidOut struct {
	Findings []trace.Finding // as of an assembly that is typed
	Glue     glue.Plan
}

// arranging fills the input of the search; false where it cannot be put
// together, which is told.
func (m *model) arranging(a *Arranging, want ArrangeWant) bool {
	if where := m.voided(aspectFit | aspectSearch); len(where) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindNoArrange, Args: []trace.Arg{trace.At("places", where...)}}, Severity: trace.Danger})
		return false
	}
	pump, ok := m.pump()
	if !ok || !m.wanting(want) {
		return false
	}
	a.Pump = m.job.Pumps[pump].Name
	in := &a.Input
	in.Path = "/assembly"
	in.Settings = m.settings()
	in.Vault = m.vault()
	u := m.job.Vault.Outlet.Undrilled
	in.Reach = arrange.Reach{Back: u.Less.SI, Forth: u.More.SI, Down: u.Down.SI, Up: u.Up.SI}
	m.priced = m.prices()
	m.counter()
	pipe, ok := m.arrangePipe()
	if !ok {
		return false
	}
	if m.job.Vault.Shape == "" || in.Vault.Length == 0 || in.Vault.Depth == 0 {
		m.fault("/vault", layout.FaultNoVault, trace.Str("measure", "inner sizes"))
		return false
	}
	sound := m.vaultSound(in.Vault)
	sound = m.socketsSound(pipe) && sound
	sound = m.standings(a, pump) && sound
	if !sound || len(m.out.Faults) > 0 {
		return false
	}
	if d := m.delivered(pump); d != nil {
		m.out.Delivery, a.Flow = d, d.Flow
	}
	if a.Flow <= 0 {
		a.Flow = unit.Flow(float64(usualSpeed) * float64(hydro.BoreArea(pipe.Bore)))
		m.assume("", AssumeArrangeFlow, unit.Of(usualSpeed, unit.KindSpeed), practice)
	}
	in.Beyond = m.beyond()
	in.Rules = arrange.Rules{Union: !m.job.Assembly.Search.NoUnion, Check: m.checked(), Out: !m.job.Assembly.Search.NoUnion, Play: true, Elbows: want.Elbows, Best: everyLayout, Nodes: want.Nodes, Cores: want.Cores}
	if a.Shown = want.Best; a.Shown == 0 {
		a.Shown = usualBest
	}
	m.mayUse(a, pump, pipe)
	m.gluedAlready(a)
	m.insteads(a, pump, pipe)
	return len(m.out.Faults) == 0
}

// usualSpeed is the speed of water in pipe at which losses are compared where no
// flow is known: the design speed of the trade, 5 ft/s (common practice, no source).
const usualSpeed = 5 * unit.Speed(unit.Foot)

func (m *model) wanting(want ArrangeWant) bool {
	ok := true
	for _, c := range []struct {
		code        string
		found, most int
	}{{CodeArrangeElbows, want.Elbows, mostElbows}, {CodeArrangeBest, want.Best, mostBest}} {
		if c.found < 0 || c.found > c.most {
			m.fault("", c.code, trace.Num("found", unit.Ratio(c.found), unit.KindCount), trace.Num("limit", unit.Ratio(c.most), unit.KindCount))
			ok = false
		}
	}
	return ok
}

// arrangePipe gives the pipe of the layout: the assembly's, or that of the run
// that starts at the pump.
func (m *model) arrangePipe() (catalog.Pipe, bool) {
	name, path := m.job.Assembly.Pipe, "/assembly/pipe"
	if name == (job.PipeName{}) {
		for i, r := range m.job.Runs {
			if r.From == "pump" {
				name, path = r.Pipe, at("/runs", i)+"/pipe"
				break
			}
		}
	}
	if name == (job.PipeName{}) {
		m.fault("/assembly/pipe", CodeArrangePipe)
		return catalog.Pipe{}, false
	}
	p, err := m.pipe(name)
	if err != nil {
		m.refuse(path, err)
		return catalog.Pipe{}, false
	}
	return p, true
}

// delivered gives the flow of the job as drawn; nil where it cannot be worked
// out, which is no fault of a layout.
func (m *model) delivered(pump int) *Delivery {
	if len(m.job.Watercourses) == 0 || len(m.job.Runs) == 0 || len(m.voided(aspectFlow)) > 0 {
		return nil
	}
	t := m.trial()
	vault, ok := t.survey.Level(t.job.Pond.Water)
	if !ok {
		return nil
	}
	sys, ok := t.connect(pump, vault)
	if !ok {
		return nil
	}
	vault, _ = t.settle(pump, sys, vault)
	d, ok := t.operate(sys, vault)
	if !ok {
		return nil
	}
	return d
}

// checked tells whether a layout must have a check valve: unless the job says
// it will do without, or drew the pipe without one.
func (m *model) checked() bool {
	if m.job.Assembly.Search.NoCheckValve {
		return false
	}
	drawn := false
	for _, r := range m.job.Runs {
		if r.From != "pump" {
			continue
		}
		for _, f := range r.Fittings {
			drawn = drawn || isCheck(trade(m.book, f.Fitting))
		}
	}
	for _, l := range m.job.Assembly.Parts {
		drawn = drawn || isCheck(trade(m.book, l.Fitting))
	}
	if !drawn {
		m.assume("/assembly/search/noCheckValve", AssumeChecked, unit.Value{}, practice)
	}
	return true
}

// standings fills the ways the pump may stand. What does not go into the vault
// is told and left aside.
func (m *model) standings(a *Arranging, pumpIndex int) bool {
	pump, path := &m.job.Pumps[pumpIndex], at("/pumps", pumpIndex)
	if len(pump.Attitudes) == 0 {
		m.fault(path+"/attitudes", CodeArrangePump, trace.Str("name", pump.Name))
		return false
	}
	end, ok := m.port(pump, path+"/port")
	if !ok {
		return false
	}
	wanted := m.job.Assembly.Search.Stands
	if len(wanted) == 0 {
		var names []string
		for _, t := range pump.Attitudes {
			wanted = append(wanted, job.Stand{Attitude: t.Name})
			names = append(names, t.Name)
		}
		m.assume("/assembly/search/stands", AssumeStands, unit.Value{}, leftEmpty, trace.Str("attitudes", strings.Join(names, ", ")))
	}
	var large []trace.Finding
	given := len(m.job.Assembly.Search.Stands) > 0
	for k, w := range wanted {
		for i := range pump.Attitudes {
			t := &pump.Attitudes[i]
			if t.Name != w.Attitude {
				continue
			}
			if !m.portSound(pump, t, path+at("/attitudes", i)) {
				return false
			}
			s := arrange.Standing{Pump: m.body(pump, t, end, path)}
			if !w.Turn.IsZero() {
				s.Turns = []unit.Angle{w.Turn.SI}
			}
			if placed(&w) {
				s.Fixed, s.Pose = true, layout.Pose{At: vec(w.At), Turn: w.Turn.SI}
				if w.Turn.IsZero() {
					s.Turns = quarters(0)
				}
			}
			if f, fits := m.goesIn(pump, t, s.Pose, w.Turn.SI, w.Turn.IsZero()); !fits {
				large = append(large, f)
				continue
			}
			a.Input.Standings, a.Attitudes = append(a.Input.Standings, s), append(a.Attitudes, t.Name)
			if !given {
				k = -1
			}
			a.wanted = append(a.wanted, k)
		}
	}
	if len(a.Input.Standings) > 0 {
		for _, f := range large {
			m.find(f)
		}
		return true
	}
	if len(large) > 0 {
		args := large[leastOver(large)].Args
		if others := m.otherAttitudes(pump, wanted); len(others) > 0 {
			args = append(args, trace.Str("other", others[0].Name))
		}
		m.fault(path, CodePumpLarge, args...)
	}
	return false
}

// placed tells that a way the pump may stand comes with its place.
func placed(w *job.Stand) bool { return !w.At.X.IsZero() || !w.At.Y.IsZero() || !w.At.Z.IsZero() }

// quarters gives an angle and the three other quarter turns from it, the nearer first.
func quarters(from unit.Angle) []unit.Angle {
	return []unit.Angle{from, from + 90*unit.Degree, from - 90*unit.Degree, from + 180*unit.Degree}
}

// leastOver gives the finding that fails by the least.
func leastOver(list []trace.Finding) int {
	best := 0
	for i, f := range list {
		if f.Found.SI-f.Limit.SI < list[best].Found.SI-list[best].Limit.SI {
			best = i
		}
	}
	return best
}

// Money gives a sum of the search as an amount in the job's currency.
func (a *Arranging) Money(sum float64) unit.Money {
	return unit.Money{Amount: decimal.NewFromFloat(sum), Currency: a.Currency}
}
