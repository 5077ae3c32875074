package main

import (
	"encoding/json"
	"math/rand/v2"
	"testing"
)

// Every kind of job can be drawn again from its seed and has an answer.
func TestDrawnJobsAreSolved(t *testing.T) {
	if len(kindNames) != len(kinds) {
		t.Fatalf("%d kinds have names, %d are drawn", len(kindNames), len(kinds))
	}
	for _, kind := range kindNames {
		for seed := range uint64(20) {
			var twice [2]string
			for i := range twice {
				j := draw(rand.New(rand.NewPCG(seed, 1)), kind)
				if err := j.solve(); err != nil || !j.Converged {
					t.Fatalf("%s, seed %d: %v, %v", kind, seed, err, j.Why)
				}
				b, err := json.Marshal(j)
				if err != nil {
					t.Fatal(err)
				}
				twice[i] = string(b)
			}
			if twice[0] != twice[1] {
				t.Errorf("%s, seed %d: two jobs", kind, seed)
			}
		}
	}
}
