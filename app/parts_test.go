package app

import (
	"testing"

	"plashet/job"
)

// apart are the fields of a job that stand on no part's page: what the file says
// of itself, and findings accepted, which stand with the findings.
var apart = map[string]bool{"/format": true, "/version": true, "/accepted": true}

// Every field of a job stands on the page of some part.
func TestEveryFieldHasAPage(t *testing.T) {
	fields := (&job.Job{Units: "us"}).Fields("")
	if len(fields) < 15 {
		t.Fatalf("a job has %d fields", len(fields))
	}
	for _, f := range fields {
		if (partAt(f.Path) == "") != apart[f.Path] {
			t.Errorf("%s stands on the page of part %q", f.Path, partAt(f.Path))
		}
	}
}
