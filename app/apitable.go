package app

import (
	"net/http"
	"slices"

	"plashet/answer"
	"plashet/shelf"
	"plashet/shelf/keep"
)

// Parameters that stand at several operations.
var (
	paramID      = param{name: "id", in: inPath, must: true, doc: "Identity of a job, as the list of jobs gives it.", example: "example-hillside-cascade"}
	paramBefore  = param{name: "before", in: inQuery, whole: true, doc: "Go on behind this: next of the page before.", example: "17"}
	paramLimit   = param{name: "limit", in: inQuery, whole: true, most: mostLines, doc: "So many at most; 40 when not given.", example: "100"}
	paramMatch   = param{name: "If-Match", in: inHeader, must: true, doc: "The ETag of the revision that the change starts from. Where the job has moved on since, nothing is saved.", example: `"3"`}
	paramWho     = param{name: "who", in: inQuery, doc: "Who changes it: the name that stands with the change.", example: "Ann"}
	paramClient  = param{name: "for", in: inQuery, words: []string{"firm", "client"}, doc: "Whom it is for: with what it costs the firm, or as the client sees it; firm when not given.", example: "client"}
	paramPaper   = param{name: "paper", in: inQuery, words: []string{"letter", "a4"}, doc: "Size of the paper; the job's when not given.", example: "a4"}
	paramNumber  = param{name: "revision", in: inQuery, whole: true, must: true, doc: "Number of the state, as the history gives it.", example: "1"}
	paramLayout  = param{name: "layout", in: inQuery, whole: true, must: true, doc: "Number of the layout in the result of the search, from 1.", example: "1"}
	paramsImport = []param{
		{name: "yes", in: inQuery, words: []string{"true", "false"}, doc: "Take the rows in; without it nothing is changed, and what would be is told.", example: "true"},
		{name: "file", in: inQuery, doc: "Name of the file, to stand with the change.", example: "list.csv"},
		{name: "currency", in: inQuery, doc: "Code of the currency of amounts that name none; that of the first price on the shelf when not given.", example: "USD"},
		{name: "units", in: inQuery, words: []string{"us", "metric"}, doc: "System of numbers without any unit; us when not given.", example: "metric"},
		{name: shelf.ChoiceColumn, in: inQuery, many: true, doc: "Take a field from a column: FIELD=TITLE, or the column's number from 1, or FIELD= for none; again for each. Guessed by the titles when not given. A field that there is not is answered with those that there are.", example: "note=3"},
		{name: shelf.ChoiceUnit, in: inQuery, many: true, doc: "The unit of a field's bare numbers: FIELD=UNIT; again for each. That behind the column's title when not given, else the usual one of units.", example: "curve/flow=l/h"},
		{name: "titles", in: inQuery, words: []string{"true", "false"}, doc: "Whether the first row names the columns; guessed when not given.", example: "false"},
		{name: "decimals", in: inQuery, words: []string{"point", "comma"}, doc: "The mark that decimals have; guessed when not given.", example: "comma"},
		paramWho,
	}
	paramsPrice = []param{
		{name: "item", in: inPath, must: true, doc: "The item that the price is for, as the shelf's CSV gives it.", example: "coupling 2"},
		{name: shelf.FieldUnit, in: inQuery, doc: "What the price is for, where the item has several.", example: "each"},
		{name: shelf.FieldCurrency, in: inQuery, doc: "Its currency, likewise.", example: "USD"},
		{name: shelf.FieldCounter, in: inQuery, doc: "Its counter, likewise.", example: "pipe counter"},
	}
	paramsArrange = []param{
		{name: "elbows", in: inQuery, whole: true, none: true, most: 8, doc: "Look at layouts with up to this many elbows; 4 when not given.", example: "3"},
	}
	paramsChoose = []param{
		{name: "shelf", in: inQuery, words: chooseShelves, doc: "The job's own pumps, those of the shelf that all jobs share, or invented ones to try it out; own when not given.", example: shelfShared},
		{name: "pumps", in: inQuery, words: []string{"one", "alike", "any"}, doc: "How many pumps: one, two of a kind too, any two too; alike when not given.", example: "any"},
		{name: "pipe", in: inQuery, many: true, doc: "Kind of pipe to choose from; several may be given.", example: "PVC Sch 40"},
		{name: "oneSize", in: inQuery, words: []string{"true", "false"}, doc: "One kind and size of pipe throughout.", example: "true"},
		{name: "speed", in: inQuery, doc: "Greatest speed of the water in the pipe, with its unit.", example: "5 ft/s"},
		{name: "years", in: inQuery, number: true, most: 100, doc: "Years that running costs are counted over; 5 when not given.", example: "10"},
		{name: "discount", in: inQuery, number: true, most: 100, doc: "Percent a year by which later payments count less.", example: "4"},
	}
)

