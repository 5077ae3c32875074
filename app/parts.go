package app

import (
	"slices"
	"strings"

	"plashet/answer"
	"plashet/engine/trace"
)

// part is one part of a job in the order of the work.
type part struct {
	Key     string
	Roots   []string // paths of the job it holds
	Figures []string // beginnings of the IDs of its figures
	First   []string // fields shown at once though they are empty
}

// parts stand in the order of the work.
var parts = []part{
	{
		Key: "site", Roots: []string{"/name", "/client", "/place", "/date", "/units", "/paper", "/note", "/clientNote", "/numbers", "/site", "/survey"}, Figures: []string{"water."},
		First: []string{"/name", "/place", "/client", "/date", "/units", "/paper", "/note", "/clientNote", "/numbers/decimal", "/numbers/thousands", "/numbers/money", "/numbers/side", "/site/frost", "/site/children", "/site/currency", "/site/tariff", "/site/hoursPerDay"},
	},
	{
		Key: "pond", Roots: []string{"/pond"}, Figures: []string{"pond."},
		First: []string{"/pond/water", "/pond/rim", "/pond/depth", "/pond/outline/shape", "/pond/outline/length", "/pond/outline/width"},
	},
	{
		Key: "falls", Roots: []string{"/watercourses"}, Figures: []string{"feed.", "level.store."},
		First: []string{"/watercourses/*/name", "/watercourses/*/parts/*/lip/crest", "/watercourses/*/parts/*/lip/wanted"},
	},
	{
		Key: "pump", Roots: []string{"/use", "/pumps", "/furtherPumps", "/circuit"}, Figures: []string{"pump.", "circuit.", "other."},
		First: []string{"/use", "/pumps/*/watts", "/pumps/*/price", "/pumps/*/existing", "/circuit/length", "/circuit/conductor", "/circuit/breaker"},
	},
	{
		Key: "pipe", Roots: []string{"/runs"}, Figures: []string{"run."},
		First: []string{"/runs/*/rise", "/runs/*/existing", "/runs/*/throttle"},
	},
	{Key: "levels", Figures: []string{"level.", "motion."}},
	{
		Key: "vault", Roots: []string{"/vault", "/assembly", "/measured", "/assumptions"}, Figures: []string{"hole.", "assembly."},
		First: []string{"/vault/floor", "/vault/sill", "/vault/weirWidth", "/vault/length", "/vault/width"},
	},
	{Key: "cuts", Roots: []string{"/stock"}, First: []string{"/stock/kerf", "/stock/keep"}},
	{Key: "glue", Figures: []string{"glue."}},
	{
		Key: "material", Roots: []string{"/works", "/prices", "/offer"}, Figures: []string{"upkeep.", "takeoff."},
		First: []string{"/works/soil", "/works/linerOverlap", "/works/spareFittings"},
	},
}

func partOf(key string) *part {
	if i := slices.IndexFunc(parts, func(p part) bool { return p.Key == key }); i >= 0 {
		return &parts[i]
	}
	return nil
}

// partAt names the part that a path of the job belongs to; "" for none.
func partAt(path string) string {
	for _, p := range parts {
		for _, root := range p.Roots {
			if path == root || strings.HasPrefix(path, root+"/") {
				return p.Key
			}
		}
	}
	return ""
}

// tab is a part as the way round the job shows it.
type tab struct {
	Key, Title string
	Mark       string // of its worst open finding
	Count      int    // of faults, and of open findings that are more than a note
}

// heading tells what every page of a job shows.
func (a *app) heading(o *opened, here string) *heading {
	h := &heading{
		ID: o.rev.ID, Name: o.job.Name, Place: o.job.Place, Number: o.rev.Number, Archived: o.rev.Archived, Here: here, Last: o.rev.What,
		Onward: a.onward(o.job),
	}
	for _, p := range parts {
		t := tab{Key: p.Key, Title: a.say("app.part." + p.Key)}
		worst := 0
		for _, f := range o.doc.Findings {
			if f.Accepted == "" && partAt(f.Path) == p.Key && weight(f.Severity) > 1 {
				t.Count++
				worst = max(worst, weight(f.Severity))
			}
		}
		for _, f := range o.doc.Faults {
			if partAt(f.Path) == p.Key {
				t.Count++
				worst = weight(trace.Danger.String())
			}
		}
		t.Mark = mark(worst)
		h.Parts = append(h.Parts, t)
	}
	n := open(o.solved)
	h.Danger, h.Caution = n["danger"], n["caution"]
	return h
}

// reason is a figure opened: formula, values, source.
type reason struct {
	answer.Figure
	Name, Basis string
	Terms       []term
	Back        string
}

type term struct{ Symbol, Value, From, Href string }

func (a *app) reason(o *opened, f answer.Figure) reason {
	x := reason{Figure: f, Name: a.figureName(o, f.ID), Basis: a.Language.Word("print.basis." + string(f.Source.Basis)), Back: "/jobs/" + o.rev.ID}
	for _, t := range f.Terms {
		y := term{Symbol: t.Symbol, Value: t.Value.Text}
		switch {
		case strings.HasPrefix(t.From, "/"):
			y.From = a.where(o.job, t.From)
			if p := partAt(t.From); p != "" {
				y.Href = "/jobs/" + o.rev.ID + "/part/" + p + "#" + fieldID(t.From)
			}
		case t.From != "":
			y.From, y.Href = a.figureName(o, t.From), "/jobs/"+o.rev.ID+"/why/"+t.From
		}
		x.Terms = append(x.Terms, y)
	}
	return x
}

// figureName tells a figure's ID in words: what it is of by its name, and what
// it is where the catalogue has a word for it.
func (a *app) figureName(o *opened, id string) string {
	tokens := strings.Split(id, ".")
	last := tokens[len(tokens)-1]
	what := last
	if a.Language.Has("app.figure." + last) {
		what = a.Language.Word("app.figure." + last)
	}
	name := func(i int) string {
		if i >= len(tokens) {
			return ""
		}
		return tokens[i]
	}
	switch tokens[0] {
	case "run", "feed":
		list := a.where(o.job, "/"+map[string]string{"run": "runs", "feed": "watercourses"}[tokens[0]]+"/"+name(1))
		return list + ": " + what
	case "level":
		if len(tokens) == 4 && a.Language.Has("level.course."+tokens[1]) && a.Language.Has("level.moment."+tokens[2]) {
			return a.Language.Word("level.course."+tokens[1]) + ", " + a.Language.Word("level.moment."+tokens[2]) + ": " + what
		}
	}
	if len(tokens) > 1 {
		return strings.Join(tokens[:len(tokens)-1], " ") + ": " + what
	}
	return what
}
