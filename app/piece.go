package app

import (
	"bytes"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"plashet/answer"
	"plashet/drawing"
	"plashet/render/svg"
)

// pieceBody is one part or piece of the assembly, large.
type pieceBody struct {
	ID, Mark   string
	Piece      *answer.Piece // a piece of pipe
	Pipe       string        // its size, where there is more than one
	Stub       string
	Ends       [2]end
	Roll       *answer.Roll // of an elbow
	Made       string       // what a part is
	Beside     []string     // marks of the pieces at it
	NotToCut   bool
	Prev, Next string
	Sheet      template.HTML
}

// end is one end of a piece of pipe.
type end struct {
	Part, Made, Mark, Socket, Known, Source string
	Roll                                    *answer.Roll
}

// marksOf lists the marks of the assembly in order from the pump: pieces between
// the parts they join.
func marksOf(d *answer.Document) (list []string) {
	if d.Assembly == nil {
		return nil
	}
	after := func(from string) {
		for i := range d.Pieces {
			if d.Pieces[i].From == from && !slices.Contains(list, d.Pieces[i].Mark) {
				list = append(list, d.Pieces[i].Mark)
			}
		}
	}
	for i := range d.Pieces { // one from the pump's port itself
		if !slices.ContainsFunc(d.Assembly.Parts, func(p answer.Part) bool { return p.Mark == d.Pieces[i].From }) {
			list = append(list, d.Pieces[i].Mark)
		}
	}
	for i := range d.Assembly.Parts {
		list = append(list, d.Assembly.Parts[i].Mark)
		after(d.Assembly.Parts[i].Mark)
	}
	return list
}

// madeOf says what the part of a mark is: its fitting and size.
func madeOf(o *opened, mark string) string {
	if o.result.Assembly == nil {
		return ""
	}
	for i := range o.result.Assembly.Places {
		if o.result.Assembly.Places[i].Mark != mark || i >= len(o.job.Assembly.Parts) {
			continue
		}
		p := &o.job.Assembly.Parts[i]
		size := p.Size
		if size == "" {
			size = o.job.Assembly.Pipe.Size
		}
		return strings.TrimSpace(p.Fitting + " " + size)
	}
	return ""
}

func rollOf(d *answer.Document, mark string) *answer.Roll {
	if i := slices.IndexFunc(d.Rolls, func(r answer.Roll) bool { return r.Mark == mark }); i >= 0 {
		return &d.Rolls[i]
	}
	return nil
}

// piece shows one piece of pipe or one part: its cut, both ends, roll marks.
func (a *app) piece(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	mark, d := r.PathValue("mark"), &o.doc
	list := marksOf(d)
	n := slices.Index(list, mark)
	if n < 0 {
		return errNoPage
	}
	b := pieceBody{ID: o.rev.ID, Mark: mark, NotToCut: d.NotToCut, Made: madeOf(o, mark), Roll: rollOf(d, mark)}
	if n > 0 {
		b.Prev = list[n-1]
	}
	if n+1 < len(list) {
		b.Next = list[n+1]
	}
	for i := range d.Pieces {
		p := &d.Pieces[i]
		if p.From == mark || p.To == mark {
			b.Beside = append(b.Beside, p.Mark)
		}
		if p.Mark != mark {
			continue
		}
		b.Piece = p
		if slices.ContainsFunc(d.Pieces, func(q answer.Piece) bool { return q.Pipe != p.Pipe }) {
			b.Pipe = p.Pipe
		}
		if p.Stub != nil {
			b.Stub = p.Stub.Text
		}
		for k, part := range [2]string{p.From, p.To} {
			s := &p.Sockets[k]
			b.Ends[k] = end{part, madeOf(o, part), p.Marks[k].Text, s.Depth.Text, a.Language.Word("app.known." + s.Known), s.Source.Title, rollOf(d, part)}
		}
	}
	if s, ok := drawing.Marked(a.drawn(o.solved), mark); ok {
		var buf bytes.Buffer
		if svg.Linked(&buf, &s, a.pieceLink(o)) == nil {
			b.Sheet = template.HTML(buf.String()) //nolint:gosec // written by render/svg, which escapes every text
		}
	}
	a.show(w, r, http.StatusOK, "piece", mark, a.heading(o, "vault"), b)
	return nil
}

// pieceLink tells where a mark in a drawing leads.
func (a *app) pieceLink(o *opened) func(mark string) string {
	list := marksOf(&o.doc)
	return func(mark string) string {
		if !slices.Contains(list, mark) {
			return ""
		}
		return "/jobs/" + o.rev.ID + "/piece/" + url.PathEscape(mark)
	}
}
