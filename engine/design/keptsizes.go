package design

import (
	"crypto/sha256"
	"encoding/hex"
	"math"
	"strconv"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// sizesDigest gives a short digest of every size that a laid assembly stands on,
// those of the tables and the habits taken by default among them: two of the
// same digest are laid alike. Sizes count to a micrometre, so that another
// processor's last digit makes no other digest.
func sizesDigest(in *layout.Input, a *layout.Assembly) string {
	d := digest{}
	v := &in.Vault
	d.lengths(v.Length, v.Width, v.Depth, v.FloorLength, v.FloorWidth, v.Outlet.Along, v.Outlet.Height)
	d.text(string(v.Outlet.Wall), strconv.FormatBool(v.Round))
	for _, o := range v.Obstacles {
		d.points(o.Box.Min, o.Box.Max)
	}
	p := &in.Pump
	d.points(p.Port, p.Points, in.Pose.At)
	d.number(float64(in.Pose.Turn))
	for _, b := range p.Blocks {
		d.points(b.Min, b.Max)
	}
	d.end(p.Outlet)
	for i := range in.Parts {
		q := &in.Parts[i]
		d.text(string(q.Kind), q.Size)
		d.end(q.In)
		d.end(q.Out)
		d.lengths(q.Body.Diameter.Length, q.Body.Length.Length, q.Body.Offset, q.Body.Reach.Length, q.Body.Width.Length)
		for _, s := range q.Splits {
			d.lengths(s.Offset, s.Lip)
		}
		d.number(float64(q.Roll), float64(q.Next.By), float64(q.Next.Distance), float64(q.Allowed))
	}
	for _, q := range in.Pipes {
		d.text(q.Kind, q.Size)
		d.lengths(q.OD)
	}
	for _, x := range a.Assumptions { // habits that nobody set
		d.text(x.Code)
		d.number(x.Value.SI)
	}
	sum := sha256.Sum256(d.bytes)
	return hex.EncodeToString(sum[:8])
}

// digest gathers what is summed up.
type digest struct{ bytes []byte }

func (d *digest) text(s ...string) {
	for _, t := range s {
		d.bytes = append(append(d.bytes, t...), 0)
	}
}

func (d *digest) number(x ...float64) {
	for _, v := range x {
		d.bytes = append(strconv.AppendInt(d.bytes, int64(math.Round(v*1e6)), 10), ' ')
	}
}

func (d *digest) lengths(x ...unit.Length) {
	for _, v := range x {
		d.number(float64(v))
	}
}

func (d *digest) points(x ...geom.Vec3) {
	for _, v := range x {
		d.number(v.X, v.Y, v.Z)
	}
}

func (d *digest) end(e layout.End) {
	d.text(e.Size)
	d.number(float64(e.Kind), float64(e.Thread))
	d.lengths(e.TakeOff.Length, e.Depth.Length, e.Hub.Length, e.Engage.Length)
}
