package words

// esGuide is enGuide in Spanish.
var esGuide = map[string]string{
	"app.guide.pond": "El estanque", "app.guide.fall": "La cascada", "app.guide.pipe": "El tubo hasta ella", "app.guide.pump": "La bomba", "app.guide.vault": "La bóveda",
	"app.guide.hole": "El hoyo en la bóveda", "app.guide.stands": "Cómo se para la bomba", "app.guide.layout": "Un trazo para la bóveda", "app.guide.sticks": "El tubo que compra",

	"app.guide.lead.pond":   "Su medida en la línea de agua, y cuánto lugar hay sobre el agua antes de que se derrame.",
	"app.guide.lead.fall":   "El borde por donde cae el agua. El caudal que quiere decide qué bomba alcanza.",
	"app.guide.lead.pipe":   "De la bomba a la cascada, como va a quedar. Los codos y válvulas fuera de la bóveda se agregan después, en la página Tubo.",
	"app.guide.lead.pump":   "Caudal y carga de la gráfica del fabricante: dos puntos por lo menos, mejor seis. De ahí sale el caudal en la cascada.",
	"app.guide.lead.vault":  "La caja donde se para la bomba. Mídala por dentro.",
	"app.guide.lead.hole":   "Por dónde sale el tubo de la bóveda. Párese enfrente, como muestra el dibujo, y mida al centro del hoyo.",
	"app.guide.lead.stands": "El lugar que ocupa la bomba, y dónde tiene la salida. Póngala como va a quedar y mida desde su lado izquierdo, su frente y sus patas.",
	"app.guide.lead.layout": "El programa busca las conexiones y los cortes con que esta bomba cabe en esta bóveda, y muestra los mejores uno al lado del otro. Usted guarda uno.",
	"app.guide.lead.sticks": "El largo en que se vende el tubo, para acomodar los cortes con el menor desperdicio.",

	"app.guide.of": "Paso {number} de {of} hasta la lista de cortes", "app.guide.go": "Lo que sigue: {what}", "app.guide.do": "Guardar y seguir", "app.guide.later": "Dejarlo para después", "app.guide.steps": "Todos los pasos",
	"app.guide.unfit": "Guardado, pero lo marcado abajo no encaja o no se conoce. Corríjalo aquí, o siga y arréglelo después.", "app.guide.missing": "Esto todavía hace falta aquí.", "app.guide.given": "dado", "app.guide.curve": "Puntos de la curva", "app.guide.point": "{what} {number} ({unit})",
	"app.guide.shelf": "Tomar una bomba del estante", "app.guide.picture": "Leer una curva de una foto", "app.guide.seek": "Buscar trazos", "app.guide.compare": "Ver los trazos encontrados",
	"app.guide.nocuts": "Todavía no hay nada que cortar. Las piezas salen cuando se guarda un trazo para la bóveda y se da el largo del tubo que compra.",
	"app.guide.plan":   "Vista desde arriba", "app.guide.side": "Vista de frente", "app.guide.along": "a lo largo", "app.guide.height": "alto", "app.guide.length": "largo", "app.guide.width": "ancho",

	"app.guide.name.fall": "cascada", "app.guide.name.run": "principal", "app.guide.name.stands": "sobre sus patas",

	"app.ask.units": "Unidades", "app.askhint.units": "De la respuesta, y de un número escrito sin unidad.", "app.ask.name": "Cómo le dice la cuadrilla al trabajo", "app.ask.place": "Dónde está",
	"app.ask.shape": "Forma del estanque", "app.askhint.shape": "Para una forma libre tome elipse por ahora; en la página Estanque la puede dibujar.",
	"app.ask.length": "Largo en la línea de agua, o el diámetro", "app.ask.width": "Ancho en la línea de agua", "app.askhint.width": "No para un círculo.",
	"app.ask.depth": "Hondo en el punto más hondo", "app.ask.rim": "De la línea de agua hasta el punto más bajo del borde",
	"app.ask.lipwidth": "Ancho libre del labio", "app.ask.lipheight": "De la línea de agua del estanque hasta el labio", "app.ask.flow": "Caudal que quiere sobre él",
	"app.ask.pipekind": "Clase de tubo", "app.ask.pipesize": "Medida de tubo", "app.ask.pipelength": "Largo de tubo de la bomba al labio",
	"app.ask.pname": "Cómo le dice a la bomba", "app.ask.cflow": "Caudal", "app.ask.chead": "Carga",
	"app.ask.vshape": "Forma de la bóveda", "app.ask.vlength": "Por dentro, de izquierda a derecha, o el diámetro", "app.ask.vwidth": "Por dentro, del frente al fondo", "app.askhint.vwidth": "No para una bóveda redonda.",
	"app.ask.vdepth": "Por dentro, del piso a la cara de abajo de la tapa", "app.ask.vfloor": "De la línea de agua del estanque al piso de la bóveda", "app.ask.vsill": "De la línea de agua al umbral", "app.askhint.vsill": "El borde por donde el estanque entra a la bóveda.",
	"app.ask.vweir": "Ancho de ese borde",
	"app.ask.hwall": "Pared en que está", "app.ask.halong": "A lo largo de esa pared hasta el centro del hoyo", "app.askhint.halong": "Desde la pared izquierda si está en el frente o al fondo; desde la pared del frente si está a la izquierda o a la derecha.",
	"app.ask.hheight": "Del piso al centro del hoyo",
	"app.ask.psize":   "Medida de la salida de la bomba", "app.ask.pthread": "Cómo conecta la salida", "app.ask.plength": "La bomba, de izquierda a derecha", "app.ask.pwidth": "La bomba, del frente al fondo", "app.ask.pheight": "La bomba, de las patas a lo más alto",
	"app.ask.ppoints": "La salida mira", "app.ask.px": "Del lado izquierdo de la bomba al centro de la salida", "app.ask.py": "Del frente de la bomba al centro de la salida", "app.ask.pz": "De las patas al centro de la salida",
	"app.askhint.pz": "Si la salida mira hacia arriba: hasta su cara.",
	"app.ask.skind":  "Clase de tubo", "app.ask.ssize": "Medida de tubo", "app.ask.slength": "Largo de un tramo entero",
}
