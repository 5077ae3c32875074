package dxf

import (
	"math"
	"strconv"
)

// Handles of what every file has. They are hexadecimal and never twice the same.
const (
	hVport, hLtype, hLayer, hStyle, hView, hUcs, hAppid, hDimstyle, hBlockRecord = "8", "5", "2", "3", "6", "7", "9", "a", "1"

	hModel, hModelBlock, hModelEnd, hModelLayout = "1f", "20", "21", "22"
	hPaper, hPaperBlock, hPaperEnd, hPaperLayout = "1b", "1c", "1d", "1e"
	hRoot, hGroups, hLayouts                     = "c", "d", "1a"

	firstHandle = 0x100
	lastHandle  = 0xffffff // declared as the first that is free
)

// layers are the layers by their names, with a colour number each: 7 is black or
// white, whichever shows.
var layers = []struct {
	name   string
	colour int
}{
	{"POND", 5},
	{"WATER", 4},
	{fillLayer, 4},
	{"GROUND", 33},
	{"VAULT", 8},
	{"OBSTACLES", 9},
	{"PUMP", 30},
	{"PIPE", 5},
	{"FITTINGS", 7},
	{"SIZES", 3},
	{"HEIGHTS", 3},
	{"MARKS", 7},
	{"NOT-PLACED", 9},
	{"NOTES", 8},
}

// head declares version, units and extent.
func (e *encoder) head() {
	e.section("HEADER")
	variable := func(name string, code int, value string) {
		e.put(9, name)
		e.put(code, value)
	}
	variable("$ACADVER", 1, "AC1021")
	variable("$DWGCODEPAGE", 3, "ANSI_1252")
	variable("$HANDSEED", 5, strconv.FormatInt(lastHandle, 16))
	if e.low.x > e.high.x || math.IsInf(e.low.x, 0) {
		e.low, e.high = point{}, point{}
	}
	e.put(9, "$EXTMIN")
	e.at(10, e.low)
	e.put(9, "$EXTMAX")
	e.at(10, e.high)
	e.put(9, "$LTSCALE")
	e.real(40, e.perMM)
	insert, metric, form := "4", "1", "2" // millimetres, metric, decimal
	if e.unit == Inch {
		insert, metric, form = "1", "0", "4" // inches, not metric, feet and inches with fractions
	}
	variable("$INSUNITS", 70, insert)
	variable("$MEASUREMENT", 70, metric)
	variable("$LUNITS", 70, form)
	variable("$LUPREC", 70, "4")
	e.put(0, "ENDSEC")
	e.section("CLASSES")
	e.put(0, "ENDSEC")
}

// table writes a table of symbols.
func (e *encoder) table(name, handle string, count int, fill func()) {
	e.put(0, "TABLE")
	e.put(2, name)
	e.put(5, handle)
	e.put(330, "0")
	e.put(100, "AcDbSymbolTable")
	e.whole(70, count)
	if name == "DIMSTYLE" {
		e.put(100, "AcDbDimStyleTable")
	}
	if fill != nil {
		fill()
	}
	e.put(0, "ENDTAB")
}

// record begins a row of a table.
func (e *encoder) record(kind, handle, owner, class, name string) {
	e.put(0, kind)
	code := 5
	if kind == "DIMSTYLE" { // the one that has its handle elsewhere
		code = 105
	}
	e.put(code, handle)
	e.put(330, owner)
	e.put(100, "AcDbSymbolTableRecord")
	e.put(100, class)
	e.put(2, name)
}

