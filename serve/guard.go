package serve

import (
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"time"
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
			http.Error(w, "This server is not known by that name. Open it by the address shown at its start.", http.StatusMisdirectedRequest)
		case crossed(r):
			http.Error(w, "A page of another site may not change anything here.", http.StatusForbidden)
		case !g.open(w, r):
		default:
			pages.ServeHTTP(w, r)
		}
	})
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
	w.Header().Set("Cache-Control", "no-store")
	if r.Method == http.MethodPost && r.URL.Path == "/access" {
		r.Body = http.MaxBytesReader(w, r.Body, 4096)
		switch ok, wait := g.try(from(r), strings.ToUpper(strings.TrimSpace(r.PostFormValue("code")))); {
		case wait:
			ask(w, http.StatusTooManyRequests, "Too many wrong codes. Wait a minute and try again.")
		case ok:
			http.SetCookie(w, &http.Cookie{Name: cookie, Value: g.token(), Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 30 * 24 * 3600})
			http.Redirect(w, r, "/", http.StatusSeeOther)
		default:
			ask(w, http.StatusForbidden, "That is not the code.")
		}
		return false
	}
	ask(w, http.StatusUnauthorized, "")
	return false
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

func from(r *http.Request) string {
	host, _, _ := strings.Cut(r.RemoteAddr, ":")
	return host
}

// ask shows the form for the code. It stands outside the pages, which know
// nothing of codes.
func ask(w http.ResponseWriter, status int, text string) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = fmt.Fprintf(w, `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/><title>Access code</title></head>
<body><main><h1>Access code</h1><p>%s</p><form method="post" action="/access"><p><label for="code">The code shown where the program was started</label></p><p><input id="code" name="code" autocomplete="off" autocapitalize="characters" required="required"/></p><p><button type="submit">Open</button></p></form></main></body></html>
`, text)
}
