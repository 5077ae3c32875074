package words

// esOffer is enOffer in Spanish.
var esOffer = map[string]string{}
