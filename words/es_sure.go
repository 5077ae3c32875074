package words

// esSure is enSure in Spanish.
var esSure = map[string]string{
	"print.head.sure":   "Qué tan seguro: 90 de 100 quedan entre",
	"print.sure.draws":  "por {count} sorteos de lo que puede desviarse, cada uno alrededor de lo leído; vea abajo lo supuesto, y docs/bands.md",
	"print.sure.why":    "la duda viene de",
	"print.sure.lessen": "para estar más seguro, primero lo que más cuenta:",
	"print.sure.motion": "arranque y paro, niveles desde la línea de agua, por {count} sorteos: un extremo vale a un décimo del ancho; sin calibrar",
	"print.sure.moved":  "{case}, {what}: {value} ({low} a {high})",
	"print.sure.part":   "{what}: es {percent} de la duda sobre “{figure}”",

	"print.head.levels":     "Niveles de agua",
	"print.levels.way":      "agua en camino {transit}; un rearranque toma {draw}",
	"print.levels.pond":     "el estanque",
	"print.levels.rim":      "bajo el borde",
	"print.levels.sill":     "sobre el umbral",
	"print.levels.floor":    "sobre el piso de la bomba",
	"print.levels.needs":    "pide",
	"print.levels.starved":  "{moment}: no dura: {passes} de {drawn} llegan a la bomba, faltan {missing} de agua",
	"print.head.motion":     "En arranque y paro",
	"print.motion.lowest":   "lo más bajo en la bóveda",
	"print.motion.highest":  "lo más alto del estanque",
	"print.motion.still":    "quieto, parejo",
	"print.motion.back":     "regresó",
	"print.motion.restless": "no en {time}",
	"print.motion.after":    "después de {time}",
	"print.motion.dry":      "; chupa aire después de {time}",
	"print.motion.over":     "; {water} sobre el borde",
	"print.motion.foot":     "niveles desde la línea de agua en reposo; quieto, parejo: el estanque se mueve menos de 1 mm en 10 minutos, la bóveda menos de 1 mm por minuto",
	"print.motion.once":     "{level} en seguida",
	"print.motion.when":     "{level} ({time})",
}
