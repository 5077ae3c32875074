package unit

// Code says what is wrong with a text. Codes are stable.
type Code string

// The codes.
const (
	CodeNumber Code = "unit.number"
)

// ParseError says why a text could not be read.
type ParseError struct {
	Code    Code
	Text    string // as typed
	At      int    // byte offset in Text
	Found   string // the part of Text that is wrong, "" for the end
	Near    string // a unit spelt nearly like Found, or ""
	Kind    Kind
	System  System
	Example string // as the kind may be written in that system
}

func (e *ParseError) Error() string { return string(e.Code) }
