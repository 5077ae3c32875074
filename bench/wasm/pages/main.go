// Command pages is the least program that has all pages in it: what a browser's
// worker would have to load. It is built for wasm to be weighed.
package main

import (
	"net/http"
	"net/http/httptest"
	"time"

	"plashet/app"
	"plashet/engine/catalog"
	"plashet/store/memory"
	"plashet/words"
)

func main() {
	book, err := catalog.New()
	if err != nil {
		panic(err)
	}
	pages := app.New(app.Given{
		Store: memory.New(), Book: book, Languages: words.Languages(), Now: time.Now, NewID: func() string { return "x" },
		Device: func(*http.Request) app.Device { return app.Device{} }, Remember: func(http.ResponseWriter, app.Device) {},
	})
	w := httptest.NewRecorder()
	pages.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
	println(w.Code)
}
