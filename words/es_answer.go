package words

// esAnswer is enAnswer in Spanish.
var esAnswer = map[string]string{}
