package carry

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"plashet/store"
	"plashet/store/memory"
)

// format names the file in its first line; version is raised with a change that
// an older program would read wrongly.
const (
	format  = "plashet documents"
	version = 1
)

// line is one line of the file: the first names the format, the last holds what
// all must come to, and each between is a revision or what is kept with a
// document.
type line struct {
	Format   string          `json:"format,omitempty"`
	Version  int             `json:"version,omitempty"`
	Revision *store.Revision `json:"revision,omitempty"` // its bytes in base64
	Place    *place          `json:"place,omitempty"`
	All      *Count          `json:"all,omitempty"`
}

type place struct {
	ID, Name string
	Value    []byte
}

// Write writes everything that a store holds as lines of JSON.
func Write(ctx context.Context, w io.Writer, s store.Store) (Count, error) {
	// What is written is read first into memory, so that what is saved meanwhile
	// is in the digest or not in the file.
	held := memory.New()
	if err := each(ctx, s, func(e store.Entry) error { return document(ctx, s, held, e) }); err != nil {
		return Count{}, err
	}
	all, err := Sum(ctx, held)
	if err != nil {
		return Count{}, err
	}
	out := json.NewEncoder(w)
	if err := out.Encode(line{Format: format, Version: version}); err != nil {
		return Count{}, err
	}
	err = each(ctx, held, func(e store.Entry) error {
		for n := 1; n <= e.Number; n++ {
			r, err := held.At(ctx, e.ID, n)
			if err != nil {
				return err
			}
			if err := out.Encode(line{Revision: &r}); err != nil {
				return err
			}
		}
		names, err := held.Places(ctx, e.ID)
		if err != nil {
			return err
		}
		for _, name := range names {
			value, err := held.Place(ctx, e.ID, name)
			if err != nil {
				return err
			}
			if err := out.Encode(line{Place: &place{e.ID, name, value}}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return Count{}, err
	}
	return all, out.Encode(line{All: &all})
}

// FileError tells why a file cannot be read back.
type FileError struct {
	Line int
	Text string
}

func (e *FileError) Error() string { return fmt.Sprintf("line %d of the file %s", e.Line, e.Text) }

// mostLine bounds a line: a document of the largest size in base64, its texts.
const mostLine = store.MostData/3*4 + 10*6*store.MostText

// Read reads a file of Write whole, holds it against its digest, and gives what
// it holds: to be taken to a store by Move. *FileError.
func Read(ctx context.Context, r io.Reader) (store.Store, error) {
	held := memory.New()
	in := bufio.NewScanner(r)
	in.Buffer(make([]byte, 0, 64<<10), mostLine)
	n := 0
	last := map[string]store.Revision{}
	for in.Scan() {
		n++
		var l line
		if err := json.Unmarshal(in.Bytes(), &l); err != nil {
			return nil, &FileError{n, "is not what a backup holds"}
		}
		switch {
		case n == 1 && l.Format != format:
			return nil, &FileError{n, "does not say that this is a backup of Plashet"}
		case n == 1 && l.Version != version:
			return nil, &FileError{n, fmt.Sprintf("says version %d; this program reads version %d", l.Version, version)}
		case n == 1:
		case l.Revision != nil:
			want := *l.Revision
			got, err := again(ctx, held, last[want.ID], want)
			if err != nil || same(got) != same(want) {
				return nil, &FileError{n, "holds a revision that does not follow the one before, or whose bytes were changed"}
			}
			got.Data = nil
			last[want.ID] = got
		case l.Place != nil:
			if err := held.SetPlace(ctx, l.Place.ID, l.Place.Name, l.Place.Value); err != nil {
				return nil, &FileError{n, "belongs to no document of the file"}
			}
		case l.All != nil:
			got, err := Sum(ctx, held)
			if err != nil {
				return nil, err
			}
			if got != *l.All {
				return nil, &FileError{n, "does not fit what stands above it: the file was changed"}
			}
			if in.Scan() {
				return nil, &FileError{n + 1, "stands past the end"}
			}
			return held, nil
		default:
			return nil, &FileError{n, "is not what a backup holds"}
		}
	}
	if err := in.Err(); err != nil && !errors.Is(err, bufio.ErrTooLong) {
		return nil, err
	}
	return nil, &FileError{n + 1, "is missing or too long: the file is not whole"}
}
