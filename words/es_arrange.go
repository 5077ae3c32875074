package words

// esArrange is enArrange in Spanish.
var esArrange = map[string]string{}
