package words

// esNetwork is enNetwork in Spanish.
var esNetwork = map[string]string{}
