package words

// esDesign is enDesign in Spanish.
var esDesign = map[string]string{}
