//go:build unix

package arrange_test

import (
	"context"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
)

var table = flag.String("table", "", "measure the search and write the table in docs/layouts.md anew: all, family, standing or reduced")

const (
	tableFile  = "../../docs/layouts.md"
	tableBegin = "<!-- table: go test ./engine/arrange -run Table -table all -timeout 1h -->\n"
	tableEnd   = "<!-- end of table -->\n"
)

// cpu gives the processor time that this process has taken.
func cpu(t testing.TB) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

var claims = map[arrange.Claim]string{
	arrange.Everything: "any number of elbows", arrange.Family: "up to four elbows", arrange.Capped: "a limit was met", arrange.Stopped: "stopped",
}

// timed runs the search on one core and gives the processor time in seconds. The
// limit is of processor time too, so that a busy machine takes nothing from it.
func timed(t *testing.T, i arrange.Input, limit time.Duration) (arrange.Outcome, float64) {
	t.Helper()
	i.Rules.Cores = 1
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	before := cpu(t)
	go func() {
		for ctx.Err() == nil && cpu(t)-before < limit {
			time.Sleep(20 * time.Millisecond)
		}
		cancel()
	}()
	out := arrange.Search(ctx, i, nil)
	return out, (cpu(t) - before).Seconds()
}

// Measured when asked; else the table is held against the family: a row for
// each vault, layouts where it fits and none where it does not.
func TestTable(t *testing.T) {
	if *table != "" {
		writeTable(t)
	}
	text, err := os.ReadFile(tableFile)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range family(t) {
		row := ""
		for line := range strings.Lines(string(text)) {
			if strings.HasPrefix(line, "| "+v.Name+" |") {
				row = line
			}
		}
		if row == "" {
			t.Errorf("no row for %s: go test ./engine/arrange -run Table -table family", v.Name)
			continue
		}
		cells := strings.Split(row, "|")
		if none := strings.TrimSpace(cells[4]) == "0"; v.Fits == "yes" && none || v.Fits == "no" && !none {
			t.Errorf("%s: fits %s, but the row says %s", v.Name, v.Fits, row)
		}
	}
}

func writeTable(t *testing.T) {
	book := newBook(t)
	data, err := os.ReadFile(tableFile)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	from, to := strings.Index(text, tableBegin), strings.Index(text, tableEnd)
	if from < 0 || to < from {
		t.Fatal("docs/layouts.md has no table to replace")
	}
	parts := strings.Split(text[from+len(tableBegin):to], "\n\n")
	if len(parts) != 3 {
		t.Fatal("the table has no lines of the standing set and of two sizes")
	}
	wanted := func(part string) bool { return *table == "all" || *table == part }
	if wanted("family") {
		parts[0] = familyRows(t, book)
	}
	if wanted("standing") {
		parts[1] = strings.TrimSuffix(standingRow(t), "\n")
	}
	if wanted("reduced") {
		parts[2] = reducedRow(t)
	}
	text = text[:from] + tableBegin + strings.Join(parts, "\n\n") + text[to:]
	if err := os.WriteFile(tableFile, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// familyRows measures the family, with the play that a contractor's search asks
// for, and gives a row for each of its vaults.
func familyRows(t *testing.T, book *catalog.Book) string {
	var b strings.Builder
	b.WriteString("| vault | what it is | s | layouts | first: elbows, joints, head, slide | claim | orders | nodes |\n|---|---|---|---|---|---|---|---|\n")
	for _, v := range family(t) {
		i := v.input(t, book)
		i.Rules.Play = true
		out, s := timed(t, i, time.Minute)
		first := "none: " + string(out.Stage)
		if len(out.Layouts) > 0 {
			w := out.Layouts[0].Worth
			first = fmt.Sprintf("%d, %d, %.3f m, %.0f mm", w.Elbows, w.Joints, float64(w.Head), float64(w.Slide)*1000)
		}
		fmt.Fprintf(&b, "| %s | %s | %.2f | %d | %s | %s | %d | %d |\n",
			v.Name, v.Why, s, len(out.Layouts), first, claims[out.Proof.Claim], out.Tally.Orders, out.Tally.Nodes)
		t.Logf("%s %.2f s", v.Name, s)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// standingRow measures the standing set and gives its line: the search alone, and
// what it takes longer where nothing fits and that is explained, or the pump is
// looked at leaned over.
func standingRow(t *testing.T) string {
	book := newBook(t)
	var times, explained []float64
	said, worst, slowest, three, fit, sure, changes := map[arrange.Claim]int{}, 0.0, "", 0, 0, 0, 0
	for _, d := range standing(t) {
		v, ok := d.vault(t, book)
		if !ok {
			continue
		}
		brief := v.input
		brief.Rules.Brief = true
		out, s := timed(t, brief, time.Minute)
		times = append(times, s)
		said[out.Proof.Claim]++
		if s > worst {
			worst, slowest = s, d.String()
		}
		if len(out.Layouts) > 0 {
			fit++
			if fewest(out.Layouts) >= 3 {
				three++
			}
		} else {
			whole, all := timed(t, v.input, 2*time.Minute)
			explained = append(explained, max(0, all-s))
			for _, c := range whole.Short {
				if changes++; c.Sure {
					sure++
				}
			}
			t.Logf("%s explained in %.2f s more", d, all-s)
		}
		t.Logf("%s %.2f s", d, s)
	}
	if len(times) == 0 || len(explained) == 0 {
		t.Fatal("no vault in the standing set, or none without a layout")
	}
	return fmt.Sprintf("Standing set, %d vaults, stopped after a minute each: %s (line `%s`). "+
		"Claims: %d over any number of elbows, %d up to four, %d met a limit, %d were stopped. %d have a layout, %d of these none with fewer than three elbows. "+
		"Of the %d without one, what would mend them takes longer by: %s; %d changes were told, %d of them proved least.\n",
		len(times), spread(times), slowest, said[arrange.Everything], said[arrange.Family], said[arrange.Capped], said[arrange.Stopped], fit, three,
		len(explained), spread(explained), changes, sure)
}

// spread tells how times are spread.
func spread(times []float64) string {
	slices.Sort(times)
	at := func(share float64) float64 { return times[min(len(times)-1, int(share*float64(len(times))))] }
	return fmt.Sprintf("median %.2f s, nine in ten below %.2f s, worst %.1f s", at(0.5), at(0.9), times[len(times)-1])
}

// reducedRow measures the vaults whose pipe changes size and gives their line.
func reducedRow(t *testing.T) string {
	book := newBook(t)
	var times []float64
	said, gaps := map[arrange.Claim]int{}, 0
	for _, d := range allReduced(t) {
		v, ok := reduced(t, book, d.seed, d.elbows)
		if !ok {
			continue
		}
		v.input.Rules.Elbows = 0
		out, s := timed(t, v.input, time.Minute)
		times = append(times, s)
		said[out.Proof.Claim]++
		gaps += out.Proof.Caps
	}
	if len(times) == 0 {
		t.Fatal("no vault whose pipe changes size")
	}
	return fmt.Sprintf("Two sizes, everything in both, %d vaults, up to four elbows, stopped after a minute each: %s. "+
		"Claims: %d over any number of elbows, %d up to four, %d met a limit, %d were stopped; %d orders were left undecided.\n",
		len(times), spread(times), said[arrange.Everything], said[arrange.Family], said[arrange.Capped], said[arrange.Stopped], gaps)
}
