package job

import (
	"bytes"
	"errors"
	"io"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

const blanks = " \t\r\n"

// explain says in one code what breaks JSON's grammar at a place, looking at
// what people do when they write a file by hand. It gives the place the reader
// should look at.
func explain(data []byte, at int, err error) (string, int) {
	switch {
	case errors.Is(err, errExtra):
		return CodeExtra, at
	case strings.Contains(err.Error(), "max depth"): // the tokenizer's own limit, in a part that is passed over
		return CodeTooDeep, at
	case errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) || at >= len(data):
		return cutOff(data)
	case data[at] < ' ' && strings.Contains(err.Error(), " in string"):
		return CodeLineInText, at
	}
	at += len(data[at:]) - len(bytes.TrimLeft(data[at:], blanks))
	if at >= len(data) {
		return cutOff(data)
	}
	rest, before := data[at:], lastByte(data[:at])
	switch c := rest[0]; {
	case bytes.HasPrefix(rest, []byte("//")) || bytes.HasPrefix(rest, []byte("/*")) || c == '#':
		return CodeComment, at
	case c == '\\':
		return CodeEscape, at
	case c == ',' && strings.IndexByte(",[{:", before) >= 0:
		return CodeCommaExtra, at
	case c == ',' && strings.IndexByte("}]", firstByte(rest[1:])) >= 0:
		return CodeCommaExtra, at
	case before == '"' && inchMark(data, at):
		return CodeInchMark, at
	}
	word := wordStart(data, at)
	closes := rest[0] == '}' || rest[0] == ']'
	switch {
	case closes && (word == at || jsontext.Value(data[word:at]).IsValid()):
		return CodeBracket, at
	case word < at || errors.Is(err, jsontext.ErrNonStringName):
		return loose(data, word)
	}
	// The tokenizer says what it was waiting for; only that part of its text is
	// read, and every unknown wording ends in the general code.
	switch msg := err.Error(); {
	case strings.Contains(msg, "expecting ':'"):
		return CodeColon, at
	case strings.Contains(msg, "expecting ','"):
		return CodeComma, at
	case strings.Contains(msg, "escape"):
		return CodeEscape, at
	}
	return loose(data, at)
}

// cutOff points at the last sign of a file that ends in the middle.
func cutOff(data []byte) (string, int) {
	return CodeCutOff, max(0, len(bytes.TrimRight(data, blanks))-1)
}

// loose tells what stands where a text between quotation marks, a number, or
// true and false could: a number badly written, or a text without its marks.
func loose(data []byte, at int) (string, int) {
	word := data[at:]
	if end := bytes.IndexAny(word, ",:]}\n"); end >= 0 {
		word = word[:end]
	}
	word = bytes.TrimSpace(word)
	c := firstByte(word)
	if bytes.Contains(word, []byte("NaN")) || bytes.Contains(word, []byte("Inf")) {
		return CodeNumber, at
	}
	switch figures := c >= '0' && c <= '9' || strings.IndexByte("+-.", c) >= 0; {
	case figures && !bytes.ContainsFunc(word, func(r rune) bool { return !strings.ContainsRune("0123456789.+-eE", r) }):
		return CodeNumber, at
	case figures || c == '\'' || c == '_' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80:
		return CodeQuotes, at
	}
	return CodeSyntax, at
}

// wordStart goes back to where a word without quotation marks starts: the
// tokenizer may have read a part of it, "60" of "60 ft" or "n" of "name".
func wordStart(data []byte, at int) int {
	start := at
	for start > 0 && (isWord(data[start-1]) || (data[start-1] == ' ' && start > 1 && isWord(data[start-2]))) {
		start--
	}
	return start
}

func isWord(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || strings.IndexByte("+-._", c) >= 0
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

// firstByte and lastByte give the first and last byte that is no blank, 0 when
// there is none.
func firstByte(data []byte) byte {
	if data = bytes.TrimLeft(data, blanks); len(data) > 0 {
		return data[0]
	}
	return 0
}

func lastByte(data []byte) byte {
	if data = bytes.TrimRight(data, blanks); len(data) > 0 {
		return data[len(data)-1]
	}
	return 0
}
