// Package docs carries what is written for people along with the program, so
// that it can be read where there is no signal.
package docs

import "embed"

// Files are the texts and their pictures, named as they stand in this folder.
//
//go:embed *.md img/*.svg tour/*.png
var Files embed.FS
