package dxf

// dictionary writes an object that names others: pairs of name and handle.
func (e *encoder) dictionary(handle, owner string, entries ...string) {
	e.put(0, "DICTIONARY")
	e.put(5, handle)
	e.put(330, owner)
	e.put(100, "AcDbDictionary")
	e.whole(281, 1)
	for i := 0; i+1 < len(entries); i += 2 {
		e.put(3, entries[i])
		e.put(350, entries[i+1])
	}
}

// objects writes the dictionaries and the two layouts that a file must have.
func (e *encoder) objects() {
	e.section("OBJECTS")
	e.dictionary(hRoot, "0", "ACAD_GROUP", hGroups, "ACAD_LAYOUT", hLayouts)
	e.dictionary(hGroups, hRoot)
	e.dictionary(hLayouts, hRoot, "Model", hModelLayout, "Sheet", hPaperLayout)
	e.layout("Model", hModelLayout, hModel, 0)
	e.layout("Sheet", hPaperLayout, hPaper, 1)
	e.put(0, "ENDSEC")
}

// layout writes a layout with its settings for plotting left as they come.
func (e *encoder) layout(name, handle, block string, order int) {
	e.put(0, "LAYOUT")
	e.put(5, handle)
	e.put(330, hLayouts)
	e.put(100, "AcDbPlotSettings")
	e.put(1, "")
	e.put(2, "none_device")
	e.put(4, "")
	e.put(6, "")
	for code := 40; code <= 49; code++ { // margins, paper, window: not set
		e.real(code, 0)
	}
	e.real(140, 0)
	e.real(141, 0)
	e.real(142, 1)
	e.real(143, 1)
	flags := 688
	if order == 0 {
		flags = 1712 // the model's own
	}
	e.whole(70, flags)
	e.whole(72, 0)
	e.whole(73, 0)
	e.whole(74, 5)
	e.put(7, "")
	e.whole(75, 16)
	e.real(147, 1)
	e.real(148, 0)
	e.real(149, 0)
	e.put(100, "AcDbLayout")
	e.put(1, name)
	e.whole(70, 1)
	e.whole(71, order)
	flat := func(code int, p point) {
		e.real(code, p.x)
		e.real(code+10, p.y)
	}
	flat(10, point{})
	flat(11, point{12, 9})
	e.at(12, point{})
	e.at(14, e.low)
	e.at(15, e.high)
	e.real(146, 0)
	e.at(13, point{})
	e.at(16, point{1, 0})
	e.at(17, point{0, 1})
	e.whole(76, 0)
	e.put(330, block)
}
