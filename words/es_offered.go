package words

// esOffered is enOffered in Spanish.
var esOffered = map[string]string{}
