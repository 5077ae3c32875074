package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"os/signal"
	"runtime"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"plashet/app"
	"plashet/engine/catalog"
	"plashet/render/xlsx"
	"plashet/serve"
	"plashet/store"
)

func serveCommand() *cobra.Command {
	o := serve.Options{}
	var database, public string
	c := &cobra.Command{
		Use: "serve", Short: "Show the jobs in a browser", Args: operands,
		Long: `Serves the pages of the tool on this machine. Everything is in the program: no page
asks another server for anything. On an address that other machines can reach an
access code is asked for, which is shown at the start. Jobs are kept in an SQLite
file of this user, or in the database named; several servers may work upon one
PostgreSQL database.`,
		Example: "  plashet serve\n  plashet serve --addr 127.0.0.1:8000\n  plashet serve --database postgres://office@127.0.0.1/plashet",
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if o.Host, err = addressed(public, "https://ponds.example"); err != nil {
				return err
			}
			kept, err := openStore(cmd.Context(), database)
			if err != nil {
				return err
			}
			defer closing(kept, &err)
			return servePages(cmd, kept, o, public)
		},
	}
	databaseFlag(c, &database)
	c.Flags().StringVar(&public, "public-url", "", "`address` at which others reach the pages, for the codes on the sheets")
	c.Flags().StringVar(&o.Addr, "addr", serve.Usual, "listen on this `address`")
	return c
}

// servePages shows the jobs of a store until Ctrl-C; an empty one gets the
// examples.
func servePages(cmd *cobra.Command, kept store.Store, o serve.Options, public string) error {
	book, err := catalog.New()
	if err != nil {
		return ours{err}
	}
	given := app.Given{
		Store: kept, Now: time.Now, NewID: func() string { return strings.ToLower(rand.Text()) },
		Book: book, Public: strings.TrimRight(public, "/"), Workbook: xlsx.Write, Languages: spokenFirst(cmd), Device: serve.Device, Remember: serve.Remember, Version: version(),
		Log: func(ref string, err error) { _, _ = fmt.Fprintf(cmd.ErrOrStderr(), "%s: %v\n", ref, err) },
	}
	ctx, stop := signal.NotifyContext(cmd.Context(), syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	given.Runs = serve.NewBeside(ctx, max(2, runtime.NumCPU()-1), given.Log)
	if err := app.Seed(ctx, given); err != nil {
		return ours{err}
	}
	o.Out = cmd.OutOrStdout()
	err = serve.Run(ctx, app.New(given), o)
	if err != nil && !errors.Is(err, serve.ErrAddr) {
		return ours{err}
	}
	return err
}
