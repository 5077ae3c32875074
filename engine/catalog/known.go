package catalog

import (
	"slices"
	"strings"
)

// KindName gives the name of a kind of pipe as the book prints it; false where
// the book has no such kind.
func (b *Book) KindName(name string) (string, bool) {
	if k := b.kind(name); k != nil {
		return k.name, true
	}
	return "", false
}

// HasFitting tells that a name is that of a fitting of the book.
func (b *Book) HasFitting(name string) bool {
	m, _ := b.model(name)
	return m != nil
}

// Names are the names of a fitting as the book writes them.
type Names struct {
	Fitting string // the way through it: "tee branch"
	Part    string // to buy: "tee", with the series where it is not the usual one: "tee Sch 80"
	Size    string // "2", "d50", "2 x 1-1/2"; empty where none was asked
}

// Names reads a fitting's name and size, however they are spelt: "Tee side",
// "2 in"; of one that reduces the larger size comes first. It does not tell whether there is such a size: Fitting does. Errors:
// CodeFittingUnknown, CodeSizeUnread, CodeSizeDN.
func (b *Book) Names(fitting, sizeText string) (Names, error) {
	m, series, err := b.find(fitting)
	if err != nil {
		return Names{}, err
	}
	n := Names{Fitting: m.name, Part: m.body}
	if series != "" && series != seriesInch {
		n.Part += " " + series
	}
	if strings.TrimSpace(sizeText) == "" {
		return n, nil
	}
	sizes, err := b.readSizes(sizeText)
	if err != nil {
		return Names{}, err
	}
	p := part{sizes: sizes}
	if m.form == FormReducer { // sold by its larger size first, whichever way the water runs
		p.sizes = [2]size{p.large(), p.small()}
	}
	n.Size = p.size()
	return n, nil
}

// Near gives up to three names that look most like what was asked, among the
// kinds of pipe, the fittings and the names that are added.
func (b *Book) Near(name string, more ...string) []string {
	return near(name, slices.Concat(b.kindNames, b.names, more))
}
