package words

// enGeom holds the sentences for shapes. The codes are listed in
// engine/geom/errors.go.
var enGeom = map[string]string{
	"geom.value.finite":      "{where}: “{name}” is not a number that can be used. Enter it again.",
	"geom.value.range":       "{where}: “{name}” is outside what the shape allows. Check the figure and its unit.",
	"geom.outline.points":    "{where}: the outline has too few different points to enclose an area, or more than can be read. Three points are the least. Check the list.",
	"geom.outline.crosses":   "{where}: the outline crosses or touches itself. List its points in order as you walk round the edge.",
	"geom.outline.flat":      "{where}: the outline encloses no area: its points lie on one line. Check the points.",
	"geom.offsets.order":     "{where}: distances along the baseline must grow from one offset to the next. Put them in order.",
	"geom.inset.middle":      "{where}: the inset reaches past the middle, so no area is left. Make the shelf or slope narrower, or the outline larger.",
	"geom.simpson.intervals": "{where}: Simpson's rule needs an even number of intervals. Add an offset or leave one out.",
}
