package words

// esCatalog is enCatalog in Spanish.
var esCatalog = map[string]string{}
