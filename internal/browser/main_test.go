package browser

import (
	"net/http"
	"net/url"
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

// stocked is a site with something on both shelves.
func stocked(t testing.TB) string {
	t.Helper()
	base := site(t)
	client := running.Client()
	for _, x := range []struct {
		at   string
		form url.Values
	}{
		{"/pumps/new", url.Values{
			"units": {"us"}, "/pumps/0/name": {"weir 60"}, "/pumps/0/note": {"invented pump, invented curve, invented price"}, "/pumps/0/price": {"189"}, "/site/currency": {"USD"},
			"/pumps/0/curve/0/flow": {"0"}, "/pumps/0/curve/0/head": {"24 ft"}, "/pumps/0/curve/1/flow": {"30"}, "/pumps/0/curve/1/head": {"18"}, "/pumps/0/curve/2/flow": {"60"}, "/pumps/0/curve/2/head": {"0"},
		}},
		{"/prices/set", url.Values{"base": {"0"}, "index": {""}, "item": {"elbow 90, 2"}, "price": {"3.15"}, "currency": {"USD"}, "unit": {"each"}, "counter": {"invented yard"}}},
	} {
		r, err := client.PostForm(base+x.at, x.form)
		if err != nil {
			t.Fatal(err)
		}
		_ = r.Body.Close()
		if r.StatusCode != http.StatusSeeOther {
			t.Fatalf("%s answers %d", x.at, r.StatusCode)
		}
	}
	return base
}

// walk begins where every screen can be reached from, on a stocked site.
func walk(b *Tab) []string {
	b.t.Helper()
	at := examples(b)["Hillside cascade"]
	if at == "" {
		b.t.Fatal("the example is not in the list")
	}
	return []string{"/", "/new", "/device", at, at + "/next/pond"}
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
