package unit

import (
	"strings"
	"testing"
)

// allKinds are the kinds that Parse reads.
func allKinds() (ks []Kind) {
	for k := KindNone + 1; k < kindEnd; k++ {
		if k != KindMoney {
			ks = append(ks, k)
		}
	}
	return ks
}

var systems = []System{US, Metric}

func TestKindNames(t *testing.T) {
	// The names stand in job files and never change.
	const names = "tape plan distance elevation depth head bore roughness area water earth cement flow pressure speed power " +
		"energy angle temperature duration hours mass weight voltage current ratio percent count flowPerWidth money"
	seen := 0
	for name := range strings.FieldsSeq(names) {
		k, ok := KindByName(name)
		if !ok || k.Name() != name {
			t.Errorf("kind %q is %v, named %q", name, k, k.Name())
		}
		seen++
	}
	if seen != int(kindEnd)-1 {
		t.Errorf("%d names for %d kinds", seen, kindEnd-1)
	}
	for _, name := range []string{"", "none", "Tape", "length"} {
		if _, ok := KindByName(name); ok {
			t.Errorf("%q is taken for a kind", name)
		}
	}
}

func TestKindTable(t *testing.T) {
	for _, k := range allKinds() {
		for _, s := range systems {
			u := k.unit(s)
			if u == nil {
				t.Fatalf("%s has no unit %q", k.Name(), k.UnitName(s))
			}
			if u.dim != k.Dim() {
				t.Errorf("%s is shown in %s of another dimension", k.Name(), u.name)
			}
			r, err := Parse(k.Example(s), k, s)
			if err != nil {
				t.Errorf("example of %s: %v", k.Name(), err)
			}
			if back, err := Parse(Value{SI: r.SI, Kind: k}.Format(s), k, s); err != nil || diff(back.SI, r.SI) > (Value{SI: r.SI, Kind: k}).Step(s) {
				t.Errorf("example %q of %s prints as %q and reads back as %v (%v)", k.Example(s), k.Name(), Value{SI: r.SI, Kind: k}.Format(s), back.SI, err)
			}
			// Printed thousands must read back in the metric system, where a
			// comma before three digits is else refused.
			sh := k.in(s)
			if sh.style == fixed && sh.decimals == 0 && !u.grouped && k != KindCount {
				t.Errorf("%s prints whole %s with commas that Parse refuses", k.Name(), u.name)
			}
		}
	}
}

func TestUnknownKind(t *testing.T) {
	k := Kind(250)
	if k.Name() != "" || k.Dim() != DimNone || k.UnitName(US) != "" || k.Example(Metric) != "" {
		t.Error("an unknown kind is not empty")
	}
	if got := (Value{SI: 1.5, Kind: k}).Format(US); got != "1.5" {
		t.Errorf("a value of unknown kind prints as %q", got)
	}
	if got := (Value{SI: 1.5, Kind: KindFlow}).Format(System(1 << 15)); got != (Value{SI: 1.5, Kind: KindFlow}).Format(US) {
		t.Errorf("an unknown system prints as %q", got)
	}
	for _, k := range []Kind{KindNone, KindMoney, k} {
		_ = wantCode(t, "5", k, US, CodeKind)
	}
}

// TestSpellings: a spelling stands for one unit, is in its normal form, and so
// can be found.
func TestSpellings(t *testing.T) {
	owner := map[string]string{}
	for i := range unitRows {
		r := &unitRows[i]
		for _, sp := range append(strings.Fields(r.spellings), normalName(r.name)) {
			if o, taken := owner[sp]; taken && (o != r.name || sp != normalName(r.name)) {
				t.Errorf("spelling %q stands for %s and %s", sp, o, r.name)
			}
			owner[sp] = r.name
			if normalName(sp) != sp {
				t.Errorf("spelling %q of %s has the normal form %q", sp, r.name, normalName(sp))
			}
		}
		if u := findUnit(r.name); u != &r.unitDef {
			t.Errorf("%s is found as %+v", r.name, u)
		}
		if r.imperial != "" && tableUnit(r.imperial) == nil {
			t.Errorf("%s has no imperial unit %q", r.name, r.imperial)
		}
		for low := range strings.FieldsSeq(r.lower) {
			if u := tableUnit(low); u == nil || u.dim != r.dim || u.si(1) >= r.si(1) {
				t.Errorf("%s cannot be followed by %s", r.name, low)
			}
		}
	}
}

func TestDimNames(t *testing.T) {
	for d := DimNone; d <= DimMoney; d++ {
		if d.String() == "" {
			t.Errorf("dimension %d has no name", d)
		}
	}
	if Dim(200).String() != "unknown dimension" {
		t.Error("an unknown dimension has a name")
	}
}
