package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"time"

	"github.com/spf13/cobra"

	"plashet/words"
)

// stoppable is a command's context that Ctrl-C ends.
func stoppable(cmd *cobra.Command) (context.Context, context.CancelFunc) {
	parent := cmd.Context()
	if parent == nil {
		parent = context.Background()
	}
	return signal.NotifyContext(parent, os.Interrupt)
}

// shownEvery is how long a line of progress stands before the next.
const shownEvery = 2 * time.Second

// progress shows how far a search has got: a line now and then, none for a
// search that is done at once.
type progress struct {
	w     io.Writer
	say   *words.Language
	every time.Duration
	last  time.Time
	begun bool
}

func (p *progress) tell(text func() string) {
	now := time.Now()
	if p.last.IsZero() {
		p.last = now
	}
	if now.Sub(p.last) < p.every {
		return
	}
	if !p.begun {
		p.begun = true
		_, _ = fmt.Fprintln(p.w, p.say.Word("found.stop"))
	}
	p.last = now
	_, _ = fmt.Fprintln(p.w, text())
}
