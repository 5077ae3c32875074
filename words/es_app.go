package words

// esApp is enApp in Spanish.
var esApp = map[string]string{}
