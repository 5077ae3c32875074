package words

// esJob is enJob in Spanish.
var esJob = map[string]string{}
