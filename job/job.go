// Package job is the job document: one versioned JSON file that holds all that
// was measured, chosen and assumed on a site. Everything else is computed from
// it. The package knows how the document is written and read (strictly, with
// the path and line of every fault) and nothing of hydraulics or pipe.
//
// Field tags: json is the name in the file; kind names the unit.Kind of a
// quantity (which unit a bare number takes); want is one of "must" (the part
// it stands in means nothing without it) or empty; range is "low..high" in the
// kind's SI, outside which a value is refused as absurd; one-of lists the
// words a text field takes; key "yes" marks what tells the elements of a list
// apart, so that two alike are refused; doc is the sentence that the schema and
// the messages show; eg is an example as a person would write it.
package job

import "plashet/engine/unit"

// FormatName stands in every job file, Version is the newest version of the
// document that this program writes. Older ones are upgraded when read.
const (
	FormatName = "plashet job"
	Version    = 1
)

// The entries of the document by what they measure.
type (
	// Length is an entry of a length, also a height, a level or a head of water.
	Length = Entry[unit.Length]
	// Area is an entry of an area.
	Area = Entry[unit.Area]
	// Volume is an entry of a volume.
	Volume = Entry[unit.Volume]
	// Flow is an entry of a flow.
	Flow = Entry[unit.Flow]
	// Power is an entry of an electrical power.
	Power = Entry[unit.Power]
	// Angle is an entry of an angle.
	Angle = Entry[unit.Angle]
	// Temperature is an entry of a temperature.
	Temperature = Entry[unit.Temperature]
	// Duration is an entry of a span of time.
	Duration = Entry[unit.Duration]
	// Mass is an entry of a mass.
	Mass = Entry[unit.Mass]
	// Voltage is an entry of a voltage.
	Voltage = Entry[unit.Voltage]
	// Speed is an entry of a speed.
	Speed = Entry[unit.Speed]
	// Current is an entry of an electrical current.
	Current = Entry[unit.Current]
	// Ratio is an entry of a factor, a share or a count.
	Ratio = Entry[unit.Ratio]
)

// Job is the document.
type Job struct {
	Format  string `json:"format" want:"must" one-of:"plashet job" doc:"says that this file is a Plashet job"`
	Version int    `json:"version" want:"must" range:"0..1000000" doc:"version of the document" eg:"1"`
	Name    string `json:"name" want:"must" doc:"what the crew calls the job" eg:"Hillside cascade"`
	Note    string `json:"note,omitempty" doc:"anything worth knowing, for the crew; it stands on no sheet that the client gets. The demo jobs say here that they are invented" eg:"second visit, after the rain"`
	// ClientNote is apart from Note, so that a remark meant for the crew cannot
	// reach the client; what older jobs noted stays with the crew.
	ClientNote string `json:"clientNote,omitempty" doc:"a note for the client, printed on the offer and on the care sheet" eg:"the plum tree stays"`
	Client     string `json:"client,omitempty" doc:"who it is for" eg:"the owner of the house"`
	Place      string `json:"place,omitempty" doc:"where it is" eg:"behind the house"`
	Date       string `json:"date,omitempty" doc:"day of the survey, year-month-day" eg:"2026-05-14"`
	Units      string `json:"units" want:"must" one-of:"us,metric" doc:"the units in which bare numbers are read and the answer is shown"`
	Paper      string `json:"paper,omitempty" one-of:"letter,a4" doc:"size of the paper that the sheets are printed on; letter with us units and A4 with metric ones when empty"`

	Numbers      Numbers       `json:"numbers,omitempty" doc:"how numbers and amounts of money are written for people, and what is typed is read"`
	Site         Site          `json:"site,omitempty" doc:"what holds for the whole site"`
	Survey       Survey        `json:"survey,omitempty" doc:"points and rod readings brought to one datum"`
	Pond         Pond          `json:"pond,omitempty" doc:"the lower basin, open pond or hidden basin"`
	Watercourses []Watercourse `json:"watercourses,omitempty" doc:"each feed starts one: an ordered chain of lips, reaches and pools from its top down to the pond; several are parallel"`
	Vault        Vault         `json:"vault,omitempty" doc:"the pump vault or skimmer"`
	Pumps        []Pump        `json:"pumps,omitempty" doc:"the pumps in hand or on offer"`
	Circuit      Circuit       `json:"circuit,omitempty" doc:"the electrical supply of the pumps, as the electrician is to judge it"`
	Use          string        `json:"use,omitempty" doc:"name of the pump the job is designed with; the first one when empty" eg:"M"`
	FurtherPumps []FurtherPump `json:"furtherPumps,omitempty" doc:"pumps that run at the same time as the one in use: side by side with it, or one after the other"`
	Runs         []Run         `json:"runs,omitempty" doc:"pipe runs; a run starts at a pump or where another ends, and ends at a watercourse or where others start; two ways to one place make a loop"`
	Assembly     Assembly      `json:"assembly,omitempty" doc:"the rigid plumbing in the vault, from the pump's port to the wall"`
	Stock        Stock         `json:"stock,omitempty" doc:"sticks, offcuts and tools"`
	Measured     []Measure     `json:"measured,omitempty" doc:"fittings measured by the fitter; they beat the tables"`
	Works        Works         `json:"works,omitempty" doc:"liner, underlayment, rock and soil"`
	Prices       []Price       `json:"prices,omitempty" doc:"own prices by item"`
	Offer        Offer         `json:"offer,omitempty" doc:"what the client is offered: labour, markup or margin, tax, terms, options"`
	Assumptions  []Assumed     `json:"assumptions,omitempty" doc:"habits and distances of the fitter that the user sets otherwise, by code; other defaults have fields of their own"`
	Accepted     []Acceptance  `json:"accepted,omitempty" doc:"findings accepted with a reason"`
}

