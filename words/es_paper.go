package words

// esPaper is enPaper in Spanish.
var esPaper = map[string]string{}
