package words

// enCatalog holds the sentences for the book of pipes, fittings and tables. The
// codes and their arguments are listed in engine/catalog/errors.go.
var enCatalog = map[string]string{
	"catalog.pipe.unknown":     "{where}: the book has no pipe of kind “{kind}”.[ Near it: {near}.] Choose a kind of the book, or give the bore.",
	"catalog.pipe.size":        "{where}: the book has no {kind} pipe in size {size}.[ There are: {near}.]",
	"catalog.fitting.unknown":  "{where}: the book has no fitting “{fitting}”.[ Near it: {near}.] Choose one of the book, or measure the one in hand.",
	"catalog.fitting.size":     "{where}: the book has no dimensions of {fitting} in size {size}.[ There are: {near}.] Measure the fitting in hand and give its take-offs.",
	"catalog.fitting.twosizes": "{where}: {fitting} joins two sizes, but the size is “{size}”. Write both, like “2 x 1-1/2”.",
	"catalog.fitting.onesize":  "{where}: {fitting} comes in one size only, but the size is “{size}”. Write one size, or choose a reducing fitting.",
	"catalog.size.unread":      "{where}: “{size}” cannot be read as a size. Write it like “1-1/2”, or “50 mm”.",
	"catalog.size.dn":          "{where}: “{size}” can mean two outside diameters in metric pipe. Give the outside diameter, like “50 mm”.",
	"catalog.loss.none":        "{where}: the book has no loss coefficient for “{fitting}”. Take K from the maker's sheet.",
	"catalog.loss.size":        "{where}: the tables of losses do not have {fitting} in size {size}. Take K from the maker's sheet.",
	"catalog.loss.which":       "{where}: the loss of “{fitting}” depends on the way the water takes. Choose: {near}.",
	"catalog.measured.value":   "{where}: the measured “{value}” of {fitting} {size} is below zero or not a number. Measure it again.",
	"catalog.thread.unknown":   "{where}: the book has no thread “{thread}” in size “{size}”.[ There are: {near}.]",
	"catalog.table.outside":    "{where}: the table of {table} does not reach this far: {value} lies outside it. Ask the maker of the part.",
	"catalog.soil.unknown":     "{where}: the book has no swell for the soil “{soil}”.[ Near it: {near}.]",
}
