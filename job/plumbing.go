package job

// Vault is the box in which the pump stands, with the skimmer's weir if it has
// one. Its frame: x along the length from the left wall, y along the width
// from the front wall, z up from the floor; origin in the corner left, front,
// on the floor (round vaults: the corner of the square round the circle).
type Vault struct {
	Shape       string     `json:"shape" want:"must" one-of:"box,round" doc:"form of the inside in plan"`
	Length      Length     `json:"length,omitzero" kind:"tape" range:"0.05..20" doc:"inner length at the rim (x), or the inner diameter of a round vault" eg:"24 in"`
	Width       Length     `json:"width,omitzero" kind:"tape" range:"0.05..20" doc:"inner width at the rim (y)" eg:"18 in"`
	Depth       Length     `json:"depth" kind:"tape" want:"must" range:"0.05..10" doc:"inner depth, floor to the underside of the lid" eg:"26 in"`
	FloorLength Length     `json:"floorLength,omitzero" kind:"tape" range:"0.05..20" doc:"inner length at the floor, when the walls taper" eg:"22 in"`
	FloorWidth  Length     `json:"floorWidth,omitzero" kind:"tape" range:"0.05..20" doc:"inner width at the floor, when the walls taper" eg:"16 in"`
	Floor       Level      `json:"floor,omitzero" kind:"elevation" range:"-9000..9000" doc:"elevation of the floor" eg:"@water - 22 in"`
	Sill        Level      `json:"sill,omitzero" kind:"elevation" range:"-9000..9000" doc:"elevation of the skimmer weir's sill, below which the pond no longer feeds the vault" eg:"@water - 4 in"`
	WeirWidth   Length     `json:"weirWidth,omitzero" kind:"tape" range:"0.01..10" doc:"width of the skimmer's weir" eg:"16 in"`
	ScreenLoss  Length     `json:"screenLoss,omitzero" kind:"depth" range:"0..1" doc:"drop of level through mat, net or screen" eg:"1/2 in"`
	Rated       Flow       `json:"rated,omitzero" kind:"flow" range:"0..1" doc:"greatest pump flow on the skimmer's sheet" eg:"100 gpm"`
	Hatch       Hatch      `json:"hatch,omitempty" doc:"the opening over it, where that is smaller than the vault"`
	Outlet      Outlet     `json:"outlet,omitempty" doc:"the hole in the wall"`
	Obstacles   []Obstacle `json:"obstacles,omitempty" doc:"what stands in the way: rack, basket, screen, float, bowed wall"`
}

// Hatch is an opening smaller than the vault, under its lid, through which the
// pump goes in and comes out. Its sides run along the vault's.
type Hatch struct {
	Length Length `json:"length" kind:"tape" want:"must" range:"0.05..20" doc:"clear length of the opening, along the vault's" eg:"14 in"`
	Width  Length `json:"width" kind:"tape" want:"must" range:"0.05..20" doc:"clear width of the opening, along the vault's" eg:"12 in"`
	Left   Length `json:"left,omitzero" kind:"tape" range:"0..20" doc:"from the inside of the left wall at the rim to the opening; in the middle when empty" eg:"3 in"`
	Front  Length `json:"front,omitzero" kind:"tape" range:"0..20" doc:"from the inside of the front wall at the rim to the opening; in the middle when empty" eg:"3 in"`
}

// Outlet is the hole through the vault's wall.
type Outlet struct {
	Wall   string `json:"wall" want:"must" one-of:"left,right,front,back" doc:"wall the pipe leaves by: left x = 0, right, front y = 0, back"`
	Along  Length `json:"along" kind:"tape" want:"must" range:"0..20" doc:"centre of the hole along the wall: y on left and right, x on front and back" eg:"9 in"`
	Height Length `json:"height" kind:"tape" want:"must" range:"0..10" doc:"centre of the hole above the floor" eg:"18 in"`

	Undrilled Undrilled `json:"undrilled,omitzero" doc:"the hole is not drilled yet: how far from there its centre may lie"`
}

// Obstacle is a box in the vault that nothing may touch.
type Obstacle struct {
	Name string `json:"name" want:"must" key:"yes" doc:"what it is" eg:"rack"`
	From XYZ    `json:"from" want:"must" doc:"corner nearest the origin"`
	To   XYZ    `json:"to" want:"must" doc:"corner farthest from the origin"`
}

