package words

// esUnit is enUnit in Spanish.
var esUnit = map[string]string{}
