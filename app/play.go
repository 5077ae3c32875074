package app

import (
	"bytes"
	"html/template"
	"net/http"
	"slices"
	"strconv"

	"plashet/drawing"
	"plashet/engine/design"
	"plashet/render/svg"
)

// playBody is one moment of a start or stop.
type playBody struct {
	ID, Case string
	Cases    []playCase
	At, Last int // moments, counted from 0
	Prev     int // -1 for none
	Next     int
	Clock    string // of the moment, and of the last
	Until    string
	Seconds  float64 // from this moment to the next
	Whole    float64 // s, from the first to the last
	Frame    template.HTML
	Rows     *drawing.Data
}

type playCase struct {
	Key, Name string
	Here      bool
}

// play shows the levels of a case of start and stop at one moment; played, one
// after the other.
func (a *app) play(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	in := a.drawn(o.solved)
	which := design.MovingCase(r.PathValue("case"))
	n := drawing.Frames(in, which)
	if n == 0 {
		return errNoPage
	}
	k, err := strconv.Atoi(r.URL.Query().Get("at"))
	if err != nil {
		k = 0
	}
	k = min(max(k, 0), n-1)
	b := playBody{ID: o.rev.ID, Case: string(which), Cases: a.playCases(o, string(which)), At: k, Last: n - 1, Prev: k - 1, Next: k + 1}
	if b.Next >= n {
		b.Next = -1
	}
	s, ok := drawing.Frame(in, which, k)
	if !ok {
		return errNoPage
	}
	var buf bytes.Buffer
	if err := svg.Inline(&buf, &s); err != nil {
		return err
	}
	b.Frame = template.HTML(buf.String()) //nolint:gosec // written by render/svg, which escapes every text
	series := o.result.Motion.Find(which).Series
	b.Whole = float64(series[n-1].At - series[0].At)
	if b.Next > 0 {
		b.Seconds = float64(series[b.Next].At - series[k].At)
	}
	if c, ok := drawing.Course(in, which); ok && len(c.Data) > 0 {
		b.Rows = &c.Data[len(c.Data)-1]
		if len(b.Rows.Rows) == n {
			b.Clock, b.Until = b.Rows.Rows[k][0], b.Rows.Rows[n-1][0]
		}
	}
	i := slices.IndexFunc(b.Cases, func(c playCase) bool { return c.Here })
	name := ""
	if i >= 0 {
		name = b.Cases[i].Name
	}
	a.show(w, r, http.StatusOK, "play", title(a.say("app.play.title", "case", name)), a.heading(o, "levels"), b)
	return nil
}

// playCases lists the cases that can be played.
func (a *app) playCases(o *opened, here string) (list []playCase) {
	if o.result.Motion == nil {
		return nil
	}
	for i := range o.result.Motion.Cases {
		c := string(o.result.Motion.Cases[i].Case)
		list = append(list, playCase{c, a.Language.Word("motion.case." + c), c == here})
	}
	return list
}