// XYZ is a point in the vault's frame, or in a pump's.
type XYZ struct {
	X Length `json:"x" kind:"tape" want:"must" range:"-20..20" doc:"along the length" eg:"0"`
	Y Length `json:"y" kind:"tape" want:"must" range:"-20..20" doc:"along the width" eg:"7-1/2"`
	Z Length `json:"z" kind:"tape" want:"must" range:"-1..20" doc:"up from the floor" eg:"15 in"`
}

// Pump is a pump in hand or on offer.
type Pump struct {
	Name       string       `json:"name" want:"must" key:"yes" doc:"name on this job" eg:"M"`
	Curve      []CurvePoint `json:"curve,omitempty" doc:"points of its curve: four or more are normal, two or three are told"`
	BoxFlow    Flow         `json:"boxFlow,omitzero" kind:"flow" range:"0..1" doc:"the flow printed on the box (at no head)" eg:"6120 gph"`
	MaxHead    Length       `json:"maxHead,omitzero" kind:"head" range:"0.1..200" doc:"the greatest head printed on the box (at no flow)" eg:"24 ft"`
	Watts      Power        `json:"watts,omitzero" kind:"power" range:"1..100000" doc:"electrical power drawn" eg:"640 W"`
	Volts      Voltage      `json:"volts,omitzero" kind:"voltage" range:"6..700" doc:"supply voltage" eg:"120 V"`
	Amps       Current      `json:"amps,omitzero" kind:"current" range:"0.01..500" doc:"current drawn" eg:"6.2 A"`
	Port       Port         `json:"port,omitempty" doc:"its outlet"`
	Attitudes  []Attitude   `json:"attitudes,omitempty" doc:"the ways it may stand, by its sheet"`
	MinWater   Length       `json:"minWater,omitzero" kind:"depth" range:"0..5" doc:"least depth of water over the vault floor that its sheet asks for" eg:"7 in"`
	RunUp      Duration     `json:"runUp,omitzero" kind:"duration" range:"0..600" doc:"time in which it comes up to speed after a start; longer with a soft start" eg:"1 s"`
	Solids     Length       `json:"solids,omitzero" kind:"bore" range:"0..0.2" doc:"largest solid it passes" eg:"3/8 in"`
	Cord       Length       `json:"cord,omitzero" kind:"distance" range:"0..200" doc:"length of its cord" eg:"20 ft"`
	CordPath   Length       `json:"cordPath,omitzero" kind:"distance" range:"0..500" doc:"length of the cord's way to the outlet" eg:"21 ft"`
	Weight     Mass         `json:"weight,omitzero" kind:"weight" range:"0.1..2000" doc:"its weight" eg:"22 lb"`
	Price      Money        `json:"price,omitzero" doc:"its price" eg:"420"`
	Existing   bool         `json:"existing,omitempty" doc:"the pump is there already and stays: it is not bought"`
	Continuous bool         `json:"continuous,omitempty" doc:"its sheet says continuous duty"`
	Speeds     []PumpSpeed  `json:"speeds,omitempty" doc:"further speeds it can be set to; its curve and watts are those of full speed"`
	Speed      string       `json:"speed,omitempty" doc:"name of the speed it is set to; full speed when empty" eg:"low"`
	Wear       Ratio        `json:"wear,omitzero" kind:"percent" range:"0..0.9" doc:"part of its head lost to wear: 1 minus the head measured against a shut valve over the sheet's" eg:"8 %"`
	MinFlow    Flow         `json:"minFlow,omitzero" kind:"flow" range:"0..1" doc:"least flow its sheet allows for lasting use" eg:"12 gpm"`
	BestFlow   Flow         `json:"bestFlow,omitzero" kind:"flow" range:"0..1" doc:"flow of best efficiency on its sheet; worked out from the watts along its curve when empty" eg:"60 gpm"`
	MotorWatts Power        `json:"motorWatts,omitzero" kind:"power" range:"1..100000" doc:"greatest electrical power its motor may draw for long, by its plate" eg:"700 W"`
	NPSH       []NPSHPoint  `json:"npsh,omitempty" doc:"points of the suction head it requires (NPSHr), for a pump outside the water"`
	Outside    Outside      `json:"outside,omitempty" doc:"where it stands when it is not in the water, and its suction pipe"`
	Note       string       `json:"note,omitempty" doc:"where its data come from" eg:"sheet of March 2026"`
	Taken      Taken        `json:"taken,omitempty" doc:"the pump of the shelf that it was taken from"`
}

