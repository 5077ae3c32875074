// Command plashet designs recirculating ponds, streams and waterfalls from a
// job file.
package main

import (
	"os"

	"plashet/cli"
)

func main() { os.Exit(cli.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
