// Package demo holds the example jobs. Their sites, people, pumps and
// prices are invented, and each says so.
package demo

import "embed"

//go:embed jobs/*.json shelf/*.json
var files embed.FS

// Names lists the example jobs in the order they are shown.
func Names() []string {
	return []string{"courtyard-rill", "hillside-cascade", "old-pond", "orchard-ring", "terrace-spout"}
}

// Job gives the file of an example job, nil when there is none of that name.
func Job(name string) []byte {
	data, err := files.ReadFile("jobs/" + name + ".json")
	if err != nil {
		return nil
	}
	return data
}

// Shelf gives the invented shelf of pumps: a list in the form of a job's pumps.
func Shelf() []byte {
	data, err := files.ReadFile("shelf/invented-pumps.json")
	if err != nil {
		panic(err) // embedded: it is there
	}
	return data
}