// Taken tells where a copy comes from. The copy in the job is what counts.
type Taken struct {
	Shelf string `json:"shelf" want:"must" doc:"identity of the pump on the shelf" eg:"k7q2"`
	State int    `json:"state,omitempty" range:"0..1000000" doc:"number of the state it was taken in" eg:"3"`
}

// CurvePoint is one point of a pump's curve.
type CurvePoint struct {
	Flow  Flow   `json:"flow" kind:"flow" want:"must" range:"0..2" doc:"flow delivered" eg:"54 gpm"`
	Head  Length `json:"head" kind:"head" want:"must" range:"0..300" doc:"head at that flow" eg:"16 ft"`
	Watts Power  `json:"watts,omitzero" kind:"power" range:"1..100000" doc:"electrical power at that flow" eg:"610 W"`
}

// PumpSpeed is a further speed of a pump: by its own curve, or as a part of full
// speed.
type PumpSpeed struct {
	Name  string       `json:"name" want:"must" key:"yes" doc:"what the switch or the controller calls it" eg:"low"`
	Part  Ratio        `json:"part,omitzero" kind:"percent" range:"0.2..1.5" doc:"part of full speed, for the affinity laws; of no account beside a curve" eg:"75 %"`
	Curve []CurvePoint `json:"curve,omitempty" doc:"points of its curve at this speed; they beat the affinity laws"`
	Watts Power        `json:"watts,omitzero" kind:"power" range:"1..100000" doc:"electrical power at this speed, with a curve that gives none" eg:"310 W"`
}

// NPSHPoint is one point of the suction head that a pump requires.
type NPSHPoint struct {
	Flow Flow   `json:"flow" kind:"flow" want:"must" range:"0..2" doc:"flow delivered" eg:"54 gpm"`
	Head Length `json:"head" kind:"head" want:"must" range:"0..50" doc:"NPSH required at that flow" eg:"7 ft"`
}

// Outside is the place of a pump that stands outside the water.
type Outside struct {
	Centre   Level    `json:"centre" kind:"elevation" want:"must" range:"-9000..9000" doc:"elevation of the centre of its inlet" eg:"@water + 1 ft"`
	Pipe     PipeName `json:"pipe" want:"must" doc:"kind and size of the suction pipe"`
	Length   Length   `json:"length" kind:"distance" want:"must" range:"0.02..500" doc:"length of the suction pipe" eg:"6 ft"`
	Fittings []Fitted `json:"fittings,omitempty" doc:"fittings of the suction pipe, from its open end to the pump"`
	Intake   Level    `json:"intake,omitzero" kind:"elevation" range:"-9000..9000" doc:"elevation of the open end under water" eg:"@water - 20 in"`
}

// Port is the pump's outlet.
type Port struct {
	Size   string `json:"size,omitempty" doc:"nominal size" eg:"2"`
	Thread string `json:"thread,omitempty" one-of:"NPT female,NPT male,BSPT female,BSPT male,BSPP female,BSPP male,socket,spigot,hose" doc:"how it connects"`
}

// Attitude is one way the pump may stand. Its frame: x along its length, y
// along its width, z up; origin in the corner of its box.
type Attitude struct {
	Name   string `json:"name" want:"must" key:"yes" doc:"how it stands" eg:"on its feet"`
	Length Length `json:"length" kind:"tape" want:"must" range:"0.02..5" doc:"size along x" eg:"15-1/2"`
	Width  Length `json:"width" kind:"tape" want:"must" range:"0.02..5" doc:"size along y" eg:"7-1/2"`
	Height Length `json:"height" kind:"tape" want:"must" range:"0.02..5" doc:"size along z" eg:"9-1/2"`
	Port   XYZ    `json:"port" want:"must" doc:"centre of the port's face"`
	Points string `json:"points" want:"must" one-of:"up,left,right,front,back" doc:"the way the port looks, before the pump is turned: left is -x, right +x, front -y, back +y"`
}

