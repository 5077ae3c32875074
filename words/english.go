package words

// english lists the parts of the English catalogue, one for each part of the
// house that speaks.
var english = []map[string]string{
	enAnswer, enPrint, enPaper, enTable, enSure, enLaid, enChoose, enFound, enUnit, enGeom, enCatalog, enHydro, enNetwork, enLevel, enMotion, enLayout, enVerify, enGlue, enCut, enDesign, enJob, enTakeoff, enSize, enBand, enArrange, enOffer, enOffered, enShelf, enShelves, enApp, enSheet, enGuide, enLabel, enDraw,
}
