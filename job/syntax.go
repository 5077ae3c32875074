package job

import (
	"bytes"
	"errors"
	"io"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// explain says in one code what breaks JSON's grammar at a place, looking at
// what people do when they write a file by hand. It gives the place the reader
// should look at.
func explain(data []byte, at int, err error) (string, int) {
	switch {
	case errors.Is(err, errExtra):
		return CodeExtra, at
	case errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) || at >= len(data):
		return cutOff(data)
	case errors.Is(err, jsontext.ErrNonStringName):
		return unquoted(data, at)
	}
	for at < len(data) && strings.IndexByte(" \t\r\n", data[at]) >= 0 {
		at++
	}
	if at >= len(data) {
		return cutOff(data)
	}
	before := lastByte(data[:at])
	c := data[at]
	switch {
	case bytes.HasPrefix(data[at:], []byte("//")) || bytes.HasPrefix(data[at:], []byte("/*")) || c == '#':
		return CodeComment, at
	case c < ' ':
		return CodeLineInText, at
	case c == '\\':
		return CodeEscape, at
	case (c == '}' || c == ']') && before == ',':
		return CodeCommaExtra, at
	case c == '}' || c == ']':
		return CodeBracket, at
	case c == ',' && (before == ',' || before == '[' || before == '{' || before == ':'):
		return CodeCommaExtra, at
	case before == '"' && inchMark(data, at):
		return CodeInchMark, at
	}
	// The tokenizer says what it was waiting for; only that part of its text is
	// read, and every unknown wording ends in the general code.
	switch msg := err.Error(); {
	case strings.Contains(msg, "expecting ':'"):
		return CodeColon, at
	case strings.Contains(msg, "expecting ','"):
		return CodeComma, at
	case strings.Contains(msg, "within number") || strings.Contains(msg, "in number"):
		return CodeNumber, at
	case strings.Contains(msg, "escape"):
		return CodeEscape, at
	case strings.Contains(msg, "at start of value") || strings.Contains(msg, "at start of string"):
		return unquoted(data, at)
	}
	return CodeSyntax, at
}

// cutOff tells a file that ends in the middle from a text that was never
// closed.
func cutOff(data []byte) (string, int) {
	return CodeCutOff, max(0, len(bytes.TrimRight(data, " \t\r\n"))-1)
}

// unquoted tells what stands where a text, a number or true and false could.
func unquoted(data []byte, at int) (string, int) {
	for at < len(data) && strings.IndexByte(" \t\r\n", data[at]) >= 0 {
		at++
	}
	if at < len(data) {
		switch c := data[at]; {
		case c == '+' || c == '.' || c == '-' || c >= '0' && c <= '9':
			return CodeNumber, at
		case c == '\'' || c == '_' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80:
			return CodeQuotes, at
		}
	}
	return CodeSyntax, at
}

// inchMark tells whether the text that closed just before a place ended in a
// figure, as "4' 7-1/2"" does: the inch mark closed it.
func inchMark(data []byte, at int) bool {
	head := bytes.TrimRight(data[:at], " \t")
	if len(head) < 2 || bytes.ContainsRune(data[len(head):at], '\n') {
		return false
	}
	c := head[len(head)-2]
	return c >= '0' && c <= '9'
}

// lastByte gives the last byte that is no blank, 0 when there is none.
func lastByte(data []byte) byte {
	data = bytes.TrimRight(data, " \t\r\n")
	if len(data) == 0 {
		return 0
	}
	return data[len(data)-1]
}
