package words

// esNetwork is enNetwork in Spanish.
var esNetwork = map[string]string{
	"network.link.ends":     "El tubo “{link}” termina donde no hay nada. Revise los nombres donde empieza y termina su línea.",
	"network.node.level":    "“{node}”: su nivel o demanda no es un número que se pueda usar. Escríbalo otra vez.",
	"network.node.kind":     "“{node}” no es de ninguna clase conocida, así que quedó fuera. Revise qué es.",
	"network.law":           "La resistencia o curva de una parte no se pudo usar: no da número, o baja al crecer el caudal. Revise diámetro, largo, rugosidad y la curva de la bomba.",
	"network.link.noLoss":   "El tubo “{link}” cierra un circuito que no tiene ninguna resistencia, así que no se puede decir su caudal. Dé a cada línea del circuito su largo y medida de tubo, o quite esta.",
	"network.levels.noPipe": "“{node}” y “{other}” son aguas abiertas unidas por “{link}”, que no tiene resistencia: cualquier caudal valdría. Déle su largo y medida de tubo, o haga de las dos una sola agua.",
	"network.levels.differ": "“{node}” está a {level} y “{other}” a {found}, pero “{link}” los une sin ninguna resistencia, donde dos niveles no pueden diferir. Déle su largo y medida de tubo, o mida otra vez los niveles.",
	"network.lip.law":       "“{node}”: el labio no tiene fórmula para el agua que le pasa. Dé su ancho y clase.",
	"network.empty":         "No hay tubos, o nada que unan. Agregue las líneas de la bomba a los cursos de agua.",
	"network.balance.tree":  "El tubo “{link}” cierra un circuito, trae una segunda alimentación, sigue más allá de una salida, o tiene una bomba por la que no pasa toda el agua. El reparto con válvulas solo se calcula donde cada salida tiene un camino desde la bomba: cambie eso, o ajuste las válvulas a ojo.",
	"network.balance.fed":   "“{node}”: aquí se pide agua, pero ningún camino abierto llega. Revise válvulas cerradas y las flechas de las válvulas check del camino.",
	"network.balance.want":  "Los caudales pedidos no concuerdan: uno es menor que cero o no es número, no está en ninguna salida o está dos veces en una, o falta en una salida. Dé a cada salida un caudal.",
	"network.balance.valve": "La válvula de “{node}” está en el tubo “{link}”, que lleva a otras salidas, o no tiene diámetro. Ponga una válvula en el ramal que alimenta solo esta salida.",

	"network.balance.ways": "Varios tubos llegan a “{node}”, así que ninguna válvula sola fija lo que recibe, y no se calcula cómo reparten las válvulas. Junte los tubos antes, o ajuste sus válvulas con cubeta y reloj.",

	"network.outlet.dry":    "“{node}” no recibe agua: la bomba no le llega. Tome una bomba con más carga, o tubo más grande.",
	"network.link.held":     "La válvula check de “{link}” se mantiene cerrada contra el flujo. Revise su flecha: apunta alejándose de la bomba.",
	"network.pump.stalled":  "La bomba de “{link}” no entrega nada: sin caudal no da más carga que la que debe elevar. Tome una bomba con más carga. No la deje trabajar así: se sobrecalienta.",
	"network.pump.deadHead": "La bomba de “{link}” empuja contra una parte cerrada de la tubería. Abra una válvula. No la deje trabajar así: se sobrecalienta.",
	"network.link.dead":     "El tubo “{link}” no lleva a ninguna parte: no corre agua en él. Únalo a una salida, o quítelo.",
	"network.link.opposed":  "En “{link}” dos partes de un solo sentido se enfrentan: no pasa agua. Voltee una.",
	"network.node.cut":      "“{node}”: ningún tubo abierto lo une a un nivel o una salida. Revise válvulas y los nombres de las líneas.",
	"network.node.loose":    "“{node}”: solo se conocen límites de su carga, porque a cada lado hay partes cerradas o de un solo sentido.",
	"network.node.relative": "“{node}”: su carga se conoce solo contra sus vecinos, porque no se une a ningún nivel. Dé un nivel al que esté unido.",
	"network.link.beyond":   "Una parte de “{link}” trabaja fuera de sus datos, así que su cifra es solo un límite. Consiga del fabricante su curva completa, o elija otra.",
	"network.demand.supply": "Se pide agua que nada puede surtir, o entra agua que no puede salir. Revise las líneas y los caudales pedidos.",
	"network.flow.limit":    "Aquí nada limita el caudal. Dé a las líneas su largo y medida de tubo, y a la bomba su curva.",
	"network.iterations":    "La búsqueda de los caudales paró antes de que concordaran. No se fíe de estos caudales: revise la curva de la bomba y las medidas de tubo.",
	"network.law.nan":       "La curva o resistencia de una parte dio un valor que no es número. Revise las cifras de bomba y tubo.",
	"network.several":       "La curva de la bomba o una parte de “{link}” sube donde debería bajar, así que también son posibles otros caudales. Lea otra vez la curva.",

	"network.several.state":    "La bomba de “{link}” puede trabajar estable a {found}, elevando {head}. También puede trabajar a otros caudales: cuál llega depende de cómo arranca. Elija una bomba cuya curva baje todo el camino, o estrangule hasta que quede un solo caudal.",
	"network.several.unstable": "A {found} y {head} la bomba de “{link}” está en equilibrio pero no se queda: pasa sola a más o menos caudal.",
	"network.several.stands":   "La bomba de “{link}” también puede quedarse contra {head} y no entregar nada tras un arranque con tubos llenos. No la deje trabajar así: se sobrecalienta.",
	"network.several.open":     "Entre {low} y {high} la bomba de “{link}” da casi justo lo que piden los tubos, así que ahí su caudal puede vagar. Estrangule o elija otra bomba.",
	"network.several.sample":   "La bomba de “{link}” puede tener caudales estables que no se hallaron, porque más de una curva sube donde debería bajar. Lea otra vez las curvas.",
}
