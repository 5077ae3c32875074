package browser

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// mostScreens guards against a crawl without an end.
const mostScreens = 150

// alike makes one of addresses that show the same screen with other contents.
var alike = []*regexp.Regexp{
	regexp.MustCompile(`(/why/)[^/?]+`), regexp.MustCompile(`(/glue/)\d+`), regexp.MustCompile(`(/history/)\d+`),
	regexp.MustCompile(`([?&][a-z]+=)[^&]*`),
}

// reached are screens that the walk must come to.
var reached = []*regexp.Regexp{
	regexp.MustCompile(`^/pumps$`), regexp.MustCompile(`^/pumps/\w{20,}$`), regexp.MustCompile(`^/pumps/\w{20,}/history$`), regexp.MustCompile(`^/pumps/picture$`), regexp.MustCompile(`^/pumps/import$`),
	regexp.MustCompile(`^/prices$`), regexp.MustCompile(`^/prices/\d+$`), regexp.MustCompile(`^/prices/history$`), regexp.MustCompile(`^/jobs/[^/]+/shelf$`), regexp.MustCompile(`^/jobs/[^/]+/model$`),
	regexp.MustCompile(`^/jobs/[^/]+/next/stands$`), regexp.MustCompile(`^/jobs/[^/]+/piece/`), regexp.MustCompile(`^/jobs/[^/]+/play/`), regexp.MustCompile(`^/jobs/[^/]+/glue/\d`),
}

// files are addresses that give no page.
var files = regexp.MustCompile(`/file$|/csv$|/draw/|/static/|\.(pdf|svg|png|csv|xlsx|dxf|glb|json)($|\?)|/sheet/|/export/`)

// screens walks from an address along every link and gives one address of each
// sort of screen that a person can reach, in the order found.
func screens(b *Tab, from ...string) []string {
	b.t.Helper()
	seen := map[string]bool{}
	queue := slices.Clone(from)
	var list []string
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		sort := at
		for _, re := range alike {
			sort = re.ReplaceAllString(sort, "$1*")
		}
		if seen[sort] || files.MatchString(at) {
			continue
		}
		seen[sort] = true
		if len(list) == mostScreens {
			b.t.Fatalf("more than %d sorts of screens: the crawl has no end; the last is %s", mostScreens, at)
		}
		list = append(list, at)
		b.Go(at)
		for _, link := range Eval[[]string](b, `[...document.querySelectorAll("a[href]")].filter(a => a.origin === location.origin && !a.hasAttribute("download")).map(a => a.pathname + a.search)`) {
			if other := strings.HasPrefix(link, "/jobs/") && !strings.HasPrefix(link, job(from)); !other {
				queue = append(queue, link)
			}
		}
	}
	return list
}

// job is the address of the job among the addresses that a walk begins with.
func job(from []string) string {
	for _, at := range from {
		if strings.HasPrefix(at, "/jobs/") {
			return at
		}
	}
	return "/jobs/none"
}

// TestScreens walks over every screen of the greatest example, at each size, and
// asks of each: nothing wider than the screen, nothing from elsewhere, no
// complaint of the browser, one main heading, targets that a thumb hits.
func TestScreens(t *testing.T) {
	chrome, base := Open(t), stocked(t)
	for _, size := range Sizes {
		t.Run(size.Name, func(t *testing.T) {
			b := NewTab(t, chrome, base, size)
			list := screens(b, walk(b)...)
			for _, want := range reached {
				if !slices.ContainsFunc(list, want.MatchString) {
					t.Errorf("no screen %s is reached: %v", want, list)
				}
			}
			for _, at := range list {
				b.Go(at)
				if wide := Eval[float64](b, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
					t.Errorf("%s is %.0f px wider than the screen of %s: %s", at, wide, size.Name, Eval[string](b, widest))
				}
				if n := Eval[int](b, `document.querySelectorAll("h1").length`); n != 1 {
					t.Errorf("%s has %d main headings", at, n)
				}
				if small := Eval[[]string](b, smallTargets); len(small) > 0 && size.Mobile {
					t.Errorf("%s has targets too small for a thumb: %q", at, small)
				}
				b.Picture(strings.Trim(strings.NewReplacer("/", "-", "?", "-").Replace(at), "-"))
			}
			b.Quiet()
		})
	}
}

