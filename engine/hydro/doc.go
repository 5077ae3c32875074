// Package hydro holds the single elements of a water circuit: water itself, the
// loss of a pipe and of its fittings, the pump's curve, the lip as a weir, the
// stream, the tank, and the plain formulas of power, wire and evaporation. It
// knows no network (package network joins the elements), no level of a pond
// and no catalogue row: coefficients arrive as numbers.
//
// Inside, everything is SI: metre, second, m³/s, pascal, kelvin only where a
// formula wants it. Heads are metres of the water at hand, under the standard
// gravity of 9.80665 m/s². A flow is positive along its element; a loss is the
// head lost along the flow, so it has the flow's sign.
//
// Every loss law (Pipe, HazenWilliams, Minor, Lip) gives the loss and its
// derivative, is odd, has no jump in either, and rises with the flow through
// zero, which is what a Newton solve of a network stands on. Where the trade's
// formula has no finite slope, or a slope of nothing, at zero flow, the law is
// joined to a cubic so near zero that no answer can tell (law.go says where).
//
// Bad input never panics: a constructor refuses it with an *Error, a law given
// a flow that is not a number gives back not a number.
package hydro
