package app

import (
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Problem is an error as RFC 9457 wants it told, with what a program needs to
// mend it.
type Problem struct {
	Type     string         `json:"type" doc:"a name for the kind of error, made of its code"`
	Title    string         `json:"title" doc:"the status in words"`
	Status   int            `json:"status" doc:"the HTTP status"`
	Detail   string         `json:"detail" doc:"what went wrong, in one sentence"`
	Code     string         `json:"code" doc:"stable code of the sentence"`
	Where    string         `json:"where,omitempty" doc:"the path in the job, the parameter or the header that it is about"`
	Expected string         `json:"expected,omitempty" doc:"what would be right"`
	Example  string         `json:"example,omitempty" doc:"of how it is written"`
	Revision int            `json:"revision,omitempty" doc:"the newest revision, where a change started from an older one"`
	Faults   []answer.Fault `json:"faults,omitempty" doc:"all that is wrong with a job, where there is more than one thing"`
	Instance string         `json:"instance,omitempty" doc:"a reference to tell, of what failed on our side"`
}

func (p Problem) Error() string { return p.Detail }

// Tell answers a request with it.
func (p Problem) Tell(w http.ResponseWriter) {
	p.Type, p.Title = "urn:plashet:problem:"+p.Code, http.StatusText(p.Status)
	data, _ := json.Marshal(p) // of texts and numbers
	_ = sendBytes(w, p.Status, "application/problem+json", data)
}

// ForOthers tells that a request is one to the interface for other programs,
// which are answered with problems and not with pages.
func ForOthers(r *http.Request) bool {
	return r.URL.Path == underInterface || strings.HasPrefix(r.URL.Path, underInterface+"/")
}

// wrong tells that something in a request is not as it must be.
func (a *app) wrong(status int, code, where, found, expected, example string) error {
	return Problem{
		Status: status, Code: code, Where: where, Expected: expected, Example: example,
		Detail: a.say(code, "where", where, "found", short(found), "expected", expected, "example", example),
	}
}

// short cuts what was sent to a readable length.
func short(s string) string {
	const most = 60
	if r := []rune(strings.ToValidUTF8(s, "\uFFFD")); len(r) > most {
		return string(r[:most]) + "…"
	}
	return strings.ToValidUTF8(s, "\uFFFD")
}

// faulty tells what is wrong with a job that was sent: the first fault, and all
// of them where there are more.
func (a *app) faulty(faults []trace.Fault, s unit.System) error {
	if len(faults) == 0 {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.form")
	}
	var list []answer.Fault
	for _, f := range faults {
		list = append(list, answer.FaultOf(f, s, a.Language))
	}
	f := list[0]
	x := Problem{Status: http.StatusUnprocessableEntity, Code: f.Code, Detail: f.Text, Where: f.Path, Expected: f.Expected, Example: f.Example}
	if len(list) > 1 {
		x.Faults = list
	}
	return x
}

// param is a part of an address or a header that a request may have.
type param struct {
	name, in, doc string // in: path, query or header
	words         []string
	whole         bool    // a whole number
	number        bool    // any number
	most          float64 // of a number; least is 0, of a whole one 1 unless none
	none          bool    // 0 is one of them
	example       string
	must, many    bool
}

// expects says what a parameter may be.
func (p *param) expects() string {
	least := 1
	if p.none {
		least = 0
	}
	switch {
	case len(p.words) > 0:
		return strings.Join(p.words, ", ")
	case p.whole && p.most > 0:
		return strconv.Itoa(least) + "…" + strconv.FormatFloat(p.most, 'f', -1, 64)
	case p.whole:
		return strconv.Itoa(least) + "…"
	case p.number:
		return "0…" + strconv.FormatFloat(p.most, 'f', -1, 64)
	}
	return ""
}

// takes tells that a text is one the parameter may be.
func (p *param) takes(text string) bool {
	switch {
	case len(p.words) > 0:
		return slices.Contains(p.words, text)
	case p.whole:
		n, err := strconv.ParseInt(text, 10, 64)
		return err == nil && (n >= 1 || n == 0 && p.none) && (p.most == 0 || float64(n) <= p.most)
	case p.number:
		n, err := strconv.ParseFloat(text, 64)
		return err == nil && n >= 0 && n <= p.most
	}
	return true
}

// heldParams holds the query of a request against what may stand in it.
func (a *app) heldParams(list []param, r *http.Request) error {
	q, err := url.ParseQuery(r.URL.RawQuery)
	if err != nil {
		return a.wrong(http.StatusBadRequest, "app.api.query", "", r.URL.RawQuery, "name=value", "limit=20")
	}
	var known []string
	for i := range list {
		p := &list[i]
		if p.in != inQuery {
			continue
		}
		known = append(known, p.name)
		for _, text := range q[p.name] {
			if !p.takes(text) || len(q[p.name]) > 1 && !p.many {
				return a.wrong(http.StatusBadRequest, "app.api.param", p.name, strings.Join(q[p.name], " "), p.expects(), p.example)
			}
		}
	}
	for name := range q {
		if !slices.Contains(known, name) {
			if len(known) == 0 {
				return a.wrong(http.StatusBadRequest, "app.api.noparams", short(name), name, "", "")
			}
			return a.wrong(http.StatusBadRequest, "app.api.unknown", short(name), name, strings.Join(known, ", "), known[0])
		}
	}
	return nil
}

const (
	inPath   = "path"
	inQuery  = "query"
	inHeader = "header"
)
