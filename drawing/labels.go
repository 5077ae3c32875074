package drawing

import (
	"plashet/engine/trace"
	"plashet/words"
)

// say fills a label of the catalogue; args are names and what stands for them,
// in turn. Without a language it is English.
func (in *Input) say(code string, args ...string) string {
	m := trace.Message{Code: "draw." + code}
	for i := 0; i+1 < len(args); i += 2 {
		m.Args = append(m.Args, trace.Str(args[i], args[i+1]))
	}
	return in.language().Say(m, in.Result.Units)
}

func (in *Input) language() *words.Language {
	if in.Say == nil {
		return words.English()
	}
	return in.Say
}

func (p *page) say(code string, args ...string) string { return p.in.say(code, args...) }
