package words

// esTerm has the words that the engine hands over as data, by the English.
var esTerm = map[string]string{}
