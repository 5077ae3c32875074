package words

// esTable is enTable in Spanish.
var esTable = map[string]string{}
