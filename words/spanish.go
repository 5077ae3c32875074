package words

// spanish lists the parts of the Spanish catalogue, each beside the English one
// of its name.
var spanish = []map[string]string{
	esAnswer, esPrint, esPaper, esTable, esSure, esLaid, esChoose, esFound, esUnit, esGeom, esCatalog, esHydro, esNetwork, esLevel, esMotion, esLayout, esVerify, esGlue, esCut, esDesign, esJob, esTakeoff, esSize, esBand, esArrange, esOffer, esOffered, esShelf, esShelves, esApp, esSheet, esGuide, esLabel, esDraw,
}
