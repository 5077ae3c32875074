package words

// esMotion is enMotion in Spanish.
var esMotion = map[string]string{}
