package app

import (
	"bytes"
	"fmt"
	"html/template"
	"net/http"
	"path"
	"regexp"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"

	"plashet/docs"
)

// firstToRead are the texts that a crew reads, in this order; the rest are the methods
// and come after them by name.
var firstToRead = []string{"tour", "glossary", "upkeep", "pumps"}

// notToRead are texts for those who change or call the program.
var notToRead = map[string]bool{"speed": true, "checks": true}

type textLine struct{ Name, Title string }

// heading of a text in Markdown.
var headed = regexp.MustCompile(`(?m)^# (.+)$`)

// texts lists what can be read.
func (a *app) texts() (first, methods []textLine) {
	files, _ := docs.Files.ReadDir(".") // carried along: it is there
	title := func(name string) textLine {
		raw, _ := docs.Files.ReadFile(name + ".md")
		if m := headed.FindSubmatch(raw); m != nil {
			return textLine{name, string(m[1])}
		}
		return textLine{name, name}
	}
	early := map[string]bool{}
	for _, name := range firstToRead {
		early[name] = true
		first = append(first, title(name))
	}
	for _, file := range files {
		if name, text := strings.CutSuffix(file.Name(), ".md"); text && !early[name] && !notToRead[name] {
			methods = append(methods, title(name))
		}
	}
	return first, methods
}

// readList shows what can be read.
func (a *app) readList(w http.ResponseWriter, r *http.Request) error {
	first, methods := a.texts()
	a.show(w, r, http.StatusOK, "read", a.say("app.read.title"), nil, struct {
		First, Methods []textLine
		Text           template.HTML
	}{first, methods, ""})
	return nil
}

// away are links of a text to files that are not carried along.
var away = regexp.MustCompile(`<a href="(?:\.\./|https?:)[^"]*">(.*?)</a>`)

// newReader makes what reads the texts. Making it costs more than a text does.
func newReader() goldmark.Markdown {
	return goldmark.New(goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone))), goldmark.WithParserOptions(parser.WithAutoHeadingID()))
}

// read shows one text. The texts are the program's own; HTML in them is left out.
func (a *app) read(w http.ResponseWriter, r *http.Request) error {
	name := r.PathValue("name")
	raw, err := docs.Files.ReadFile(name + ".md")
	if err != nil {
		return errNoPage
	}
	title := name
	if m := headed.FindSubmatchIndex(raw); m != nil {
		title = string(raw[m[2]:m[3]])
		raw = append(append([]byte{}, raw[:m[0]]...), raw[m[1]:]...)
	}
	var out bytes.Buffer
	if err := a.reader.Convert(raw, &out); err != nil {
		return fmt.Errorf("the text %s: %w", name, err)
	}
	html := away.ReplaceAllString(out.String(), "$1")
	html = strings.NewReplacer(`<h1`, `<h2`, `</h1>`, `</h2>`, `.md"`, `"`, `.md#`, `#`, `<table>`, `<div class="tablebox" tabindex="0"><table>`, `</table>`, `</table></div>`, `<pre>`, `<pre tabindex="0">`).Replace(html)
	a.show(w, r, http.StatusOK, "read", title, nil, struct {
		First, Methods []textLine
		Text           template.HTML
	}{nil, nil, template.HTML(html)}) //nolint:gosec // the program's own texts, made to HTML by the library with raw HTML left out
	return nil
}

// readPicture gives a picture of a text.
func (a *app) readPicture(w http.ResponseWriter, r *http.Request) error {
	return send(w, docs.Files, path.Base(path.Dir(r.URL.Path))+"/"+r.PathValue("picture"))
}
