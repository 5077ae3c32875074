package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"plashet/demo"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// read opens a job by name; "-" is standard input.
func read(cmd *cobra.Command, name string) (*job.Job, []trace.Fault, error) {
	data, err := load(cmd, name)
	if err != nil {
		return nil, nil, err
	}
	j, faults := job.Read(data)
	return j, faults, nil
}

// sound is read for a command that needs a job: where none could be read it tells
// the faults and gives errJob.
func sound(cmd *cobra.Command, name string) (*job.Job, []trace.Fault, error) {
	j, faults, err := read(cmd, name)
	if err != nil || j != nil {
		return j, faults, err
	}
	if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, unit.US); err != nil {
		return nil, nil, err
	}
	return nil, nil, errJob
}

// load reads the bytes of a job, and never more than one beyond what a job may
// have: package job then refuses it, however long the file or the stream is.
func load(cmd *cobra.Command, name string) ([]byte, error) {
	in := cmd.InOrStdin()
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, noFile(name, err)
		}
		defer func() { _ = f.Close() }()
		if info, err := f.Stat(); err == nil && info.IsDir() {
			return nil, fmt.Errorf("%q is a folder; give the path of a job file in it", name)
		}
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, job.MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("reading %q stopped: %s", name, reason(err))
	}
	return data, nil
}

// noFile says why a file cannot be opened and what was likely meant.
func noFile(name string, err error) error {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%q may not be read: its permissions keep you out", name)
	case !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%q cannot be read: %s", name, reason(err))
	}
	folder := filepath.Dir(name)
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no file %q: there is no folder %q", name, folder)
	}
	stem := strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
	said := fmt.Sprintf("there is no file %q; give the path of a job file, or - for standard input", name)
	if n := near(stem, jobFiles(folder)); n != "" {
		said += fmt.Sprintf("\nnear it in the same folder: %s", filepath.Join(folder, n+jobEnding))
	}
	if n := near(stem, demo.Names()); n != "" {
		said += fmt.Sprintf("\nan example of that name: plashet demo %s", n)
	}
	return errors.New(said)
}

// jobEnding is how a job file's name ends.
const jobEnding = ".json"

// jobFiles names the job files of a folder, without their ending.
func jobFiles(folder string) []string {
	const enough = 2000 // names looked through for a near one
	f, err := os.Open(folder)
	if err != nil {
		return nil
	}
	defer func() { _ = f.Close() }()
	entries, _ := f.ReadDir(enough) // a near name is a courtesy: none on error
	var names []string
	for _, e := range entries {
		if stem, ok := strings.CutSuffix(e.Name(), jobEnding); ok {
			names = append(names, stem)
		}
	}
	return names
}

// reason gives the system's own words without the operation and path.
func reason(err error) string {
	if pe, ok := errors.AsType[*fs.PathError](err); ok {
		return pe.Err.Error()
	}
	return err.Error()
}

// tell prints the faults of a job, one a line.
func tell(w io.Writer, l *words.Language, faults []trace.Fault, s unit.System) error {
	for _, f := range faults {
		var at []string
		if f.Line > 0 {
			at = append(at, l.Say(trace.Message{Code: "print.line", Args: []trace.Arg{trace.Str("line", strconv.Itoa(f.Line))}}, s))
		}
		if f.Path != "" {
			at = append(at, f.Path)
		}
		if len(at) > 0 {
			at = []string{strings.Join(at, ", ") + ": "}
		}
		if _, err := fmt.Fprintf(w, "%s%s\n", words.Plain(strings.Join(at, "")), words.Plain(l.Say(f.Message, s))); err != nil {
			return ours{err}
		}
	}
	return nil
}
