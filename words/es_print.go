package words

// esPrint is enPrint in Spanish.
var esPrint = map[string]string{}
