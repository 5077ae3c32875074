package cli

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"net/url"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
	"plashet/offer"
	"plashet/paper"
	"plashet/render/pdf"
)

// printing is what the print command was asked for.
type printing struct {
	folder
	paper    string
	date     string
	url      string
	revision int
	draws    int
}

// dateForm is how a day is written.
const dateForm = "2006-01-02"

func printCommand() *cobra.Command {
	var p printing
	c := &cobra.Command{
		Use: "print JOB [SHEET...]", Short: "Design a job and print its sheets as PDF files",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("JOB is missing; write: plashet print JOB [SHEET...]")
			}
			for _, a := range args[1:] {
				if !slices.Contains(paper.Names(), a) {
					return fmt.Errorf("there is no sheet %q; the sheets are %s", a, strings.Join(paper.Names(), ", "))
				}
			}
			return nil
		},
		Long: `Prints the sheets that a job is built by, one PDF file each, all or those that are
named: site (plan and survey), water (flow, curves, levels, findings), assembly (drawing
with sizes), cut (cut card), rolls (strips to wrap round the pipe, one to one: print them
at 100 %), glue (glue card), material (by counter), quote (offer for the client), change
(change order, once an offer is kept as agreed), start (start-up record), care (for the
owner). Each page has job, date, page and a code that tells which state of the job it was
made from. What a job does not have its sheet says. The folder is made when it is not there.`,
		Example: "  plashet print garden.json --to sheets\n  plashet print garden.json cut glue --to sheets --paper a4",
		RunE: func(cmd *cobra.Command, args []string) error {
			size, day, err := p.read()
			if err != nil {
				return err
			}
			j, faults, err := sound(cmd, args[0])
			if err != nil {
				return err
			}
			book, err := catalog.New()
			if err != nil {
				return ours{err}
			}
			if p.paper == "" {
				size = paper.For(j)
			}
			r := design.SolveBands(book, j, p.draws, drawSeed, faults...)
			unread := faults
			faults = append(slices.Clone(faults), r.Faults...)
			if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, j.System()); err != nil {
				return err
			}
			digest, err := digestOf(j)
			if err != nil {
				return ours{err}
			}
			in := paper.Input{
				Input: drawing.Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, curvePoints), Say: spoken(cmd)},
				Paper: size, Unread: unread,
				Stamp: paper.Stamp{Revision: p.revision, Digest: digest, Date: day.Format(dateForm), URL: p.url},
			}
			if paper.OfOffer(args[1:]...) {
				d := offer.Of(book, j, unread...)
				in.Offer = &d
			}
			if err := p.print(cmd, in, day, args[1:]); err != nil {
				return err
			}
			if len(faults) > 0 {
				return errJob
			}
			return nil
		},
	}
	c.Flags().StringVar(&p.to, "to", "", "write into this `folder`")
	c.Flags().BoolVar(&p.force, "force", false, "write over sheets that are there")
	c.Flags().StringVar(&p.paper, "paper", "", "`size` of the paper: letter or a4; the job's when not given")
	c.Flags().StringVar(&p.date, "date", "", "`day` on the sheets, year-month-day; today when empty")
	c.Flags().IntVar(&p.revision, "revision", 0, "`number` of the job's revision, where one is kept")
	c.Flags().IntVar(&p.draws, "draws", design.UsualDraws, "how many times to draw what may be off, for how sure the answer is; 0 for none")
	c.Flags().StringVar(&p.url, "public-url", "", "`address` at which the job is shown, for the code on the pages")
	return c
}

// read holds the flags against what they may be.
func (p *printing) read() (paper.Paper, time.Time, error) {
	size, known := paper.Named(strings.ToLower(p.paper))
	if !known && p.paper != "" {
		return 0, time.Time{}, fmt.Errorf("--paper takes letter or a4, not %q", p.paper)
	}
	if p.to == "" {
		return 0, time.Time{}, errors.New("give the folder for the sheets: --to FOLDER")
	}
	if p.revision < 0 {
		return 0, time.Time{}, errors.New("--revision takes a number from 1 up")
	}
	if _, err := addressed(p.url, "https://ponds.example/jobs/7"); err != nil {
		return 0, time.Time{}, err
	}
	if p.date == "" {
		return size, time.Now(), nil
	}
	day, err := time.Parse(dateForm, p.date)
	if err != nil {
		return 0, time.Time{}, fmt.Errorf("--date takes a day such as 2026-05-14, not %q", p.date)
	}
	return size, day, nil
}

// digestOf gives the SHA-256 of a job's canonical bytes.
func digestOf(j *job.Job) (string, error) {
	data, err := job.Encode(j)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:]), nil
}

// print makes the files and writes them.
func (p *printing) print(cmd *cobra.Command, in paper.Input, day time.Time, names []string) error {
	sheets, err := paper.Make(in, names...)
	if err != nil {
		return ours{err}
	}
	var files []written
	for _, s := range sheets {
		var b bytes.Buffer
		info := pdf.Info{Title: s.Title + ": " + in.Result.Name, Language: in.Say.Tag, Date: day}
		if err := pdf.Write(&b, s.Pages, info); err != nil {
			return ours{fmt.Errorf("print %s: %w", s.Name, err)}
		}
		files = append(files, written{s.Name + ".pdf", b.Bytes()})
	}
	return p.write(files, cmd.OutOrStdout())
}

// addressed reads a public address and gives its host; empty is none.
func addressed(address, example string) (host string, err error) {
	if address == "" {
		return "", nil
	}
	u, err := url.Parse(address)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" || u.RawQuery != "" || u.Fragment != "" || len(address) > 300 {
		return "", fmt.Errorf("--public-url takes an address such as %s, of at most 300 letters", example)
	}
	return u.Host, nil
}
