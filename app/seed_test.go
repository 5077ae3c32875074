package app

import (
	"testing"

	"plashet/demo"
	"plashet/job"
)

// TestExamplesCanonical: an example stands in the store as the bytes that the command
// line digests of its file, so that a sheet printed from the file is known.
func TestExamplesCanonical(t *testing.T) {
	d := newDesk(t)
	for _, name := range demo.Names() {
		j, faults := job.Read(demo.Job(name))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		want, err := job.Encode(j)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.newest("example-" + name).Data; string(got) != string(want) {
			t.Errorf("%s stands otherwise than a sheet of its file says", name)
		}
	}
}
