package export

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/job"
)

// Every drawing is there as lines and as pixels, of the size it has.
func TestEveryDrawingTwice(t *testing.T) {
	in := inputOf(t, demo.Job("hillside-cascade"))
	files, err := Make(in, Drawings)
	if err != nil {
		t.Fatal(err)
	}
	sheets := drawing.Sheets(in.Drawing)
	if len(sheets) < 8 || len(files) != 2*len(sheets) {
		t.Fatalf("%d files of %d drawings", len(files), len(sheets))
	}
	seen := map[string]bool{}
	for i, s := range sheets {
		line, pixel := files[2*i], files[2*i+1]
		if seen[s.Name] || line.Name != s.Name+".svg" || pixel.Name != s.Name+".png" {
			t.Errorf("%s stands as %s and %s", s.Name, line.Name, pixel.Name)
		}
		seen[s.Name] = true
		d := xml.NewDecoder(bytes.NewReader(line.Data))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatal(line.Name, err)
			}
		}
		img, err := png.Decode(bytes.NewReader(pixel.Data))
		if err != nil {
			t.Fatal(pixel.Name, err)
		}
		if w := float64(img.Bounds().Dx()); math.Abs(w-s.Width*300/25.4) > 1 {
			t.Errorf("%s is %v pixels wide, want %v mm at 300 to the inch", pixel.Name, w, s.Width)
		}
	}
}

// The same job gives the same bytes, so that files can be compared.
func TestSameBytes(t *testing.T) {
	for _, name := range Names() {
		if name == Drawings { // each renderer has such a test of its own
			continue
		}
		a, err := Make(inputOf(t, demo.Job("old-pond")), name)
		if err != nil {
			t.Fatal(name, err)
		}
		b, err := Make(inputOf(t, demo.Job("old-pond")), name)
		if err != nil || !bytes.Equal(a[0].Data, b[0].Data) {
			t.Errorf("%s comes out twice differently %v", name, err)
		}
	}
}

// An empty job has what it rests on, and says of the rest that there is none.
func TestEmptyJob(t *testing.T) {
	in := inputOf(t, []byte(`{"format": "plashet job", "version": 1, "name": "=cmd", "units": "us"}`))
	for _, name := range Names() {
		files, err := Make(in, name)
		switch name {
		case "basis", Workbook, Job, Schema:
			if err != nil || len(files) != 1 {
				t.Errorf("%s: %v", name, err)
			}
		default:
			if !errors.Is(err, ErrNone) && !errors.Is(err, nil) {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	files, err := Make(in, "basis")
	if err != nil || !strings.Contains(string(files[0].Data), "job,'=cmd,") {
		t.Error("the job's name could run as a formula", err)
	}
	if _, err := Make(in, "none"); !errors.Is(err, ErrName) {
		t.Error(err)
	}
	in.Workbook = nil
	if _, err := Make(in, Workbook); !errors.Is(err, ErrName) {
		t.Error(err)
	}
}

// The job that comes out is read again as the same job.
func TestJobComesBack(t *testing.T) {
	in := inputOf(t, demo.Job("terrace-spout"))
	files, err := Make(in, Job)
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(files[0].Data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	a, err1 := job.Encode(j)
	b, err2 := job.Encode(in.Job)
	if err1 != nil || err2 != nil || !bytes.Equal(a, b) {
		t.Error("another job came back", err1, err2)
	}
}
