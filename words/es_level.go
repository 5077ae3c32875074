package words

// esLevel is enLevel in Spanish.
var esLevel = map[string]string{}
