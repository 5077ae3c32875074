package job

import (
	"reflect"

	"plashet/engine/trace"
)

// money holds that a job with amounts names its currency. One fault tells it
// for all of them.
func (c *checker) money() {
	if c.j.Site.Currency != "" {
		return
	}
	first := ""
	w := walker{leaf: func(w *walker, _ *field, v reflect.Value) {
		if m, ok := v.Interface().(Money); ok && !m.IsZero() && first == "" {
			first = w.path()
		}
	}}
	w.each(c.j)
	if first != "" {
		c.add("/site/currency", CodeNoCurrency, trace.At("first", c.j.PlaceOf(first)))
	}
}
