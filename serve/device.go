package serve

import (
	"net/http"
	"net/url"

	"plashet/app"
)

// Cookies that keep what a person chose on a device.
const (
	cookieWho      = "plashet_who"
	cookieMode     = "plashet_mode"
	cookieLanguage = "plashet_language"
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
	d := app.Device{Who: value(cookieWho), Language: value(cookieLanguage)}
	if m := value(cookieMode); m == "light" || m == "dark" || m == "sun" {
		d.Mode = m
	}
	return d
}

// Remember keeps it there for a year.
func Remember(w http.ResponseWriter, d app.Device) {
	for _, c := range []struct{ name, text string }{{cookieWho, d.Who}, {cookieMode, d.Mode}, {cookieLanguage, d.Language}} {
		http.SetCookie(w, &http.Cookie{
			Name: c.name, Value: url.QueryEscape(c.text), Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 365 * 24 * 3600,
		})
	}
}
