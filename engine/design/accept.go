package design

import (
	"slices"

	"plashet/engine/trace"
	"plashet/job"
)

// accept marks the findings that the user accepts with a reason, and tells of
// those that do not arise any more.
func (m *model) accept() {
	for i, a := range m.job.Accepted {
		met := false
		for k := range m.out.Findings {
			f := &m.out.Findings[k]
			if accepts(a, *f) {
				f.Accepted, met = a.Reason, true
			}
		}
		if drawn := slices.Contains(turns, a.Code) && m.out.Bands == nil; !met && !drawn {
			m.find(trace.Finding{Path: at("/accepted", i), Severity: trace.Info, Message: trace.Message{Code: FindGone, Args: []trace.Arg{trace.Str("code", a.Code)}}})
		}
	}
}

// turns lists the findings that only SolveBands looks for.
var turns = []string{FindMayShort, FindMayDry, FindMaySpill, FindMayStart, FindMayStarve, FindMayBare}

// accepts tells that an acceptance is of a finding.
func accepts(a job.Acceptance, f trace.Finding) bool {
	return f.Code == a.Code && (a.Path == "" || a.Path == f.Path)
}