// csvRows stands in the table for rows of CSV.
type csvRows struct{}

// jobFile is a job document, whose schema is its own.
type jobFile struct{ data []byte }

// MarshalJSON gives it as it is kept.
func (j jobFile) MarshalJSON() ([]byte, error) { return j.data, nil }

// operations lists all that may be asked.
func (a *app) operations() []operation {
	const job, arranged = "/jobs/{id}", "/arrange/{run}"
	named := func(name, doc, example string) param {
		return param{name: name, in: inPath, must: true, doc: doc, example: example}
	}
	with := func(more ...param) []param { return append([]param{paramID}, more...) }
	const pump, price = "/pumps/{pump}", "/prices/items/{item}"
	ofPump := func(more ...param) []param {
		return append([]param{named("pump", "Name of the pump, as the shelf's CSV gives it, or its identity.", "Shelf Q")}, more...)
	}
	ofPrice := func(more ...param) []param { return append(slices.Clone(paramsPrice), more...) }
	run := named("run", "As the answer to the job that was sent gives it.", "0123456789abcdef")
	return []operation{
		{id: "describe", method: http.MethodGet, path: "/openapi.json", about: "This description", out: described{}, do: a.apiDescribe},
		{id: "schema", method: http.MethodGet, path: "/schema", about: "The JSON Schema of the job file", files: []string{"application/schema+json"}, do: a.apiSchema},

		{id: "listJobs", method: http.MethodGet, path: "/jobs", about: "The jobs, those saved last first", params: []param{
			{name: "text", in: inQuery, doc: "Only those with this in name or place.", example: "hill"},
			{name: "aside", in: inQuery, words: []string{"true", "false"}, doc: "Those put aside instead.", example: "true"},
			paramLimit, paramBefore,
		}, out: apiJobs{}, do: a.apiJobs},
		{id: "newJob", method: http.MethodPost, path: "/jobs", about: "Keep a job that is sent", params: []param{paramWho}, in: jobFile{}, out: apiSaved{}, status: http.StatusCreated, etag: true, do: a.apiNew},
		{id: "getJob", method: http.MethodGet, path: job, about: "The job file", params: with(
			param{name: "revision", in: inQuery, whole: true, doc: "An earlier state; the newest when not given.", example: "2"},
			param{name: "If-None-Match", in: inHeader, doc: "An ETag: nothing is sent where it is still that one.", example: `"3"`},
		), out: jobFile{}, etag: true, do: a.apiJob},
		{id: "putJob", method: http.MethodPut, path: job, about: "Keep a new state of the job", params: with(paramMatch, paramWho), in: jobFile{}, out: apiSaved{}, etag: true, ifMatch: true, do: a.apiPut},
		{id: "setJob", method: http.MethodPatch, path: job, about: "Set fields of the job by their paths", params: with(paramMatch, paramWho), in: apiSets{}, out: apiSaved{}, etag: true, ifMatch: true, do: a.apiSet},
		{id: "undo", method: http.MethodPost, path: job + "/undo", about: "Bring back what stood before the newest change; again goes further back", params: with(paramMatch, paramWho), out: apiSaved{}, etag: true, ifMatch: true, do: a.apiUndo},
		{id: "return", method: http.MethodPost, path: job + "/return", about: "Put an earlier state on top of those that came after it", params: with(paramNumber, paramMatch, paramWho), out: apiSaved{}, etag: true, ifMatch: true, do: a.apiReturn},
		{id: "putAside", method: http.MethodPut, path: job + "/aside", about: "Put the job aside: it stays, and the list leaves it out", params: with(paramMatch, paramWho), out: apiSaved{}, etag: true, ifMatch: true, do: a.apiAside(true)},
		{id: "takeBack", method: http.MethodDelete, path: job + "/aside", about: "Take the job back into the list", params: with(paramMatch, paramWho), out: apiSaved{}, etag: true, ifMatch: true, do: a.apiAside(false)},
		{id: "history", method: http.MethodGet, path: job + "/history", about: "The states of the job, the newest first", params: with(paramLimit, paramBefore), out: apiStates{}, do: a.apiHistory},

		{id: "design", method: http.MethodGet, path: job + "/design", about: "Design the job", params: with(), out: answer.Document{}, do: a.onJob(a.apiDesign)},
		{id: "check", method: http.MethodGet, path: job + "/check", about: "The faults in the job", params: with(), out: apiFaults{}, do: a.onJob(a.apiCheck)},
		{id: "quantities", method: http.MethodGet, path: job + "/quantities", about: "Every quantity of the job as typed and as read", params: with(), out: apiQuantities{}, do: a.onJob(a.apiQuantities)},
		{id: "explain", method: http.MethodGet, path: job + "/explain/{figure}", about: "One figure with its formula, values and source", params: with(named("figure", "Name of a figure of the answer.", "pump.flow")), out: answer.Figure{}, do: a.onJob(a.apiExplain)},
		{id: "choose", method: http.MethodGet, path: job + "/choose", about: "The best pump and pipe of a shelf", params: with(paramsChoose...), out: answer.ChosenDocument{}, do: a.onJob(a.apiChoose)},
		{id: "quote", method: http.MethodGet, path: job + "/quote", about: "The price of the job and of each option", params: with(paramClient), out: answer.OfferDocument{}, do: a.onJob(a.apiQuote)},
		{id: "arrange", method: http.MethodPost, path: job + "/arrange", about: "Begin to look for layouts; where the same is looked for already, that goes on", params: with(paramsArrange...), out: apiSearch{}, status: http.StatusAccepted, do: a.apiArrange},
		{id: "arranged", method: http.MethodGet, path: job + "/arrange", about: "How far the search is, and what it found", params: with(), out: apiSearch{}, do: a.apiArranged},
		{id: "stopArrange", method: http.MethodDelete, path: job + "/arrange", about: "Stop the search; the best so far stays to be read", params: with(), out: apiSearch{}, do: a.apiStop},
		{id: "keepLayout", method: http.MethodPost, path: job + "/arrange/keep", about: "Write a layout that the search found into the job", params: with(paramLayout, paramMatch, paramWho), out: apiSaved{}, etag: true, ifMatch: true, do: a.apiKeepLayout},
		{id: "listDrawings", method: http.MethodGet, path: job + "/draw", about: "The drawings that the answer has enough for", params: with(), out: apiSheets{}, do: a.onJob(a.apiSheets)},
		{id: "draw", method: http.MethodGet, path: job + "/draw/{name}", about: "A drawing", params: with(named("name", "As the list of drawings gives it.", "curve")), files: []string{"image/svg+xml"}, do: a.apiSheet},
		{id: "listPaper", method: http.MethodGet, path: job + "/print", about: "The sheets that the job is built by", params: with(), out: apiSheets{}, do: a.onJob(a.apiPaper)},
		{id: "print", method: http.MethodGet, path: job + "/print/{file}", about: "A sheet, or all of them, to print", params: with(named("file", "Name of a sheet, or all, and .pdf.", "cut.pdf"), paramPaper), files: []string{"application/pdf"}, do: a.paperFile},
		{id: "listFiles", method: http.MethodGet, path: job + "/export", about: "The files for other programs", params: with(), out: apiFiles{}, do: a.onJob(a.apiFiles)},
		{id: "export", method: http.MethodGet, path: job + "/export/{file}", about: "A file for other programs", params: with(named("file", "As the list of files gives it.", "cuts.csv")), files: []string{
			"text/csv", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "image/vnd.dxf", "model/gltf-binary", mediaJSON, "application/schema+json",
		}, do: a.exportFile},

		{id: "designSent", method: http.MethodPost, path: "/design", about: "Design a job that is sent; nothing of it is kept", in: jobFile{}, out: answer.Document{}, do: a.onSent(a.apiDesign)},
		{id: "checkSent", method: http.MethodPost, path: "/check", about: "The faults in a job that is sent", in: jobFile{}, out: apiFaults{}, do: a.onSent(a.apiCheck)},
		{id: "quantitiesSent", method: http.MethodPost, path: "/quantities", about: "Every quantity of a job that is sent", in: jobFile{}, out: apiQuantities{}, do: a.onSent(a.apiQuantities)},
		{id: "chooseSent", method: http.MethodPost, path: "/choose", about: "The best pump and pipe of a shelf for a job that is sent", params: paramsChoose, in: jobFile{}, out: answer.ChosenDocument{}, do: a.onSent(a.apiChoose)},
		{id: "quoteSent", method: http.MethodPost, path: "/quote", about: "The price of a job that is sent", params: []param{paramClient}, in: jobFile{}, out: answer.OfferDocument{}, do: a.onSent(a.apiQuote)},
		{id: "arrangeSent", method: http.MethodPost, path: "/arrange", about: "Begin to look for layouts for a job that is sent", params: paramsArrange, in: jobFile{}, out: apiSearch{}, status: http.StatusAccepted, do: a.apiArrangeSent},
		{id: "arrangedSent", method: http.MethodGet, path: arranged, about: "How far that search is, and what it found", params: []param{run}, out: apiSearch{}, do: a.apiArrangedSent},
		{id: "stopArrangeSent", method: http.MethodDelete, path: arranged, about: "Stop that search", params: []param{run}, out: apiSearch{}, do: a.apiStopSent},

		{id: "listTables", method: http.MethodGet, path: "/tables", about: "The tables behind the figures", out: apiTables{}, do: a.apiTables},
		{id: "table", method: http.MethodGet, path: "/tables/{name}", about: "The rows of a table, each with source and basis", params: []param{named("name", "Name of a table.", "pipe")}, out: apiTable{}, do: a.apiTable},
		{id: "pumps", method: http.MethodGet, path: "/pumps", about: "The pump shelf that all jobs share, as CSV", files: []string{"text/csv"}, do: a.shelfFile("pumps.csv", keep.PumpsCSV)},
		{id: "importPumps", method: http.MethodPost, path: "/pumps", about: "Take pumps from CSV onto the shelf that all jobs share; one of the same name is changed", params: paramsImport, in: csvRows{}, out: apiImported{}, do: a.apiImport(a.pumpShelf)},
		{id: "importPrices", method: http.MethodPost, path: "/prices", about: "Take prices from CSV onto the shelf that all jobs share; one for the same item, unit, currency and counter is changed", params: paramsImport, in: csvRows{}, out: apiImported{}, do: a.apiImport(a.priceShelf)},
		{id: "pump", method: http.MethodGet, path: pump, about: "A pump of the shelf", params: ofPump(), out: apiShelfPump{}, etag: true, do: a.onPump(a.apiPump)},
		{id: "setPump", method: http.MethodPatch, path: pump, about: "Set fields of a pump of the shelf by their paths", params: ofPump(paramMatch, paramWho), in: apiSets{}, out: apiShelved{}, etag: true, ifMatch: true, do: a.onPump(a.apiSetPump)},
		{id: "removePump", method: http.MethodDelete, path: pump, about: "Take a pump off the shelf: it is put aside, its states stay, and no job is offered it", params: ofPump(paramMatch, paramWho), out: apiShelved{}, etag: true, ifMatch: true, do: a.onPump(a.apiLay(true))},
		{id: "takeBackPump", method: http.MethodDelete, path: pump + "/aside", about: "Put a pump that was taken off the shelf back onto it", params: ofPump(paramMatch, paramWho), out: apiShelved{}, etag: true, ifMatch: true, do: a.onPump(a.apiLay(false))},
		{id: "undoPump", method: http.MethodPost, path: pump + "/undo", about: "Bring back what stood before the newest change of a pump's fields; again goes further back", params: ofPump(paramMatch, paramWho), out: apiShelved{}, etag: true, ifMatch: true, do: a.onPump(a.ofPumpRev(a.apiShelfUndo))},
		{id: "returnPump", method: http.MethodPost, path: pump + "/return", about: "Put an earlier state of a pump on top of those that came after it", params: ofPump(paramNumber, paramMatch, paramWho), out: apiShelved{}, etag: true, ifMatch: true, do: a.onPump(a.ofPumpRev(a.apiShelfReturn))},
		{id: "pumpHistory", method: http.MethodGet, path: pump + "/history", about: "The states of a pump, the newest first", params: ofPump(paramLimit, paramBefore), out: apiStates{}, do: a.onPump(a.ofPumpRev(a.apiShelfHistory))},
		{id: "undoPrices", method: http.MethodPost, path: "/prices/undo", about: "Bring back the list of prices as it was before the newest change; again goes further back", params: []param{paramMatch, paramWho}, out: apiShelved{}, etag: true, ifMatch: true, do: a.onPrices(a.apiShelfUndo)},
		{id: "returnPrices", method: http.MethodPost, path: "/prices/return", about: "Put an earlier state of the list of prices on top of those that came after it", params: []param{paramNumber, paramMatch, paramWho}, out: apiShelved{}, etag: true, ifMatch: true, do: a.onPrices(a.apiShelfReturn)},
		{id: "pricesHistory", method: http.MethodGet, path: "/prices/history", about: "The states of the list of prices, the newest first", params: []param{paramLimit, paramBefore}, out: apiStates{}, do: a.onPrices(a.apiShelfHistory)},
		{id: "price", method: http.MethodGet, path: price, about: "A price of the shelf; its ETag is the list's", params: ofPrice(), out: apiShelfPrice{}, etag: true, do: a.onPrice(a.apiPrice)},
		{id: "setPrice", method: http.MethodPatch, path: price, about: "Set fields of a price of the shelf", params: ofPrice(paramMatch, paramWho), in: apiSets{}, out: apiShelved{}, etag: true, ifMatch: true, do: a.onPrice(a.apiSetPrice)},
		{id: "removePrice", method: http.MethodDelete, path: price, about: "Take a price off the shelf: it is put aside, and offered to no job; with its field aside emptied it is back", params: ofPrice(paramMatch, paramWho), out: apiShelved{}, etag: true, ifMatch: true, do: a.onPrice(a.apiRemovePrice)},
		{id: "prices", method: http.MethodGet, path: "/prices", about: "The price shelf that all jobs share, as CSV", files: []string{"text/csv"}, do: a.shelfFile("prices.csv", keep.PricesCSV)},
	}
}
