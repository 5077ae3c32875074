// Package app is the tool on a screen: handlers that take a store, a clock, the
// tables and a language, and give pages. The same handlers run behind a server
// and in a browser's worker, so nothing here touches a file, a socket, a cookie
// or the clock but through what it is given, and nothing is kept in the package
// itself. It computes nothing: it fills the engine's job and shows the answer.
//
// Sign-in, access codes and the refusal of posts from elsewhere stand outside
// (package serve): a worker's request carries none of what they need.
package app

import (
	"errors"
	"fmt"
	"html/template"
	"io"
	"net/http"
	"strings"
	"time"

	"github.com/yuin/goldmark"

	"plashet/engine/catalog"
	"plashet/store"
	"plashet/table"
	"plashet/words"
)

// Given is all that the pages have of the world.
type Given struct {
	Store     store.Store
	Now       func() time.Time
	NewID     func() string // letters and digits, never twice the same
	Book      *catalog.Book
	Languages []*words.Language // at least one; the first where nobody chooses

	Device   func(*http.Request) Device        // what is kept on the device
	Remember func(http.ResponseWriter, Device) // keeps it there
	Log      func(reference string, err error) // of what failed on our side
	Version  string                            // shown at the foot

	// Workbook writes a spreadsheet file; nil where its library is not there.
	Workbook func(io.Writer, []table.Table) error

	// Public is the address at which others reach the pages, without a path; ""
	// for none. It stands in the codes on the sheets.
	Public string

	Runs Runs // long work beside the pages; nil where there is none
}

// Device is what a device keeps for its person.
type Device struct {
	Who  string // the name typed there; stands with every change
	Mode string // light, dark, sun; "" as the device is set

	Language string // tag of the language chosen; "" as the browser asks
	Units    string // us or metric: of what is shown; "" as the job has them
	Paper    string // letter or a4; "" is the job's
}

// Modes are the ways a page may look; "" follows the device.
var modes = []string{"", "light", "dark", "sun"}

// What a person may have shown otherwise than the job says; "" is as it says.
var (
	systems = []string{"", "us", "metric"}
	papers  = []string{"", "letter", "a4"}
)

// app holds what the handlers of one language share. Its cache may be lost at
// any time.
type app struct {
	Given
	Language *words.Language

	sets   map[string]*template.Template
	cache  *cache
	reader goldmark.Markdown // of the texts
}

// New gives the handler of all pages. It does no input or output; a fault in
// the pages themselves is a programmer's mistake and panics.
func New(given Given) http.Handler {
	pages := map[string]http.Handler{}
	for _, l := range given.Languages {
		pages[l.Tag] = newIn(given, l)
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		pages[given.language(r).Tag].ServeHTTP(w, r)
	})
}

// newIn gives the handler of the pages in one language.
func newIn(given Given, l *words.Language) http.Handler {
	a := &app{Given: given, Language: l, cache: newCache(), reader: newReader()}
	a.sets = a.templates()
	return a.serves(map[string][]string{})
}

