package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
)

// save is where a job file goes.
type save struct {
	out   string
	force bool
}

func (s *save) flags(c *cobra.Command) {
	c.Flags().StringVar(&s.out, "out", "", "write to this `file`; standard output when not given, or when it is -")
	c.Flags().BoolVar(&s.force, "force", false, "write over the file of --out when there is one")
}

func (s *save) toFile() bool { return s.out != "" && s.out != "-" }

// check tells before any work is done why the file cannot be written.
func (s *save) check() error {
	if !s.toFile() {
		return nil
	}
	info, err := os.Stat(s.out)
	switch {
	case err == nil && info.IsDir():
		return fmt.Errorf("%q is a folder; give --out the name of a file", s.out)
	case err == nil && !info.Mode().IsRegular():
		return fmt.Errorf("%q is no file that can be written over", s.out)
	case err == nil && !s.force:
		return fmt.Errorf("there is a file %q already; --force writes over it", s.out)
	case err == nil:
		return nil
	case !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%q cannot be written: %s", s.out, reason(err))
	}
	if info, err := os.Stat(filepath.Dir(s.out)); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %q to write in", filepath.Dir(s.out))
	}
	return nil
}

// write puts the bytes in their place: whole, or not at all.
func (s *save) write(cmd *cobra.Command, data []byte) error {
	if !s.toFile() {
		if _, err := cmd.OutOrStdout().Write(data); err != nil {
			return ours{err}
		}
		return nil
	}
	if err := s.check(); err != nil {
		return err // the file may have come while questions were asked
	}
	if err := replace(s.out, data); errors.Is(err, fs.ErrPermission) {
		return fmt.Errorf("%q may not be written: the permissions of its folder keep you out", s.out)
	} else if err != nil {
		return ours{fmt.Errorf("write %q: %w", s.out, err)}
	}
	return nil
}

// replace writes beside the file, then renames, so that a full disk or a power
// cut leaves the old file or the new one, never half of it.
func replace(name string, data []byte) (err error) {
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(name); err == nil {
		mode = info.Mode().Perm()
		if name, err = filepath.EvalSymlinks(name); err != nil { // a link stays a link
			return err
		}
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".plashet-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(f.Name())
		}
	}()
	_, err = f.Write(data)
	if err == nil {
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return err
	}
	return os.Rename(f.Name(), name)
}
