package design

// Codes of start and stop, beside those of package motion. To findings of
// package level that it follows through time it adds the time as "at"; to
// FindNoCheck back (through the pump that stands still) and left (what the feeds
// then get together).
const (
	// FindFirstDry: at first start the pump draws air for a while, although the
	// water suffices in the end. Args: at, lasts.
	FindFirstDry = "design.motion.first.dry"
	// FindRestartDry: the same at every start. Args: at, lasts.
	FindRestartDry = "design.motion.restart.dry"
	// FindFirstStalls, FindRestartStalls: on the way through a start the vault falls to where the pump, though it has water, lifts none over a lip. Args: name (the pump), at (after the start), fall (of the vault, from the water line).
	FindFirstStalls   = "design.motion.first.stalls"
	FindRestartStalls = "design.motion.restart.stalls"
	// FindSlow: a start is not at an end in the time that is followed, for what there is to fill. Args: after, flow.
	FindSlow = "design.motion.slow"
	// FindSlowHead: the same, for want of head. Args: after, flow.
	FindSlowHead = "design.motion.slowhead"
	// FindFirstSpills, FindRestartSpills: a start takes the pond over its rim. Args: at (after the start), spill.
	FindFirstSpills   = "design.motion.first.spills"
	FindRestartSpills = "design.motion.restart.spills"
	// FindStopSpills: on the way after a stop the pond runs over its rim. Args: at (after the stop), spill.
	FindStopSpills = "design.motion.stop.spills"
	// FindLeakSpills, FindOpenSpills: the same with the check valve leaking, stuck open. Args as above.
	FindLeakSpills = "design.motion.leak.spills"
	FindOpenSpills = "design.motion.open.spills"
	// FindPumpSpills: the same after one of several pumps stops. Args: name (that pump), at, spill.
	FindPumpSpills = "design.motion.pump.spills"
	// FindCutSpills: a power cut in mid start takes the pond over its rim. Args: after (the start), at (after the cut), spill.
	FindCutSpills = "design.motion.cut.spills"
	// FindRainSpills: the design rain after a stop, as it falls on pond and watercourses, takes the pond over its rim. Args: rain, over (its time), at (after it begins), spill.
	FindRainSpills = "design.motion.rain.spills"
	// FindLeakSlow: with a check valve that leaks the water is not still within the time that was followed. Args: after, back.
	FindLeakSlow = "design.motion.leak"
	// FindShut: a check valve stuck shut lets the pump move nothing. Args: name (the pump), run (left out for a valve in the assembly), head (that it pushes with), watts and boils (time to boil a litre; left out where the watts are not known), left (what the other pumps bring; left out where nothing).
	FindShut = "design.motion.shut"
	// FindShutBranch: a check valve stuck shut in a branch. Args: name (the pump), run, feed (that gets nothing; left out where none), left (what the others get).
	FindShutBranch = "design.motion.shutbranch"
	// FindPumpOpen: one of several pumps stands still and its check valve is stuck open. Args: name, back, left.
	FindPumpOpen = "design.motion.pump.open"

	AssumeRunUp    = "assume.motion.runup" // the pump's run-up. Args: value (time)
	AssumeStopped  = "assume.motion.pump"  // how hard water runs back through the stopped pump. Args: value (K)
	AssumeLeak     = "assume.motion.leak"  // what a leaking check valve leaves open. Args: value (part of its bore)
	AssumeRainTime = "assume.motion.rain"  // in what time the design rain falls. Args: value (time)
	AssumePoolLeak = "assume.motion.pool"  // how fast a leaking pool runs empty. Args: name, value (time)
)
