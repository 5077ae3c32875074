package serve

import (
	"context"
	"net/http/httptest"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"time"

	"plashet/app"
	"plashet/engine/catalog"
	"plashet/store/memory"
	"plashet/words"
)

// The model is drawn by a real browser under the policy that every page has; a
// browser without WebGL keeps the drawing.
func TestModelInABrowser(t *testing.T) {
	browser, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("NEED_BROWSER") != "" {
			t.Fatal(err)
		}
		t.Skip("no chromium here")
	}
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	given := app.Given{
		Store: memory.New(), Book: book, Languages: words.Languages(), Now: time.Now, NewID: func() string { return "x" },
		Device: Device, Remember: Remember, Log: func(_ string, err error) { t.Error(err) },
	}
	if err := app.Seed(context.Background(), given); err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	s := httptest.NewServer(Guard(app.New(given), known, ""))
	defer s.Close()
	known[strings.TrimPrefix(s.URL, "http://")] = true
	for _, c := range []struct {
		flags       []string
		model, flat bool // shown
	}{
		{[]string{"--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--ignore-gpu-blocklist"}, true, false},
		{[]string{"--disable-3d-apis"}, false, true},
	} {
		args := append([]string{"--headless", "--no-sandbox", "--disable-dev-shm-usage", "--user-data-dir=" + t.TempDir(), "--enable-logging=stderr", "--virtual-time-budget=5000"}, c.flags...)
		ctx, stop := context.WithTimeout(context.Background(), 3*time.Minute)
		cmd := exec.CommandContext(ctx, browser, append(args, "--dump-dom", s.URL+"/jobs/example-hillside-cascade/model")...)
		var errs strings.Builder
		cmd.Stderr = &errs
		out, err := cmd.Output()
		stop()
		if err != nil {
			t.Fatalf("%v: %v\n%s", c.flags, err, errs.String())
		}
		page := string(out)
		shown := func(id string) bool {
			tag := regexp.MustCompile(`<[^>]* id="` + id + `"[^>]*>|<[a-z]+ id="` + id + `"[^>]*>`).FindString(page)
			return tag != "" && !strings.Contains(tag, "hidden")
		}
		drawn := strings.Contains(page, "data-drawn=")
		if shown("model") != c.model || drawn != c.model || shown("flat") != c.flat {
			t.Errorf("%v: model shown %v, drawn %v, flat %v", c.flags, shown("model"), drawn, shown("flat"))
		}
		for _, line := range strings.Split(errs.String(), "\n") {
			if strings.Contains(line, "Content Security Policy") || strings.Contains(line, "Uncaught") {
				t.Error(line)
			}
		}
	}
}
