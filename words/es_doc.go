package words

// esDoc has what the fields of the job document are for, by the English.
var esDoc = map[string]string{}
