package running_test

import (
	"io"
	"net/http"
	"os"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/internal/running"
)

func TestMain(m *testing.M) { os.Exit(running.Tests{M: m}.Run()) }

// The demo command prints the answer of the example named and then serves the
// pages of all examples.
func TestDemoServes(t *testing.T) {
	base := running.Start(t, "demo", "terrace-spout").URL
	for _, at := range demo.Names() {
		answer, err := running.Client().Get(base + "/jobs/example-" + at)
		if err != nil {
			t.Fatal(err)
		}
		page, err := io.ReadAll(answer.Body)
		_ = answer.Body.Close()
		if err != nil || answer.StatusCode != http.StatusOK || !strings.Contains(string(page), "id=\"tally\"") {
			t.Errorf("%s: %s, %v; wanted its answer", at, answer.Status, err)
		}
	}
}
