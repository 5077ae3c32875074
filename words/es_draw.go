package words

// esDraw is enDraw in Spanish.
var esDraw = map[string]string{}