// FurtherPump is a pump that runs at the same time as the one in use. The runs
// that start at its name carry its water.
type FurtherPump struct {
	Name string `json:"name" want:"must" key:"yes" doc:"what its place is called; runs start from this name" eg:"second pump"`
	Pump string `json:"pump" want:"must" doc:"which of the pumps it is" eg:"M"`
	From string `json:"from,omitempty" doc:"where it draws from: the vault when empty, or a junction that a run ends at, for a pump that lifts on what another sends" eg:"booster"`
}

// Run is a length of pipe of one kind and size with its fittings.
type Run struct {
	Name       string   `json:"name" want:"must" key:"yes" doc:"name of the run" eg:"main"`
	From       string   `json:"from" want:"must" doc:"\"pump\", the name of a further pump, or the name of a junction" eg:"pump"`
	To         string   `json:"to" want:"must" doc:"the name of a watercourse, or of a junction" eg:"cascade"`
	Pipe       PipeName `json:"pipe" want:"must" doc:"kind and size of the pipe"`
	Length     Length   `json:"length" kind:"distance" want:"must" range:"0.02..5000" doc:"length of pipe" eg:"60 ft"`
	Rise       Length   `json:"rise,omitzero" kind:"elevation" range:"-200..200" doc:"how much higher its far end lies than its near end, the way it runs; below 0 when it falls" eg:"9.3 ft"`
	Fittings   []Fitted `json:"fittings,omitempty" doc:"fittings by name and count, in the order the water meets them where that is known"`
	Bore       Length   `json:"bore,omitzero" kind:"bore" range:"0.003..1" doc:"inside diameter as measured; beats the table" eg:"2.05 in"`
	C          Ratio    `json:"c,omitzero" kind:"ratio" range:"40..170" doc:"Hazen-Williams C, for a pipe that is known only by it" eg:"110"`
	Roughness  Length   `json:"roughness,omitzero" kind:"roughness" range:"0..0.01" doc:"absolute roughness; beats the table" eg:"0.0015 mm"`
	Drains     bool     `json:"drains,omitempty" doc:"the run drains back by gravity when nothing holds it; so taken where neither this nor holdsWater is said"`
	HoldsWater bool     `json:"holdsWater,omitempty" doc:"the run stays full when nothing holds it: it sags, or lies under water; drains goes first where both are said"`
	Existing   bool     `json:"existing,omitempty" doc:"the run is there already and stays, pipe and fittings: nothing of it is bought, dug or laid. Where another pipe is tried in its place, that is new"`
	Throttle   Ratio    `json:"throttle,omitzero" kind:"ratio" range:"0..100000" doc:"loss coefficient of the valve at its present setting, beyond its open value" eg:"12"`
}

// PipeName names a row of the catalogue.
type PipeName struct {
	Kind string `json:"kind" want:"must" doc:"kind of pipe" eg:"PVC Sch 40"`
	Size string `json:"size" want:"must" doc:"nominal size (inch pipe) or outside diameter (metric pipe)" eg:"2"`
}

// Fitted is a fitting in a run.
type Fitted struct {
	Fitting string `json:"fitting" want:"must" doc:"name of the fitting" eg:"elbow 90"`
	Size    string `json:"size,omitempty" doc:"its size, when it is not the run's" eg:"1-1/2"`
	Count   int    `json:"count,omitempty" range:"1..10000" doc:"how many; one when empty" eg:"3"`
	K       Ratio  `json:"k,omitzero" kind:"ratio" range:"0..1000" doc:"loss coefficient from its sheet; beats the table" eg:"2.1"`
}

