package words

// esTable is enTable in Spanish.
var esTable = map[string]string{
	"table.title.materials": "Materiales", "table.title.cuts": "Cortes", "table.title.sticks": "Tramos", "table.title.levels": "Niveles",
	"table.title.start-and-stop": "Arranque y paro", "table.title.basis": "En qué se apoya",

	"table.item": "artículo", "table.least": "llevar, lo menos", "table.most": "llevar, lo más", "table.unit": "unidad", "table.pack": "uno contiene", "table.packunit": "unidad de eso", "table.spare": "de eso repuesto",
	"table.each": "precio", "table.per": "precio por", "table.sumleast": "importe, lo menos", "table.summost": "importe, lo más", "table.currency": "moneda",
	"table.how": "cómo resulta", "table.caution": "precaución", "table.id": "renglón", "table.pieces": "piezas", "table.yes": "sí",

	"table.piece": "pieza", "table.pipe": "tubo", "table.length": "largo", "table.tape": "en la cinta", "table.stick": "tramo", "table.source": "cortada de",
	"table.from": "el lado bomba entra en", "table.markfrom": "marca de inserción en el lado bomba", "table.to": "el lado pared entra en", "table.markto": "marca de inserción en el lado pared",
	"table.closing": "pieza de cierre: mida su claro en su lugar", "table.measure": "mida primero la conexión", "table.stub": "trozo para el armado en seco",
	"table.offcut": "retazo", "table.newstick": "tramo nuevo", "table.left": "sobra", "table.proven": "probado: ningún plan es mejor",
	"table.held": "NO CORTAR NI PEGAR: tal como está trazado, el armado no se puede construir.",

	"table.course": "curso", "table.moment": "momento", "table.pond": "estanque", "table.vault": "bóveda", "table.change": "estanque contra su línea", "table.freeboard": "bajo el borde",
	"table.oversill": "sobre el umbral", "table.needsill": "se pide sobre el umbral", "table.overpump": "sobre el piso de la bomba", "table.needpump": "se pide sobre el piso de la bomba",
	"table.starved": "el agua no alcanza",
	"table.case":    "caso", "table.time": "tiempo", "table.drawn": "lo que toma la bomba", "table.back": "de regreso por la bomba", "table.returns": "baja al estanque",
	"table.stored": "en tubos, cajas, arroyos", "table.over": "sobre el borde hasta ahora",

	"table.what": "qué", "table.text": "en palabras", "table.value": "valor", "table.wherefrom": "dónde, o de quién", "table.code": "código",
	"table.job": "trabajo", "table.note": "nota", "table.place": "lugar", "table.date": "medido", "table.digest": "estado del trabajo (SHA-256)", "table.standing": "situación",
	"table.notapproval": "No es aprobación de reglamento: la electricidad es para un electricista con licencia; las fichas del fabricante y el reglamento local tienen la última palabra.",
	"table.fault":       "error en los datos", "table.assumed": "supuesto", "table.accepted": "Aceptado: {why}",
}
