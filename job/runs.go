package job

import (
	"slices"
	"strconv"

	"plashet/engine/trace"
)

// FromPump is the word for the pump at the start of a run.
const FromPump = "pump"

// runs holds where each run starts and ends: at a pump, at a junction (a
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
		case p.pumps[r.To]:
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
	c.furtherPumps(p)
	for i, w := range c.j.Watercourses {
		path := "/watercourses/" + strconv.Itoa(i)
		if p.pumps[w.Name] {
			c.add(path+"/name", CodeReserved, trace.Str("name", w.Name))
		}
		if len(c.j.Runs) > 0 && w.Name != "" && !p.fed[w.Name] {
			c.add(path, CodeFeedDry, trace.Str("name", snippet(w.Name)))
		}
	}
}

// places are the names that runs start and end at.
type places struct {
	feeds  map[string]bool // watercourses
	pumps  map[string]bool // the pump in use and further pumps
	ends   map[string]bool // pumps, and junctions that runs end at
	starts map[string]bool // junctions that runs start at
	fed    map[string]bool // whatever a run ends at
	wet    map[string]bool // whatever water from a pump gets to

	mayStart, mayEnd []string // for messages, in the job's order
}

func (c *checker) places() places {
	p := places{
		feeds: map[string]bool{}, pumps: map[string]bool{FromPump: true}, ends: map[string]bool{FromPump: true}, starts: map[string]bool{},
		fed: map[string]bool{}, wet: map[string]bool{FromPump: true}, mayStart: []string{FromPump},
	}
	queue := []string{FromPump}
	next := map[string][]string{}
	for _, f := range c.j.FurtherPumps {
		if f.Name == "" || p.pumps[f.Name] {
			continue // told as missing, or as named twice
		}
		p.pumps[f.Name], p.ends[f.Name] = true, true
		p.mayStart = append(p.mayStart, f.Name)
		if f.From == "" {
			p.wet[f.Name] = true
			queue = append(queue, f.Name)
			continue
		}
		next[f.From] = append(next[f.From], f.Name)
		p.start(f.From)
	}
	for _, w := range c.j.Watercourses {
		if w.Name != "" && !p.pumps[w.Name] {
			p.feeds[w.Name] = true
			p.mayEnd = append(p.mayEnd, w.Name)
		}
	}
	for _, r := range c.j.Runs {
		next[r.From] = append(next[r.From], r.To)
		p.fed[r.To] = true
		if r.To != "" && !p.feeds[r.To] && !p.ends[r.To] {
			p.ends[r.To] = true
			p.mayStart = append(p.mayStart, r.To)
		}
		p.start(r.From)
	}
	p.mayStart, p.mayEnd = slices.Clip(p.mayStart), slices.Clip(p.mayEnd)
	for ; len(queue) > 0; queue = queue[1:] {
		for _, to := range next[queue[0]] {
			if !p.wet[to] {
				p.wet[to] = true
				queue = append(queue, to)
			}
		}
	}
	return p
}

// start notes a place that a run, or a pump after a pump, takes its water from.
func (p *places) start(name string) {
	if name != "" && !p.pumps[name] && !p.starts[name] {
		p.starts[name] = true
		p.mayEnd = append(p.mayEnd, name)
	}
}

// furtherPumps holds which pump each is, where it draws from, and that a run
// leaves it.
func (c *checker) furtherPumps(p places) {
	leaves := map[string]bool{}
	for _, r := range c.j.Runs {
		leaves[r.From] = true
	}
	names := c.pumpNames()
	for i, f := range c.j.FurtherPumps {
		path := "/furtherPumps/" + strconv.Itoa(i)
		if f.Name == FromPump {
			c.add(path+"/name", CodeReserved, trace.Str("name", FromPump))
		}
		if f.Pump != "" && !slices.Contains(names, f.Pump) {
			c.noSuch(path+"/pump", f.Pump, names)
		}
		switch {
		case f.From == "":
		case p.feeds[f.From] || p.pumps[f.From] || !p.ends[f.From]:
			c.noSuch(path+"/from", f.From, p.junctions())
		case !p.wet[f.From]:
			c.add(path+"/from", CodeRunCutOff, trace.Str("found", snippet(f.From)))
		}
		if f.Name != "" && f.Name != FromPump && !leaves[f.Name] {
			c.add(path, CodePumpIdle, trace.Str("name", snippet(f.Name)))
		}
	}
}

// junctions are the places that runs end at and that are no watercourse.
func (p *places) junctions() []string {
	var out []string
	for _, name := range p.mayStart {
		if !p.pumps[name] {
			out = append(out, name)
		}
	}
	return out
}