// Assembly is the rigid plumbing in the vault as the fitter lays it down.
type Assembly struct {
	Attitude    string       `json:"attitude,omitempty" doc:"the pump's attitude" eg:"on its feet"`
	Turn        Angle        `json:"turn,omitzero" kind:"angle" range:"-6.2832..6.2832" doc:"pump turned about the upright, anticlockwise seen from above" eg:"90"`
	At          XYZ          `json:"at,omitzero" doc:"where the corner of the pump's box nearest the origin stands, after turning"`
	Pipe        PipeName     `json:"pipe,omitempty" doc:"pipe of the assembly"`
	Start       Length       `json:"start,omitzero" kind:"tape" range:"0..20" doc:"distance from the port to the first fitting, where the port takes a pipe; when empty the hubs touch" eg:"3-1/2"`
	StartBy     string       `json:"startBy,omitempty" one-of:"centres,faces,stops,pipe" doc:"how that distance is taken: from the port's face to the fitting's centre, face to face, stop to stop, or the length of the pipe piece as cut"`
	StartCloses bool         `json:"startCloses,omitempty" doc:"that piece is the closing piece"`
	Parts       []Laid       `json:"parts,omitempty" doc:"fittings in order from the pump's port to the wall"`
	MakeUp      Length       `json:"makeUp,omitzero" kind:"tape" range:"0..0.01" doc:"make-up gap left at each pipe end; 1/8 in by common practice, 0 is pushed home" eg:"1/8"`
	Closing     ClosingPiece `json:"closing,omitempty" doc:"the last piece, measured in place"`
	Hose        Hose         `json:"hose,omitempty" doc:"the flexible pipe that a short hose next to the pump is cut from"`
	Search      Search       `json:"search,omitempty" doc:"what the search for layouts may choose from (plashet arrange)"`
	Kept        Kept         `json:"kept,omitempty" doc:"what the layout was when it was kept, written by plashet arrange --keep"`
}

// Laid is one fitting of the assembly and the distance to the next.
type Laid struct {
	Fitting string `json:"fitting" want:"must" doc:"name of the fitting" eg:"elbow 90"`
	Size    string `json:"size,omitempty" doc:"its size, when it is not the assembly's" eg:"2"`
	Mark    string `json:"mark,omitempty" doc:"mark on the drawing; made when empty" eg:"E1"`
	Roll    Angle  `json:"roll,omitzero" kind:"angle" range:"-6.2832..6.2832" doc:"an elbow's outlet seen along the flow into it: 0 is up (or to the back wall when the inlet is upright), clockwise" eg:"90"`
	Next    Length `json:"next,omitzero" kind:"tape" range:"0..20" doc:"distance to the next fitting; when empty the hubs touch" eg:"6-1/4"`
	NextBy  string `json:"nextBy,omitempty" one-of:"centres,faces,stops,pipe" doc:"how that distance is taken: centre to centre, face to face of the hubs, stop to stop, or the length of the pipe piece as cut"`
	Reverse bool   `json:"reverse,omitempty" doc:"an arrow that points against the flow (as found in an old assembly)"`
	Spigot  string `json:"spigot,omitempty" one-of:"pump,wall" doc:"of a fitting with a socket and a spigot (a street elbow) the side that its spigot looks to; its first end comes first when empty, where that fits"`
	Closes  bool   `json:"closes,omitempty" doc:"the piece after this fitting is the closing piece"`
	Bend    Angle  `json:"bend,omitzero" kind:"angle" range:"0..2.3562" doc:"of a hose: the angle by which it bends; straight when empty" eg:"90"`
	Before  Length `json:"before,omitzero" kind:"tape" range:"0..3" doc:"of a hose: from where the lines of its two ends meet to its end towards the pump" eg:"9-1/4"`
	Behind  Length `json:"behind,omitzero" kind:"tape" range:"0..3" doc:"of a hose: from there to its end towards the wall" eg:"10"`
	Glued   string `json:"glued,omitempty" one-of:"pump,wall" doc:"it is made already and stays: on the pump's side, or on the wall's" eg:"wall"`
}

// Hose is flexible pipe as thick as the pipe of the assembly, so that it is glued
// into the same sockets.
type Hose struct {
	Kind        string `json:"kind,omitempty" doc:"kind of flexible pipe; flexible PVC when empty" eg:"flexible PVC"`
	LeastRadius Length `json:"leastRadius,omitzero" kind:"tape" range:"0.02..2" doc:"least radius that it may be bent to, measured to its middle, by its maker's sheet (one that measures to the inside: add half its outside diameter); five times its outside diameter when empty" eg:"8 in"`
	Straight    Length `json:"straight,omitzero" kind:"tape" range:"0.001..0.5" doc:"how much of it stays straight at least beyond each socket; its outside diameter when empty" eg:"2 in"`
	Longest     Length `json:"longest,omitzero" kind:"tape" range:"0.05..3" doc:"longest piece of it; 3 ft, or 900 mm in a metric job, when empty" eg:"30 in"`
}

