package app

import (
	"net/http"
)

// apiTables is a list of tables.
type apiTables struct {
	Tables []apiTableName `json:"tables" doc:"the tables of the catalogue"`
}

type apiTableName struct {
	Name string `json:"name" doc:"name"`
	Rows int    `json:"rows" doc:"how many rows it has"`
}

// apiTable is the rows of a table.
type apiTable struct {
	Name string   `json:"name" doc:"name"`
	Rows []apiRow `json:"rows" doc:"its rows"`
}

type apiRow struct {
	Cells  []apiCell `json:"cells" doc:"those that are filled; a column's name ends in the unit of its figures"`
	Source string    `json:"source" doc:"where the row comes from"`
	Basis  string    `json:"basis" one:"published library practice memory" doc:"how far it can be trusted"`
	Note   string    `json:"note,omitempty" doc:"what to know before using it"`
}

type apiCell struct {
	Column string `json:"column" doc:"name of the column"`
	Text   string `json:"text" doc:"what stands in it"`
}

func (a *app) apiTables(w http.ResponseWriter, _ *http.Request) error {
	x := apiTables{[]apiTableName{}}
	for _, name := range a.Book.Tables() {
		n := 0
		for range a.Book.Rows(name) {
			n++
		}
		x.Tables = append(x.Tables, apiTableName{name, n})
	}
	return sendJSON(w, http.StatusOK, x)
}

func (a *app) apiTable(w http.ResponseWriter, r *http.Request) error {
	x := apiTable{Name: r.PathValue("name"), Rows: []apiRow{}}
	for row := range a.Book.Rows(x.Name) {
		one := apiRow{Source: row.Get("source"), Basis: row.Get("basis"), Note: row.Get("note"), Cells: []apiCell{}}
		for column, text := range row.Cells() {
			if text != "" && column != "source" && column != "basis" && column != "note" {
				one.Cells = append(one.Cells, apiCell{column, text})
			}
		}
		x.Rows = append(x.Rows, one)
	}
	if len(x.Rows) == 0 {
		return errNoPage
	}
	return sendJSON(w, http.StatusOK, x)
}
