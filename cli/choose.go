package cli

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"plashet/answer"
	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
)

// choice holds the flags of choose.
type choice struct {
	shelf    string
	database string
	years    string
	discount string
	speed    string
	kinds    []string
	oneSize  bool
	pumps    string
	json     bool
}

// The words for shelves that are no file.
const (
	inventedShelf = "invented"
	sharedShelf   = "shared" // the one in the database, that all jobs share
)

func chooseCommand() *cobra.Command {
	var f choice
	c := &cobra.Command{
		Use: "choose JOB", Short: "Choose pump and pipe for the wanted flows from a shelf", Args: operands,
		Long: `Holds every pump of a shelf, alone and two side by side, with every kind and size of
pipe for every run against what the job wants at its lips, and prints the designs that
no other one beats on first cost, cost over the years and reserve: proven over the whole
shelf (docs/sizing.md). It tells why each of the others lost, how high each lip could go,
how far the pump could stand, and what other pipe would save most.

The shelf is a JSON list of pumps as they stand in a job, or a job file with pumps; bare
numbers are read in the job's units, bare prices in its currency. Without one the job's
own pumps are compared. "` + sharedShelf + `" is the pump shelf that all jobs share (plashet pumps);
"` + inventedShelf + `" is a shelf of invented pumps, to try this out.
Prices of pipe and fittings are the job's; a size without a price is left out, and where
nothing has one first costs are told as not known and the electricity is compared. There
must be one way only from the pump to each feed: loops and pumps in a row are for design.

A long search shows on standard error how far it has got. Ctrl-C stops it; the best so far
are then printed, as what they are: not proven.`,
		Example: `  plashet choose garden.json
  plashet choose garden.json --shelf shared
  plashet choose garden.json --shelf supplier.json --years 10 --discount 4%`,
		RunE: func(cmd *cobra.Command, args []string) error { return f.run(cmd, args[0]) },
	}
	c.Flags().StringVar(&f.shelf, "shelf", "", "`file` with the pumps to choose from, or "+sharedShelf+" or "+inventedShelf)
	databaseFlag(c, &f.database)
	c.Flags().StringVar(&f.years, "years", "", "`years` that running costs are counted over")
	c.Flags().StringVar(&f.discount, "discount", "", "`rate` a year by which later payments count less, such as 4%")
	c.Flags().StringVar(&f.speed, "speed", "", "greatest `speed` of the water in the pipe, such as '5 ft/s'")
	c.Flags().StringArrayVar(&f.kinds, "pipe", nil, "`kind` of pipe to choose from, such as 'PVC Sch 40'; may be given several times")
	c.Flags().BoolVar(&f.oneSize, "one-size", false, "one kind and size of pipe throughout")
	c.Flags().StringVar(&f.pumps, "pumps", "any", "`how` many pumps: one, alike (two of a kind too), any (any two too)")
	c.Flags().BoolVar(&f.json, "json", false, "print JSON (docs/answer.md)")
	return c
}

func (f *choice) run(cmd *cobra.Command, name string) error {
	want, err := f.want()
	if err != nil {
		return err
	}
	j, faults, err := sound(cmd, name)
	if err != nil {
		return err
	}
	pumps, ill, of, err := f.stock(cmd, j, faults)
	if err != nil {
		return err
	}
	book, err := catalog.New()
	if err != nil {
		return ours{err}
	}
	c := f.search(cmd, book, j, pumps, ill, want, faults)
	faults = append(slices.Clone(faults), of...)
	if f.json {
		err = answer.ChosenJSON(cmd.OutOrStdout(), c, faults, spoken(cmd))
	} else {
		err = answer.Chosen(cmd.OutOrStdout(), c, faults, spoken(cmd))
	}
	if err != nil {
		return ours{err}
	}
	if len(faults)+len(c.Faults) > 0 {
		return errJob
	}
	return nil
}

