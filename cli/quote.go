package cli

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"plashet/answer"
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/words"
)

// quoter holds the flags of quote.
type quoter struct {
	client bool
	option string
	agree  string
	json   bool
	to     save
}

func quoteCommand() *cobra.Command {
	var f quoter
	c := &cobra.Command{
		Use: "quote JOB", Short: "Price the job for the firm, or as the client sees it", Args: operands,
		Long: `Prices the job: material by the material list and the job's own prices, pumps, labour by
task, expenses, waste, contingency, markup or margin, tax, deposit and stages, all to the
coin and adding up (docs/offer.md). Every option of the job is a whole design of its own
and is priced as one. What the job does not say is told, not guessed; what has no price is
left out of the sum and named.

For the firm it prints the build-up; with --client only scope, price and terms. --agree
keeps an offer that the client accepted in the job; from then on a change of the work is
told as a change order.`,
		Example: `  plashet quote garden.json
  plashet quote garden.json --client --option "with the larger pump"
  plashet quote garden.json --agree 2026-06-02 --out garden-2.json`,
		RunE: func(cmd *cobra.Command, args []string) error { return f.run(cmd, args[0]) },
	}
	c.Flags().BoolVar(&f.client, "client", false, "print what the client sees")
	c.Flags().BoolVar(&f.json, "json", false, "print JSON, all designs (docs/answer.md)")
	c.Flags().StringVar(&f.option, "option", "", "the option's `name`; the design itself when not given")
	c.Flags().StringVar(&f.agree, "agree", "", "keep the offer as accepted on this `day`, such as 2026-06-02, in the job at --out")
	f.to.flags(c)
	return c
}

func (f *quoter) run(cmd *cobra.Command, name string) error {
	if _, err := time.Parse(dateForm, f.agree); err != nil && f.agree != "" {
		return fmt.Errorf("%q is no day; write it as year-month-day, such as 2026-06-02", f.agree)
	}
	if err := f.to.check(); err != nil && f.agree != "" {
		return err
	}
	j, faults, err := sound(cmd, name)
	if err != nil {
		return err
	}
	book, err := catalog.New()
	if err != nil {
		return ours{err}
	}
	d := offer.Of(book, j, faults...)
	wrong := append(slices.Clone(faults), d.Unsolved...)
	if err := tellOnce(cmd, wrong, j.System()); err != nil {
		return err
	}
	if f.agree != "" && len(wrong) > 0 {
		return errJob // a field that could not be read would be lost in writing; what cannot be designed has no price
	}
	which, err := f.which(&d)
	if err != nil {
		return err
	}
	if f.agree != "" {
		if err := acceptable(&d, which, j.System(), spoken(cmd)); err != nil {
			return err
		}
		offer.Agree(j, d.Designs[which], f.agree)
		data, err := job.Encode(j)
		if err != nil {
			return ours{err}
		}
		return f.to.write(cmd, data)
	}
	switch {
	case f.json:
		err = answer.OfferJSON(cmd.OutOrStdout(), j, &d, f.client, faults, spoken(cmd))
	case f.client:
		err = answer.OfferedTo(cmd.OutOrStdout(), j, &d, which, spoken(cmd))
	default:
		err = answer.Offered(cmd.OutOrStdout(), j, &d, spoken(cmd))
	}
	if x, _ := d.Draft(d.Designs); err == nil && len(wrong)+len(x.Faults) > 0 {
		return errJob
	}
	return err
}

// tellOnce prints faults, of several designs each once.
func tellOnce(cmd *cobra.Command, faults []trace.Fault, s unit.System) error {
	var once []trace.Fault
	said := map[string]bool{}
	for _, f := range faults {
		if key := f.Path + "\n" + spoken(cmd).Say(f.Message, s); !said[key] {
			said[key], once = true, append(once, f)
		}
	}
	return tell(cmd.ErrOrStderr(), spoken(cmd), once, s)
}

// acceptable tells what keeps a design from being accepted: that for which its
// sheet is a draft, or has no box for it.
func acceptable(d *offer.Document, which int, s unit.System, l *words.Language) error {
	x, draft := d.Draft(d.Designs)
	one := &d.Designs[which]
	switch {
	case len(x.Faults) > 0:
		return fmt.Errorf("the offer is a draft, so it cannot be kept as agreed. %s", words.Plain(l.Say(x.Faults[0].Message, s)))
	case len(x.Lacks) > 0:
		return fmt.Errorf("the offer is a draft, for not all of it has a price, so it cannot be kept as agreed; the first without one is %q, and quote JOB names all", words.Plain(l.Item(x.Lacks[0])))
	case draft:
		return errors.New("the offer is a draft, for its price could not be worked out whole, so it cannot be kept as agreed; quote JOB names what is missing")
	case one.Name != "" && one.Stops > 0:
		return fmt.Errorf("the option %q ends in danger, so it cannot be kept as agreed; choose another, or mend its design", one.Name)
	}
	return nil
}

// which finds the design that is asked for.
func (f *quoter) which(d *offer.Document) (int, error) {
	var names []string
	for i, o := range d.Designs {
		if o.Name == f.option {
			return i, nil
		}
		if o.Name != "" {
			names = append(names, fmt.Sprintf("%q", o.Name))
		}
	}
	if len(names) == 0 {
		return 0, errors.New("the job has no options; leave --option out")
	}
	return 0, fmt.Errorf("there is no option %q; the job has %s", f.option, strings.Join(names, ", "))
}
