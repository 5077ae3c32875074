package words

// esTakeoff is enTakeoff in Spanish.
var esTakeoff = map[string]string{
	"assume.takeoff.ends":   "No se dice si los tramos de tubo tienen campana; se supusieron extremos lisos, con un cople entre tramos. Los tramos con campana no lo llevan.",
	"assume.takeoff.room":   "No se da el espacio para trabajar alrededor de la bóveda en su hoyo; se supuso {value} por lado, la tapa a nivel del suelo y los costados verticales. Un suelo que no se sostiene pide más.",
	"assume.takeoff.trench": "No se da la zanja del tubo; se supuso de {width} de ancho y {depth} de hondo a lo largo de todas las líneas, cada una en su propia zanja. Donde hiela, el tubo va más hondo o se vacía.",
	"takeoff.pool.sizes":    "Poza “{name}”: no se dan todos: largo, ancho y hondo, así que no se cuentan su membrana ni su excavación. Agréguelos.",
	"takeoff.falls":         "“{name}”: nada dice cuánto suman de alto sus caídas, así que no se cuenta la membrana que baja por ellas. Dé la cresta de su primer labio, o la caída de cada uno.",
	"takeoff.vault":         "No se dan todas las medidas de la bóveda, así que no se cuenta su hoyo. Agréguelas.",
	"takeoff.bed":           "La caja de arriba de “{name}” lleva piedra o filtro y se tomó como prefabricada: no se le cuenta membrana ni excavación. Si es un lecho en la tierra, diga que va forrado.",
	"assume.takeoff.soil":   "No se dice el suelo que se excava; se supuso {soil}, que se hincha hasta {value}.",
	"assume.takeoff.spare":  "No se dan conexiones de repuesto; se supuso {value}: lo que se rompe o se pierde ese día cuesta un viaje.",

	"takeoff.item.fitting":  "{name}[, {size}]",
	"takeoff.item.pipe":     "tubo {name}[, {size}]",
	"takeoff.item.cement":   "cemento solvente",
	"takeoff.item.primer":   "primer (limpiador)",
	"takeoff.item.tape":     "cinta selladora de rosca",
	"takeoff.item.liner":    "membrana, {place}: {length} x {width}",
	"takeoff.item.underlay": "geotextil bajo membrana, {place}: {length} x {width}",
	"takeoff.item.boulders": "rocas, {place}",
	"takeoff.item.gravel":   "grava, {place}",
	"takeoff.item.dig":      "excavación, medida en el terreno",
	"takeoff.item.soil":     "tierra sobrante, suelta",
	"takeoff.item.loads":    "viajes de camión de tierra sobrante",

	"takeoff.how.sticks": "[por el plan de corte {planned}; ][para el resto de las líneas, {run} puestos de punta a punta, {joined}; ][lo que el plan deja sirve para {rest} de eso; ]no va instalado: {waste}",

	"takeoff.book":           "No hay libro de reglas, así que no se listan cemento, cinta, membrana, piedra ni tierra.",
	"takeoff.value.finite":   "“{name}” no es un número que se pueda usar. Escríbalo otra vez.",
	"takeoff.value.range":    "“{name}” es {found}; el límite de lo posible es {limit}. Revise la cifra y su unidad.",
	"takeoff.sticks":         "Tubo {name}[, {size}]: los tramos y retazos suman {found}; las piezas necesitan {limit}. Planee los cortes otra vez.",
	"takeoff.joints":         "La tabla de uniones por cuarto de galón no llega a la medida {size}. Pregunte la cantidad de cemento donde lo compra.",
	"takeoff.thread":         "No hay rosca {thread} de medida {size} en el libro, así que no se lista cinta para ella. Revise la medida.",
	"takeoff.soil":           "El suelo “{soil}” no está en la tabla de hinchamiento, así que no se conoce su volumen suelto. Nómbrelo como lo hace la tabla.",
	"takeoff.price.currency": "El precio de “{name}” está en “{currency}”; la lista está en “{wanted}”. Délo en la moneda de la lista.",
	"takeoff.price.unit":     "El precio de “{name}” es por una unidad en la que no se vende. Dé el precio por la unidad que muestra la lista.",
	"takeoff.price.twice":    "Hay dos precios para “{name}[, {size}]”; cuenta el primero. Quite uno.",

	"takeoff.rules.differ": "{material}, {place}: las reglas del oficio dan de {low} a {high}; se apartan {found}. Cotice las dos, y pregunte en el patio de piedra.",
	"takeoff.price.unused": "El precio de “{name}[, {size}]” no pertenece a nada de la lista ni de las tablas de tubo y conexiones. Revise nombre y medida[: {near}].",
	"takeoff.unpriced":     "{found} de {of} artículos no {found:tiene|tienen} precio: la suma no es el total.",
	"takeoff.soil.short":   "El montículo lleva {limit} de tierra, medida en el terreno; los hoyos dan {found}. Traiga tierra, o hágalo más bajo.",

	"takeoff.existing": "{where}: ya {count:está|están} y se {count:queda|quedan}; nada de eso entra en la lista, en la excavación ni en el precio.",

	"design.material.size": "{where}: la línea tiene “{fitting}” en medida {run}, el armado en medida {assembly}. Se toma como una y la misma: se lista la del armado, pero el caudal se calcula con la de la línea. Haga que coincidan; lo que queda más allá de la pared en otra medida lleva su propia línea.",

	"takeoff.caution.services": "Peligro: antes de que alguien excave, haga localizar y marcar las líneas enterradas de luz, gas, agua y teléfono; en muchos lugares la ley lo pide. Excave a mano cerca de una marca.",
	"takeoff.caution.cavein":   "Peligro: los costados de un hoyo se caen sin aviso y entierran gente, también en hoyos poco hondos. Una persona competente revisa el terreno antes de cada turno y después de la lluvia; dé talud o apuntale los costados como dice la ley local; mantenga la tierra sacada y las máquinas lejos de la orilla; nadie trabaja solo adentro.",
	"takeoff.caution.openhole": "Cerque o tape el hoyo abierto siempre que no haya nadie junto: la gente se cae, y se llena de agua.",
	"takeoff.caution.lift":     "Peligro: las piedras aplastan. Muévalas con máquina, con equipo calificado para el peso, a cargo de una persona competente; nadie se para debajo ni cuesta abajo de una piedra. Ningún peso es seguro de levantar a mano para todos: donde una piedra se levanta a mano, siga las reglas locales.",
	"takeoff.caution.tip":      "Manténgase lejos cuando se vuelca una carga, y vuélquela lejos de la orilla del hoyo.",
	"takeoff.caution.solvent":  "El primer y el cemento se incendian y hacen daño: guárdelos cerrados, frescos, lejos de la llama y de los niños; sus etiquetas y hojas de seguridad van primero.",

	"assume.takeoff.liner.overlap":   "No se da la membrana más allá de la orilla; se supuso {value} por lado. Una membrana cortada de menos es una membrana nueva.",
	"assume.takeoff.liner.bank":      "No se da hasta dónde sube la membrana por los costados de un arroyo; se supuso {value} por lado, y detrás de la caída más alta, y un lecho igual de hondo. Debe pasar por detrás de toda piedra que se moja. Un lecho hecho sobre relleno pide menos excavación.",
	"assume.takeoff.underlay.layers": "No se dan las capas de geotextil; se supuso {value}. Un suelo filoso pide otra también sobre la membrana.",
	"assume.takeoff.can":             "No se da el tamaño de la lata; se supuso {value} para cemento y para primer.",
}
