package serve

import (
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"html/template"
	"net/http"
	"net/netip"
	"net/url"
	"strconv"
	"strings"
	"sync"
	"time"

	"plashet/app"
)

// policy lets a page take everything from this server and nothing from
// elsewhere; pictures may also be made in the page.
const policy = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'; manifest-src 'self'; worker-src 'self'"

// Guard stands in front of the pages: the Host header must be one of the known,
// posts must come from a page of this server, and where there is an access code
// it must have been given. Headers that the pages trust cannot come from outside.
func Guard(pages http.Handler, known map[string]bool, code string) http.Handler {
	g := &gate{code: code, tries: map[string]*tries{}, now: time.Now}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(self), geolocation=(), microphone=(), payment=()")
		switch {
		case !known[strings.ToLower(r.Host)]:
			turnAway(w, r, app.Problem{Status: http.StatusMisdirectedRequest, Code: "serve.host", Where: "Host", Detail: said(r).Host})
		case crossed(r):
			turnAway(w, r, app.Problem{Status: http.StatusForbidden, Code: "serve.crossed", Where: "Origin", Detail: said(r).Crossed})
		case !g.open(w, r):
		default:
			pages.ServeHTTP(w, r)
		}
	})
}

// turnAway refuses a request: a program gets a problem, anybody else a line.
func turnAway(w http.ResponseWriter, r *http.Request, p app.Problem) {
	if app.ForOthers(r) {
		p.Tell(w)
		return
	}
	http.Error(w, p.Detail, p.Status)
}

// crossed tells that a request which may change something comes from a page of
// another origin. A browser says so by Sec-Fetch-Site, an older one by Origin; a
// request with neither comes from no page.
func crossed(r *http.Request) bool {
	if r.Method == http.MethodGet || r.Method == http.MethodHead {
		return false
	}
	if site := r.Header.Get("Sec-Fetch-Site"); site != "" {
		return site != "same-origin"
	}
	origin := r.Header.Get("Origin")
	if origin == "" {
		return false
	}
	u, err := url.Parse(origin)
	return err != nil || !strings.EqualFold(u.Host, r.Host)
}

// gate asks for the access code.
type gate struct {
	code  string
	now   func() time.Time
	mu    sync.Mutex
	tries map[string]*tries
}

// tries counts wrong codes from an address.
type tries struct {
	count int
	until time.Time
}

// Wrong codes that are let pass, and how long the address then waits.
const (
	mostTries = 5
	waits     = time.Minute
)

const cookie = "plashet_access"

// token is what the cookie holds in place of the code.
func (g *gate) token() string {
	sum := sha256.Sum256([]byte("plashet access " + g.code))
	return hex.EncodeToString(sum[:])
}

// open lets a request through, or answers it.
func (g *gate) open(w http.ResponseWriter, r *http.Request) bool {
	if g.code == "" {
		return true
	}
	if c, err := r.Cookie(cookie); err == nil && subtle.ConstantTimeCompare([]byte(c.Value), []byte(g.token())) == 1 {
		return true
	}
	if r.Method == http.MethodGet && open[r.URL.Path] {
		return true
	}
	w.Header().Set("Cache-Control", "no-store")
	if app.ForOthers(r) {
		return g.bearer(w, r)
	}
	if r.Method == http.MethodPost && r.URL.Path == "/access" {
		r.Body = http.MaxBytesReader(w, r.Body, 4096)
		switch ok, wait := g.try(from(r), typed(r.PostFormValue("code"))); {
		case wait:
			ask(w, r, http.StatusTooManyRequests, said(r).Wait, onward(r.PostFormValue("to")))
		case ok:
			http.SetCookie(w, &http.Cookie{Name: cookie, Value: g.token(), Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 30 * 24 * 3600})
			http.Redirect(w, r, onward(r.PostFormValue("to")), http.StatusSeeOther)
		default:
			ask(w, r, http.StatusForbidden, said(r).Wrong, onward(r.PostFormValue("to")))
		}
		return false
	}
	to := "/"
	if r.Method == http.MethodGet {
		to = onward(r.URL.RequestURI())
	}
	ask(w, r, http.StatusUnauthorized, "", to)
	return false
}

