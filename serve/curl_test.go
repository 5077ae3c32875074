package serve

import (
	"context"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"plashet/app"
	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/store/memory"
	"plashet/words"
)

// The lines of docs/exchange.md that ask over HTTP do what they say: each is run
// by curl against a server, and must be answered with its status, 200 where it
// names none.
func TestExamplesOfTheInterface(t *testing.T) {
	if _, err := exec.LookPath("curl"); err != nil {
		t.Skip("no curl here")
	}
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	runs := NewBeside(ctx, 1, func(_ string, err error) { t.Error(err) })
	defer runs.Wait()
	defer stop()
	n := 0
	given := app.Given{
		Store: memory.New(), Book: book, Languages: words.Languages(), Now: time.Now, NewID: func() string { n++; return "x" + strconv.Itoa(n) },
		Device: Device, Remember: Remember, Log: func(_ string, err error) { t.Error(err) }, Runs: runs,
	}
	if err := app.Seed(ctx, given); err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	s := httptest.NewServer(Guard(app.New(given), known, "CODE"))
	defer s.Close()
	known[strings.TrimPrefix(s.URL, "http://")] = true

	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "garden.json"), demo.Job("courtyard-rill"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, rows := range map[string]string{
		"list.csv":  "Item,Unit,Price\ncoupling 2,each,1.85\n",
		"pumps.csv": "Name,Flow (gpm),Head (ft)\nShelf Q,0,20\nShelf Q,30,12\nShelf Q,60,0\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(rows), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	text, err := os.ReadFile(filepath.Join("..", "docs", "exchange.md"))
	if err != nil {
		t.Fatal(err)
	}
	lines := regexp.MustCompile(`(?m)^curl .*$`).FindAllString(string(text), -1)
	if len(lines) < 20 {
		t.Fatalf("%d lines", len(lines))
	}
	for _, line := range lines {
		line, want, named := strings.Cut(line, "   # ")
		if !named {
			want = "200"
		}
		run := strings.ReplaceAll(line, "http://127.0.0.1:7340", s.URL)
		if !strings.Contains(run, "Authorization") { // the others are for a server that asks for none
			run = strings.Replace(run, "curl ", "curl -H 'Authorization: Bearer CODE' ", 1)
		}
		cmd := exec.Command("bash", "-c", run+" -w '\\n%{http_code} %{content_type}'")
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Errorf("%s: %v\n%s", line, err, out)
			continue
		}
		told := string(out[strings.LastIndexByte(string(out), '\n')+1:])
		if code, kind, _ := strings.Cut(told, " "); code != want || want >= "400" != strings.Contains(kind, "problem+json") {
			t.Errorf("%s: %s, want %s\n%.600s", line, told, want, out)
		}
	}
	for _, name := range []string{"curve.svg", "cut.pdf", "cuts.csv", "mine.json"} {
		if data, err := os.ReadFile(filepath.Join(dir, name)); err != nil || len(data) < 200 {
			t.Errorf("%s: %d bytes, %v", name, len(data), err)
		}
	}
	if data, err := os.ReadFile(filepath.Join(dir, "shelf.csv")); err != nil || !strings.Contains(string(data), "Shelf Q") {
		t.Errorf("the pump taken in is not on the shelf: %s %v", data, err)
	}
}
