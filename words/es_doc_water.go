package words

// esDocWater has what the fields of pond, watercourses and what the water runs over are for, by the English.
var esDocWater = map[string]string{
	"the shape at the water line": "la forma en la línea de agua",

	"the side from the edge inward, downward: each step gives the depth below the water line and how far in from the outline it is": "el costado desde la orilla hacia adentro y abajo: cada paso da el hondo bajo la línea de agua y cuánto queda adentro del contorno",

	"greatest depth, where no section is given": "hondo máximo, donde no se da perfil",

	"elevation of the water line at rest": "elevación de la línea de agua en reposo",

	"elevation of the lowest point of the edge, or of the overflow when there is one": "elevación del punto más bajo de la orilla, o del rebosadero si lo hay",

	"part of the volume that is water; below 100 percent for a basin full of stone or crates": "parte del volumen que es agua; menos de 100 por ciento en un vaso lleno de piedra o cajones",

	"volume by meter or timed fill; beats the geometry": "volumen por medidor o llenado con reloj; va antes que la geometría",

	"level to which the pond is topped up while running, if that is the habit": "nivel al que se rellena el estanque trabajando, si esa es la costumbre",

	"level of the pond at which its float valve shuts, where it has one": "nivel del estanque al que cierra su flotador, si lo tiene",

	"flow of that float valve when it is all open": "caudal de ese flotador abierto del todo",

	"kind of outline": "clase de contorno",

	"longer size of a rectangle or ellipse, or the diameter of a circle": "medida larga de un rectángulo o elipse, o el diámetro de un círculo",

	"shorter size of a rectangle or ellipse": "medida corta de un rectángulo o elipse",

	"corners in order round the outline": "esquinas en orden alrededor del contorno",

	"taped offsets to both sides of a baseline laid along the pond": "medidas de cinta a los dos lados de una línea base tendida a lo largo del estanque",

	"the outline is drawn as a smooth curve through the points or offsets": "el contorno se traza como curva suave por los puntos o medidas",

	"measured surface area, when it is known better than the shape gives it": "superficie medida, si se conoce mejor de lo que la da la forma",

	"distance along": "distancia a lo largo",

	"distance across": "distancia a lo ancho",

	"distance along the baseline": "distancia a lo largo de la línea base",

	"to the edge on the left": "hasta la orilla de la izquierda",

	"to the edge on the right": "hasta la orilla de la derecha",

	"below the water line": "debajo de la línea de agua",

	"in from the outline": "hacia adentro desde el contorno",

	"name of the feed": "nombre de la alimentación",

	"the spill box, header or gravel bed at the top": "la caja de derrame, el cabezal o el lecho de grava de arriba",

	"lips, reaches and pools in order, downward": "labios, arroyos y pozas en orden, hacia abajo",

	"flow wanted in this feed, where no lip tells it": "caudal pedido en esta alimentación, donde ningún labio lo dice",

	"inner length": "largo interior",

	"inner width": "ancho interior",

	"from its floor up to its lip": "desde su piso hasta su labio",

	"centre of the inlet above the box floor; above the lip when it pours in from over the water": "centro de la entrada sobre el piso de la caja; arriba del labio si cae desde encima del agua",

	"part of the volume that is water (gravel bed, filter media)": "parte del volumen que es agua (lecho de grava, material filtrante)",

	"water up to the lip, when known; beats the sizes": "agua hasta el labio, si se conoce; va antes que las medidas",

	"it is a bed dug in the ground and lined, no ready-made box": "es un lecho excavado y con membrana, no una caja prefabricada",

	"loss coefficient of the outlet into the box on the pipe's velocity; 1 for all of it": "coeficiente de pérdida de la salida a la caja, sobre la velocidad del tubo; 1 es toda",

	"an edge the water falls over": "una orilla por la que cae el agua",

	"a sloping length of stream or rill": "un largo inclinado de arroyo o canalito",

	"a pool that stays full up to the lip below it": "una poza que queda llena hasta el labio de abajo",

	"name of the lip": "nombre del labio",

	"elevation of the crest": "elevación de la cresta",

	"clear width of the crest": "ancho libre de la cresta",

	"thin: a plate or blade; broad: a flat sill long in the flow; stone: rounded or rough stone": "thin (delgado): placa u hoja; broad (ancho): umbral plano largo en el flujo; stone (piedra): piedra redondeada o áspera",

	"flow wanted over this lip": "caudal pedido sobre este labio",

	"sheet depth wanted": "lámina pedida",

	"where that depth is meant: upstream (head above the crest in still water), critical (2/3 of it, on the crest), edge (thickness as it leaves)": "dónde se entiende esa lámina: upstream (carga aguas arriba de la cresta en agua quieta), critical (2/3 de ella, en la cresta), edge (espesor al salir)",

	"one end of the crest above the other": "un extremo de la cresta sobre el otro",

	"fall of the water below the crest, for sound and splash": "caída del agua bajo la cresta, para el sonido y el salpique",

	"own weir coefficient C in Q = C L H^1.5 (metre, second)": "coeficiente de vertedor propio C en Q = C L H^1.5 (metro, segundo)",

	"name of the reach": "nombre del arroyo",

	"length along the water": "largo a lo largo del agua",

	"width between the edges": "ancho entre las orillas",

	"fall over length": "caída entre largo",

	"part of the width that carries water": "parte del ancho que lleva agua",

	"Manning's roughness": "rugosidad de Manning",

	"running depth as measured; beats Manning's formula": "profundidad medida corriendo; va antes que la fórmula de Manning",

	"mean depth that stays in the reach when the pump is off": "profundidad media que queda en el arroyo con la bomba apagada",

	"name of the pool": "nombre de la poza",

	"length": "largo",

	"width": "ancho",

	"surface area; beats length and width": "superficie; va antes que largo y ancho",

	"mean depth up to the lip, filled once at first start": "profundidad media hasta el labio, llenada una vez en el primer arranque",

	"the pool empties when the pump is off, so it must be filled at every start": "la poza se vacía con la bomba apagada, así que hay que llenarla en cada arranque",
}
