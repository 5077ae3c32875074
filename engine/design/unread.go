package design

import (
	"slices"
	"strings"

	"plashet/engine/trace"
)

// aspect is one part of the answer that a fault of the document can void.
type aspect uint8

// The parts of the answer.
const (
	aspectFlow aspect = 1 << iota // pump, pipe and falls, and with them the levels
	aspectLevels
	aspectFit    // the assembly: nothing of it is to be cut or glued
	aspectCut    // the cutting plans
	aspectCost   // energy and its cost
	aspectList   // material
	aspectSearch // the search for layouts, beyond what the assembly stands on
)

// standsOn tells which parts of the answer stand on a place of the document. The
// first row whose path, with * for one step of any name, begins the place
// counts. What is not listed voids nothing: names, notes, prices.
var standsOn = []struct {
	place string
	void  aspect
}{
	{"/site/waterTemperature", aspectFlow},
	{"/site/glueTemperature", aspectFit},
	{"/site/damp", aspectFit},
	{"/site/frost", aspectFit},
	{"/site/hoursPerDay", aspectCost},
	{"/site/daysPerYear", aspectCost},
	{"/site/tariff", aspectCost},
	{"/site/reserve", aspectLevels},
	{"/site/valveLeak", aspectLevels},
	{"/site/rainTime", aspectLevels},
	{"/site/summer", aspectLevels},
	{"/site/altitude", aspectFlow},
	{"/site/designRain", aspectLevels},
	{"/pond", aspectLevels | aspectList},
	{"/watercourses/*/name", aspectFlow},
	{"/watercourses/*/box/inletLoss", aspectFlow},
	{"/watercourses/*/box", aspectLevels},
	{"/watercourses/*/parts/*/lip/drop", 0},
	{"/watercourses/*/parts/*/lip", aspectFlow},
	{"/watercourses/*/parts/*/reach", aspectLevels | aspectList},
	{"/watercourses/*/parts/*/pool", aspectLevels | aspectList},
	{"/watercourses", aspectFlow},
	{"/vault/rated", 0},
	{"/vault/outlet/undrilled", aspectSearch},
	{"/vault/hatch", aspectFit},
	{"/vault/sill", aspectLevels},
	{"/vault/weirWidth", aspectLevels},
	{"/vault/screenLoss", aspectLevels},
	{"/vault", aspectLevels | aspectFit},
	{"/pumps/*/curve", aspectFlow},
	{"/pumps/*/boxFlow", aspectFlow},
	{"/pumps/*/maxHead", aspectFlow},
	{"/pumps/*/speed", aspectFlow},
	{"/pumps/*/speeds", aspectFlow},
	{"/pumps/*/wear", aspectFlow},
	{"/pumps/*/outside", aspectFlow},
	{"/pumps/*/wear", aspectFlow},
	{"/pumps/*/outside", aspectFlow},
	{"/pumps/*/npsh", aspectFlow},
	{"/pumps/*/runUp", aspectLevels},
	{"/pumps/*/watts", aspectCost},
	{"/pumps/*/attitudes", aspectFit},
	{"/pumps/*/port", aspectFit},
	{"/pumps/*/minWater", aspectLevels},
	{"/pumps", 0},
	{"/use", aspectFlow | aspectFit},
	{"/furtherPumps", aspectFlow},
	{"/runs/*/drains", aspectLevels},
	{"/runs/*/holdsWater", aspectLevels},
	{"/runs/*/rise", 0},
	{"/runs", aspectFlow | aspectList},
	{"/assembly/search", aspectSearch},
	{"/assembly/kept", aspectFit},
	{"/assembly", aspectFit},
	{"/measured", aspectFlow | aspectFit},
	{"/stock/fittings", aspectSearch},
	{"/stock/only", aspectSearch},
	{"/stock", aspectCut | aspectList},
	{"/works", aspectList},
}

// voids gives what a fault at a place voids.
func voids(place string) aspect {
	for _, row := range standsOn {
		if begins(place, row.place) {
			return row.void
		}
	}
	return 0
}

// begins tells that a place is the one named or lies in it.
func begins(place, named string) bool {
	for named != "" {
		var step, want string
		step, place = first(place)
		want, named = first(named)
		if step == "" || want != "*" && want != step {
			return false
		}
	}
	return true
}

// first cuts the first step off a path.
func first(path string) (step, rest string) {
	path = strings.TrimPrefix(path, "/")
	step, rest, _ = strings.Cut(path, "/")
	return step, rest
}

// voided names the places of the faults of reading that void a part of the
// answer, in the job's words; empty when it can be worked out.
func (m *model) voided(p aspect) []trace.Place {
	var where []trace.Place
	for _, f := range m.unread {
		if voids(f.Path)&p != 0 && (p != aspectFlow || m.inUse(f.Path)) {
			where = append(where, m.job.PlaceOf(f.Path))
		}
	}
	return where
}

// inUse tells that a place is not in a pump that is only on offer.
func (m *model) inUse(place string) bool {
	if !begins(place, "/pumps/*") {
		return true
	}
	used, ok := m.trial().pump()
	return !ok || begins(place, at("/pumps", used)) || len(m.job.FurtherPumps) > 0
}

// stands tells that a part of the answer can be worked out, and says why not
// when it cannot. Nothing is built on a default where the job says something
// that could not be read.
func (m *model) stands(p aspect, code string) bool {
	where := m.voided(p)
	if len(where) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: code, Args: []trace.Arg{trace.At("places", where...)}}, Severity: trace.Danger})
	}
	return len(where) == 0
}

// faulty counts the faults of reading that the assembly stands on.
func (m *model) faulty() int {
	n := 0
	for _, f := range m.unread {
		if voids(f.Path)&aspectFit != 0 {
			n++
		}
	}
	return n
}

// toldUnread says that reading has told of a field already.
func (m *model) toldUnread(path string) bool {
	return slices.ContainsFunc(m.unread, func(f trace.Fault) bool { return f.Path == path })
}
