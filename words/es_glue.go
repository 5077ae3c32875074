package words

// esGlue is enGlue in Spanish.
var esGlue = map[string]string{}
