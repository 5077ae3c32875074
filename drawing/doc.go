// Package drawing turns an answer into sheets: lists of lines, polygons, arcs
// and texts in millimetres, which a back end (render/svg) turns into bytes. It
// draws what the design found and works out nothing new but where on the paper
// things go.
//
// On a sheet x runs to the right and y downward from the upper left corner, in
// millimetres; angles are in degrees, clockwise as they are seen. In the world
// all is SI as in the engine; names there end in M where they are bare numbers.
//
// Every sheet is as wide as an A5 page. Its smallest letters are chosen so that
// they can be read on a screen 360 px wide. Texts keep off one another: each is
// measured (text.go) before it is placed (place.go).
package drawing
