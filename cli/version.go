package cli

import (
	"fmt"
	"runtime/debug"

	"plashet/answer"
	"plashet/job"
)

// version tells which build this is and which documents it reads and writes.
func version() string {
	build := "unknown build"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		build = info.Main.Version
	}
	return fmt.Sprintf("plashet %s, job file version %d, answer version %d", build, job.Version, answer.FormatVersion)
}
