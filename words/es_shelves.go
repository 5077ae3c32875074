package words

// esShelves is enShelves in Spanish.
var esShelves = map[string]string{}
