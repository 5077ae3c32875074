package words

// esTakeoff is enTakeoff in Spanish.
var esTakeoff = map[string]string{}