// bearer lets a program through that sends the code with its request
// (RFC 6750), or tells it what is missing.
func (g *gate) bearer(w http.ResponseWriter, r *http.Request) bool {
	p := app.Problem{Status: http.StatusUnauthorized, Code: "serve.code", Where: "Authorization", Expected: "Bearer CODE", Detail: said(r).Missing}
	scheme, code, _ := strings.Cut(strings.TrimSpace(r.Header.Get("Authorization")), " ")
	if strings.EqualFold(scheme, "Bearer") {
		ok, wait := g.try(from(r), typed(code))
		switch {
		case ok:
			return true
		case wait:
			w.Header().Set("Retry-After", strconv.Itoa(int(waits/time.Second)))
			p.Status, p.Code, p.Detail = http.StatusTooManyRequests, "serve.wait", said(r).Wait
		default:
			p.Code, p.Detail = "serve.wrong", said(r).Wrong
		}
	}
	w.Header().Set("WWW-Authenticate", `Bearer realm="plashet"`)
	p.Tell(w)
	return false
}

// typed reads a code as people type it.
func typed(code string) string { return strings.ToUpper(strings.TrimSpace(code)) }

// onward is where a person goes on to once the code was right: a page of this
// server, as the address in the code of a printed sheet.
func onward(to string) string {
	const most = 1000
	u, err := url.Parse(to)
	if err != nil || len(to) > most || u.Scheme != "" || u.Host != "" || !strings.HasPrefix(to, "/") || strings.HasPrefix(to, "//") || strings.ContainsAny(to, "\\\r\n") {
		return "/"
	}
	return to
}

// try holds a code against the right one, unless the address must wait.
func (g *gate) try(from, code string) (ok, wait bool) {
	g.mu.Lock()
	defer g.mu.Unlock()
	t := g.tries[from]
	if t == nil {
		if len(g.tries) > 10_000 { // of a stranger with many addresses: forget
			clear(g.tries)
		}
		t = &tries{}
		g.tries[from] = t
	}
	if g.now().Before(t.until) {
		return false, true
	}
	if subtle.ConstantTimeCompare([]byte(code), []byte(g.code)) == 1 {
		delete(g.tries, from)
		return true, false
	}
	if t.count++; t.count >= mostTries {
		t.count, t.until = 0, g.now().Add(waits)
	}
	return false, false
}

// from is the address that a request comes from; of IPv6 the network, in which
// one machine has as many addresses as it likes.
func from(r *http.Request) string {
	at, err := netip.ParseAddrPort(r.RemoteAddr)
	if err != nil {
		return r.RemoteAddr
	}
	addr := at.Addr().Unmap().WithZone("")
	if addr.Is6() {
		if net, err := addr.Prefix(64); err == nil {
			return net.String()
		}
	}
	return addr.String()
}

// open are the files that the form for the code is shown with. They are the same
// everywhere and tell nothing of the jobs.
var open = map[string]bool{"/static/notebook.css": true, "/static/mark.svg": true}

// said words what the gate says, for who asks.
func said(r *http.Request) app.Access { return app.AccessWords(r, Device(r)) }

var form = template.Must(template.New("access").Parse(`<!DOCTYPE html>
<html lang="{{.Lang}}"><head><meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/><title>{{.Title}}</title><link rel="stylesheet" href="/static/notebook.css"/><link rel="icon" href="/static/mark.svg" type="image/svg+xml"/></head>
<body><header class="cover"></header><div class="leaf"><main id="main"><h1>{{.Title}}</h1>{{if .Told}}<p class="error" role="alert">{{.Told}}</p>{{end}}<form class="card" method="post" action="/access"><input type="hidden" name="to" value="{{.To}}"/><div class="field"><label for="code">{{.Label}}</label><input type="text" id="code" name="code" autocomplete="off" autocapitalize="characters" spellcheck="false" required="required"/></div><p class="save"><button class="main" type="submit">{{.Open}}</button></p></form></main></div></body></html>
`))

// ask shows the form for the code. It stands outside the pages, which know
// nothing of codes.
func ask(w http.ResponseWriter, r *http.Request, status int, told, to string) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_ = form.Execute(w, struct {
		app.Access
		Told, To string
	}{said(r), told, to})
}
