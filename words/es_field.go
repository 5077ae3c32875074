package words

// esField has the words of the job document, by the English.
var esField = map[string]string{}
