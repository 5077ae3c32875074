package serve

import (
	"bytes"
	"context"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"plashet/app"
)

var pages = http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte("pages")) })

func through(t *testing.T, h http.Handler, r *http.Request) *httptest.ResponseRecorder {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	if p := w.Header().Get("Content-Security-Policy"); !strings.Contains(p, "default-src 'none'") || strings.Contains(p, "unsafe") {
		t.Errorf("the policy is %q", p)
	}
	if w.Header().Get("X-Content-Type-Options") != "nosniff" {
		t.Error("the type of an answer may be guessed")
	}
	return w
}

func request(method, host string, header ...string) *http.Request {
	r := httptest.NewRequest(method, "http://"+host+"/", nil)
	for i := 0; i+1 < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	return r
}

func TestHostAndOrigin(t *testing.T) {
	h := Guard(pages, map[string]bool{"127.0.0.1:7340": true, "localhost:7340": true}, "")
	for _, c := range []struct {
		r    *http.Request
		want int
	}{
		{request("GET", "127.0.0.1:7340"), 200},
		{request("GET", "LOCALHOST:7340"), 200},
		{request("GET", "evil.example:7340"), 421},
		{request("GET", "127.0.0.1"), 421},
		{request("GET", "127.0.0.1:7340", "Sec-Fetch-Site", "cross-site"), 200},
		{request("POST", "127.0.0.1:7340", "Sec-Fetch-Site", "same-origin"), 200},
		{request("POST", "127.0.0.1:7340", "Sec-Fetch-Site", "cross-site"), 403},
		{request("POST", "127.0.0.1:7340", "Sec-Fetch-Site", "same-site"), 403},
		{request("POST", "127.0.0.1:7340", "Sec-Fetch-Site", "none"), 403},
		{request("POST", "127.0.0.1:7340", "Origin", "http://127.0.0.1:7340"), 200},
		{request("POST", "127.0.0.1:7340", "Origin", "http://evil.example"), 403},
		{request("POST", "127.0.0.1:7340", "Origin", "null"), 403},
		{request("DELETE", "127.0.0.1:7340", "Origin", "http://127.0.0.1:8000"), 403},
		{request("POST", "127.0.0.1:7340"), 200},
	} {
		if got := through(t, h, c.r).Code; got != c.want {
			t.Errorf("%s %s %v: %d, want %d", c.r.Method, c.r.Host, c.r.Header, got, c.want)
		}
	}
}

func TestAccessCode(t *testing.T) {
	h := Guard(pages, map[string]bool{"office:7340": true}, "RIGHTCODE")
	if w := through(t, h, request("GET", "office:7340")); w.Code != 401 || strings.Contains(w.Body.String(), "pages") {
		t.Fatal(w.Code, w.Body)
	}
	try := func(code string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(http.MethodPost, "http://office:7340/access", strings.NewReader(url.Values{"code": {code}}.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		return through(t, h, r)
	}
	es := request("GET", "office:7340", "Accept-Language", "es-MX,es;q=0.9,en;q=0.5")
	if w := through(t, h, es); !strings.Contains(w.Body.String(), `lang="es"`) || !strings.Contains(w.Body.String(), "Código de acceso") {
		t.Error("the code is not asked for in the browser's language", w.Body)
	}
	es.AddCookie(&http.Cookie{Name: cookieLanguage, Value: "en"})
	if w := through(t, h, es); !strings.Contains(w.Body.String(), `lang="en"`) {
		t.Error("the code is not asked for in the language chosen on the device", w.Body)
	}
	style := request("GET", "office:7340")
	style.URL.Path = "/static/notebook.css"
	if w := through(t, h, style); w.Code != http.StatusOK {
		t.Error("the form has no style", w.Code)
	}
	w := try(" rightcode ")
	if w.Code != http.StatusSeeOther || len(w.Result().Cookies()) != 1 {
		t.Fatal(w.Code)
	}
	c := w.Result().Cookies()[0]
	if !c.HttpOnly || c.SameSite != http.SameSiteStrictMode || strings.Contains(c.Value, "RIGHTCODE") {
		t.Error("the cookie is not kept well", c)
	}
	r := request("GET", "office:7340")
	r.AddCookie(c)
	if w := through(t, h, r); w.Body.String() != "pages" {
		t.Error("the cookie does not open", w.Code)
	}
	for range mostTries {
		if w := try("WRONG"); w.Code != 403 {
			t.Error(w.Code)
		}
	}
	if w := try("RIGHTCODE"); w.Code != http.StatusTooManyRequests {
		t.Error("codes can be tried without end", w.Code)
	}
}

func TestDeviceIsKept(t *testing.T) {
	w := httptest.NewRecorder()
	Remember(w, app.Device{Who: "Ann; o'Ü", Mode: "sun", Units: "metric", Paper: "a4"})
	r := request("GET", "x")
	for _, c := range w.Result().Cookies() {
		r.AddCookie(c)
	}
	if d := Device(r); d != (app.Device{Who: "Ann; o'Ü", Mode: "sun", Units: "metric", Paper: "a4"}) {
		t.Error(d)
	}
	r = request("GET", "x", "Cookie", cookieMode+"=evil; "+cookieUnits+"=elle; "+cookiePaper+"=%zz; "+cookieWho+"=%zz")
	if d := Device(r); d != (app.Device{}) {
		t.Error(d)
	}
}

// What is under way comes to its end when the server is told to stop.
func TestStopsGently(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	begun, done := make(chan bool), make(chan error)
	ctx, stop := context.WithCancel(context.Background())
	slow := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		close(begun)
		time.Sleep(50 * time.Millisecond)
		_, _ = w.Write([]byte("whole"))
	})
	var out bytes.Buffer
	go func() { done <- On(ctx, l, slow, Options{Out: &out}) }()
	answer := make(chan string)
	go func() {
		resp, err := http.Get("http://" + l.Addr().String())
		if err != nil {
			answer <- err.Error()
			return
		}
		defer func() { _ = resp.Body.Close() }()
		var b bytes.Buffer
		_, _ = b.ReadFrom(resp.Body)
		answer <- b.String()
	}()
	<-begun
	stop()
	if got := <-answer; got != "whole" {
		t.Error(got)
	}
	if err := <-done; err != nil {
		t.Error(err)
	}
	if !strings.Contains(out.String(), l.Addr().String()) || strings.Contains(out.String(), "code") {
		t.Error(out.String())
	}
}

func TestOtherAddressAsksForACode(t *testing.T) {
	l, err := net.Listen("tcp", "0.0.0.0:0")
	if err != nil {
		t.Skip("no such address here:", err)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var out bytes.Buffer
	if err := On(ctx, l, pages, Options{Out: &out}); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(out.String(), "Access code: ") {
		t.Error(out.String())
	}
}
