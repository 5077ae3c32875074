package words

import "testing"

func TestPlain(t *testing.T) {
	for in, want := range map[string]string{
		"Hillside cascade, 3/4″ – ½": "Hillside cascade, 3/4″ – ½",
		"\x1b[31mred\x1b[0m":         "\uFFFD[31mred\uFFFD[0m",
		"one\ntwo\r\n[info]\tthree":  "one two  [info] three",
		"turn\u202Eed":               "turn\uFFFDed",
		"\u0085\u200b":               "\uFFFD\uFFFD",
		"":                           "",
	} {
		if got := Plain(in); got != want {
			t.Errorf("%q gives %q, want %q", in, got, want)
		}
	}
}
