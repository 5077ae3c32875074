package shelf

import (
	"maps"
	"testing"
)

// What is said of columns and units stands instead of the guess, and what cannot
// be is told.
func TestChoose(t *testing.T) {
	table, f := ReadTable([]byte("Sort,Q,H,W=in\nsmall,0,20,90\nsmall,30,12,95\n"))
	if f != nil {
		t.Fatal(f)
	}
	m := Guess(table, PumpFields())
	if _, there := m.Column[FieldName]; there {
		t.Fatal("the name is guessed, so that nothing is chosen here")
	}
	if f := m.Choose(table, PumpFields(), []string{"name=2", "name=sort", "curve/watts=W=in", "curve/head=3", "volts="}, []string{"curve/flow=l/h", "curve/head=m", "curve/head=", "watts="}); f != nil {
		t.Fatal(f)
	}
	if want := map[string]int{FieldName: 0, pointFlow: 1, pointHead: 2, pointWatts: 3}; !maps.Equal(m.Column, want) || !maps.Equal(m.Unit, map[string]string{pointFlow: "l/h"}) {
		t.Errorf("%v %v", m.Column, m.Unit)
	}
	rows, faults := ReadPumps(table, m)
	if len(faults) > 0 || len(rows) != 1 || rows[0].Job.Pumps[0].Curve[1].Flow.Text != "30 l/h" {
		t.Errorf("%+v %v", rows, faults)
	}
	if f := m.Choose(table, PumpFields(), []string{"curve/watts="}, nil); f != nil || m.Column[pointWatts] != 0 || len(m.Column) != 3 {
		t.Error(f, m.Column)
	}
	for _, x := range []struct{ column, unit, code string }{
		{"name", "", FaultChoice},
		{"", "curve/flow", FaultChoice},
		{"nome=Sort", "", FaultNoField},
		{"=Sort", "", FaultNoField},
		{"", "q=gpm", FaultNoField},
		{"name=5", "", FaultNoColumn},
		{"name=0", "", FaultNoColumn},
		{"name=-1", "", FaultNoColumn},
		{"name=Kind", "", FaultNoColumn},
		{"", "curve/flow=m", FaultNoUnit},
		{"", "curve/flow=furlongs", FaultNoUnit},
		{"", "curve/flow=2", FaultNoUnit},
		{"", "name=gpm", FaultUnitless},
	} {
		var columns, units []string
		where := ChoiceUnit
		if x.column != "" {
			columns, where = []string{x.column}, ChoiceColumn
		} else {
			units = []string{x.unit}
		}
		if f := m.Choose(table, PumpFields(), columns, units); f == nil || f.Code != x.code || f.Path != where {
			t.Errorf("%s%s: %+v, want %s", x.column, x.unit, f, x.code)
		}
	}
}
