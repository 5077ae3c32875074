package words

// esVerify is enVerify in Spanish.
var esVerify = map[string]string{}
