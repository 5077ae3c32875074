package paper

import (
	"slices"
	"strings"
	"time"

	"plashet/drawing"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/job"
	"plashet/offer"
	"plashet/takeoff"
)

// offered is what the client is offered: scope, the designs side by side, total,
// payments, terms. Nothing of what it costs the firm stands on it. Where a price
// is missing it is a draft and says so: a sum that is not the whole is nothing to
// sign.
func offered(f *flow) {
	d := f.in.Offer
	if d == nil || len(d.Designs) == 0 {
		f.paragraph(f.word("paper.nooffer"), true)
		return
	}
	f.about, f.accepts = aboutOffer, aboutList
	draft := f.draft(d.Designs)
	f.paragraph(f.in.Job.ClientNote, false)
	o := &f.in.Job.Offer
	f.clauses("offer.head.includes", o.Includes)
	f.clauses("offer.head.excludes", o.Excludes)
	if d.Currency == "" {
		return
	}
	for k := 0; k < len(d.Designs); k += sideBySide {
		f.designs(d.Designs[k:min(k+sideBySide, len(d.Designs))], k > 0)
	}
	f.clauses("offer.head.terms", o.Terms)
	f.gap(1.5)
	f.valid(o.ValidDays)
	if slices.ContainsFunc(d.Designs, func(p offer.Priced) bool { return len(p.Assumptions) > 0 }) {
		f.paragraph(f.word("paper.offer.high"), false)
	}
	f.warn(f.word("offer.safe"))
	if !draft {
		f.accept(d.Designs)
	}
}

// aboutOffer tells the assumptions that the client is told of: what may move the
// price when the ground is opened, and how the water will look. What only the crew
// works by stands on the crew's sheets.
func aboutOffer(code, _ string) bool {
	return slices.Contains([]string{takeoff.AssumeSoil, takeoff.AssumeTrench, design.AssumeCrest, design.AssumeSheetAt}, code)
}

// draft heads an offer that is not whole with what it lacks, and tells that it
// did.
func (f *flow) draft(list []offer.Priced) bool {
	d, draft := f.in.Offer.Draft(list)
	if !draft {
		return false
	}
	f.bannerAll(f.word("offer.draft"))
	if len(d.Lacks) > 0 {
		var lacks []string
		for _, name := range d.Lacks {
			if s := f.in.Say.Item(name); !slices.Contains(lacks, s) {
				lacks = append(lacks, s)
			}
		}
		f.paragraph(f.text("offer.lacks", count("count", len(lacks))), true)
		f.paragraph(strings.Join(lacks, "; "), false)
		f.gap(1)
	}
	said := map[string]bool{}
	for _, x := range d.Faults {
		if s := f.in.Say.Say(x.Message, f.units()); !said[s] {
			said[s] = true
			f.paragraph(s, false)
			f.gap(0.6)
		}
	}
	f.gap(2)
	return true
}

func (f *flow) clauses(head string, list []job.Clause) {
	if len(list) == 0 {
		return
	}
	f.heading(f.word(head))
	for _, c := range list {
		f.bullet(c.Text)
	}
}

// dateForm is how a day is written.
const dateForm = "2006-01-02"

// valid tells until which day the offer holds, counted from that of the sheet.
func (f *flow) valid(days int) {
	if days < 1 {
		f.paragraph(f.word("paper.offer.open"), true)
		return
	}
	s := f.text("offer.valid", count("days", days))
	if day, err := time.Parse(dateForm, f.in.Stamp.Date); err == nil {
		s = f.text("paper.offer.until", count("days", days), str("date", day.AddDate(0, 0, days).Format(dateForm)))
	}
	f.paragraph(s, true)
}

// accept leaves room for who accepts what.
func (f *flow) accept(list []offer.Priced) {
	f.headingOver(f.word("paper.head.accept"), float64(len(list)+2)*body*lead+30)
	f.paragraph(f.word("paper.accept"), false)
	f.gap(1)
	if len(list) > 1 {
		for i := range list {
			if list[i].Name != "" && list[i].Stops > 0 {
				continue
			}
			f.check(f.designName(list[i].Name) + ": " + list[i].Offer.Total.Format(f.money()))
		}
	}
	f.sign("paper.sign.client", "paper.sign.firm")
}

// sign leaves lines for name, signature and date, one for each who signs.
func (f *flow) sign(codes ...string) {
	for _, c := range codes {
		f.apart(11)
		f.need(8)
		parts := []struct {
			code string
			part float64
		}{{c, 0.72}, {"paper.day", 0.28}}
		x := f.x0
		for _, p := range parts {
			wide := (f.x1-f.x0)*p.part - 4
			f.add(drawing.Line{From: drawing.Point{X: x, Y: f.y}, To: drawing.Point{X: x + wide, Y: f.y}, Pen: thin})
			f.write(x, f.y+body+0.6, small, false, fit(f.word(p.code), small, false, wide))
			x += wide + 4
		}
		f.y += 6
	}
}

// faults gives all that is wrong in the job: what could not be read, and what
// could not be worked out.
func (f *flow) faults() []trace.Fault { return slices.Concat(f.in.Unread, f.in.Result.Faults) }
