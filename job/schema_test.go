package job

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"
)

// validator compiles our schema with an independent implementation of JSON
// Schema 2020-12, which checks the schema against its meta-schema first.
func validator(t testing.TB) *jsonschema.Schema {
	t.Helper()
	data, err := Schema()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	c.AssertFormat()
	if err := c.AddResource(SchemaID, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(SchemaID)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate2020(s *jsonschema.Schema, data []byte) error {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		return err
	}
	return s.Validate(doc)
}

// TestSchemaTakesJobs: every well document is valid.
func TestSchemaTakesJobs(t *testing.T) {
	s := validator(t)
	for _, folder := range []string{"v1", demoFolder} {
		for name, data := range files(t, folder) {
			if err := validate2020(s, data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		data, err := Encode(drawJob(t))
		if err != nil {
			t.Fatal(err)
		}
		if err := validate2020(s, data); err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
	})
}

// TestSchemaRefuses: each of these is broken in one place, and both the schema
// and the decoder say where. The last column is a fault of the decoder only,
// that a schema cannot know.
func TestSchemaRefuses(t *testing.T) {
	s := validator(t)
	for _, c := range []struct {
		field, path string
		byDecoder   bool
	}{
		{`"shiny": 1`, "", false},
		{`"client": 12`, "/client", false},
		{`"name": ""`, "/name", false},
		{`"name": " x"`, "/name", false},
		{`"units": "imperial"`, "/units", false},
		{`"version": 2`, "/version", false},
		{`"format": "list"`, "/format", false},
		{`"date": "2026-02-29"`, "/date", false},
		{`"note": "` + strings.Repeat("x", MaxRunes+1) + `"`, "/note", false},
		{`"site": {"frost": "yes"}`, "/site/frost", false},
		{`"site": {"currency": "euro"}`, "/site/currency", false},
		{`"site": {"tariff": true}`, "/site/tariff", false},
		{`"pond": {"depth": true}`, "/pond/depth", false},
		{`"pond": {"depth": {"source": "guess"}}`, "/pond/depth", false},
		{`"pond": {"depth": {"value": 1, "source": "hearsay"}}`, "/pond/depth", false},
		{`"pond": {"depth": {"value": 1, "unit": "ft"}}`, "/pond/depth", false},
		{`"pond": {"water": []}`, "/pond/water", false},
		{`"pond": {"section": {"depth": 1}}`, "/pond/section", false},
		{`"pond": {"outline": {"length": 1}}`, "/pond/outline", false},
		{`"pond": {"outline": {"shape": "square"}}`, "/pond/outline/shape", false},
		{`"pumps": [{"watts": 640}]`, "/pumps/0", false},
		{`"pumps": [5]`, "/pumps/0", false},
		{`"watercourses": [{"name": "a", "parts": [{}]}]`, "/watercourses/0/parts/0", false},
		{`"watercourses": [{"name": "a", "parts": [{"lip": {"name": "a", "width": 1}, "pool": {"name": "b"}}]}]`, "/watercourses/0/parts/0", false},
		{`"works": {"underlayLayers": 0}`, "/works/underlayLayers", false},
		{`"works": {"underlayLayers": 1.5}`, "/works/underlayLayers", false},
		{`"pond": {"depth": "deep"}`, "", true},
		{`"pond": {"depth": "-3 ft"}`, "", true},
		{`"pumps": [{"name": "A"}, {"name": "A"}]`, "", true},
	} {
		doc := map[string]json.RawMessage{}
		for _, text := range []string{head + "}", "{" + c.field + "}"} {
			if err := json.Unmarshal([]byte(text), &doc); err != nil {
				t.Fatal(err)
			}
		}
		data, err := json.Marshal(doc)
		if err != nil {
			t.Fatal(err)
		}
		if _, faults := Decode(data); len(faults) == 0 {
			t.Errorf("%s: the decoder takes it", c.field)
		}
		err = validate2020(s, data)
		if c.byDecoder {
			if err != nil {
				t.Errorf("%s: the schema refuses it too: move it up (%v)", c.field, err)
			}
			continue
		}
		if err == nil {
			t.Errorf("%s: the schema takes it", c.field)
		} else if !strings.Contains(err.Error(), "'"+c.path+"'") {
			t.Errorf("%s: the schema does not say %s: %v", c.field, c.path, err)
		}
	}
}

// TestSchemaNamesAll: every field has its description, its examples can be
// read, and the schema says what it is.
func TestSchemaNamesAll(t *testing.T) {
	data, err := Schema()
	if err != nil {
		t.Fatal(err)
	}
	golden(t, filepath.Join("testdata", "schema.json"), string(data))
	for _, f := range append([]*form{plan, entryForm}, parts(plan, nil)...) {
		for i := range f.fields {
			fd := &f.fields[i]
			if fd.must && fd.leaf() && fd.example(0) == "" {
				t.Errorf("%s.%s must be there and has no example", f.name, fd.name)
			}
			if !bytes.Contains(data, []byte(`"`+fd.name+`": {`)) {
				t.Errorf("%s.%s is missing in the schema", f.name, fd.name)
			}
		}
	}
}