// stock reads the shelf.
func (f *choice) stock(cmd *cobra.Command, j *job.Job, read []trace.Fault) (pumps []job.Pump, ill map[int]bool, faults []trace.Fault, err error) {
	switch f.shelf {
	case "":
		return j.Pumps, job.IllPumps(read), nil, nil
	case inventedShelf:
		pumps, ill, faults = job.ReadShelf(demo.Shelf(), j)
		return pumps, ill, faults, nil
	case sharedShelf:
		pumps, ill, err = f.shared(cmd, j)
		return pumps, ill, nil, err
	}
	data, err := load(cmd, f.shelf)
	if err != nil {
		return nil, nil, nil, err
	}
	pumps, ill, faults = job.ReadShelf(data, j)
	return pumps, ill, faults, nil
}

// shared reads the shelf that all jobs share.
func (f *choice) shared(cmd *cobra.Command, j *job.Job) (pumps []job.Pump, ill map[int]bool, err error) {
	s, err := openStore(cmd.Context(), f.database)
	if err != nil {
		return nil, nil, err
	}
	defer closing(s, &err)
	stock, err := keep.StockFor(cmd.Context(), s, j, shelf.MostRows)
	if err != nil {
		return nil, nil, blame(err)
	}
	leftOut(cmd, stock.Unread)
	if stock.More {
		_, _ = fmt.Fprintf(cmd.ErrOrStderr(), "There are more than %d pumps on the shelf; the rest was not looked at.\n", shelf.MostRows)
	}
	return stock.Pumps, stock.Ill, nil
}

// search compares until it is done or somebody stops it.
func (f *choice) search(cmd *cobra.Command, book *catalog.Book, j *job.Job, pumps []job.Pump, ill map[int]bool, want design.Want, faults []trace.Fault) *design.Choice {
	ctx, stop := stoppable(cmd)
	defer stop()
	show := progress{w: cmd.ErrOrStderr(), say: spoken(cmd), every: shownEvery}
	return design.Choose(ctx, book, j, pumps, ill, want, func(g size.Progress) {
		show.tell(func() string { return answer.ChooseProgress(g, show.say) })
	}, faults...)
}

// want reads the flags.
func (f *choice) want() (want design.Want, err error) {
	want.Kinds, want.Uniform = f.kinds, f.oneSize
	if want.Pairs, err = together(f.pumps); err != nil {
		return want, err
	}
	if f.years != "" {
		n, err := strconv.ParseFloat(f.years, 64)
		if err != nil || !(n > 0 && n <= 100) {
			return want, fmt.Errorf("--years is %q; write a number of years from 1 to 100, such as 5", f.years)
		}
		want.Years = unit.Ratio(n)
	}
	if f.discount != "" {
		n, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(f.discount), "%")), 64)
		if err != nil || !(n >= 0 && n <= 100) {
			return want, fmt.Errorf("--discount is %q; write a rate in percent a year from 0%% to 100%%, such as 4%%", f.discount)
		}
		want.Discount, want.Rated = unit.Ratio(n/100), true
	}
	if f.speed != "" {
		r, err := unit.Parse(f.speed, unit.KindSpeed, unit.US)
		if err != nil || r.Bare || r.SI <= 0 {
			return want, fmt.Errorf("--speed is %q; write a speed with its unit, such as '5 ft/s' or '1.5 m/s'", f.speed)
		}
		want.MostSpeed = unit.Speed(r.SI)
	}
	return want, nil
}

// together reads how many pumps may run.
func together(typed string) (design.Pairs, error) {
	switch typed {
	case "one":
		return design.PairsNone, nil
	case "alike":
		return design.PairsAlike, nil
	case "any":
		return design.PairsAny, nil
	}
	if n := near(typed, []string{"one", "alike", "any"}); n != "" {
		return 0, fmt.Errorf("--pumps cannot be %q; near it: --pumps %s", typed, n)
	}
	return 0, errors.New("--pumps is one, alike or any")
}
