package browser

import (
	"os"
	"path/filepath"
	"testing"

	"plashet/internal/running"
)

func TestMain(m *testing.M) { os.Exit(running.Tests{M: m}.Run()) }

// site starts the program on a new file of jobs, with its examples in it.
func site(t testing.TB) string {
	t.Helper()
	return running.Serve(t, filepath.Join(t.TempDir(), "jobs.sqlite")).URL
}

// examples gives the addresses of the jobs that stand in the list, by name.
func examples(b *Tab) map[string]string {
	b.t.Helper()
	b.Go("/")
	found := Eval[map[string]string](b, `Object.fromEntries([...document.querySelectorAll(".jobs a")].map(a => [a.querySelector(".name").innerText, new URL(a.href).pathname]))`)
	if len(found) == 0 {
		b.t.Fatal("the list shows no job")
	}
	return found
}
