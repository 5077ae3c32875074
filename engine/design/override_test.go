package design

import (
	"testing"

	"plashet/engine/layout"
	"plashet/job"
)

// A setting in the job's list takes the place of the default: it is no longer
// assumed, and what counts on it changes.
func TestSettings(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	before := Solve(book, j)
	j.Assumptions = []job.Assumed{{Code: layout.AssumeHand, Value: "6 in"}, {Code: layout.AssumeRoll, Value: "2 deg"}}
	r := Solve(book, j)
	if len(r.Faults) != 0 {
		t.Fatal(r.Faults)
	}
	if len(before.Assumptions)-len(r.Assumptions) != 2 {
		t.Errorf("%d assumptions became %d", len(before.Assumptions), len(r.Assumptions))
	}
	if codes(before.Findings, layout.FindHand) != 0 || codes(r.Findings, layout.FindHand) != 1 {
		t.Error("six inches of room for the hand change nothing")
	}
}

func TestSettingsRefused(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Assumptions = []job.Assumed{
		{Code: layout.AssumeHand, Value: "wide"},
		{Code: layout.AssumeSaw, Value: "-1/8 in"},
		{Code: AssumeReserve, Value: "1 in"},
		{Code: "assume.nothing", Value: "1"},
	}
	want := []string{CodeSetting, CodeSetting, CodeOwnField, CodeOverride}
	r := Solve(book, j)
	if len(r.Faults) != len(want) {
		t.Fatal(r.Faults)
	}
	for i, f := range r.Faults {
		if f.Code != want[i] {
			t.Errorf("fault %d is %s, want %s", i, f.Code, want[i])
		}
	}
}
