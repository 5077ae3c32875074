// Package browser meets the pages in a real browser: a headless Chromium, the
// program itself behind it, at the sizes of a phone and of a desk. Chromium is
// Debian's; where it is missing the tests are skipped, unless NEED_BROWSER is
// set. Pictures of what was seen go into the folder BROWSER_PICTURES.
package browser

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// Size is a screen.
type Size struct {
	Name          string
	Width, Height int64
	Mobile        bool
}

// The screens that the pages must serve.
var (
	Small = Size{"360", 360, 740, true}
	Phone = Size{"390", 390, 844, true}
	Desk  = Size{"1280", 1280, 800, false}
	Sizes = []Size{Small, Phone, Desk}
)

// patience is the most that one step of a test may take; a busy machine is slow.
const patience = 60 * time.Second

var path = sync.OnceValue(func() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			return p
		}
	}
	return ""
})

// Open starts a browser with a profile of its own, and more options if any. It
// ends with the test.
func Open(t testing.TB, more ...chromedp.ExecAllocatorOption) context.Context {
	t.Helper()
	if path() == "" {
		if os.Getenv("NEED_BROWSER") != "" {
			t.Fatal("no Chromium: run 'apt-get install chromium' as root")
		}
		t.Skip("no Chromium: run 'apt-get install chromium' as root")
	}
	options := append(slices.Clone(chromedp.DefaultExecAllocatorOptions[:]),
		chromedp.ExecPath(path()), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(t.TempDir()))
	options = append(options, more...)
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	browser, end := chromedp.NewContext(ctx, chromedp.WithErrorf(func(string, ...any) {}))
	t.Cleanup(end)
	if err := chromedp.Do(browser); err != nil { // starts it
		t.Fatal(err)
	}
	return browser
}

// Tab is one tab, with what it complained of and what it asked for.
type Tab struct {
	Base string // the program's address
	t    testing.TB
	ctx  context.Context
	size Size

	mu    sync.Mutex
	asked []string // addresses
	told  []string // complaints: scripts, policy, answers of 5xx
}

// NewTab opens a tab of a size on the program.
func NewTab(t testing.TB, browser context.Context, base string, size Size) *Tab {
	t.Helper()
	tab := &Tab{Base: base, t: t, size: size}
	ctx, cancel := chromedp.NewContext(browser, chromedp.WithListener(tab.hear))
	t.Cleanup(cancel)
	tab.ctx = ctx
	if err := chromedp.Do(ctx); err != nil { // the tab lives as long as the context it is opened with
		t.Fatal(err)
	}
	opts := []chromedp.EmulateViewportOption{}
	if size.Mobile {
		opts = append(opts, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	tab.do(chromedp.EmulateViewport(size.Width, size.Height, opts...))
	return tab
}

func (b *Tab) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		b.asked = append(b.asked, e.Request.URL)
	case *network.EventResponseReceived:
		if e.Response.Status >= 500 {
			b.told = append(b.told, e.Response.URL+" answered 5xx")
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError && !strings.Contains(e.Entry.Text, "status of 4") {
			b.told = append(b.told, e.Entry.Text)
		}
	case *runtime.EventExceptionThrown:
		b.told = append(b.told, "script: "+e.ExceptionDetails.Text)
	}
}

// Quiet fails the test where the browser complained, or asked for anything
// outside the program's own address.
func (b *Tab) Quiet() {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, s := range b.told {
		b.t.Errorf("the browser complains: %s", s)
	}
	if len(b.asked) == 0 {
		b.t.Error("the browser asked for nothing: the test does not listen")
	}
	for _, u := range b.asked {
		if !strings.HasPrefix(u, b.Base) && !strings.HasPrefix(u, "blob:"+b.Base) && !strings.HasPrefix(u, "data:") && u != "about:blank" {
			b.t.Errorf("the page asks %s, outside its origin", u)
		}
	}
}

func (b *Tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		b.t.Fatalf("at %s, %s wide: %v", b.at(), b.size.Name, err)
	}
}

