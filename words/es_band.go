package words

// esBand is enBand in Spanish.
var esBand = map[string]string{}
