package words

// esLayout is enLayout in Spanish.
var esLayout = map[string]string{}
