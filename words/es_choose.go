package words

// esChoose is enChoose in Spanish.
var esChoose = map[string]string{}
