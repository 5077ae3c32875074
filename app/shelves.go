package app

import "net/http"

// shelves gives the pages of what all jobs share: pumps and prices.
func (a *app) shelves(page func(pattern string, h func(w http.ResponseWriter, r *http.Request) error)) {
	page("GET /pumps", a.pumps)
	page("GET /pumps/new", a.pumpForm)
	page("POST /pumps/new", a.newPump)
	page("GET /pumps/csv", a.pumpsFile)
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
	page("GET /prices/csv", a.pricesFile)
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
