package words

// esHydro is enHydro in Spanish.
var esHydro = map[string]string{}
