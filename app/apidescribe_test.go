package app

import (
	"bytes"
	"encoding/json"
	"flag"
	"net/http"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"plashet/job"
)

var update = flag.Bool("update", false, "write static/openapi.json")

type object = map[string]any

// describer makes the description out of the operations and their Go types.
type describer struct {
	t       *testing.T
	schemas object
	types   map[string]reflect.Type
}

// TestDescription holds static/openapi.json to the operations and their types.
func TestDescription(t *testing.T) {
	d := &describer{t, object{}, map[string]reflect.Type{}}
	d.jobSchema()
	paths := object{}
	for _, op := range (&app{}).operations() {
		item, ok := paths[underInterface+op.path].(object)
		if !ok {
			item = object{}
			paths[underInterface+op.path] = item
		}
		item[strings.ToLower(op.method)] = d.operation(op)
	}
	problems := object{"description": "What went wrong, in one sentence (RFC 9457).", "content": object{"application/problem+json": object{"schema": d.ref(reflect.TypeFor[Problem]())}}}
	doc := object{
		"openapi": "3.0.3",
		"info": object{
			"title": "Plashet", "version": "1",
			"description": "The verbs of the command line for other programs, over the jobs that this server keeps and on a job that is sent, of which nothing is kept. Texts are in the language of Accept-Language. Not a code approval: electricity is for a licensed electrician; makers' sheets and local code have the last word.",
		},
		"paths":    paths,
		"security": []any{object{"code": []any{}}, object{"cookie": []any{}}, object{}},
		"components": object{
			"schemas": d.schemas, "responses": object{"Problem": problems},
			"securitySchemes": object{
				"code":   object{"type": "http", "scheme": "bearer", "description": "The access code that the server showed at its start, where it asks for one."},
				"cookie": object{"type": "apiKey", "in": "cookie", "name": "plashet_access", "description": "What a browser has after the code was typed."},
			},
		},
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	if err := e.Encode(doc); err != nil {
		t.Fatal(err)
	}
	at := filepath.Join("static", "openapi.json")
	if *update {
		if err := os.WriteFile(at, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if have, err := os.ReadFile(at); err != nil || !bytes.Equal(have, b.Bytes()) {
		t.Errorf("%s is not what the operations say: go test ./app -run Description -update, and read the difference (%v)", at, err)
	}
}

func (d *describer) operation(op operation) object {
	out := object{"operationId": op.id, "summary": op.about}
	var params []any
	for i := range op.params {
		params = append(params, d.param(&op.params[i]))
	}
	if params != nil {
		out["parameters"] = params
	}
	if op.in != nil {
		about := "As the schema says."
		schema := object{"type": "string"}
		switch op.in.(type) {
		case jobFile:
			about = "A job file, 16 MB at most."
		case csvRows:
			about = "Rows under their titles, as docs/shelf.md says."
		}
		if op.takes() == mediaJSON {
			schema = d.ref(reflect.TypeOf(op.in))
		}
		out["requestBody"] = object{"required": true, "description": about, "content": object{op.takes(): object{"schema": schema}}}
	}
	content := object{}
	if op.out != nil {
		content[mediaJSON] = object{"schema": d.ref(reflect.TypeOf(op.out))}
	}
	for _, kind := range op.files {
		schema := object{"type": "string", "format": "binary"}
		switch kind { // files that can be told
		case mediaJSON:
			schema = d.ref(reflect.TypeFor[jobFile]())
		case "application/schema+json":
			schema = object{"type": "object", "required": []any{"$schema", "$id", "$defs", "properties"}, "description": "A JSON Schema, draft 2020-12."}
		}
		content[kind] = object{"schema": schema}
	}
	answer := object{"description": op.about, "content": content}
	headers := object{}
	if op.etag {
		headers["ETag"] = object{"description": "The revision.", "schema": object{"type": "string", "pattern": `^"[0-9]+"$`}}
	}
	status := http.StatusOK
	if op.status != 0 {
		status = op.status
	}
	if status != http.StatusOK {
		headers["Location"] = object{"description": "Where it is.", "schema": object{"type": "string"}}
	}
	if len(headers) > 0 {
		answer["headers"] = headers
	}
	responses := object{strconv.Itoa(status): answer, "default": object{"$ref": "#/components/responses/Problem"}}
	if op.id == "getJob" {
		responses["304"] = object{"description": "It is still the revision that If-None-Match names."}
	}
	if op.ifMatch {
		for code, about := range map[string]string{"412": "It has moved on: nothing was saved.", "428": "If-Match is missing."} {
			responses[code] = object{"description": about, "content": object{"application/problem+json": object{"schema": d.ref(reflect.TypeFor[Problem]())}}}
		}
	}
	out["responses"] = responses
	return out
}

func (d *describer) param(p *param) object {
	schema := object{"type": "string"}
	var example any = p.example
	switch {
	case len(p.words) > 0:
		schema["enum"] = p.words
	case p.whole || p.number:
		schema["type"] = "integer"
		least := 1.0
		if p.none || p.number {
			least = 0
		}
		if p.number {
			schema["type"] = "number"
		}
		schema["minimum"] = least
		if p.most > 0 {
			schema["maximum"] = p.most
		}
		n, err := strconv.ParseFloat(p.example, 64)
		if err != nil {
			d.t.Errorf("%s: %v", p.name, err)
		}
		example = n
	}
	if p.in == inQuery && !p.takes(p.example) || p.example == "" || p.doc == "" {
		d.t.Errorf("%s: no example that it takes, or no description", p.name)
	}
	if p.many {
		schema, example = object{"type": "array", "items": schema}, []any{example}
	}
	out := object{"name": p.name, "in": p.in, "description": p.doc, "schema": schema, "example": example}
	if p.must && p.name != "If-Match" { // what is missing there has a status of its own
		out["required"] = true
	}
	return out
}

// ref names the schema of a type and makes it when it is first named.
func (d *describer) ref(t reflect.Type) object {
	name := t.Name()
	switch t {
	case reflect.TypeFor[jobFile]():
		return object{"$ref": "#/components/schemas/Job"}
	case reflect.TypeFor[described]():
		return object{"type": "object", "required": []any{"openapi", "info", "paths", "components"}, "description": "OpenAPI 3.0.3."}
	}
	name = strings.ToUpper(strings.TrimPrefix(name, "api")[:1]) + strings.TrimPrefix(name, "api")[1:]
	name = strings.TrimPrefix(strings.Replace(name, "Document", "Answer", 1), "x")
	if old, ok := d.types[name]; ok && old != t {
		d.t.Fatalf("%s and %s would have one schema", old, t)
	}
	if _, ok := d.types[name]; !ok {
		d.types[name] = t
		d.schemas[name] = d.form(t)
	}
	return object{"$ref": "#/components/schemas/" + name}
}

func (d *describer) form(t reflect.Type) object {
	props, must := object{}, []any{}
	for i := range t.NumField() {
		f := t.Field(i)
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "-" || !f.IsExported() {
			continue
		}
		if name == "" {
			d.t.Fatalf("%s.%s has no name in JSON", t, f.Name)
		}
		kind := f.Type
		if kind.Kind() == reflect.Pointer {
			kind = kind.Elem()
		}
		props[name] = d.value(kind, f.Tag)
		if !strings.Contains(rest, "omit") {
			must = append(must, name)
		}
	}
	out := object{"type": "object", "additionalProperties": false, "properties": props}
	if len(must) > 0 {
		out["required"] = must
	}
	return out
}

// value is the schema of a field.
func (d *describer) value(t reflect.Type, tag reflect.StructTag) object {
	var out object
	switch t.Kind() {
	case reflect.Struct:
		out = d.ref(t)
	case reflect.Slice, reflect.Array:
		out = object{"type": "array", "items": d.value(t.Elem(), "")}
		if t.Kind() == reflect.Array {
			out["minItems"], out["maxItems"] = t.Len(), t.Len()
		}
	case reflect.String:
		out = object{"type": "string"}
		if words := strings.Fields(tag.Get("one")); len(words) > 0 {
			out["enum"] = words
		}
	case reflect.Bool:
		out = object{"type": "boolean"}
	case reflect.Int, reflect.Int64:
		out = object{"type": "integer"}
	case reflect.Uint64:
		out = object{"type": "integer", "minimum": 0}
	case reflect.Float64:
		out = object{"type": "number"}
	default:
		d.t.Fatalf("no schema for %s", t)
	}
	if doc := tag.Get("doc"); doc != "" {
		if _, is := out["$ref"]; is { // beside a reference nothing else counts
			return object{"allOf": []any{out}, "description": doc}
		}
		out["description"] = doc
	}
	return out
}

// jobSchema puts the job file's own schema into the form of OpenAPI 3.0.3, which
// knows less than draft 2020-12.
func (d *describer) jobSchema() {
	data, err := job.Schema()
	if err != nil {
		d.t.Fatal(err)
	}
	var whole object
	if err := json.Unmarshal(data, &whole); err != nil {
		d.t.Fatal(err)
	}
	defs, _ := whole["$defs"].(object)
	if len(defs) < 10 {
		d.t.Fatal("the schema of the job has no parts")
	}
	for _, key := range []string{"$schema", "$id", "$defs"} {
		delete(whole, key)
	}
	d.schemas["Job"] = older(whole)
	for name, def := range defs {
		d.schemas["job."+name] = older(def)
	}
}

// older puts a piece of draft 2020-12 into OpenAPI 3.0.3.
func older(x any) any {
	switch v := x.(type) {
	case []any:
		out := make([]any, len(v))
		for i := range v {
			out[i] = older(v[i])
		}
		return out
	case object:
		out := object{}
		for key, value := range v {
			switch key {
			case "properties":
				props := object{}
				for name, p := range value.(object) {
					props[name] = older(p)
				}
				out[key] = props
			case "const":
				out["enum"] = []any{value}
			case "examples":
				if list, ok := value.([]any); ok && len(list) > 0 {
					out["example"] = list[0]
				}
			case "type":
				if list, several := value.([]any); several {
					var any []any
					for _, t := range list {
						any = append(any, object{"type": t})
					}
					out["anyOf"] = any
				} else {
					out[key] = value
				}
			case "$ref":
				out["allOf"] = []any{object{"$ref": strings.Replace(value.(string), "#/$defs/", "#/components/schemas/job.", 1)}}
			default:
				out[key] = older(value)
			}
		}
		return out
	}
	return x
}
