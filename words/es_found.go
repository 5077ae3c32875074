package words

// esFound is enFound in Spanish.
var esFound = map[string]string{}
