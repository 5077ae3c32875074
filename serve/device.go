package serve

import (
	"net/http"
	"net/url"
	"slices"

	"plashet/app"
)

// Cookies that keep what a person chose on a device.
const (
	cookieWho  = "plashet_who"
	cookieMode = "plashet_mode"

	cookieLanguage = "plashet_language"
	cookieUnits    = "plashet_units"
	cookiePaper    = "plashet_paper"
)

// Device reads what the device keeps.
func Device(r *http.Request) app.Device {
	value := func(name string) string {
		c, err := r.Cookie(name)
		if err != nil {
			return ""
		}
		text, err := url.QueryUnescape(c.Value)
		if err != nil || len(text) > 400 {
			return ""
		}
		return text
	}
	one := func(name string, may ...string) string {
		if v := value(name); slices.Contains(may, v) {
			return v
		}
		return ""
	}
	return app.Device{
		Who: value(cookieWho), Language: value(cookieLanguage), Mode: one(cookieMode, "light", "dark", "sun"),
		Units: one(cookieUnits, "us", "metric"), Paper: one(cookiePaper, "letter", "a4"),
	}
}

// Remember keeps it there for a year.
func Remember(w http.ResponseWriter, d app.Device) {
	for _, c := range []struct{ name, text string }{{cookieWho, d.Who}, {cookieMode, d.Mode}, {cookieLanguage, d.Language}, {cookieUnits, d.Units}, {cookiePaper, d.Paper}} {
		http.SetCookie(w, &http.Cookie{
			Name: c.name, Value: url.QueryEscape(c.text), Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 365 * 24 * 3600,
		})
	}
}
