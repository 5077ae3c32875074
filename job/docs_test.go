package job

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plashet/engine/unit"
)

// TestDocs holds docs/job-format.md against the tags it is made from.
func TestDocs(t *testing.T) {
	intro, err := os.ReadFile(filepath.Join("testdata", "job-format-intro.md"))
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString(strings.NewReplacer(
		"{format}", FormatName, "{version}", fmt.Sprint(Version),
		"{mib}", fmt.Sprint(MaxBytes>>20), "{depth}", fmt.Sprint(MaxDepth), "{values}", group(MaxValues),
		"{list}", group(MaxList), "{runes}", group(MaxRunes), "{name}", fmt.Sprint(MaxName),
		"{closure}", fmt.Sprintf("%g mm", float64(ClosureUnsaid/unit.Millimetre)),
	).Replace(string(intro)))
	docForm(&b, plan, "The document", "")
	for _, f := range parts(plan, nil) {
		docForm(&b, f, docName(f), usedIn(f))
	}
	b.WriteString("\n## Kinds of quantity\nThe unit that a bare number takes, and how people write it.\n\n| kind | bare in a us job | bare in a metric job | examples |\n|---|---|---|---|\n")
	for _, d := range kinds() {
		if d.level {
			continue
		}
		us, metric := d.kind.UnitName(unit.US), d.kind.UnitName(unit.Metric)
		if us == "%" {
			us, metric = "the ratio itself, up to 1", "the ratio itself, up to 1"
		}
		eg := "`" + d.kind.Example(unit.US) + "`"
		if m := d.kind.Example(unit.Metric); m != d.kind.Example(unit.US) {
			eg += ", `" + m + "`"
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", d.kind.Name(), orDash(us), orDash(metric), eg)
	}
	golden(t, filepath.Join("..", "docs", "job-format.md"), b.String())
}

func group(n int) string { return unit.Value{SI: float64(n), Kind: unit.KindCount}.Format(unit.US) }

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// docName is a part's name as a heading: "Curve point".
func docName(f *form) string {
	words := spaced(f.name)
	if f.name == "XY" || f.name == "XYZ" {
		words = f.name
	}
	return strings.ToUpper(words[:1]) + words[1:]
}

func anchor(f *form) string { return strings.ReplaceAll(strings.ToLower(docName(f)), " ", "-") }

// usedIn lists the fields that hold a part.
func usedIn(in *form) string {
	var where []string
	for _, f := range append([]*form{plan}, parts(plan, nil)...) {
		for i := range f.fields {
			if f.fields[i].form == in {
				owner := "the document"
				if f != plan {
					owner = spaced(f.name)
					if f.name == "XY" || f.name == "XYZ" {
						owner = f.name
					}
				}
				where = append(where, fmt.Sprintf("`%s` of %s", f.fields[i].name, owner))
			}
		}
	}
	return "Stands in " + strings.Join(where, ", ") + "."
}

func docForm(b *strings.Builder, f *form, title, used string) {
	fmt.Fprintf(b, "\n## %s\n", title)
	if used != "" {
		b.WriteString(used)
		if f.union {
			b.WriteString(" Exactly one of these fields is given.")
		}
		b.WriteString("\n")
	}
	b.WriteString("\n| field | | what it is | how it is written | example |\n|---|---|---|---|---|\n")
	for i := range f.fields {
		fd := &f.fields[i]
		must := ""
		if fd.must {
			must = "must"
		}
		if fd.key {
			must += ", tells apart"
		}
		eg := ""
		if fd.leaf() && fd.shape != shapeBool {
			eg = "`" + fd.example(unit.US) + "`"
			if m := fd.example(unit.Metric); m != fd.example(unit.US) {
				eg += ", `" + m + "`"
			}
		}
		fmt.Fprintf(b, "| `%s` | %s | %s | %s | %s |\n", fd.name, must, fd.doc, howWritten(fd), eg)
	}
}

func howWritten(f *field) string {
	switch f.shape {
	case shapePart, shapeOne:
		return fmt.Sprintf("[%s](#%s)", strings.ToLower(docName(f.form)), anchor(f.form))
	case shapeList:
		return fmt.Sprintf("list of [%s](#%s)", strings.ToLower(docName(f.form)), anchor(f.form))
	case shapeBool:
		return "true or false"
	case shapeMoney:
		return "money"
	case shapeWhole:
		if f.name == "version" {
			return fmt.Sprintf("the number %d", Version)
		}
		return "whole number, " + f.limits(unit.US)
	case shapeText:
		if len(f.words) > 0 {
			return "one of `" + strings.Join(f.words, "`, `") + "`"
		}
		return "text"
	case shapeLevel:
		return "level"
	}
	limits := f.limits(unit.US)
	if m := f.limits(unit.Metric); m != limits {
		limits += " (" + m + ")"
	}
	return f.kind.Name() + ", " + limits
}
