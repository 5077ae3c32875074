package words

// esMotion is enMotion in Spanish.
var esMotion = map[string]string{
	"motion.value.finite": "{where}: “{name}” no es un número que se pueda usar. Escríbalo otra vez.",
	"motion.value.range":  "{where}: “{name}” es {found}; el límite de lo posible es {limit}. Revise la cifra y su unidad.",
	"motion.missing":      "{where}: no se da “{name}”, y sin ello no se pueden seguir arranque y paro. Agréguelo.",
	"motion.supply":       "{where}: a un nivel al que llega el agua en arranque o paro, bomba y tubo no tienen caudal estable, así que no se dicen arranque y paro. Mire la curva de la bomba y las líneas.",
	"motion.steps":        "{where}: arranque y paro no se pudieron seguir hasta el final; los niveles en reposo y trabajando valen. Busque una caja, poza o bóveda de tamaño casi nulo.",

	"design.motion.first.dry":      "En el primer arranque la bóveda baja más rápido de lo que el estanque la alimenta: la bomba chupa aire a los {at} del arranque, por {lasts}. Al final el agua alcanza. Esté ahí con una manguera en el primer arranque, y llene antes la bóveda y la caja de arriba.",
	"design.motion.restart.dry":    "En cada arranque la bóveda baja más rápido de lo que el estanque la alimenta: la bomba chupa aire a los {at} del arranque, por {lasts}, lo que la desgasta. Al final el agua alcanza. Ensanche la boca del skimmer, baje su umbral, haga más grande la bóveda, o arranque la bomba despacio.",
	"design.motion.cut.spills":     "Si se va la luz {after} después del primer arranque, el estanque llega a su borde {at} más tarde y se derraman {spill:both}. Deje más espacio bajo el borde, o haga un rebosadero que lleve el agua lejos de la casa.",
	"design.motion.rain.spills":    "Con {rain:both} de lluvia en {over} después de un paro, sobre el estanque y sus arroyos y pozas, el estanque llega a su borde {at} después de que empieza la lluvia, y se derraman {spill:both}. Haga un rebosadero que lleve el agua lejos de la casa, o suba el borde.",
	"design.motion.first.spills":   "En el primer arranque el estanque llega a su borde a los {at} del arranque, y se derraman {spill:both}: se rellena más de lo que toman los arroyos. Ponga más bajo el flotador.",
	"design.motion.restart.spills": "En cada arranque el estanque llega a su borde a los {at} del arranque, y se derraman {spill:both}: se rellena más de lo que toman los arroyos. Ponga más bajo el flotador.",
	"design.motion.stop.spills":    "Después de un paro el estanque llega a su borde {at} más tarde, y se derraman {spill:both} en el camino, aunque quedaría en reposo más abajo. Ponga más bajo un flotador, suba el borde, o baje la línea de agua.",
	"design.motion.leak.spills":    "Si la válvula check tiene fuga, el estanque llega a su borde {at} después de un paro, y se derraman {spill:both}. Ponga más bajo un flotador, deje más espacio bajo el borde, o haga un rebosadero que lleve el agua lejos de la casa.",
	"design.motion.open.spills":    "Si la válvula check se atora abierta, el estanque llega a su borde {at} después de un paro, y se derraman {spill:both}. Ponga más bajo un flotador, deje más espacio bajo el borde, o haga un rebosadero que lleve el agua lejos de la casa.",
	"design.motion.pump.spills":    "Cuando la bomba “{name}” se para y las otras siguen, el estanque llega a su borde {at} más tarde, y se derraman {spill:both}. Deje más espacio bajo el borde, o haga un rebosadero que lleve el agua lejos de la casa.",
	"design.motion.slow":           "Un arranque no termina {after} después de empezar: {flow:both} tardan más en llenar tubo, cajas, arroyos y pozas. Vigile la bóveda hasta que el agua regrese al estanque sobre el último labio, con una manguera a la mano.",
	"design.motion.slowhead":       "Un arranque no termina {after} después de empezar: la bomba eleva casi hasta donde puede, y da solo {flow:both}. Falta carga, no agua. Tome una bomba con más carga, o tubo más grande.",
	"design.motion.shut":           "Si la válvula check[ de “{run}”] se atora cerrada, la bomba {name} trabaja y no mueve nada: no pasa agua por ningún labio[ más que los {left:both} de las otras bombas]. Empuja con {head:both} contra la válvula[, y todos sus {watts} calientan el agua que la rodea: un litro hierve a los {boils}, o un poco después]. Eso echa a perder el sello y dispara o quema el motor. Donde no llega agua uno o dos minutos después de que el tubo debería estar lleno, apague en el interruptor y deje enfriar antes de que alguien abra la tuerca unión: el agua detrás puede estar caliente y con presión. Después limpie la válvula o cámbiela.",
	"design.motion.shutbranch":     "Si la válvula check de “{run}” se atora cerrada,[ “{feed}” no recibe agua, y] las otras reciben juntas {left:both}. Apague antes de que alguien abra la tubería; después limpie la válvula o cámbiela.",
	"design.motion.pump.open":      "Si la válvula check del ramal de la bomba “{name}” se atora abierta, {back:both} regresan por esa bomba mientras está parada y las otras trabajan, y la giran al revés; quedan {left:both} para todas las alimentaciones juntas. No la prenda mientras gira al revés. Cierre una válvula de su ramal, luego limpie la válvula check o cámbiela.",
	"design.motion.leak":           "Con una válvula check que tiene fuga, el agua no se aquieta {after} después de un paro: para entonces han regresado {back:both} por ella, y lo que hay detrás de la válvula sigue llegando. Mire los niveles a la mañana siguiente: tubo y caja pueden estar vacíos, y el arranque es entonces como uno sin válvula.",

	"assume.motion.runup": "No se da el tiempo en que la bomba toma velocidad; se supuso {value}. Un arranque suave tarda más.",
	"assume.motion.pump":  "No se da qué tanto le cuesta al agua regresar por una bomba parada; se supuso K = {value} sobre la velocidad en el tubo junto a la bomba. Cambia qué tan rápido regresa el agua, no cuánta.",
	"assume.motion.leak":  "No se da lo que deja abierto una válvula check gastada; se supuso {value} de su paso. Un grano de arena o una ramita deja mucho más.",
	"assume.motion.rain":  "No se da en cuánto tiempo cae la lluvia de diseño; se supuso {value}, un aguacero.",
	"assume.motion.pool":  "La poza “{name}” tiene fuga, y no se dice qué tan rápida; se supuso que se vacía en {value}.",
}