// Site holds what is true of the whole site.
type Site struct {
	WaterTemperature Temperature `json:"waterTemperature,omitzero" kind:"temperature" range:"0..45" doc:"water temperature for density and viscosity" eg:"60 F"`
	GlueTemperature  Temperature `json:"glueTemperature,omitzero" kind:"temperature" range:"-20..50" doc:"temperature of pipe and air when gluing" eg:"55 F"`
	Damp             bool        `json:"damp,omitempty" doc:"relative humidity above 60 percent when gluing"`
	Altitude         Length      `json:"altitude,omitzero" kind:"elevation" range:"-500..5000" doc:"height above the sea: thinner air lets more evaporate, and a pump outside the water suck less" eg:"800 ft"`
	Frost            bool        `json:"frost,omitempty" doc:"pipe and valve can freeze on this site"`
	Children         bool        `json:"children,omitempty" doc:"children live here or visit"`
	Summer           Weather     `json:"summer,omitempty" doc:"a day's mean weather in the hottest weeks, for what evaporates"`
	HoursPerDay      Duration    `json:"hoursPerDay,omitzero" kind:"hours" range:"0..86400" doc:"hours the pump runs a day" eg:"24 h"`
	DaysPerYear      Ratio       `json:"daysPerYear,omitzero" kind:"count" range:"0..366" doc:"days the pump runs a year" eg:"365"`
	Currency         string      `json:"currency,omitempty" doc:"ISO 4217 code" eg:"USD"`
	Tariff           Money       `json:"tariff,omitzero" doc:"price of one kWh" eg:"0.18"`
	Reserve          Length      `json:"reserve,omitzero" kind:"depth" range:"0..1" doc:"fall of the pond by evaporation and splash before someone tops up; two days' where not given" eg:"1/2 in"`
	DesignRain       Length      `json:"designRain,omitzero" kind:"depth" range:"0..1" doc:"depth of a cloudburst on the pond that the rim must take on top" eg:"1 in"`
	RainTime         Duration    `json:"rainTime,omitzero" kind:"duration" range:"60..86400" doc:"time in which that cloudburst falls" eg:"15 min"`
	ValveLeak        Ratio       `json:"valveLeak,omitzero" kind:"percent" range:"0..1" doc:"part of its bore that a worn check valve leaves open when it should be shut" eg:"2 %"`
}

