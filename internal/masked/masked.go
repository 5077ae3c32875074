// Package masked gives the example jobs with every name and note of theirs
// replaced by letters that are a word in no language, so that a test finds the
// tool's own words in what was made of them. It is for tests.
package masked

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"plashet/demo"
)

// free are the keys whose texts are the job's own; ends of runs are too, but for
// the pump.
var free = []string{"name", "note", "clientNote", "place", "client", "text", "task", "reason", "from", "to", "scope", "by"}

// kept are the keys whose texts the tool gives, whatever they say.
var kept = []string{"format", "units", "shape", "kind", "source", "soil", "per", "unit", "fitting", "thread", "points", "wall", "sheetAt", "group", "nextBy", "size", "attitudes", "item", "currency", "path", "code"}

// told are texts of free keys that are the tool's all the same.
var told = []string{"pump", "plumbing", "earthwork", "water", "whole"}

var place = regexp.MustCompile(`@[^-+]*[^-+ ]`)

// Job gives an example's file, its own words replaced.
func Job(name string) []byte {
	var doc any
	if err := json.Unmarshal(demo.Job(name), &doc); err != nil {
		panic(err) // embedded, and read by other tests
	}
	m := mask{}
	m.gather("", doc)
	out, err := json.Marshal(m.put("", doc))
	if err != nil {
		panic(err)
	}
	return out
}

// mask has what stands for each text.
type mask map[string]string

func (m mask) gather(key string, v any) {
	switch v := v.(type) {
	case map[string]any:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			m.gather(k, v[k])
		}
	case []any:
		for _, x := range v {
			m.gather(key, x)
		}
	case string:
		if slices.Contains(free, key) && v != "" && (!slices.Contains(told, v) || key == "name") && m[v] == "" {
			m[v] = "Zq" + strings.Repeat("x", 1+len(m)/10) + fmt.Sprint(len(m)%10) + "zq"
		}
	}
}

func (m mask) put(key string, v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			v[k] = m.put(k, x)
		}
	case []any:
		for i, x := range v {
			v[i] = m.put(key, x)
		}
	case string:
		switch {
		case slices.Contains(kept, key), (key == "from" || key == "to") && v == "pump":
			return v
		case m[v] != "":
			return m[v]
		case strings.HasPrefix(v, "@"):
			return place.ReplaceAllStringFunc(v, func(s string) string {
				if to := m[s[1:]]; to != "" {
					return "@" + to
				}
				return s
			})
		}
	}
	return v
}
