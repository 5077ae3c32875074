package words

// english lists the parts of the English catalogue, one for each part of the
// house that speaks.
var english = []map[string]string{
	enUnit, enGeom, enCatalog, enHydro, enLevel, enCut, enDesign, enJob,
}
