package words

import (
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Items are told whole word by whole word, so that a name of the job that begins
// like one stays; sources keep the titles in them.
func TestItemsAndSources(t *testing.T) {
	es := Spanish()
	for in, want := range map[string]string{
		"elbow 90, 2": "codo 90, 2", "liner, pond": "membrana, estanque", "boulders, stone garden": "rocas, stone garden",
		"pump M": "pump M", "soil, common earth; gravel, Upper pond": "tierra, tierra común; grava, Upper pond",
	} {
		if got := es.Item(in); got != want {
			t.Errorf("item %q is %q, want %q", in, got, want)
		}
		if got := English().Item(in); got != in {
			t.Errorf("in English %q is %q", in, got)
		}
	}
	for in, want := range map[string]string{
		"weir formula, H = (Q / (C L))^(2/3)":          "fórmula de vertedor, H = (Q / (C L))^(2/3)",
		`trade page "Pond Calculations"`:               `página del oficio "Pond Calculations"`,
		"practice; conversion formula as Crane TP-410": "práctica; fórmula de conversión según Crane TP-410",
		"USDA NRCS Agriculture Handbook 590":           "USDA NRCS Agriculture Handbook 590",
	} {
		if got := es.Source(in); got != want {
			t.Errorf("source %q is %q, want %q", in, got, want)
		}
		if got := English().Source(in); got != in {
			t.Errorf("in English %q is %q", in, got)
		}
	}
	m := trace.Message{Code: "hydro.value.finite", Args: []trace.Arg{trace.Str("where", "x"), trace.Str("name", "bore")}}
	if got := es.Say(m, unit.US); got != "x: “diámetro interior” no es un número que se pueda usar. Escríbalo otra vez." {
		t.Error(got)
	}
	if m.Args[1].Text != "bore" {
		t.Error("the message itself was changed")
	}
}

// The strict test finds English where it stands.
func TestEnglishWordsIn(t *testing.T) {
	for in, want := range map[string]int{"codo 90 2": 0, "elbow 90 2": 1, "U1: union 50": 1, `según "Pond Calculations"`: 0, "bulkhead fitting": 2} {
		if got := EnglishWordsIn(in); len(got) != want {
			t.Errorf("%q: %q", in, got)
		}
	}
}
