package cli

import (
	"io"
	"os"
	"runtime"
	"strings"
	"unicode"

	"golang.org/x/term"

	"plashet/engine/trace"
	"plashet/words"
)

// terminal tells whether a person sits behind a stream.
func terminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// screen puts colour and care between the printing and a terminal; any other
// writer gets the bytes as they are.
func screen(w io.Writer, env func(string) string) io.Writer {
	if !terminal(w) {
		return w
	}
	return &painter{w: w, colour: coloured(env)}
}

// noColour is the environment variable of no-color.org.
const noColour = "NO_COLOR" //nolint:misspell // its name

// coloured tells whether a terminal gets colour: not with noColour set,
// nor with TERM=dumb. The console of Windows shows the codes as text
// unless it is told otherwise, so it gets none.
func coloured(env func(string) string) bool {
	return env(noColour) == "" && env("TERM") != "dumb" && runtime.GOOS != "windows"
}

// painter colours the mark of a finding that a line starts with, and keeps the control
// characters of a stranger's job file from the terminal.
type painter struct {
	w      io.Writer
	colour bool
	inside bool // the last write ended in the middle of a line
}

// Foreground codes of ECMA-48, 8.3.117 (select graphic rendition).
var severityColour = map[trace.Severity]string{
	trace.Danger: "\x1b[1;31m", trace.Caution: "\x1b[33m", trace.Info: "\x1b[36m",
}

const plain = "\x1b[0m"

func (p *painter) Write(b []byte) (int, error) {
	var out strings.Builder
	for line := range strings.Lines(string(b)) {
		clean := strings.Map(func(r rune) rune {
			if unicode.IsControl(r) && r != '\n' && r != '\t' {
				return unicode.ReplacementChar
			}
			return r
		}, line)
		if p.colour && !p.inside {
			clean = paint(clean)
		}
		out.WriteString(clean)
		p.inside = !strings.HasSuffix(line, "\n")
	}
	if _, err := io.WriteString(p.w, out.String()); err != nil {
		return 0, err
	}
	return len(b), nil
}

func paint(line string) string {
	for severity, colour := range severityColour {
		for _, l := range words.Languages() {
			mark := l.Mark(severity)
			if rest, ok := strings.CutPrefix(line, "["+mark+"]"); ok {
				return "[" + colour + mark + plain + "]" + rest
			}
		}
	}
	return line
}
