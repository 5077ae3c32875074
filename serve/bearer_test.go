package serve

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"testing"

	"plashet/app"
)

// told reads the problem that a request to the interface was answered with.
func told(t *testing.T, w *httptest.ResponseRecorder) (p app.Problem) {
	t.Helper()
	if err := json.Unmarshal(w.Body.Bytes(), &p); err != nil || w.Header().Get("Content-Type") != "application/problem+json" || p.Status != w.Code || p.Code == "" || p.Detail == "" {
		t.Errorf("no problem: %d %s %v", w.Code, w.Body, err)
	}
	return p
}

func asks(method, host string, header ...string) *http.Request {
	r := request(method, host, header...)
	r.URL.Path = "/api/v1/jobs"
	return r
}

// A program sends the code with each request; wrong ones run out as those typed do.
func TestBearer(t *testing.T) {
	h := Guard(pages, map[string]bool{"office:7340": true}, "RIGHTCODE")
	w := through(t, h, asks(http.MethodGet, "office:7340"))
	if p := told(t, w); w.Code != 401 || p.Code != "serve.code" || p.Where != "Authorization" || w.Header().Get("WWW-Authenticate") == "" {
		t.Error(w.Code, p)
	}
	for _, right := range []string{"Bearer RIGHTCODE", "bearer rightcode ", "Bearer  RIGHTCODE"} {
		if w := through(t, h, asks(http.MethodGet, "office:7340", "Authorization", right)); w.Code != 200 || w.Body.String() != "pages" {
			t.Errorf("%q does not open: %d", right, w.Code)
		}
	}
	// It opens the interface alone: a page is for browsers, which have the cookie.
	if w := through(t, h, request(http.MethodGet, "office:7340", "Authorization", "Bearer RIGHTCODE")); w.Code != 401 {
		t.Error(w.Code)
	}
	for _, other := range []string{"Basic UklHSFRDT0RF", "RIGHTCODE", "Bearer", "Bearer "} {
		if w := through(t, Guard(pages, map[string]bool{"office:7340": true}, "RIGHTCODE"), asks(http.MethodGet, "office:7340", "Authorization", other)); w.Code != 401 {
			t.Errorf("%q opens: %d", other, w.Code)
		}
	}
	for range mostTries {
		if w := through(t, h, asks(http.MethodGet, "office:7340", "Authorization", "Bearer WRONG")); told(t, w).Code != "serve.wrong" || w.Code != 401 {
			t.Error(w.Code)
		}
	}
	w = through(t, h, asks(http.MethodGet, "office:7340", "Authorization", "Bearer RIGHTCODE"))
	if w.Code != http.StatusTooManyRequests || told(t, w).Code != "serve.wait" || w.Header().Get("Retry-After") == "" {
		t.Error("codes can be tried without end", w.Code)
	}
	// Somebody else is not made to wait.
	r := asks(http.MethodGet, "office:7340", "Authorization", "Bearer RIGHTCODE")
	r.RemoteAddr = "[2001:db8:1:2::7]:4000"
	if w := through(t, h, r); w.Code != 200 {
		t.Error(w.Code)
	}
}

// What changes something is refused from another site here too, whatever the
// method and whatever code comes with it.
func TestInterfaceCrossed(t *testing.T) {
	h := Guard(pages, map[string]bool{"office:7340": true}, "RIGHTCODE")
	for _, method := range []string{"POST", "PUT", "PATCH", "DELETE"} {
		for _, header := range [][]string{{"Sec-Fetch-Site", "cross-site"}, {"Sec-Fetch-Site", "same-site"}, {"Origin", "http://evil.example"}, {"Origin", "null"}} {
			w := through(t, h, asks(method, "office:7340", append([]string{"Authorization", "Bearer RIGHTCODE"}, header...)...))
			if w.Code != 403 || told(t, w).Code != "serve.crossed" {
				t.Errorf("%s %v: %d", method, header, w.Code)
			}
		}
	}
	if w := through(t, h, asks("GET", "evil.example", "Authorization", "Bearer RIGHTCODE")); w.Code != http.StatusMisdirectedRequest || told(t, w).Where != "Host" {
		t.Error(w.Code)
	}
}

// One machine on IPv6 cannot try from many addresses, and does not stop others.
func TestFrom(t *testing.T) {
	for addr, want := range map[string]string{
		"192.0.2.7:99": "192.0.2.7", "[2001:db8:1:2::7]:99": "2001:db8:1:2::/64", "[2001:db8:1:2:ffff::1]:1": "2001:db8:1:2::/64", "[2001:db8:1:3::7]:99": "2001:db8:1:3::/64",
		"[::ffff:192.0.2.7]:5": "192.0.2.7", "[fe80::1%eth0]:5": "fe80::/64", "@": "@",
	} {
		r := httptest.NewRequest(http.MethodGet, "/", nil)
		r.RemoteAddr = addr
		if got := from(r); got != want {
			t.Errorf("%s: %s, want %s", addr, got, want)
		}
	}
}
