package sqldb_test

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"plashet/store"
	"plashet/store/sqldb"
)

// killed is the variable by which a child knows the file it is to save to.
const killed = "PLASHET_KILLED"

// TestKill ends a program that saves, with SIGKILL, at any moment: every save
// that it acknowledged must be there with its bytes, and none by half. KILLS
// sets how many times; bench/kill/run does it 200 times. What a power cut does
// to the disk's own memory it cannot show.
func TestKill(t *testing.T) {
	if at := os.Getenv(killed); at != "" {
		saveOn(at)
		return
	}
	times := 20
	if n, err := strconv.Atoi(os.Getenv("KILLS")); err == nil {
		times = n
	}
	seed := rand.Uint64()
	t.Log("seed", seed)
	draw := rand.New(rand.NewPCG(seed, 0))
	at := filepath.Join(t.TempDir(), "killed.db")
	acknowledged := map[string]int{} // the newest revision of each document
	total, more := 0, 0
	for round := range times {
		child := exec.Command(os.Args[0], "-test.run=^TestKill$")
		child.Env = append(os.Environ(), killed+"="+at)
		out, err := child.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := child.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		for left := 1 + draw.IntN(60); lines.Scan(); left-- {
			if left == 0 {
				_ = child.Process.Kill()
			}
			var id string
			var number int
			if n, _ := fmt.Sscanf(lines.Text(), "saved %s %d", &id, &number); n == 2 { // the last may be half printed
				acknowledged[id], total = number, total+1
			} else if left > 0 {
				t.Fatalf("round %d: %s", round, lines.Text())
			}
		}
		_ = child.Wait()
		more += whole(t, at, acknowledged)
	}
	if total < times {
		t.Fatalf("%d saves in %d rounds: nothing was tried", total, times)
	}
	t.Logf("%d kills, %d acknowledged saves, all there; %d were written but not yet acknowledged", times, total, more)
}

// bytesOf are the bytes of a revision, long enough to need several pages.
func bytesOf(id string, number int) []byte {
	return bytes.Repeat([]byte(fmt.Sprint(id, " ", number, "\n")), 2000)
}

// saveOn saves until it is killed, and says so after each save.
func saveOn(at string) {
	ctx := context.Background()
	s, err := sqldb.Open(ctx, at)
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	for i := 0; ; i++ {
		id := fmt.Sprint("d", i%5)
		base := 0
		if r, err := s.Get(ctx, id); err == nil {
			base = r.Number
		}
		if _, err := s.Put(ctx, store.Job, id, base, store.Change{Data: bytesOf(id, base+1)}); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		fmt.Println("saved", id, base+1)
	}
}

// whole holds the file against what was acknowledged, and tells how many saves
// stand there beyond.
func whole(t *testing.T, at string, acknowledged map[string]int) (more int) {
	t.Helper()
	ctx := context.Background()
	s := open(t, at)
	defer func() { _ = s.Close() }()
	entries, err := s.Since(ctx, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	stands := map[string]int{}
	for _, e := range entries {
		stands[e.ID] = e.Number
		for n := max(1, e.Number-20); n <= e.Number; n++ {
			r, err := s.At(ctx, e.ID, n)
			if err != nil || !bytes.Equal(r.Data, bytesOf(e.ID, n)) {
				t.Fatalf("revision %d of %s is not whole: %v", n, e.ID, err)
			}
		}
		if _, err := s.At(ctx, e.ID, e.Number+1); err == nil {
			t.Fatalf("%s has a revision past its newest", e.ID)
		}
	}
	for id, n := range acknowledged {
		if stands[id] < n {
			t.Fatalf("revision %d of %s was acknowledged; %d stands", n, id, stands[id])
		}
		if stands[id] > n {
			more++
			acknowledged[id] = stands[id]
		}
	}
	return more
}