func (e *encoder) tables() {
	e.section("TABLES")
	e.table("VPORT", hVport, 1, func() {
		e.record("VPORT", e.next(), hVport, "AcDbViewportTableRecord", "*Active")
		e.whole(70, 0)
		mid := point{(e.low.x + e.high.x) / 2, (e.low.y + e.high.y) / 2}
		flat := func(code int, p point) {
			e.real(code, p.x)
			e.real(code+10, p.y)
		}
		flat(10, point{})
		flat(11, point{1, 1})
		flat(12, mid)
		flat(13, point{})
		flat(14, point{1, 1})
		flat(15, point{1, 1})
		e.real(16, 0) // looked at from above
		e.real(26, 0)
		e.real(36, 1)
		e.at(17, point{})
		tall := math.Max(e.high.y-e.low.y, 1)
		e.real(40, tall*1.05)
		e.real(41, math.Max(e.high.x-e.low.x, 1)/tall)
		e.real(42, 50)
		e.real(43, 0)
		e.real(44, 0)
		e.real(50, 0)
		e.real(51, 0)
	})
	e.table("LTYPE", hLtype, 5, func() {
		e.line("ByBlock", "")
		e.line("ByLayer", "")
		e.line("Continuous", "solid")
		e.line("DASHED", "__ __ __", 1.6, -1.3)
		e.line("DOTTED", ". . . .", 0, -1.1)
	})
	e.table("LAYER", hLayer, len(layers)+1, func() {
		e.layer("0", 7)
		for _, l := range layers {
			e.layer(l.name, l.colour)
		}
	})
	e.table("STYLE", hStyle, 1, func() {
		e.record("STYLE", e.next(), hStyle, "AcDbTextStyleTableRecord", "Standard")
		e.whole(70, 0)
		e.real(40, 0)
		e.real(41, 1)
		e.real(50, 0)
		e.whole(71, 0)
		e.real(42, 1)
		e.put(3, "DejaVuSans.ttf")
		e.put(4, "")
	})
	e.table("VIEW", hView, 0, nil)
	e.table("UCS", hUcs, 0, nil)
	e.table("APPID", hAppid, 1, func() {
		e.record("APPID", e.next(), hAppid, "AcDbRegAppTableRecord", "ACAD")
		e.whole(70, 0)
	})
	e.table("DIMSTYLE", hDimstyle, 1, func() {
		e.record("DIMSTYLE", e.next(), hDimstyle, "AcDbDimStyleTableRecord", "Standard")
		e.whole(70, 0)
	})
	e.table("BLOCK_RECORD", hBlockRecord, 2, func() {
		e.record("BLOCK_RECORD", hModel, hBlockRecord, "AcDbBlockTableRecord", "*Model_Space")
		e.put(340, hModelLayout)
		e.record("BLOCK_RECORD", hPaper, hBlockRecord, "AcDbBlockTableRecord", "*Paper_Space")
		e.put(340, hPaperLayout)
	})
	e.put(0, "ENDSEC")
}

// line declares a line type: dashes and gaps (below zero) in mm on paper.
func (e *encoder) line(name, looks string, dashes ...float64) {
	e.record("LTYPE", e.next(), hLtype, "AcDbLinetypeTableRecord", name)
	e.whole(70, 0)
	e.put(3, looks)
	e.whole(72, 65)
	e.whole(73, len(dashes))
	sum := 0.0
	for _, d := range dashes {
		sum += math.Abs(d)
	}
	e.real(40, sum)
	for _, d := range dashes {
		e.real(49, d)
		e.whole(74, 0)
	}
}

func (e *encoder) layer(name string, colour int) {
	e.record("LAYER", e.next(), hLayer, "AcDbLayerTableRecord", name)
	e.whole(70, 0)
	e.whole(62, colour)
	e.put(6, "Continuous")
}

func (e *encoder) blocks() {
	e.section("BLOCKS")
	for _, b := range [][4]string{{"*Model_Space", hModel, hModelBlock, hModelEnd}, {"*Paper_Space", hPaper, hPaperBlock, hPaperEnd}} {
		begin := func(kind, handle string) {
			e.put(0, kind)
			e.put(5, handle)
			e.put(330, b[1])
			e.put(100, "AcDbEntity")
			if b[0] == "*Paper_Space" {
				e.whole(67, 1)
			}
			e.put(8, "0")
		}
		begin("BLOCK", b[2])
		e.put(100, "AcDbBlockBegin")
		e.put(2, b[0])
		e.whole(70, 0)
		e.at(10, point{})
		e.put(3, b[0])
		e.put(1, "")
		begin("ENDBLK", b[3])
		e.put(100, "AcDbBlockEnd")
	}
	e.put(0, "ENDSEC")
}
