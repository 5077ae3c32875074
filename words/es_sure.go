package words

// esSure is enSure in Spanish.
var esSure = map[string]string{}
