package words

// esCut is enCut in Spanish.
var esCut = map[string]string{}
