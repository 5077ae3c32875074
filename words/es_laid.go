package words

// esLaid is enLaid in Spanish.
var esLaid = map[string]string{}
