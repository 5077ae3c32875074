package words

// esSize is enSize in Spanish.
var esSize = map[string]string{}
