package words

// esShelf is enShelf in Spanish.
var esShelf = map[string]string{}
