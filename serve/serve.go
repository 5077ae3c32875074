// Package serve is the network's edge of package app: it listens on an address,
// and lets through to the pages only what comes from where it may. On the
// machine's own loopback address everybody on the machine may come in; on any
// other address an access code is asked for, which is shown at the start. It
// knows nothing of jobs.
package serve

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/netip"
	"strings"
	"time"
)

// Usual is the address where nothing else is said.
const Usual = "127.0.0.1:7340"

// Options say how to serve.
type Options struct {
	Addr  string
	Names []string  // further host names that browsers may use
	Host  string    // host, with a port where it has one, by which the public address is reached; may be empty
	Out   io.Writer // where the address and the access code are shown
}

// ErrAddr tells that an address cannot be listened on; its text says why.
var ErrAddr = errors.New("address")

// Limits on a connection, so that a slow or idle one holds nothing for long.
const (
	readHead = 10 * time.Second
	readAll  = 60 * time.Second
	writeAll = 120 * time.Second
	idle     = 120 * time.Second
	closing  = 10 * time.Second
	mostHead = 64 << 10
)

// Run serves the pages until the context ends, then lets what is under way come
// to its end.
func Run(ctx context.Context, pages http.Handler, o Options) error {
	l, err := net.Listen("tcp", o.Addr)
	if err != nil {
		return fmt.Errorf("%w %q: %w", ErrAddr, o.Addr, err)
	}
	return On(ctx, l, pages, o)
}

// On is Run on a listener that is there already, which it closes.
func On(ctx context.Context, l net.Listener, pages http.Handler, o Options) error {
	code := ""
	if !loopback(l.Addr()) {
		code = rand.Text()[:12]
	}
	known := hosts(l.Addr(), o.Names)
	if o.Host != "" {
		known[strings.ToLower(o.Host)] = true
	}
	s := &http.Server{
		Handler: Guard(pages, known, code), ReadHeaderTimeout: readHead, ReadTimeout: readAll, WriteTimeout: writeAll,
		IdleTimeout: idle, MaxHeaderBytes: mostHead,
	}
	_, _ = fmt.Fprintf(o.Out, "Open http://%s in a browser. Ctrl-C stops.\n", l.Addr())
	if code != "" {
		_, _ = fmt.Fprintf(o.Out, "The address can be reached from other machines. Access code: %s\nWhat goes over the network is not encrypted: use it on a network you trust.\n", code)
	}
	done := make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	end, cancel := context.WithTimeout(context.WithoutCancel(ctx), closing)
	defer cancel()
	if err := s.Shutdown(end); err != nil {
		return s.Close()
	}
	return nil
}

// loopback tells that an address is reached from this machine only.
func loopback(a net.Addr) bool {
	p, err := netip.ParseAddrPort(a.String())
	return err == nil && p.Addr().IsLoopback()
}

// hosts lists the names that a browser may call the address by. A page of
// another site whose name was turned to this address calls it by its own name,
// which is not among them.
func hosts(a net.Addr, names []string) map[string]bool {
	_, port, err := net.SplitHostPort(a.String())
	if err != nil {
		port = "80"
	}
	known := map[string]bool{}
	add := func(name string) {
		known[strings.ToLower(net.JoinHostPort(name, port))] = true
		if port == "80" {
			known[strings.ToLower(name)] = true
		}
	}
	for _, n := range append([]string{"localhost", "127.0.0.1", "::1"}, names...) {
		add(n)
	}
	if p, err := netip.ParseAddrPort(a.String()); err == nil {
		if !p.Addr().IsUnspecified() {
			add(p.Addr().String())
			return known
		}
		addrs, _ := net.InterfaceAddrs() // every address of this machine
		for _, i := range addrs {
			if n, ok := i.(*net.IPNet); ok {
				add(n.IP.String())
			}
		}
	}
	return known
}
