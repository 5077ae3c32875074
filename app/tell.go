package app

import (
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
)

// mostTold is how many changes a line of the history names; the rest is counted.
const mostTold = 4

// describe tells in plain words how two states of a job differ; "" where they
// do not.
func (a *app) describe(before, after *job.Job) string {
	said := a.differences(before, after)
	if count := len(said); count > mostTold {
		said = append(said[:mostTold], a.say("app.change.more", "count", strconv.Itoa(count-mostTold)))
	}
	return strings.Join(said, "; ")
}

// differences likewise, each by itself.
func (a *app) differences(before, after *job.Job) []string {
	old, now := entries(before), entries(after)
	var said []string
	for path, text := range after.Entries() {
		was := old[path]
		switch was {
		case text:
		case "":
			said = append(said, a.say("app.change.new", "where", a.where(after, path), "new", text))
		default:
			said = append(said, a.say("app.change.set", "where", a.where(after, path), "old", was, "new", text))
		}
	}
	for path, was := range before.Entries() {
		if _, stays := now[path]; !stays {
			said = append(said, a.say("app.change.gone", "where", a.where(before, path), "old", was))
		}
	}
	return said
}

func entries(j *job.Job) map[string]string {
	m := map[string]string{}
	for path, text := range j.Entries() {
		m[path] = text
	}
	return m
}

// moved tells what a change moves in the answer: the flows, the worst that was
// found, the price of the material. "" where nothing shows.
func (a *app) moved(before *solved, next *job.Job) string {
	data, err := job.Encode(next)
	if err != nil {
		return ""
	}
	after := a.solve(digest(data), data)
	var said []string
	tell := func(name, was, now string) {
		if was != now && was != "" && now != "" {
			said = append(said, a.say("app.moved.was", "name", name, "before", was, "after", now))
		}
	}
	if len(before.doc.Feeds) == len(after.doc.Feeds) {
		for i, f := range after.doc.Feeds {
			tell(f.Name, before.doc.Feeds[i].Flow.Text, f.Flow.Text)
		}
	}
	for _, s := range after.doc.Levels {
		for _, b := range before.doc.Levels {
			if b.Course == s.Course && b.Moment == s.Moment && s.Moment == "stop" && s.Course == "kept" {
				tell(a.say("app.moved.rim"), b.Freeboard.Text, s.Freeboard.Text)
			}
		}
	}
	if x, y := before.doc.Total, after.doc.Total; x != nil && y != nil && x.Sum != nil && y.Sum != nil {
		tell(a.say("app.moved.money"), x.Sum.Text, y.Sum.Text)
	}
	was, now := open(before), open(after)
	for _, s := range []string{trace.Danger.String(), trace.Caution.String()} {
		if was[s] != now[s] {
			tell(a.say("app.moved."+s), strconv.Itoa(was[s]), strconv.Itoa(now[s]))
		}
	}
	return strings.Join(said, "; ")
}

// open counts the findings that are not accepted, by severity.
func open(s *solved) map[string]int {
	n := map[string]int{}
	for _, f := range s.doc.Findings {
		if f.Accepted == "" {
			n[f.Severity]++
		}
	}
	return n
}
