package words

import (
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Row says a fault of a row of a file, its field by the word for it.
func (l *Language) Row(f trace.Fault, s unit.System) string {
	f.Args = slices.Clone(f.Args)
	for i := range f.Args {
		if x := &f.Args[i]; x.Name == "field" && l.Has("app.shelf.field."+x.Text) {
			x.Text = l.Word("app.shelf.field." + x.Text)
		}
	}
	return l.Say(f.Message, s)
}
