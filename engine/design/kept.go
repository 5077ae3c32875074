package design

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of a layout that was kept.
const (
	// FindKeptChanged: what the kept layout stands on was changed. Args: what
	// (in the job's words), was and now (as typed; left out where there is nothing).
	FindKeptChanged = "design.kept.changed"
	// FindKeptMany: further such changes. Args: count.
	FindKeptMany = "design.kept.many"
	// FindKeptTables: nothing typed was changed, but the sizes worked with were:
	// those of the tables, or the habits taken where none are set. No args.
	FindKeptTables = "design.kept.tables"
	// FindKeptCut: a piece of the printed cut card would now be cut otherwise.
	// Args: piece, was, now, by (now less was), wasFrom and wasTo, from and to
	// (the four only where it runs between other parts now).
	FindKeptCut = "design.kept.cut"
	// FindKeptGone: a piece of the printed card is there no more. Args: piece, was, from, to.
	FindKeptGone = "design.kept.gone"
	// FindKeptMore: a piece that the printed card does not have. Args: piece, now, from, to.
	FindKeptMore = "design.kept.more"
	// FindKeptFails: the kept layout does not hold any more. Args: count (of
	// dangers and faults), checks (their codes).
	FindKeptFails = "design.kept.fails"
)

// mostKept is how many changes are told one by one.
const mostKept = 20

// keptEntry is an entry of the job that a laid assembly stands on.
type keptEntry struct{ alias, path, value string }

// keptEntries lists what the assembly stands on: the vault's inside, the pump in
// its attitude, the assembly, the fitter's own measures of its fittings and the
// habits that are set. What is in a list whose order means nothing goes by name.
func (m *model) keptEntries(pump int) []keptEntry {
	var out []keptEntry
	own, port := at("/pumps", pump), at("/pumps", pump)+"/port/"
	attitude := ""
	for i, t := range m.job.Pumps[pump].Attitudes {
		if t.Name == m.job.Assembly.Attitude || m.job.Assembly.Attitude == "" {
			attitude = at(own+"/attitudes", i) + "/"
			break
		}
	}
	used := map[job.PipeName]bool{}
	for _, l := range m.job.Assembly.Parts {
		n := m.fitted(l.Fitting, l.Size, m.job.Assembly.Pipe)
		used[job.PipeName{Kind: n.Fitting, Size: n.Size}] = true
	}
	for path, value := range m.job.Entries() {
		alias := ""
		switch {
		case begins(path, "/vault"):
			if !slices.ContainsFunc([]string{"/vault/floor", "/vault/sill", "/vault/weirWidth", "/vault/screenLoss", "/vault/rated", "/vault/outlet/undrilled"}, func(p string) bool { return begins(path, p) }) {
				alias = path
			}
		case path == own+"/name":
			alias = "/pump/name"
		case strings.HasPrefix(path, port):
			alias = "/pump/port/" + strings.TrimPrefix(path, port)
		case attitude != "" && strings.HasPrefix(path, attitude):
			alias = "/pump/attitude/" + strings.TrimPrefix(path, attitude)
		case begins(path, "/assembly"):
			if !begins(path, "/assembly/search") && !begins(path, "/assembly/kept") && path != "/assembly/closing/gap" && !strings.HasSuffix(path, "/glued") {
				alias = path
			}
		case begins(path, "/measured"):
			alias = m.keptMeasure(path, used)
		case begins(path, "/assumptions/*/value"):
			if a := m.job.Assumptions[indexIn(path)]; strings.HasPrefix(a.Code, "assume.layout.") {
				alias = "/assumptions/" + a.Code
			}
		}
		if alias != "" {
			out = append(out, keptEntry{alias, path, value})
		}
	}
	return out
}

// keptMeasure names an own measure by its fitting; "" for one that no part of
// the assembly is of, and for what changes no length.
func (m *model) keptMeasure(path string, used map[job.PipeName]bool) string {
	o := m.job.Measured[indexIn(path)]
	n := m.fitted(o.Fitting, o.Size, m.job.Assembly.Pipe)
	field := path[strings.LastIndexByte(path, '/')+1:]
	if !used[job.PipeName{Kind: n.Fitting, Size: n.Size}] || !slices.Contains([]string{"socket", "toStop", "hub", "attitudes"}, field) {
		return ""
	}
	return "/measured/" + strings.ReplaceAll(n.Fitting+" "+n.Size, "/", "~1") + "/" + field
}

// indexIn gives the index behind the first step of a path, 0 where there is none.
func indexIn(path string) int {
	_, rest := first(path)
	step, _ := first(rest)
	i, err := strconv.Atoi(step)
	if err != nil {
		return 0
	}
	return i
}

