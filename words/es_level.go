package words

// esLevel is enLevel in Spanish.
var esLevel = map[string]string{
	"level.value.finite":  "{where}: “{name}” no es un número que se pueda usar. Escríbalo otra vez.",
	"level.value.range":   "{where}: “{name}” es {found}; el límite de lo posible es {limit}. Revise la cifra y su unidad.",
	"level.missing":       "{where}: no se da “{name}”, y sin ello no se pueden calcular los niveles. Agréguelo.",
	"level.section.order": "{where}: paso {step} del costado del estanque (el primero es 0): “{name}” es {found}, y el paso anterior tiene {limit}. Un costado va hacia abajo y hacia adentro. Ponga los pasos en orden.",

	"levels.start.starves":   "En el primer arranque el agua no alcanza: faltan {missing:both}. Al final quedan {over:both} sobre el umbral, donde el skimmer necesita {needed:both}[: deja pasar solo {passes:both} de los {flow:both} que toma la bomba][: ya nada pasa por él, y a tubo, arroyos y pozas les faltan {unfilled:both} para llenarse]. La bóveda baja hasta que la bomba chupa aire y se ahoga[, a los {at} del arranque]. Esté ahí con una manguera en el primer arranque, y rellene hasta que los arroyos estén llenos.",
	"levels.restart.starves": "En cada arranque el agua no alcanza: faltan {missing:both}. Al final quedan {over:both} sobre el umbral, donde el skimmer necesita {needed:both}[: deja pasar solo {passes:both} de los {flow:both} que toma la bomba][: ya nada pasa por él, y a tubo, arroyos y pozas les faltan {unfilled:both} para llenarse]. La bóveda baja hasta que la bomba chupa aire y se ahoga[, a los {at} del arranque], lo que la desgasta. Rellene mientras trabaja, baje el umbral, haga más grande el estanque, o tome menos caudal.",
	"levels.start.empty":     "En el primer arranque tubo, arroyos y pozas toman más de lo que la bomba puede sacar del estanque: faltan {missing:both}, y quedan {depth:both} sobre el piso en que está. Entonces[, a los {at} del arranque,] la bomba chupa aire y se ahoga. Esté ahí con una manguera en el primer arranque, y rellene hasta que los arroyos estén llenos.",
	"levels.restart.empty":   "En cada arranque tubo, arroyos y pozas toman más de lo que la bomba puede sacar del estanque: faltan {missing:both}, y quedan {depth:both} sobre el piso en que está. Entonces[, a los {at} del arranque,] la bomba chupa aire y se ahoga, lo que la desgasta. Haga más grande el estanque, o más chicos los arroyos.",
	"levels.start.bare":      "En el primer arranque el estanque baja a los {needed:both} sobre el umbral que el skimmer necesita, y ni uno menos; la bóveda baja a {fall:both} bajo el umbral. Solo se pueden perder {spare:both} antes de que la bomba se ahogue. Esté ahí con una manguera en el primer arranque, y después rellene hasta la línea de agua.",
	"levels.restart.bare":    "En cada arranque el estanque baja a los {needed:both} sobre el umbral que el skimmer necesita, y ni uno menos; la bóveda baja a {fall:both} bajo el umbral. Solo se pueden perder {spare:both} antes de que la bomba se ahogue. Baje el umbral, haga más grande el estanque, o tome menos caudal.",
	"levels.start.reserve":   "Si nadie rellena después del primer arranque, quedan {over:both} sobre el umbral cuando se acaba la reserva de evaporación; el skimmer necesita {needed:both}, así que faltan {short:both}. Rellene hasta la línea de agua después del primer arranque.",
	"levels.run.reserve":     "Cuando se acaba la reserva de evaporación, quedan {over:both} sobre el umbral; el skimmer necesita {needed:both}, así que faltan {short:both}. Rellene antes, ponga llenado automático, o baje el umbral.",
	"levels.pump.low":        "Trabajando hay {depth:both} de agua en la bóveda; la ficha de la bomba pide {needed:both}, así que faltan {short:both}. Ponga la bomba más abajo, o haga más honda la bóveda.",
	"levels.pump.reserve":    "Cuando se acaba la reserva de evaporación, hay {depth:both} de agua en la bóveda; la ficha de la bomba pide {needed:both}, así que faltan {short:both}. Rellene antes, o ponga la bomba más abajo.",
	"levels.stop.spills":     "Después de un paro el agua llega a {level:both}; el borde está a {rim:both}. Queda {over:both} demasiado alta, y se derraman {spill:both}[, desde los {at} del paro]. Suba el borde, baje la línea de agua, o haga más grande el estanque.",
	"levels.stop.rain":       "Después de un paro quedan {room:both} bajo el borde; la lluvia de diseño sube el agua {rain:both}, y se derraman {spill:both}[, desde los {at} de que empieza]. Haga un rebosadero que lleve el agua lejos de la casa, o suba el borde.",
	"levels.valve.spills":    "Si la válvula check se atora abierta, un paro lleva el agua a {level:both}; el borde está a {rim:both}. Queda {over:both} demasiado alta, y se derraman {spill:both}[, desde los {at} del paro]. Deje más espacio bajo el borde, o haga un rebosadero.",
	"levels.valve.rain":      "Si la válvula check se atora abierta, quedan {room:both} bajo el borde después de un paro; la lluvia de diseño sube el agua {rain:both}, y se derraman {spill:both}. Haga un rebosadero que lleve el agua lejos de la casa.",
	"levels.sill.dry":        "El umbral está a {sill:both} y la línea de agua a {line:both}: el estanque nunca alimenta la bóveda. Ponga el umbral bajo la línea de agua.",
	"levels.line.over":       "La línea de agua está a {line:both}, sobre el borde a {rim:both}: el estanque se derrama. Suba el borde o baje la línea.",
	"levels.line.none":       "Ninguna línea de trabajo sirve: para alimentar la bomba debe estar a {low:both} bajo el borde o menos, para que un paro quede bajo el borde a {high:both} o más. Suba el borde, baje el umbral, o haga más grande el estanque.",
	"levels.rim.none":        "No se da el nivel del borde, así que no se sabe si el estanque se derrama después de un paro o con lluvia. Tome el nivel del punto más bajo de la orilla.",
	"levels.valve.none":      "No se da válvula check, ni en las líneas ni en la bóveda: en cada paro {back:both} regresan por la bomba a la bóveda, y cada arranque la llena otra vez. Ponga una donde la ficha de la bomba lo permita, o deje lugar para esa agua.",

	"design.vault.level":     "{where}: no se da su elevación, así que la bóveda queda fuera de los niveles de agua: no se revisa ni el skimmer ni el hondo mínimo sobre la bomba. Agréguela.",
	"design.vault.weirwidth": "{where}: no se da el ancho de la boca del skimmer, así que no se sabe si deja pasar el caudal de la bomba, y se toma que el estanque llega libre a la bóveda. Agréguelo.",
	"design.vault.sill":      "{where}: no se da el nivel del umbral del skimmer, así que no se sabe cuándo le corta el agua a la bomba, y se toma que el estanque llega libre a la bóveda. Agréguelo.",

	"assume.level.reserve": "No se da lo que se puede evaporar antes de que alguien rellene; se supuso {value:both}: dos días de un verano seco. Arroyos largos y cascadas altas pierden más.",
	"assume.level.rain":    "No se da lluvia de diseño; se supuso {value:both}, así que no se cuenta ningún aguacero. Lo usual es 1 a 2 in (25 a 50 mm).",
	"assume.pond.void":     "No se da la parte del volumen del estanque que es agua; se supuso {value}: sin piedra ni cajones adentro.",
	"assume.box.void":      "No se da la parte de una caja que es agua; se supuso {value}: sin grava ni material filtrante adentro.",
	"assume.box.inlet":     "No se da a qué altura entra el tubo a una caja; se supuso en su piso, de modo que la caja se vacía cuando nada sostiene la tubería.",
	"assume.reach.wetted":  "No se da la parte del ancho de un arroyo que lleva agua; se supuso {value}.",
	"assume.reach.holds":   "No se da lo que queda en un arroyo después de un paro; se supuso {value:both}: se seca y se llena en cada arranque.",
	"assume.pool.depth":    "Poza “{name}”: no se da su hondo; se supuso {value:both}, así que no toma agua en el primer arranque. Agréguelo: las pozas toman mucha.",
	"assume.vault.screen":  "No se da lo que baja el nivel al pasar filtro, red o rejilla; se supuso {value:both}. Uno sucio lo baja mucho más.",
	"assume.vault.open":    "La bóveda no tiene ni umbral ni vertedor; se supuso que el estanque le llega libre a cualquier nivel.",
	"design.box.joined":    "En cada paro, con la válvula check sosteniendo, {back:both} de la caja de “{name}” bajan por el tubo a la caja más baja de “{to}”, sobre su labio y al estanque: su agua baja {fall:both}, y cada arranque la llena otra vez. Esto se cuenta en los niveles. Donde deba quedar llena, ponga una válvula check en su ramal, donde el agua pueda quedarse sin congelarse, o meta su tubo por encima del agua.",

	"assume.run.full":   "No se sabe si el tubo que une cajas guarda aire en un punto alto, o se vacía él mismo cuando su extremo queda libre; se supuso que queda lleno. El aire rompería el sifón y dejaría más en la caja; a lo más se sumarían {value:both}, el agua del tubo hasta esa caja.",
	"assume.run.drains": "Línea “{name}”: no se dice si se vacía; se supuso que se vacía cuando nada la sostiene.",

	"assume.levels.pump.minimum": "No se da el hondo mínimo de agua de la bomba; se supuso que trabaja hasta el piso en que está. Mire la ficha del fabricante.",
}
