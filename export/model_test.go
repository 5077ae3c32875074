package export

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"plashet/demo"
	"plashet/internal/reader"
)

// The model of every example job keeps every rule of the standard, by its own
// validator: no error, no warning, not even a hint.
func TestModelsKeepTheStandard(t *testing.T) {
	dir := t.TempDir()
	var paths []string
	for _, name := range demo.Names() {
		files, err := Make(inputOf(t, demo.Job(name)), Model)
		if err != nil {
			t.Fatal(name, err)
		}
		path := filepath.Join(dir, name+".glb")
		if err := os.WriteFile(path, files[0].Data, 0o644); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	if len(paths) == 0 {
		t.Fatal("no models")
	}
	bad := filepath.Join(dir, "bad.glb") // the validator must be able to find fault
	data, err := os.ReadFile(paths[0])
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(bad, data[:len(data)-8], 0o644); err != nil {
		t.Fatal(err)
	}
	var got map[string]struct {
		Issues    struct{ NumErrors, NumWarnings, NumInfos, NumHints int }
		Triangles int
	}
	if err := json.Unmarshal(reader.Node(t, "gltf-validator", "testdata/model.js", append(paths, bad)...), &got); err != nil {
		t.Fatal(err)
	}
	for _, name := range demo.Names() {
		x, ok := got[name+".glb"]
		if i := x.Issues; !ok || i.NumErrors+i.NumWarnings+i.NumInfos+i.NumHints > 0 || x.Triangles < 500 {
			t.Errorf("%s: %+v", name, x)
		}
	}
	if got["bad.glb"].Issues.NumErrors == 0 {
		t.Error("the validator finds no fault in a file cut short")
	}
}
