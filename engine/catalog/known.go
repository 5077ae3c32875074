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

// PartName gives the part to buy for a fitting, and its size, as the book
// writes both: "Tee branch", "2 in" is "tee", "2". A series that is not the
// size's usual one stays with the name, "elbow 90 Sch 80". An empty size stays
// empty. It does not tell whether there is such a size: Fitting does. Errors:
// CodeFittingUnknown, CodeSizeUnread, CodeSizeDN.
func (b *Book) PartName(name, sizeText string) (partName, size string, err error) {
	m, series, err := b.find(name)
	if err != nil {
		return "", "", err
	}
	partName = m.body
	if series != "" && series != seriesInch {
		partName += " " + series
	}
	if strings.TrimSpace(sizeText) == "" {
		return partName, "", nil
	}
	sizes, err := b.readSizes(sizeText)
	if err != nil {
		return "", "", err
	}
	return partName, part{sizes: sizes}.size(), nil
}

// Near gives up to three names that look most like what was asked, among the
// kinds of pipe, the fittings and the names that are added.
func (b *Book) Near(name string, more ...string) []string {
	return near(name, slices.Concat(b.kindNames, b.names, more))
}