// widest names what reaches furthest beyond the screen.
const widest = `(() => { let m = innerWidth, n = ""; for (const e of document.querySelectorAll("main *, header *, nav *, footer *")) { const r = e.getBoundingClientRect(); let p = e.parentElement, cut = false; while (p) { if (getComputedStyle(p).overflowX !== "visible") { cut = true; break } p = p.parentElement } if (!cut && r.right > m) { m = r.right; n = e.tagName + "." + e.className + " " + e.textContent.slice(0, 40) } } return n })()`

// smallTargets names buttons, fields and links on their own that are lower or
// narrower than 44 px, the size of WCAG 2.2, success criterion 2.5.5 (AAA) and
// of experience for wet hands. Links within a sentence and in drawings are exempt there.
const smallTargets = `[...document.querySelectorAll("button, select, summary, input:not([type=hidden]):not([type=checkbox]):not([type=radio]), a.button, nav a")].filter(e => e.checkVisibility() && e.tabIndex >= 0 && !e.closest("svg")).filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && r.height > 0 && (r.height < 43.5 || r.width < 43.5) }).slice(0, 5).map(e => { const r = e.getBoundingClientRect(); return e.tagName + " " + (e.getAttribute("aria-label") || e.textContent || e.id).trim().slice(0, 30) + " " + Math.round(r.width) + "x" + Math.round(r.height) })`

// TestZoom shows every screen at twice the size: a desk of 1280 px has then 640.
func TestZoom(t *testing.T) {
	chrome, base := Open(t), stocked(t)
	b := NewTab(t, chrome, base, Size{"640", 640, 400, false})
	for _, at := range screens(b, walk(b)...) {
		b.Go(at)
		if wide := Eval[float64](b, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
			t.Errorf("%s is %.0f px too wide at 200 %%: %s", at, wide, Eval[string](b, widest))
		}
	}
	b.Quiet()
}

// axe is the judge of accessibility, if it is there.
func axe(t *testing.T) string {
	t.Helper()
	raw, err := os.ReadFile("node_modules/axe-core/axe.min.js")
	if err != nil {
		if os.Getenv("NEED_BROWSER") != "" {
			t.Fatal("axe-core is not there: run 'npm ci' in internal/browser")
		}
		t.Skip("axe-core is not there: run 'npm ci' in internal/browser")
	}
	return string(raw)
}

// TestAccessible has axe-core judge every screen by WCAG 2.2, level AA, in each
// mode of light.
func TestAccessible(t *testing.T) {
	judge := axe(t)
	chrome, base := Open(t), stocked(t)
	b := NewTab(t, chrome, base, Phone)
	list := screens(b, walk(b)...)
	for _, at := range list {
		b.Go(at)
		Eval[bool](b, `(document.querySelectorAll("details").forEach(d => d.open = true), true)`)
		Eval[bool](b, judge+`;true`)
		for _, mode := range []string{"light", "dark", "sun"} {
			Eval[bool](b, `(document.documentElement.dataset.mode = "`+mode+`", true)`)
			asked := verdict
			if mode != "light" { // the other rules do not hang on the light
				asked = strings.Replace(verdict, `{type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}`, `["color-contrast"]`, 1) //nolint:misspell // the rule's name
			}
			for _, v := range Eval[[]string](b, asked) {
				t.Errorf("%s, %s: %s", at, mode, v)
			}
		}
	}
}

// verdict is what axe finds, a line for each rule broken.
const verdict = `axe.run(document, {runOnly: {type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}}).then(r => r.violations.map(v => v.id + ": " + v.nodes.length + " times, first " + v.nodes[0].html.slice(0, 160) + " | " + (v.nodes[0].any[0] || v.nodes[0].all[0] || v.nodes[0].none[0] || {message: ""}).message))`
