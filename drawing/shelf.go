package drawing

// PumpAlone draws the curve of the first pump of a job by itself, as the shelf
// shows it: the fitted curve, and a ring at each point that it was fitted
// through. Without a curve that holds there is no sheet.
func PumpAlone(in Input) (Sheet, bool) {
	if in.Result == nil || in.Job == nil || len(in.Job.Pumps) == 0 || len(in.Curves.Pumps) == 0 {
		return Sheet{}, false
	}
	in.Curves.System = nil
	in.Curves.Pumps = in.Curves.Pumps[:1]
	c := &curvePlot{page: newPage(in, "pump", in.say("curve.alone"))}
	c.axes()
	c.lines()
	c.group("points", func() {
		for _, p := range in.Job.Pumps[0].Curve {
			at := c.at(p.Flow.SI, p.Head.SI)
			c.add(Arc{Centre: at, RX: 1.1, RY: 1.1, Sweep: 360, Pen: line, Fill: Paper})
			ring := rectangle(at.X-1.5, at.Y-1.5, at.X+1.5, at.Y+1.5)
			c.field.texts = append(c.field.texts, patchOf(ring[:]...))
		}
	})
	c.texts()
	c.y = plotBottom + 13
	return c.done([]string{in.say("curve.alonedesc", "name", in.Job.Pumps[0].Name)}), true
}
