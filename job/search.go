package job

// Undrilled is how far from where it is drawn the centre of a hole may lie that
// is not drilled yet.
type Undrilled struct {
	Less Length `json:"less,omitzero" kind:"tape" range:"0..20" doc:"so much less along the wall" eg:"2 in"`
	More Length `json:"more,omitzero" kind:"tape" range:"0..20" doc:"so much more along the wall" eg:"2 in"`
	Down Length `json:"down,omitzero" kind:"tape" range:"0..10" doc:"so much lower" eg:"1 in"`
	Up   Length `json:"up,omitzero" kind:"tape" range:"0..10" doc:"so much higher" eg:"3 in"`
}

// Search is what the search for layouts may choose from, beyond what the stock
// says of fittings.
type Search struct {
	Stands       []Stand `json:"stands,omitempty" doc:"the ways the pump may stand; every attitude of its own in quarter turns when empty"`
	NoUnion      bool    `json:"noUnion,omitempty" doc:"a layout without a union will do: the pump then comes out with the saw only"`
	NoCheckValve bool    `json:"noCheckValve,omitempty" doc:"a layout without a check valve will do"`
	Hose         bool    `json:"hose,omitempty" doc:"a layout may have one short hose, next to the pump"`
	Into         string  `json:"into,omitempty" one-of:"up,down,left,right,front,back" doc:"the way the water runs into the first of the parts glued at the wall; as from the pump that they were glued to when empty" eg:"up"`
}

// Stand is one way the pump may stand in a layout that is searched for.
type Stand struct {
	Attitude string `json:"attitude" want:"must" doc:"which of the pump's attitudes" eg:"on its feet"`
	Turn     Angle  `json:"turn,omitzero" kind:"angle" range:"-6.2832..6.2832" doc:"pump turned about the upright, anticlockwise seen from above; any quarter turn when empty" eg:"90"`
	At       XYZ    `json:"at,omitzero" doc:"where the corner of the pump's box nearest the origin stands, after turning; given, it stays there, else the search places it"`
}

// Kept is what a layout was when it was kept: what it stood on and the lengths
// that its cut card was printed with. It is written by the program; what no
// longer agrees with it is told.
type Kept struct {
	Pieces []KeptPiece `json:"pieces,omitempty" doc:"the pieces of the cut card"`
	Inputs []KeptInput `json:"inputs,omitempty" doc:"every size and word that the layout stands on, as it was"`
	Sizes  string      `json:"sizes,omitempty" doc:"digest of the sizes worked with, those of the tables among them" eg:"5f2c41d09a3be817"`
	Claim  string      `json:"claim,omitempty" one-of:"everything,family,capped,stopped,drawn" doc:"how far the search had looked when it was kept; drawn where the layout was kept as drawn"`
	Note   string      `json:"note,omitempty" doc:"remark" eg:"printed for the crew on Monday"`
}

// KeptPiece is one piece of pipe as it stands on the cut card.
type KeptPiece struct {
	Mark   string `json:"mark" want:"must" key:"yes" doc:"its mark on the card" eg:"P1"`
	From   string `json:"from,omitempty" doc:"mark of the part before it, or pump" eg:"A1"`
	To     string `json:"to,omitempty" doc:"mark of the part after it, or wall" eg:"U1"`
	Cut    Length `json:"cut" kind:"tape" want:"must" range:"0..20" doc:"its length as cut" eg:"6-1/4"`
	Closes bool   `json:"closes,omitempty" doc:"it is cut by the gap measured in place"`
}

// KeptInput is one entry of the job as it was when a layout was kept.
type KeptInput struct {
	Path  string `json:"path" want:"must" key:"yes" doc:"where it stands in the job; what is the pump's in use begins with /pump" eg:"/vault/length"`
	Value string `json:"value" want:"must" doc:"as it was typed" eg:"24 in"`
}

// StockFitting is a fitting on the truck, or one that cannot be had.
type StockFitting struct {
	Fitting string `json:"fitting" want:"must" key:"yes" doc:"name of the fitting" eg:"elbow 90"`
	Size    string `json:"size" want:"must" key:"yes" doc:"its size" eg:"2"`
	Count   int    `json:"count,omitempty" range:"1..10000" doc:"how many there are; one when empty" eg:"3"`
	None    bool   `json:"none,omitempty" doc:"there is none, and none can be had"`
}
