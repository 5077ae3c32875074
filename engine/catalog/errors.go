package catalog

import (
	"strings"

	"plashet/engine/trace"
)

// Codes of the errors of this package, each with what it means and the
// arguments its message carries.
const (
	// CodePipeUnknown: no pipe of this kind. Args: kind, near.
	CodePipeUnknown = "catalog.pipe.unknown"
	// CodePipeSize: the kind is not in the book in this size. Args: kind, size, near (the sizes there are).
	CodePipeSize = "catalog.pipe.size"
	// CodeFittingUnknown: no fitting of this name. Args: fitting, near.
	CodeFittingUnknown = "catalog.fitting.unknown"
	// CodeFittingSize: no dimensions of this fitting in this size. Args: fitting, size, near (the sizes there are).
	CodeFittingSize = "catalog.fitting.size"
	// CodeFittingTwoSizes: a reducing fitting needs two different sizes, as "2 x 1-1/2". Args: fitting, size.
	CodeFittingTwoSizes = "catalog.fitting.twosizes"
	// CodeFittingOneSize: the fitting is known in one size only, not reducing. Args: fitting, size.
	CodeFittingOneSize = "catalog.fitting.onesize"
	// CodeSizeUnread: the text of a size cannot be read. Args: size.
	CodeSizeUnread = "catalog.size.unread"
	// CodeSizeDN: a DN size of metric pipe can mean two outside diameters; give the outside diameter. Args: size.
	CodeSizeDN = "catalog.size.dn"
	// CodeLossNone: the book has no loss coefficient for this fitting. Args: fitting, near.
	CodeLossNone = "catalog.loss.none"
	// CodeLossSize: the tables of losses do not have this fitting in this size. Args: fitting, size.
	CodeLossSize = "catalog.loss.size"
	// CodeLossWhich: the loss depends on the way the water takes. Args: fitting, near (the names to choose from).
	CodeLossWhich = "catalog.loss.which"
	// CodeMeasured: a measured value is negative or not a number. Args: fitting, size, value (which one).
	CodeMeasured = "catalog.measured.value"
	// CodeThreadUnknown: no thread of this standard and size. Args: thread, size, near.
	CodeThreadUnknown = "catalog.thread.unknown"
	// CodeOutside: a table does not reach this far. Args: table, value (what lies outside).
	CodeOutside = "catalog.table.outside"
	// CodeSoilUnknown: no swell for this soil. Args: soil, near.
	CodeSoilUnknown = "catalog.soil.unknown"
)

// Error tells why the book cannot answer. It is data: the sentence is made at
// the edge from Message.
type Error struct {
	Code string
	Args []trace.Arg
}

func fault(code string, args ...trace.Arg) *Error { return &Error{Code: code, Args: args} }

// nearest makes the argument that lists names close to what was asked, or the
// sizes there are; empty when nothing is close.
func nearest(names []string) trace.Arg { return trace.Str("near", strings.Join(names, ", ")) }

// Message gives the error as a message for package words.
func (e *Error) Message() trace.Message { return trace.Message{Code: e.Code, Args: e.Args} }

// Arg gives the text of a named argument, or nothing.
func (e *Error) Arg(name string) string {
	for _, a := range e.Args {
		if a.Name == name {
			return a.Text
		}
	}
	return ""
}

func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Code)
	for _, a := range e.Args {
		b.WriteString(" " + a.Name + "=" + quoted(a.Text))
	}
	return b.String()
}

func quoted(s string) string { return `"` + s + `"` }
