package design

// Codes of start and stop, beside those of package motion. To findings of
// package level that it follows through time it adds the time as "at".
const (
	// FindFirstDry: at first start the pump draws air for a while, although the
	// water suffices in the end. Args: at, lasts.
	FindFirstDry = "design.motion.first.dry"
	// FindRestartDry: the same at every start. Args: at, lasts.
	FindRestartDry = "design.motion.restart.dry"
	// FindCutSpills: a power cut in mid start takes the pond over its rim. Args: after (the start), at (after the cut), spill.
	FindCutSpills = "design.motion.cut.spills"
	// FindRainSpills: the design rain after a stop, as it falls on pond and watercourses, takes the pond over its rim. Args: rain, over (its time), at (after it begins), spill.
	FindRainSpills = "design.motion.rain.spills"
	// FindLeakSlow: with a check valve that leaks the water is not still within the time that was followed. Args: after, back.
	FindLeakSlow = "design.motion.leak"

	AssumeRunUp    = "assume.motion.runup" // the pump's run-up. Args: value (time)
	AssumeStopped  = "assume.motion.pump"  // how hard water runs back through the stopped pump. Args: value (K)
	AssumeLeak     = "assume.motion.leak"  // what a leaking check valve leaves open. Args: value (part of its bore)
	AssumeRainTime = "assume.motion.rain"  // in what time the design rain falls. Args: value (time)
	AssumePoolLeak = "assume.motion.pool"  // how fast a leaking pool runs empty. Args: name, value (time)
)
