package words

// esGeom is enGeom in Spanish.
var esGeom = map[string]string{}
