package words

// esOffer is enOffer in Spanish.
var esOffer = map[string]string{
	"quote.currency":      "El importe de “{name}” está en “{currency}”; el trabajo está en “{wanted}”. Délo en la moneda del trabajo.",
	"quote.currency.none": "El trabajo no nombra moneda, así que nada lleva precio. Póngala, como USD o EUR, en los datos del sitio.",
	"quote.negative":      "El importe de “{name}” es menor que cero, lo que no es un costo. Escríbalo sin el signo; lo que se rebaja va como descuento.",
	"quote.share":         "“{name}” es {share}, que no es parte de un importe. Escriba un porcentaje de 0 a 100, como “5 %”.",
	"quote.margin":        "El margen sobre “{group}” es {share}: del precio no quedaría nada para el costo. Escriba menos de 100 %, o un sobreprecio.",
	"quote.both":          "“{group}” tiene sobreprecio y margen; uno de los dos debe quitarse. El sobreprecio se pone sobre el costo; el margen es lo que queda del precio.",
	"quote.stages":        "Anticipo y etapas suman {over} más que el total de {total}. Baje una parte.",

	"quote.loss":     "El precio antes de impuesto, {price}, es menor que el costo de {cost}: el trabajo se haría con pérdida.",
	"quote.noprofit": "No hay sobreprecio ni margen para “{group}”: se ofrece al costo.",
	"quote.partial":  "{lines} {lines:renglón no tiene importe y queda|renglones no tienen importe y quedan} fuera de la suma.",

	"offer.option.change": "La opción “{name}” pone el campo “{path}”, que así no se puede poner. Escriba la ruta como la nombran los errores del trabajo, como “/use”.",
	"offer.labour.unit":   "Las horas de “{task}” son por “{found}”, en lo que esto no se cuenta. Escriba un largo para tubo, un área para membrana, un volumen para excavar, un peso para piedra, como “10 ft”.",
	"offer.labour.need":   "Las horas de “{task}” son por cada {per}, y no se pudo calcular cuántos hay; corrija lo que dice el diseño, o dé las horas del trabajo.",
	"offer.profit.twice":  "“{group}” tiene sobreprecio o margen dos veces; cuenta el primero.",
	"offer.agreed.option": "La oferta acordada era por la opción “{name}”, que ya no está en el trabajo.",
	"offer.unpriced":      "{count} {count:artículo|artículos} sin precio, {count:que es|el primero} “{first}”: {count:queda|quedan} fuera de la suma.",
	"offer.changed":       "El trabajo no es el acordado: {by}, con lo que son {total}. Haga aceptar la orden de cambio antes de cambiar la obra.",
	"assume.offer.high":   "Dos reglas del oficio difieren en una cantidad; se ofrece la más alta, {high}. Con la más baja serían {low}.",
}
