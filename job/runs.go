package job

import (
	"slices"
	"strconv"

	"plashet/engine/trace"
)

// fromPump is the word for the pump at the start of a run.
const fromPump = "pump"

// runs holds where each run starts and ends: at the pump, at a junction (a
// name that another run ends or starts at) or at a watercourse; that water from
// the pump reaches it; and that each feed has a run.
func (c *checker) runs() {
	p := c.places()
	for i, r := range c.j.Runs {
		path := "/runs/" + strconv.Itoa(i)
		switch {
		case r.From == "" || r.To == "":
			continue // told as missing
		case r.From == r.To:
			c.add(path+"/to", CodeRunRound, trace.Str("found", snippet(r.To)))
			continue
		case r.To == fromPump:
			c.add(path+"/to", CodeRunIntoPump)
			continue
		}
		switch {
		case p.feeds[r.From]:
			c.add(path+"/from", CodeRunFromFeed, trace.Str("found", snippet(r.From)))
		case !p.ends[r.From]:
			c.noSuch(path+"/from", r.From, p.mayStart)
		case !p.wet[r.From]:
			c.add(path+"/from", CodeRunCutOff, trace.Str("found", snippet(r.From)))
		}
		if !p.feeds[r.To] && !p.starts[r.To] {
			c.noSuch(path+"/to", r.To, p.mayEnd)
		}
	}
	for i, w := range c.j.Watercourses {
		path := "/watercourses/" + strconv.Itoa(i)
		if w.Name == fromPump {
			c.add(path+"/name", CodeReserved, trace.Str("name", fromPump))
		}
		if len(c.j.Runs) > 0 && w.Name != "" && !p.fed[w.Name] {
			c.add(path, CodeFeedDry, trace.Str("name", snippet(w.Name)))
		}
	}
}

// places are the names that runs start and end at.
type places struct {
	feeds  map[string]bool // watercourses
	ends   map[string]bool // the pump, and junctions that runs end at
	starts map[string]bool // junctions that runs start at
	fed    map[string]bool // whatever a run ends at
	wet    map[string]bool // whatever water from the pump gets to

	mayStart, mayEnd []string // for messages, in the job's order
}

func (c *checker) places() places {
	p := places{
		feeds: map[string]bool{}, ends: map[string]bool{fromPump: true}, starts: map[string]bool{},
		fed: map[string]bool{}, wet: map[string]bool{fromPump: true}, mayStart: []string{fromPump},
	}
	for _, w := range c.j.Watercourses {
		if w.Name != "" && w.Name != fromPump {
			p.feeds[w.Name] = true
			p.mayEnd = append(p.mayEnd, w.Name)
		}
	}
	next := map[string][]string{}
	for _, r := range c.j.Runs {
		next[r.From] = append(next[r.From], r.To)
		p.fed[r.To] = true
		if r.To != "" && !p.feeds[r.To] && !p.ends[r.To] {
			p.ends[r.To] = true
			p.mayStart = append(p.mayStart, r.To)
		}
		if r.From != "" && r.From != fromPump && !p.starts[r.From] {
			p.starts[r.From] = true
			p.mayEnd = append(p.mayEnd, r.From)
		}
	}
	p.mayStart, p.mayEnd = slices.Clip(p.mayStart), slices.Clip(p.mayEnd)
	for queue := []string{fromPump}; len(queue) > 0; queue = queue[1:] {
		for _, to := range next[queue[0]] {
			if !p.wet[to] {
				p.wet[to] = true
				queue = append(queue, to)
			}
		}
	}
	return p
}