// kept holds the laid assembly against what it was when it was kept, and gives
// what it finds to be a danger: a cut card that is printed does not change in
// silence.
func (m *model) kept(pump int, in *layout.Input, a *layout.Assembly, dangers []trace.Finding, faults []trace.Fault) []trace.Finding {
	k := &m.job.Assembly.Kept
	if len(k.Inputs) == 0 && len(k.Pieces) == 0 {
		return nil
	}
	changed := m.keptChanges(pump, k)
	if changed == 0 && k.Sizes != "" && k.Sizes != sizesDigest(in, a) {
		m.remark("/assembly/kept", trace.Caution, trace.Message{Code: FindKeptTables})
	}
	if n := len(dangers) + len(faults); n > 0 {
		var checks []string
		for _, f := range dangers {
			checks = append(checks, f.Code)
		}
		for _, f := range faults {
			checks = append(checks, f.Code)
		}
		slices.Sort(checks)
		m.remark("/assembly/kept", trace.Caution, trace.Message{Code: FindKeptFails, Args: []trace.Arg{
			trace.Num("count", unit.Ratio(n), unit.KindCount), trace.Str("checks", strings.Join(slices.Compact(checks), ", ")),
		}})
	}
	if !a.Laid {
		return nil
	}
	before := len(m.out.Findings)
	m.keptPieces(k, a)
	return slices.Clone(m.out.Findings[before:])
}

// keptChanges tells each entry that is not as it was, and counts them.
func (m *model) keptChanges(pump int, k *job.Kept) int {
	was := map[string]string{}
	for _, e := range k.Inputs {
		was[e.Path] = e.Value
	}
	n := 0
	tell := func(path, old, now string) {
		if n++; n > mostKept {
			return
		}
		args := []trace.Arg{trace.At("what", m.job.PlaceOf(path))}
		if old != "" {
			args = append(args, trace.Str("was", old))
		}
		if now != "" {
			args = append(args, trace.Str("now", now))
		}
		m.find(trace.Finding{Message: trace.Message{Code: FindKeptChanged, Args: args}, Path: path, Severity: trace.Caution})
	}
	for _, e := range m.keptEntries(pump) {
		old, there := was[e.alias]
		delete(was, e.alias)
		if !there || !m.job.Alike(e.path, old, e.value) {
			tell(e.path, old, e.value)
		}
	}
	for _, e := range k.Inputs { // in their order
		if old, there := was[e.Path]; there {
			tell(e.Path, old, "")
		}
	}
	if n > mostKept {
		m.find(trace.Finding{Message: trace.Message{Code: FindKeptMany, Args: []trace.Arg{trace.Num("count", unit.Ratio(n-mostKept), unit.KindCount)}}, Path: "/assembly/kept", Severity: trace.Caution})
	}
	return n
}

// alikeCut is the difference below which two lengths are cut alike.
const alikeCut = 1e-6 // m

// keptPieces holds the pieces against the printed card. The closing piece may
// differ once its gap was measured in place: the card says that it will.
func (m *model) keptPieces(k *job.Kept, a *layout.Assembly) {
	danger := func(code string, args ...trace.Arg) {
		m.find(trace.Finding{Message: trace.Message{Code: code, Args: args}, Path: "/assembly/kept", Severity: trace.Danger})
	}
	printed, cuts := map[string]bool{}, m.cuts(a)
	for _, p := range k.Pieces {
		printed[p.Mark] = true
		i := slices.IndexFunc(cuts, func(q layout.Piece) bool { return q.Mark == p.Mark })
		if i < 0 {
			danger(FindKeptGone, trace.Str("piece", p.Mark), trace.Num("was", p.Cut.SI, unit.KindTape), trace.Str("from", p.From), trace.Str("to", p.To))
			continue
		}
		q := &cuts[i]
		moved := p.From != q.From || p.To != q.To
		if !moved && (q.InPlace || q.Made || math.Abs(float64(q.Cut-p.Cut.SI)) < alikeCut) {
			continue
		}
		args := []trace.Arg{
			trace.Str("piece", p.Mark), trace.Num("was", p.Cut.SI, unit.KindTape), trace.Num("now", q.Cut, unit.KindTape), trace.Num("by", q.Cut-p.Cut.SI, unit.KindTape),
		}
		if moved {
			args = append(args, trace.Str("wasFrom", p.From), trace.Str("wasTo", p.To), trace.Str("from", q.From), trace.Str("to", q.To))
		}
		danger(FindKeptCut, args...)
	}
	for i := range cuts {
		if q := &cuts[i]; !printed[q.Mark] && !q.Made {
			danger(FindKeptMore, trace.Str("piece", q.Mark), trace.Num("now", q.Cut, unit.KindTape), trace.Str("from", q.From), trace.Str("to", q.To))
		}
	}
}
