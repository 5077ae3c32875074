package words

import "strings"

// esSource has the beginnings of sources that are no titles, by the English. What
// stands behind, and what a publication is called, stays.
var esSource = map[string]string{
	"2 S t / (D - t)":                                             "2 S t / (D - t)",
	"affinity laws of centrifugal pumps":                          "leyes de afinidad de las bombas centrífugas",
	"arithmetic on the joints per quart rows":                     "aritmética sobre las filas de uniones por cuarto de galón",
	"balance of water through time, by":                           "balance de agua en el tiempo, por",
	"balance of water: what the stores take, pond and vault lose": "balance de agua: lo que toman los depósitos lo pierden estanque y bóveda",
	"city utility page":                                           "página de un servicio municipal de agua",
	"common in plastic pipe handbooks":                            "usual en manuales de tubería plástica",
	"continuity and energy along the pipes":                       "continuidad y energía a lo largo de los tubos",
	"conversion formula as":                                       "fórmula de conversión según",
	"critical flow over a broad crest":                            "flujo crítico sobre una cresta ancha",
	"cubic bridge between Re 2000 and 4000":                       "puente cúbico entre Re 2000 y 4000",
	"electrical contractor magazine, pond wiring":                 "revista de contratistas eléctricos, cableado de estanques",
	"encyclopedia page on pan coefficient":                        "página de enciclopedia sobre el coeficiente de tanque",
	"energy = power x time":                                       "energía = potencia x tiempo",
	"cost = energy x tariff":                                      "costo = energía x tarifa",
	"engineering forum answer on water distribution":              "respuesta en un foro de ingeniería sobre distribución de agua",
	"estimate":                                "estimación",
	"exam lesson page on voltage drop":        "página de un curso sobre caída de voltaje",
	"four how-to pages on thread tape":        "cuatro páginas de instrucciones de cinta selladora",
	"four trade pages and a contractor forum": "cuatro páginas del oficio y un foro de contratistas",
	"four trade retailer pages":               "cuatro páginas de tiendas del oficio",
	"from memory of figures used for ribbed pond hose, no published value found": "de memoria, de cifras usadas para manguera corrugada; no se halló valor publicado",
	"from memory of tables of equivalent length in diameters":                    "de memoria, de tablas de largo equivalente en diámetros",
	"from memory of the usual bore share":                                        "de memoria, de la parte usual del diámetro interior",
	"formulas as for sudden contraction and enlargement":                         "fórmulas como para contracción y ensanche bruscos",
	"from memory of usual parts, no published value found":                       "de memoria, de partes usuales; no se halló valor publicado",
	"from memory, no published value found":                                      "de memoria; no se halló valor publicado",
	"gardening article":                                                          "artículo de jardinería",
	"gardening page on water features":                                           "página de jardinería sobre juegos de agua",
	"head x (1 - wear) at every flow":                                            "carga x (1 - desgaste) a todo caudal",
	"wear = 1 - head measured against a shut valve / the sheet's":                "desgaste = 1 - carga medida con la válvula cerrada / la de la ficha",
	"heat of water, steam tables":                                                "calor del agua, tablas de vapor",
	"home inspector forum":                                                       "foro de inspectores de viviendas",
	"installation handbook page":                                                 "página de un manual de instalación",
	"invented":                                                                   "inventado",
	"landscape contractor page":                                                  "página de un contratista de paisajismo",
	"local codes vary":                                                           "los reglamentos locales varían",
	"open-channel textbooks":                                                     "libros de texto de canales abiertos",
	"pages on the Francis formula":                                               "páginas sobre la fórmula de Francis",
	"page on dry fit of solvent joints (pool forum quoting a joining guide)":     "página sobre el armado en seco de uniones (foro de albercas que cita una guía)",
	"same range in the":                                                          "el mismo rango en",
	"page":                                                                       "página",
	"pages":                                                                      "páginas",
	"pond trade magazine":                                                        "revista del oficio de estanques",
	"pool fence FAQ page":                                                        "página de preguntas sobre cercas de alberca",
	"practice":                                                                   "práctica",
	"present value of equal yearly payments":                                     "valor presente de pagos anuales iguales",
	"pump trade magazine":                                                        "revista del oficio de bombas",
	"several pages":                                                              "varias páginas",
	"single phase or DC":                                                         "una fase o corriente continua",
	"by the K method":                                                            "por el método K",
	"solvent cementing instruction page":                                         "página de instrucciones de pegado",
	"stone yard page":                                                            "página de un patio de piedra",
	"supplier support page on thread tape":                                       "página de un proveedor sobre cinta selladora",
	"the centre is taken on the stop":                                            "el centro se toma en el tope",
	"three trade pages":                                                          "tres páginas del oficio",
	"three trade retailer pages":                                                 "tres páginas de tiendas del oficio",
	"trade association page":                                                     "página de una asociación del oficio",
	"trade page":                                                                 "página del oficio",
	"trade pages":                                                                "páginas del oficio",
	"trade retailer page":                                                        "página de una tienda del oficio",
	"trade retailer pages":                                                       "páginas de tiendas del oficio",
	"two electrician forum threads":                                              "dos hilos de un foro de electricistas",
	"two trade pages":                                                            "dos páginas del oficio",
	"two trade retailer pages":                                                   "dos páginas de tiendas del oficio",
	"typed in for a test":                                                        "escrito para una prueba",
	"water gardening page":                                                       "página de jardinería acuática",
	"weir formula":                                                               "fórmula de vertedor",
}

// esBetween has what stands between a title and what is said about it.
var esBetween = strings.NewReplacer(
	", as given in page ", ", según la página ", ", as given in pages ", ", según las páginas ", " as given in: ", " según: ", " as given in ", " según ",
	", as quoted", ", citado", " as quoted from ", " citado de ", ", as adapted", ", adaptado", ", text copy", ", copia en texto", ", text seen only in part", ", visto en parte",
	", as remembered", ", de memoria", " as discussed in ", " comentado en ", "; same in ", "; igual en ", "; same table", "; la misma tabla", ", same table", ", la misma tabla",
)

// Source tells where a value comes from: in the language where it is no title, and
// as it is where it is one. Parts stand behind semicolons.
func (l *Language) Source(title string) string {
	if l.sources == nil {
		return title
	}
	if t, ok := l.terms[title]; ok {
		return t
	}
	list := strings.Split(esBetween.Replace(title), "; ")
	for i, part := range list {
		list[i] = begun(l.terms, l.sources, part)
	}
	return strings.Join(list, "; ")
}

// begun puts a text into the language, or its longest beginning that is known and
// ends at a word's end.
func begun(whole, beginnings map[string]string, text string) string {
	if t, ok := whole[text]; ok {
		return t
	}
	for end := len(text); end > 0; end = strings.LastIndexAny(text[:end], " ,:") {
		if t, ok := beginnings[text[:end]]; ok {
			return t + text[end:]
		}
	}
	return text
}