// Weather is a day's mean weather, as a weather service gives it.
type Weather struct {
	Air       Temperature `json:"air,omitzero" kind:"temperature" range:"-20..50" doc:"mean temperature of the air by day and night" eg:"78 F"`
	Humidity  Ratio       `json:"humidity,omitzero" kind:"percent" range:"0.01..1" doc:"mean relative humidity" eg:"55 %"`
	Wind      Speed       `json:"wind,omitzero" kind:"speed" range:"0..50" doc:"mean wind 2 m above the water" eg:"4 ft/s"`
	Radiation Ratio       `json:"radiation,omitzero" kind:"ratio" range:"-200..500" doc:"net radiation that stays in the water, mean of day and night, in watts to the square metre" eg:"160"`
}

// Circuit is the electrical supply of the pumps.
type Circuit struct {
	Length    Length  `json:"length,omitzero" kind:"distance" range:"0.1..2000" doc:"length of cable one way, from the panel to the pumps' outlet" eg:"90 ft"`
	Conductor string  `json:"conductor,omitempty" doc:"its copper conductor: a gauge or a section" eg:"12 AWG"`
	Breaker   Current `json:"breaker,omitzero" kind:"current" range:"1..400" doc:"rating of the breaker or fuse that the circuit has to itself" eg:"15 A"`
}

// Survey brings rod readings to one datum. Height of instrument = elevation of
// the benchmark + reading on it; elevation of a point = height of instrument -
// reading on it.
type Survey struct {
	Setups []Setup `json:"setups,omitempty" doc:"standings of the level, in order"`
	Points []Point `json:"points,omitempty" doc:"named points; any elevation in the job may be written @name, or @name + 2 in"`
}

// Setup is one standing of the level.
type Setup struct {
	Name      string `json:"name" want:"must" key:"yes" doc:"name of the standing" eg:"A"`
	Benchmark string `json:"benchmark" want:"must" doc:"name of the point of known elevation sighted first" eg:"step"`
	Reading   Length `json:"reading" kind:"elevation" want:"must" range:"-10..100" doc:"rod reading on the benchmark (backsight)" eg:"4.62 ft"`
}

// Point is one surveyed point: a known elevation, or a reading from a setup.
type Point struct {
	Name      string `json:"name" want:"must" key:"yes" doc:"name of the point" eg:"upper lip"`
	Elevation Length `json:"elevation,omitzero" kind:"elevation" range:"-9000..9000" doc:"known or agreed elevation (a benchmark)" eg:"100 ft"`
	Setup     string `json:"setup,omitempty" doc:"the standing it was read from; the only one when empty" eg:"A"`
	Reading   Length `json:"reading,omitzero" kind:"elevation" range:"-10..100" doc:"rod reading" eg:"11.62 ft"`
	Note      string `json:"note,omitempty" doc:"remark" eg:"lowest point of the rim"`
}

// Pond is the lower basin.
type Pond struct {
	Outline     Outline `json:"outline,omitempty" doc:"the shape at the water line"`
	Section     []Step  `json:"section,omitempty" doc:"the side from the edge inward, downward: each step gives the depth below the water line and how far in from the outline it is"`
	Depth       Length  `json:"depth,omitzero" kind:"plan" range:"0.02..30" doc:"greatest depth, where no section is given" eg:"2.5 ft"`
	Water       Level   `json:"water,omitzero" kind:"elevation" range:"-9000..9000" doc:"elevation of the water line at rest" eg:"@water"`
	Rim         Level   `json:"rim,omitzero" kind:"elevation" range:"-9000..9000" doc:"elevation of the lowest point of the edge, or of the overflow when there is one" eg:"@water + 3 in"`
	Void        Ratio   `json:"void,omitzero" kind:"percent" range:"0.05..1" doc:"part of the volume that is water; below 100 percent for a basin full of stone or crates" eg:"40 %"`
	Measured    Volume  `json:"measured,omitzero" kind:"water" range:"0.001..100000" doc:"volume by meter or timed fill; beats the geometry" eg:"1980 gal"`
	RunningLine Level   `json:"runningLine,omitzero" kind:"elevation" range:"-9000..9000" doc:"level to which the pond is topped up while running, if that is the habit" eg:"@water - 1 in"`
	FillLevel   Level   `json:"fillLevel,omitzero" kind:"elevation" range:"-9000..9000" doc:"level of the pond at which its float valve shuts, where it has one" eg:"@water - 1 in"`
	FillFlow    Flow    `json:"fillFlow,omitzero" kind:"flow" range:"0..0.1" doc:"flow of that float valve when it is all open" eg:"4 gpm"`
}

