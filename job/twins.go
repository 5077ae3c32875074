package job

import "plashet/engine/trace"

// twins finds the elements of a list that cannot be told apart.
func twins(j *Job) []trace.Fault { return nil }