// ClosingPiece is the piece cut last, from the gap measured in place.
type ClosingPiece struct {
	Gap    Length `json:"gap,omitzero" kind:"tape" range:"0..5" doc:"gap between the two hub faces, measured in place" eg:"2-1/4"`
	MakeUp Length `json:"makeUp,omitzero" kind:"tape" range:"0..0.01" doc:"make-up gap at each of its ends; 0 because the pump's play takes it up" eg:"0"`
}

// Measure is a fitting measured by the fitter. Empty sizes stay with the table.
type Measure struct {
	Fitting   string `json:"fitting" want:"must" key:"yes" doc:"name of the fitting" eg:"elbow 90"`
	Size      string `json:"size" want:"must" key:"yes" doc:"its size" eg:"2"`
	Socket    Length `json:"socket,omitzero" kind:"tape" range:"0.003..0.3" doc:"depth of its socket, face to stop" eg:"1-3/8"`
	ToStop    Length `json:"toStop,omitzero" kind:"tape" range:"0.001..0.5" doc:"centre to stop (elbow, tee), or stop to stop of a straight fitting" eg:"1-1/4"`
	Hub       Length `json:"hub,omitzero" kind:"tape" range:"0.005..0.5" doc:"outside diameter of its hub or body" eg:"2-7/8"`
	K         Ratio  `json:"k,omitzero" kind:"ratio" range:"0..1000" doc:"loss coefficient from its sheet" eg:"2.1"`
	Attitudes string `json:"attitudes,omitempty" doc:"for a check valve, by its sheet" one-of:"any,upright,level or upright"`
	Note      string `json:"note,omitempty" doc:"remark" eg:"measured on three of them"`
}

// Stock is what pieces are cut from and with.
type Stock struct {
	Sticks  []Stick  `json:"sticks,omitempty" doc:"lengths that can be bought"`
	Offcuts []Offcut `json:"offcuts,omitempty" doc:"offcuts on the truck"`
	Kerf    Length   `json:"kerf,omitzero" kind:"tape" range:"0..0.02" doc:"width of the saw cut" eg:"1/16"`
	Keep    Length   `json:"keep,omitzero" kind:"tape" range:"0..5" doc:"shortest remnant worth keeping" eg:"6 in"`
	Pieces  []Piece  `json:"pieces,omitempty" doc:"further pieces to cut, beyond the assembly"`

	Fittings []StockFitting `json:"fittings,omitempty" doc:"fittings on the truck, and those that cannot be had; the counter has all others unless only is said"`
	Only     bool           `json:"only,omitempty" doc:"a layout may use only the fittings listed here, and pipe that can be cut from the offcuts and counted sticks"`
}

// Stick is a length that can be bought.
type Stick struct {
	Pipe   PipeName `json:"pipe" want:"must" doc:"kind and size"`
	Length Length   `json:"length" kind:"distance" want:"must" range:"0.1..30" doc:"length of a stick" eg:"10 ft"`
	Price  Money    `json:"price,omitzero" doc:"price of a stick" eg:"18.40"`
	Count  int      `json:"count,omitempty" range:"1..10000" doc:"how many there are; any number when empty" eg:"4"`
	Bell   bool     `json:"bell,omitempty" doc:"one end is a socket, so that sticks join without couplings"`
}

// Offcut is a length on the truck.
type Offcut struct {
	Pipe   PipeName `json:"pipe" want:"must" doc:"kind and size"`
	Length Length   `json:"length" kind:"tape" want:"must" range:"0.01..30" doc:"its length" eg:"31-1/2"`
	Count  int      `json:"count,omitempty" range:"1..10000" doc:"how many alike; one when empty" eg:"2"`
}