// Outline is a shape in plan.
type Outline struct {
	Shape   string   `json:"shape" want:"must" one-of:"rectangle,circle,ellipse,points,offsets" doc:"kind of outline"`
	Length  Length   `json:"length,omitzero" kind:"plan" range:"0.1..500" doc:"longer size of a rectangle or ellipse, or the diameter of a circle" eg:"16 ft"`
	Width   Length   `json:"width,omitzero" kind:"plan" range:"0.1..500" doc:"shorter size of a rectangle or ellipse" eg:"11 ft"`
	Points  []XY     `json:"points,omitempty" doc:"corners in order round the outline"`
	Offsets []Offset `json:"offsets,omitempty" doc:"taped offsets to both sides of a baseline laid along the pond"`
	Smooth  bool     `json:"smooth,omitempty" doc:"the outline is drawn as a smooth curve through the points or offsets"`
	Area    Area     `json:"area,omitzero" kind:"area" range:"0.01..100000" doc:"measured surface area, when it is known better than the shape gives it" eg:"141 ft2"`
}

// XY is a point in plan.
type XY struct {
	X Length `json:"x" kind:"plan" want:"must" range:"-1000..1000" doc:"distance along" eg:"4' 6\""`
	Y Length `json:"y" kind:"plan" want:"must" range:"-1000..1000" doc:"distance across" eg:"2 ft"`
}

// Offset is one taped offset: at a distance along the baseline, how far the
// edge is to the left and to the right.
type Offset struct {
	At    Length `json:"at" kind:"plan" want:"must" range:"-1000..1000" doc:"distance along the baseline" eg:"4 ft"`
	Left  Length `json:"left,omitzero" kind:"plan" range:"-1000..1000" doc:"to the edge on the left" eg:"3' 4\""`
	Right Length `json:"right,omitzero" kind:"plan" range:"-1000..1000" doc:"to the edge on the right" eg:"2' 10\""`
}

// Step is one corner of the pond's side in section.
type Step struct {
	Depth Length `json:"depth" kind:"depth" want:"must" range:"0..30" doc:"below the water line" eg:"12 in"`
	In    Length `json:"in" kind:"depth" want:"must" range:"0..100" doc:"in from the outline" eg:"18 in"`
}

// Watercourse is what one feed supplies: box at the top, then lips, reaches
// and pools in the order the water meets them, down to the pond.
type Watercourse struct {
	Name   string `json:"name" want:"must" key:"yes" doc:"name of the feed" eg:"cascade"`
	Box    Box    `json:"box,omitempty" doc:"the spill box, header or gravel bed at the top"`
	Parts  []Part `json:"parts,omitempty" doc:"lips, reaches and pools in order, downward"`
	Wanted Flow   `json:"wanted,omitzero" kind:"flow" range:"0..1" doc:"flow wanted in this feed, where no lip tells it" eg:"70 gpm"`
}

// Box is the vessel a feed fills before its first lip runs.
type Box struct {
	Length    Length `json:"length,omitzero" kind:"tape" range:"0.02..50" doc:"inner length" eg:"22 in"`
	Width     Length `json:"width,omitzero" kind:"tape" range:"0.02..50" doc:"inner width" eg:"18 in"`
	Depth     Length `json:"depth,omitzero" kind:"tape" range:"0.01..5" doc:"from its floor up to its lip" eg:"14 in"`
	Inlet     Length `json:"inlet,omitzero" kind:"tape" range:"0..10" doc:"centre of the inlet above the box floor; above the lip when it pours in from over the water" eg:"3 in"`
	Void      Ratio  `json:"void,omitzero" kind:"percent" range:"0.05..1" doc:"part of the volume that is water (gravel bed, filter media)" eg:"35 %"`
	Volume    Volume `json:"volume,omitzero" kind:"water" range:"0..100" doc:"water up to the lip, when known; beats the sizes" eg:"29 gal"`
	Lined     bool   `json:"lined,omitempty" doc:"it is a bed dug in the ground and lined, no ready-made box"`
	InletLoss Ratio  `json:"inletLoss,omitzero" kind:"ratio" range:"0..50" doc:"loss coefficient of the outlet into the box on the pipe's velocity; 1 for all of it" eg:"1"`
}

