package words

// esOffered is enOffered in Spanish.
var esOffered = map[string]string{
	"offer.title":        "{name}: lo que cuesta el trabajo y lo que se ofrece",
	"offer.title.client": "{name}: oferta",
	"offer.invented":     "Nota del trabajo: {note}",

	"offer.head.cost":     "Lo que le cuesta a la empresa",
	"offer.head.price":    "Del costo al precio",
	"offer.head.scopes":   "Lo que se ofrece",
	"offer.head.includes": "Incluye",
	"offer.head.excludes": "No incluye",
	"offer.head.terms":    "Condiciones",
	"offer.head.pay":      "Pagos",
	"offer.head.options":  "Lado a lado",
	"offer.head.change":   "Cambio desde que se acordó la oferta",
	"offer.head.findings": "Bueno saberlo",

	"offer.group.material": "material", "offer.group.labour": "mano de obra", "offer.group.equipment": "equipo", "offer.group.other": "otros costos",
	"offer.scope.pump": "bomba", "offer.scope.plumbing": "plomería", "offer.scope.pond and streams": "estanque y arroyos", "offer.scope.stone": "piedra",
	"offer.scope.earthwork": "excavación", "offer.scope.the work as a whole": "la obra completa",

	"offer.row.lines": "renglones", "offer.row.waste": "desperdicio", "offer.row.contingency": "imprevistos", "offer.row.profit": "utilidad", "offer.row.price": "precio",
	"offer.row.cost": "costo de todo", "offer.row.discount": "descuento", "offer.row.full": "precio antes del descuento", "offer.row.off": "descuento, ya está en las partes de arriba", "offer.row.net": "antes de impuesto", "offer.row.tax": "{name}, {rate} de {base}", "offer.row.rounding": "redondeo",
	"offer.row.total": "total", "offer.row.deposit": "antes de empezar la obra", "offer.row.rest": "al terminar la obra", "offer.row.before": "acordado", "offer.row.after": "ahora",
	"offer.row.by": "orden de cambio", "offer.none": "sin precio", "offer.hours": "{hours} h a {rate}",
	"offer.head.water": "Agua sobre las caídas", "offer.fall": "{name}, se pide {wanted}", "offer.own": "como se diseñó", "offer.flow": "agua movida", "offer.new": "nuevo", "offer.gone": "quitado",
	"offer.valid":     "Esta oferta vale por {days} {days:día|días}.",
	"offer.safe":      "El trabajo eléctrico es para un electricista con licencia, según el reglamento local.",
	"offer.nototal":   "Todavía no hay total: nada de la oferta tiene precio.",
	"offer.row.sofar": "total de lo que tiene precio",
	"offer.tax.sum":   "El impuesto se redondea una sola vez, sobre la suma.",
	"offer.tax.part":  "El impuesto se redondea en cada parte de la obra.",
	"offer.part":      "No todo tiene precio: los importes de abajo no son el total.",
	"offer.draft":     "BORRADOR, no es para el cliente: la oferta no está completa.",
	"offer.lacks":     "Sin precio, y en ninguna de las sumas de abajo ({count}):",
	"offer.agree":     "Para guardar la oferta que aceptó el cliente: plashet quote JOB --agree 2026-06-02 --out FILE",
}
