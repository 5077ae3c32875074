package words

// esCut is enCut in Spanish.
var esCut = map[string]string{
	"cut.grid":            "El paso al que se redondean los largos es {found}; debe ser más que cero.",
	"cut.length":          "Un largo es {found}; debe ser un número mayor que cero (el corte de sierra y el retazo guardado pueden ser cero). Revíselo.",
	"cut.length.grid":     "Un largo es {found}, que no es un número entero de pasos de {grid}. Redondéelo.",
	"cut.length.long":     "Un largo da {found} pasos del redondeo; lo más que se puede buscar es {limit}. Revise el largo.",
	"cut.count":           "Una cantidad es {found}, muy chica o muy grande. Revise cuántas se quieren o se tienen.",
	"cut.many":            "Hay {found} piezas, retazos o clases de tramos; lo más son {limit}. Divida el trabajo.",
	"cut.price":           "Un precio es {found}; está bajo cero, es muy grande, o falta mientras otros tramos lo tienen. Dé precio a todos los tramos, o a ninguno.",
	"cut.basis":           "Lo que el plan ha de ahorrar no es una de las opciones conocidas: precio, largo o número de tramos. Elija una.",
	"cut.effort":          "El esfuerzo de la búsqueda es {found}; debe ser cero o más.",
	"cut.pieces.none":     "No hay nada que cortar: no se dan piezas.",
	"cut.piece.long":      "La pieza {mark} mide {found}; el tramo o retazo más largo mide {limit}. Únala de dos piezas con un cople, o consiga tramos más largos.",
	"cut.stock.short":     "El tubo que hay no alcanza: {count} de la pieza {mark} ({found}) no tienen de dónde salir. Compre más tramos.",
	"cut.stock.undecided": "La búsqueda terminó sin plan: {count} de la pieza {mark} ({found}) no tuvieron lugar, pero no está probado que no quepan. Déle más tiempo, o agregue un tramo.",
	"cut.cancelled":       "La búsqueda se detuvo antes de hallar un plan. Empiécela otra vez.",
}