// serves gives all addresses, and lists the methods that each takes.
func (a *app) serves(methods map[string][]string) http.Handler {
	mux := http.NewServeMux()
	page := func(pattern string, h func(w http.ResponseWriter, r *http.Request) error) {
		if method, path, ok := strings.Cut(pattern, " "); ok {
			methods[path] = append(methods[path], method)
		}
		mux.Handle(pattern, a.guard(h))
	}
	page("GET /{$}", a.list)
	page("GET /new", a.newForm)
	page("POST /new", a.newJob)
	page("POST /import", a.importJob)
	page("GET /device", a.deviceForm)
	page("POST /device", a.device)
	page("GET /jobs/{id}", a.fromSheet(a.answer))
	page("GET /jobs/{id}/file", a.file)
	page("GET /jobs/{id}/part/{part}", a.part)
	page("GET /jobs/{id}/next", a.guideNext)
	page("GET /jobs/{id}/next/{step}", a.guide)
	page("POST /jobs/{id}/next/{step}", a.guideSet)
	page("GET /jobs/{id}/why/{figure}", a.why)
	page("GET /jobs/{id}/assumed", a.assumed)
	page("GET /jobs/{id}/draw/{name}", a.draw)
	page("POST /jobs/{id}/set", a.set)
	page("POST /jobs/{id}/add", a.add)
	page("POST /jobs/{id}/remove", a.remove)
	page("POST /jobs/{id}/move", a.move)
	page("POST /jobs/{id}/accept", a.accept)
	page("POST /jobs/{id}/take", a.take)
	page("GET /jobs/{id}/choose", a.choose)
	page("POST /jobs/{id}/choose/stop", a.stopChoose)
	page("POST /jobs/{id}/choose/again", a.againChoose)
	page("GET /jobs/{id}/layouts", a.layouts)
	page("POST /jobs/{id}/layouts/find", a.findLayouts)
	page("POST /jobs/{id}/layouts/stop", a.stopLayouts)
	page("POST /jobs/{id}/layouts/keep", a.keepLayout)
	page("POST /jobs/{id}/layouts/drawn", a.keepDrawn)
	page("POST /jobs/{id}/layouts/mend", a.takeMend)
	page("GET /jobs/{id}/piece/{mark}", a.piece)
	page("GET /jobs/{id}/paper", a.paperPage)
	page("GET /jobs/{id}/paper/{file}", a.paperFile)
	page("GET /jobs/{id}/offer", a.offer)
	page("GET /jobs/{id}/doubt", a.doubtPage)
	page("GET /jobs/{id}/play/{case}", a.play)
	page("GET /jobs/{id}/glue/{step}", a.glueStep)
	page("POST /jobs/{id}/glue/{step}", a.glueTick)
	page("POST /jobs/{id}/undo", a.undo)
	page("GET /jobs/{id}/history", a.history)
	page("GET /jobs/{id}/history/{number}", a.past)
	page("POST /jobs/{id}/return", a.comeBack)
	page("POST /jobs/{id}/copy", a.copyJob)
	page("POST /jobs/{id}/archive", a.archive)
	a.shelves(page)
	page("GET /sheet", a.sheetPage)
	page("POST /sheet", a.sheetScanned)
	page("GET /jobs/{id}/model", a.model)
	page("GET /jobs/{id}/export", a.exportPage)
	page("GET /jobs/{id}/export/{file}", a.exportFile)
	a.others(mux)
	page("GET /read", a.readList)
	page("GET /read/{name}", a.read)
	page("GET /read/tour/{picture}", a.readPicture)
	page("GET /read/img/{picture}", a.readPicture)
	page("GET /static/{name}", a.static)
	page("/", func(w http.ResponseWriter, r *http.Request) error { return a.nowhere(w, r, mux) })
	return mux
}

// nowhere answers a request to an address that there is not, or that takes other
// methods.
func (a *app) nowhere(w http.ResponseWriter, r *http.Request, mux *http.ServeMux) error {
	var takes []string
	for _, method := range []string{http.MethodGet, http.MethodPost} {
		other := http.Request{Method: method, URL: r.URL, Host: r.Host}
		if _, pattern := mux.Handler(&other); strings.HasPrefix(pattern, method+" ") {
			takes = append(takes, method)
		}
	}
	if len(takes) == 0 {
		return errNoPage
	}
	allow := strings.Join(takes, ", ")
	w.Header().Set("Allow", allow)
	return refusal{http.StatusMethodNotAllowed, a.say("app.api.method", "found", short(r.Method), "expected", allow), "app.api.method"}
}

// The errors that have a page of their own.
var errNoPage = errors.New("there is no such page")

// refusal answers what cannot be done with one clear sentence.
type refusal struct {
	status int
	text   string
	code   string // of the sentence; "" where it is a fault's
}

func (r refusal) Error() string { return r.text }

// refuse words a refusal by a code of the catalogue.
func (a *app) refuse(status int, code string) error { return refusal{status, a.say(code), code} }

// guard turns errors and panics into pages, so that nothing a stranger sends
// ends the program or shows its inside.
func (a *app) guard(h func(w http.ResponseWriter, r *http.Request) error) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if p := recover(); p != nil {
				a.failed(w, r, fmt.Errorf("panic: %v", p))
			}
		}()
		r.Body = http.MaxBytesReader(w, r.Body, mostBody)
		err := h(w, r)
		var no refusal
		switch {
		case err == nil:
		case errors.As(err, &no):
			a.sorry(w, r, no.status, no.text, "")
		case errors.Is(err, errNoPage):
			a.sorry(w, r, http.StatusNotFound, a.say("app.error.page"), "")
		case errors.Is(err, store.ErrNone), errors.Is(err, store.ErrGone):
			a.sorry(w, r, http.StatusNotFound, a.say("app.error.none"), "")
		case errors.Is(err, store.ErrLarge):
			a.sorry(w, r, http.StatusRequestEntityTooLarge, a.say("app.error.large"), "")
		default:
			a.failed(w, r, err)
		}
	})
}

// mostBody is the most a request may bring: a job file of the greatest size,
// and what a form puts round it.
const mostBody = 17 << 20

func (a *app) failed(w http.ResponseWriter, r *http.Request, err error) {
	ref := a.NewID()
	if a.Log != nil {
		a.Log(ref, err)
	}
	a.sorry(w, r, http.StatusInternalServerError, a.say("app.error.ours"), ref)
}

// sorry shows what went wrong.
func (a *app) sorry(w http.ResponseWriter, r *http.Request, status int, text, ref string) {
	a.show(w, r, status, "sorry", a.say("app.error.title"), nil, struct{ Text, Ref string }{text, ref})
}
