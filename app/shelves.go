package app

import (
	"context"
	"net/http"
	"net/url"

	"plashet/shelf/keep"
	"plashet/store"
)

// shelves gives the pages of what all jobs share: pumps and prices.
func (a *app) shelves(page func(pattern string, h func(w http.ResponseWriter, r *http.Request) error)) {
	page("GET /pumps", a.pumps)
	page("GET /pumps/new", a.pumpForm)
	page("POST /pumps/new", a.newPump)
	page("GET /pumps/csv", a.shelfFile("pumps.csv", keep.PumpsCSV))
	page("GET /pumps/import", a.importForm(a.pumpShelf))
	page("POST /pumps/import", a.importCSV(a.pumpShelf))
	page("GET /pumps/picture", a.picture)
	page("POST /pumps/picture", a.traced)
	page("POST /pumps/picture/check", a.checkPicture)
	page("GET /pumps/{id}", a.pump)
	page("POST /pumps/{id}/set", a.setPump)
	page("POST /pumps/{id}/archive", a.archivePump)
	page("GET /pumps/{id}/history", a.shelfHistory)
	page("POST /pumps/{id}/undo", a.shelfUndo)
	page("POST /pumps/{id}/return", a.shelfReturn)

	page("GET /prices", a.prices)
	page("GET /prices/csv", a.shelfFile("prices.csv", keep.PricesCSV))
	page("GET /prices/import", a.importForm(a.priceShelf))
	page("POST /prices/import", a.importCSV(a.priceShelf))
	page("GET /prices/{number}", a.price)
	page("POST /prices/set", a.setPrice)
	page("GET /prices/history", a.shelfHistory)
	page("POST /prices/undo", a.shelfUndo)
	page("POST /prices/return", a.shelfReturn)

	page("GET /jobs/{id}/shelf", a.jobShelf)
	page("POST /jobs/{id}/shelf/pump", a.takePump)
	page("POST /jobs/{id}/shelf/keep", a.keepPump)
	page("POST /jobs/{id}/shelf/prices", a.takePrices)
}

// shelfFile gives a shelf as CSV. A pump that cannot be read is left out; the
// page of the shelf tells how many are.
func (a *app) shelfFile(name string, of func(context.Context, store.Store) ([]byte, int, error)) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		data, _, err := of(r.Context(), a.Store)
		if err != nil {
			return err
		}
		h := w.Header()
		h.Set("Content-Type", "text/csv; charset=utf-8")
		h.Set("Content-Disposition", "attachment; filename*=UTF-8''"+url.PathEscape(name))
		h.Set("Cache-Control", "no-store")
		h.Set("X-Content-Type-Options", "nosniff")
		_, err = w.Write(data)
		return err
	}
}
