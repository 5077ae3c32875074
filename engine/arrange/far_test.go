package arrange_test

import "flag"

// far asks for the long run of a judge: more cases, for a spare hour.
var far = flag.Bool("far", false, "let the judges of the search see all their cases")

// ifFar is how much a judge sees, and how much in the long run.
func ifFar[T any](usual, long T) T {
	if *far {
		return long
	}
	return usual
}