// Piece is a piece to cut beyond the assembly's own.
type Piece struct {
	Pipe   PipeName `json:"pipe" want:"must" doc:"kind and size"`
	Length Length   `json:"length" kind:"tape" want:"must" range:"0.005..30" doc:"its length as cut" eg:"14-3/8"`
	Count  int      `json:"count,omitempty" range:"1..10000" doc:"how many alike; one when empty" eg:"2"`
	Mark   string   `json:"mark,omitempty" doc:"mark on the piece" eg:"R1"`
}

// Works is what goes in the ground round the water.
type Works struct {
	LinerOverlap   Length `json:"linerOverlap,omitzero" kind:"distance" range:"0..5" doc:"liner beyond the edge on each side" eg:"1 ft"`
	UnderlayLayers int    `json:"underlayLayers,omitempty" range:"1..10" doc:"layers of underlayment; one when empty" eg:"2"`
	Soil           string `json:"soil,omitempty" one-of:"sand or gravel,top soil,loam,common earth,clay,rock" doc:"soil to dig, for its swell"`
	SpareFittings  Ratio  `json:"spareFittings,omitzero" kind:"percent" range:"0..2" doc:"spare fittings on top of the count" eg:"10 %"`
	CementCan      Volume `json:"cementCan,omitzero" kind:"cement" range:"0.00001..0.02" doc:"what a can of cement, and one of primer, holds; a US quart, or a litre in a metric job, when empty" eg:"1 pint"`
	TapeRoll       Length `json:"tapeRoll,omitzero" kind:"distance" range:"0.1..1000" doc:"length of a roll of thread tape; listed by length when empty" eg:"43 ft"`
	Truck          Volume `json:"truck,omitzero" kind:"earth" range:"0.05..50" doc:"loose soil that a truck takes, for the number of loads; none are told when empty" eg:"10 yd3"`
	StreamBank     Length `json:"streamBank,omitzero" kind:"plan" range:"0.01..5" doc:"how high the liner goes up the sides of a stream, which is how deep its bed is dug; 1 ft when empty" eg:"1 ft"`
	WorkRoom       Length `json:"workRoom,omitzero" kind:"plan" range:"0..3" doc:"room left round the vault in its hole, to set and to fill it in; 6 in on each side when empty" eg:"6 in"`
	TrenchWidth    Length `json:"trenchWidth,omitzero" kind:"plan" range:"0.02..3" doc:"width of the trench for the pipe; 8 in when empty" eg:"8 in"`
	TrenchDepth    Length `json:"trenchDepth,omitzero" kind:"plan" range:"0..5" doc:"depth of the trench for the pipe; 0 where it lies on the ground; 18 in when empty" eg:"18 in"`
	NoRock         bool   `json:"noRock,omitempty" doc:"no boulders or gravel on this job"`
}

// Price is an own price for an item of the material list.
type Price struct {
	Item  string `json:"item" want:"must" key:"yes" doc:"item as the material list names it" eg:"elbow 90, 2"`
	Price Money  `json:"price" want:"must" doc:"price of one unit" eg:"3.15"`
	Unit  string `json:"unit,omitempty" doc:"what one price is for: each, stick, box of 25, or an amount such as 10 ft or pint" eg:"each"`

	Counter string `json:"counter,omitempty" doc:"where it is bought, as the price shelf has it" eg:"pipe counter"`
	Order   int    `json:"order,omitempty" range:"1..99" doc:"place of that counter in the round, as the price shelf has it" eg:"2"`
	Date    string `json:"date,omitempty" doc:"day of the price, year-month-day" eg:"2026-03-01"`
}

// Assumed sets a default otherwise.
type Assumed struct {
	Code  string `json:"code" want:"must" key:"yes" doc:"code of the assumption, as the answer lists it" eg:"assume.layout.clear.wall"`
	Value string `json:"value" want:"must" doc:"the value to use" eg:"3/8 in"`
	Note  string `json:"note,omitempty" doc:"why" eg:"the wall is rough"`
}

// Acceptance accepts a finding.
type Acceptance struct {
	Code   string `json:"code" want:"must" doc:"code of the finding" eg:"pipe.fast"`
	Path   string `json:"path,omitempty" doc:"where in the job; every such finding when empty" eg:"/runs/0"`
	Reason string `json:"reason" want:"must" doc:"why it is accepted; it is printed on the sheets" eg:"the owner wants it loud"`
}