// Part is one lip, reach or pool: exactly one of the three is given.
type Part struct {
	Lip   *Lip   `json:"lip,omitempty" doc:"an edge the water falls over"`
	Reach *Reach `json:"reach,omitempty" doc:"a sloping length of stream or rill"`
	Pool  *Pool  `json:"pool,omitempty" doc:"a pool that stays full up to the lip below it"`
}

// Lip is an edge over which water falls in a sheet.
type Lip struct {
	Name    string `json:"name" want:"must" key:"yes" doc:"name of the lip" eg:"upper"`
	Crest   Level  `json:"crest,omitzero" kind:"elevation" range:"-9000..9000" doc:"elevation of the crest" eg:"@upper lip"`
	Width   Length `json:"width" kind:"tape" want:"must" range:"0.01..50" doc:"clear width of the crest" eg:"24 in"`
	Kind    string `json:"kind,omitempty" one-of:"thin,broad,stone" doc:"thin: a plate or blade; broad: a flat sill long in the flow; stone: rounded or rough stone"`
	Wanted  Flow   `json:"wanted,omitzero" kind:"flow" range:"0..1" doc:"flow wanted over this lip" eg:"70 gpm"`
	Sheet   Length `json:"sheet,omitzero" kind:"depth" range:"0.001..0.5" doc:"sheet depth wanted" eg:"3/4 in"`
	SheetAt string `json:"sheetAt,omitempty" one-of:"upstream,critical,edge" doc:"where that depth is meant: upstream (head above the crest in still water), critical (2/3 of it, on the crest), edge (thickness as it leaves)"`
	Tilt    Length `json:"tilt,omitzero" kind:"depth" range:"0..0.5" doc:"one end of the crest above the other" eg:"1/8 in"`
	Drop    Length `json:"drop,omitzero" kind:"depth" range:"0..30" doc:"fall of the water below the crest, for sound and splash" eg:"18 in"`
	C       Ratio  `json:"c,omitzero" kind:"ratio" range:"1..3" doc:"own weir coefficient C in Q = C L H^1.5 (metre, second)" eg:"1.7"`
}

// Reach is a sloping length of stream.
type Reach struct {
	Name   string `json:"name" want:"must" key:"yes" doc:"name of the reach" eg:"stream"`
	Length Length `json:"length" kind:"plan" want:"must" range:"0.05..1000" doc:"length along the water" eg:"28 ft"`
	Width  Length `json:"width" kind:"plan" want:"must" range:"0.02..50" doc:"width between the edges" eg:"3 ft"`
	Slope  Ratio  `json:"slope,omitzero" kind:"percent" range:"0.0005..2" doc:"fall over length" eg:"2 %"`
	Wetted Ratio  `json:"wetted,omitzero" kind:"percent" range:"0.05..1" doc:"part of the width that carries water" eg:"75 %"`
	N      Ratio  `json:"n,omitzero" kind:"ratio" range:"0.008..0.3" doc:"Manning's roughness" eg:"0.04"`
	Depth  Length `json:"depth,omitzero" kind:"depth" range:"0.001..2" doc:"running depth as measured; beats Manning's formula" eg:"2.5 in"`
	Holds  Length `json:"holds,omitzero" kind:"depth" range:"0..2" doc:"mean depth that stays in the reach when the pump is off" eg:"0"`
}

// Pool is a pool in the watercourse, full up to the lip below it.
type Pool struct {
	Name   string `json:"name" want:"must" key:"yes" doc:"name of the pool" eg:"mid pool"`
	Length Length `json:"length,omitzero" kind:"plan" range:"0.05..500" doc:"length" eg:"4 ft"`
	Width  Length `json:"width,omitzero" kind:"plan" range:"0.05..500" doc:"width" eg:"3 ft"`
	Area   Area   `json:"area,omitzero" kind:"area" range:"0.001..100000" doc:"surface area; beats length and width" eg:"12 ft2"`
	Depth  Length `json:"depth,omitzero" kind:"depth" range:"0..10" doc:"mean depth up to the lip, filled once at first start" eg:"10 in"`
	Leaks  bool   `json:"leaks,omitempty" doc:"the pool empties when the pump is off, so it must be filled at every start"`
}
