package app

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/paper"
)

// unsaid is what a list of words shows while none is chosen: what is assumed then,
// where something is, so that nobody need open the answer to learn it.
func (x *former) unsaid(f job.Field) string {
	if s := x.assumed(f); s != "" {
		return x.a.say("app.unsaid.assumed", "value", s)
	}
	return x.a.say("app.unsaid")
}

// assumed is what is taken of a word that is not said: how a number or an amount
// is written, the paper, or the word that an assumption in force names.
func (x *former) assumed(f job.Field) string {
	j := *x.j // with the word unsaid, whatever it is now
	switch f.Path {
	case "/numbers/decimal":
		j.Numbers.Decimal = ""
		return cmp.Or(amount(&j), j.Style().Write(shown)) // an amount shows both marks
	case "/numbers/thousands":
		j.Numbers.Thousands = ""
		return cmp.Or(amount(&j), j.Style().Write(shown))
	case "/numbers/money":
		j.Numbers.Money = ""
		return amount(&j)
	case "/numbers/side":
		j.Numbers.Side = ""
		return amount(&j)
	case "/paper":
		j.Paper = ""
		return x.a.say("app.paper." + paper.For(&j).Name())
	}
	for _, s := range x.standing {
		if s.Path != f.Path {
			continue
		}
		for _, arg := range s.Args {
			if slices.Contains(f.Words, arg.Text) {
				return x.a.Language.Term(arg.Text)
			}
		}
	}
	return ""
}

// shown is the number that stands for all.
const shown = "1234.50"

// amount writes an amount as the job has it; "" while it has no currency.
func amount(j *job.Job) string {
	if j.Site.Currency == "" {
		return ""
	}
	return unit.Money{Amount: decimal.RequireFromString(shown), Currency: j.Site.Currency}.Format(j.Style())
}

// standingOf gives the assumptions in force of what was worked out.
func standingOf(s *solved) []trace.Assumption {
	if s == nil || s.result == nil {
		return nil
	}
	return s.result.Assumptions
}
