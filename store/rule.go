package store

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// The most that a store keeps, in bytes.
const (
	MostData  = 16 << 20 // of a document
	MostPlace = 1 << 20  // of what is kept with one
	MostName  = 200      // of an identity, a kind, the name of a place
	MostText  = 10_000   // of each text of a change; what is more is cut off
)

// Limit reads a wanted number of lines: 50 where none is wanted, at most 1000.
func Limit(wanted int) int {
	if wanted <= 0 {
		return 50
	}
	return min(wanted, 1000)
}

// Act is what a save does.
type Act int

// The acts.
const (
	Save Act = iota
	Aside
	Back
	Remove
)

// Next makes the revision that follows newest, which is nil for a document that
// there is not yet. It is the one place where the rules of saving stand; every
// store asks it under its lock. Errors as the methods of Store tell.
func Next(newest *Revision, kind Kind, id string, base int, act Act, c Change) (Revision, error) {
	switch {
	case !Named(id), newest == nil && base == 0 && act == Save && !Named(string(kind)):
		return Revision{}, ErrName
	case newest == nil && (base != 0 || act != Save):
		return Revision{}, ErrNone
	case newest != nil && base != newest.Number:
		return Revision{}, &Stale{Newest: *newest}
	case newest != nil && newest.Deleted && act != Save:
		return Revision{}, ErrGone
	case newest != nil && act == Save && kind != newest.Kind:
		return Revision{}, ErrName
	case len(c.Data) > MostData:
		return Revision{}, ErrLarge
	}
	r := Revision{ID: id, Kind: kind, Number: base + 1, Change: c}
	if newest != nil {
		r.Kind, r.Archived = newest.Kind, newest.Archived
	}
	switch act {
	case Aside, Back:
		r.Archived = act == Aside
	case Remove:
		r.Deleted, r.Data = true, nil
	case Save:
	}
	r.When = c.When.UTC().Truncate(time.Microsecond)
	for _, t := range []*string{&r.Who, &r.What, &r.Summary.Name, &r.Summary.Place, &r.Summary.Stage, &r.Summary.Worst} {
		*t = text(*t)
	}
	if r.BackTo < 0 || r.BackTo > base {
		r.BackTo = 0
	}
	r.Digest = Digest(r.Data)
	return r, nil
}

// Digest is the SHA-256 of the bytes in hexadecimal.
func Digest(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// LeastDigits is how much of a digest it takes to look for it: of fewer too many
// documents would have them by chance.
const LeastDigits = 8

// Digits tells that a text can begin a digest and is long enough to look for.
func Digits(text string) bool {
	return len(text) >= LeastDigits && len(text) <= 2*sha256.Size && strings.Trim(text, "0123456789abcdef") == ""
}

// Named tells that a name can be kept.
func Named(name string) bool {
	return name != "" && len(name) <= MostName && utf8.ValidString(name) && !strings.ContainsFunc(name, unicode.IsControl)
}

// text makes what is only shown fit to be kept: a database takes no text that
// is no UTF-8, and PostgreSQL none with a zero in it.
func text(s string) string {
	s = strings.ReplaceAll(strings.ToValidUTF8(s, "\uFFFD"), "\x00", "\uFFFD")
	if len(s) <= MostText {
		return s
	}
	end := MostText
	for !utf8.RuneStart(s[end]) {
		end--
	}
	return s[:end]
}

// Sought is the text in which Query.Text is looked for, once both went through
// Fold.
func Sought(s Summary) string { return Fold(s.Name) + "\n" + Fold(s.Place) }

// Fold makes texts that differ only in case, or in what parts their words,
// equal.
func Fold(s string) string {
	return strings.ToLower(strings.Join(strings.Fields(text(s)), " "))
}
