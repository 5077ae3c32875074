package words

// esHydro is enHydro in Spanish.
var esHydro = map[string]string{
	"hydro.value.finite":    "{where}: “{name}” no es un número que se pueda usar. Escríbalo otra vez.",
	"hydro.value.range":     "{where}: “{name}” es {found}; la fórmula vale hasta {limit}. Revise la cifra y su unidad.",
	"hydro.value.word":      "{where}: “{name}” es “{found}”, una palabra que aquí no se conoce. Elija una de las conocidas.",
	"hydro.curve.none":      "{where}: la bomba no tiene datos: se necesitan dos puntos de su curva, o el caudal del empaque con su carga máxima. Tómelos de la ficha del fabricante.",
	"hydro.curve.duplicate": "{where}: la curva tiene dos puntos a {flow}; la carga máxima del empaque cuenta como un punto sin caudal. Borre uno, o lea otra vez su caudal.",
	"hydro.curve.rise":      "{where}: a {flow} la carga de la curva ha subido {rise}; una curva que se cae al inicio, de cuatro puntos o más, puede subir {limit} y al final baja. La carga de casi toda bomba baja al crecer el caudal: lea otra vez los puntos.",
	"hydro.npsh.none":       "{where}: no se da ningún punto de la carga de succión requerida. Lea NPSHr en la ficha del fabricante.",

	"hydro.curve.few":       "{where}: la curva tiene {count} puntos; lo normal son cuatro o más. Lea más puntos de la ficha del fabricante.",
	"hydro.curve.droop":     "{where}: hasta {flow} la carga de la curva sube {rise}, más que un error de lectura. Una bomba con una curva así puede trabajar a más de un caudal, o brincar entre ellos. Lea otra vez esos puntos; si son ciertos, tome una bomba cuya curva baje todo el camino donde importe un caudal estable.",
	"hydro.curve.levelled":  "{where}: la curva sube {rise}, dentro del error de lectura de {limit}; ahí se hizo pareja. Lea otra vez esos puntos si duda.",
	"hydro.curve.nameplate": "{where}: no hay curva, solo los {flow:both} y {head:both} del empaque. Lo que resulte es una estimación con banda ancha. Consiga la curva del fabricante.",
	"hydro.power.constant":  "{where}: se conocen watts en menos de dos puntos; {power} vale para toda la curva. El costo de la potencia es aproximado.",
	"hydro.hazen.least":     "{where}: {name} es {found}; la fórmula de Hazen-Williams se hizo para {limit} y más. Dé clase y medida del tubo, para que la fricción se calcule con su diámetro interior y rugosidad.",
	"hydro.hazen.most":      "{where}: {name} es {found}; la fórmula de Hazen-Williams se hizo para {limit} y menos. Dé clase y medida del tubo, para que la fricción se calcule con su diámetro interior y rugosidad.",
	"hydro.lip.cling":       "{where}: hay {head:both} de agua sobre el centro del labio; con menos de {limit:both} la lámina puede pegarse a la piedra, y la cifra puede desviarse {band}. Dé más caudal, o tome un labio más angosto.",
	"hydro.lip.cling.high":  "{where}: en el extremo alto del labio hay {head:both} de agua encima; con menos de {limit:both} la lámina puede pegarse ahí a la piedra. Nivele el labio, o dé más caudal.",
	"hydro.lip.tilt":        "{where}: el labio está {tilt:both} fuera de nivel; {limit:both} es poco suficiente para una lámina pareja. Nivele el labio.",
	"hydro.lip.dry":         "{where}: {width:both} del labio quedan secos porque está fuera de nivel. Nivele el labio, o dé más caudal.",
	"hydro.channel.steep":   "{where}: el arroyo cae {found}; la fórmula de Manning se usa hasta {limit}. Aquí profundidad y velocidad son burdas. Hágalo en escalones con labios, o compruébelo con agua.",
}