// at tells where the tab is, for messages.
func (b *Tab) at() string {
	ctx, cancel := context.WithTimeout(b.ctx, 5*time.Second)
	defer cancel()
	u, err := chromedp.Run(ctx, chromedp.Location())
	if err != nil {
		return "?"
	}
	return strings.TrimPrefix(u, b.Base)
}

// Go opens a page of the program.
func (b *Tab) Go(where string) {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	Eval[bool](b, "window.before = true")
	if _, err := chromedp.Call(ctx, page.Navigate, page.NavigateParams{URL: b.Base + where}); err != nil {
		b.t.Fatalf("%s: %v", where, err)
	}
	b.arrived(where)
}

// At is the path where the tab is now.
func (b *Tab) At() string { return b.at() }

// Eval gives what a script gives.
func Eval[T any](b *Tab, script string) T {
	b.t.Helper()
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("at %s: %v in %.200s", b.at(), err, script)
	}
	return v
}

// Until waits for a script to give true.
func (b *Tab) Until(what, script string) {
	b.t.Helper()
	end := time.Now().Add(patience)
	for !Eval[bool](b, "!!("+script+")") {
		if time.Now().After(end) {
			b.t.Fatalf("at %s, %s wide: waited in vain until %s", b.at(), b.size.Name, what)
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// Tap touches what a selector names: a finger on a phone, a click at a desk. It
// waits for the page that may follow.
func (b *Tab) Tap(selector string) {
	b.t.Helper()
	b.do(chromedp.WaitVisible(chromedp.CSS(selector)), chromedp.ScrollIntoView(chromedp.CSS(selector)))
	if b.size.Mobile {
		b.do(chromedp.Tap(chromedp.CSS(selector)))
		return
	}
	b.do(chromedp.Click(chromedp.CSS(selector)))
}

// Follow taps and waits for another page.
func (b *Tab) Follow(selector string) {
	b.t.Helper()
	Eval[bool](b, "window.before = true")
	b.Tap(selector)
	b.arrived(selector)
}

// arrived waits for the page that comes in place of the one marked.
func (b *Tab) arrived(after string) {
	b.t.Helper()
	b.Until("another page comes after "+after, `window.before === undefined && document.readyState === "complete"`)
}

// Fill types into a field what a person types, in place of what stands there.
func (b *Tab) Fill(selector, text string) {
	b.t.Helper()
	b.do(chromedp.Focus(chromedp.CSS(selector)))
	Eval[bool](b, `(document.activeElement.select && document.activeElement.select(), true)`)
	if text == "" {
		b.do(chromedp.KeyEvent("\b"))
		return
	}
	b.do(chromedp.KeyEvent(text))
}

// Keys presses keys where the focus is.
func (b *Tab) Keys(keys string) {
	b.t.Helper()
	b.do(chromedp.KeyEvent(keys))
}

// Text is what a person reads at a selector.
func (b *Tab) Text(selector string) string {
	b.t.Helper()
	return Eval[string](b, `(document.querySelector(`+quote(selector)+`)||{innerText:""}).innerText`)
}

// Media sets what the device prefers: "dark" or "light".
func (b *Tab) Media(scheme string) {
	b.t.Helper()
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}, //nolint:misspell // the word of the standard
	}); err != nil {
		b.t.Fatal(err)
	}
}

// Picture keeps the whole page, if the person asks for pictures.
func (b *Tab) Picture(name string) {
	b.t.Helper()
	folder := os.Getenv("BROWSER_PICTURES")
	if folder == "" {
		return
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, name+"-"+b.size.Name+".png"), b.shot(), 0o644); err != nil {
		b.t.Fatal(err)
	}
}

// tallest is the height beyond which a picture is cut off.
const tallest = 6000

func (b *Tab) shot() []byte {
	b.t.Helper()
	beyond := true
	height := min(Eval[float64](b, "document.documentElement.scrollHeight"), tallest)
	got, err := chromedp.Call(b.ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{
		Clip: &page.Viewport{Width: float64(b.size.Width), Height: height, Scale: 1}, CaptureBeyondViewport: &beyond,
	})
	if err != nil {
		b.t.Fatal(err)
	}
	return got.Data
}

func quote(s string) string {
	return "\"" + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + "\""
}
