package words

// esDoc has what the fields of the job document are for, by the English.
var esDoc = map[string]string{
	"of a hose: the angle by which it bends; straight when empty":                      "de una manguera: el ángulo que se dobla; recta si queda vacío",
	"of a hose: from where the lines of its two ends meet to its end towards the pump": "de una manguera: de donde se cruzan las líneas de sus dos puntas a su punta hacia la bomba",
	"of a hose: from there to its end towards the wall":                                "de una manguera: de ahí a su punta hacia la pared",
	"the flexible pipe that a short hose next to the pump is cut from":                 "el tubo flexible del que se corta una manguera corta junto a la bomba",
	"kind of flexible pipe; flexible PVC when empty":                                   "tipo de tubo flexible; PVC flexible si queda vacío",
	"least radius that it may be bent to, measured to its middle, by its maker's sheet (one that measures to the inside: add half its outside diameter); five times its outside diameter when empty": "radio mínimo al que se puede doblar, medido a su centro, según la hoja del fabricante (si ella mide a la parte de adentro: sume la mitad de su diámetro exterior); cinco veces su diámetro exterior si queda vacío",
	"how much of it stays straight at least beyond each socket; its outside diameter when empty":                                                                                                     "cuánto queda recto por lo menos fuera de cada campana; su diámetro exterior si queda vacío",
	"longest piece of it; 3 ft, or 900 mm in a metric job, when empty":                                                                                                                               "la pieza más larga; 3 ft, o 900 mm en un trabajo métrico, si queda vacío",
	"a layout may have one short hose, next to the pump":                                                                                                                                             "un trazo puede tener una manguera corta, junto a la bomba",

	"\"pump\", the name of a further pump, or the name of a junction": "\"pump\", el nombre de una bomba adicional, o el nombre de un entronque",
	"Hazen-Williams C, for a pipe that is known only by it":           "C de Hazen-Williams, para un tubo del que solo se conoce ella",

	"ISO 4217 code":              "código ISO 4217",
	"Manning's roughness":        "rugosidad de Manning",
	"NPSH required at that flow": "NPSH requerida a ese caudal",

	"a day's mean weather in the hottest weeks, for what evaporates": "el clima medio de un día en las semanas más calurosas, para lo que se evapora",

	"a layout may use only the fittings listed here, and pipe that can be cut from the offcuts and counted sticks": "un trazo solo puede usar las conexiones listadas aquí, y tubo que salga de los retazos y tramos contados",

	"a layout without a check valve will do": "sirve un trazo sin válvula check",

	"a layout without a union will do: the pump then comes out with the saw only": "sirve un trazo sin tuerca unión: la bomba sale entonces solo con sierra",
	"a note for the client, printed on the offer and on the care sheet":           "una nota para el cliente, impresa en la oferta y en la hoja de cuidado",
	"a pool that stays full up to the lip below it":                               "una poza que queda llena hasta el labio de abajo",
	"a sloping length of stream or rill":                                          "un largo inclinado de arroyo o canalito",
	"absolute roughness; beats the table":                                         "rugosidad absoluta; va antes que la tabla",

	"along the length": "a lo largo",
	"along the width":  "a lo ancho",

	"amount": "importe",

	"an arrow that points against the flow (as found in an old assembly)": "una flecha que apunta contra el flujo (como se halla en un armado viejo)",

	"an edge the water falls over": "una orilla por la que cae el agua",

	"an elbow's outlet seen along the flow into it: 0 is up (or to the back wall when the inlet is upright), clockwise":               "la salida de un codo vista con el flujo que le entra: 0 es arriba (o a la pared de atrás si la entrada es vertical), con el reloj",
	"anything worth knowing, for the crew; it stands on no sheet that the client gets. The demo jobs say here that they are invented": "lo que valga la pena saber, para la cuadrilla; no sale en ninguna hoja del cliente. Los trabajos de muestra dicen aquí que son inventados",

	"as it was typed":      "como se escribió",
	"below the water line": "debajo de la línea de agua",

	"centre of the hole above the floor": "centro del hoyo sobre el piso",

	"centre of the hole along the wall: y on left and right, x on front and back":                 "centro del hoyo a lo largo de la pared: y en izquierda y derecha, x en frente y atrás",
	"centre of the inlet above the box floor; above the lip when it pours in from over the water": "centro de la entrada sobre el piso de la caja; arriba del labio si cae desde encima del agua",

	"centre of the port's face": "centro de la cara de la salida",

	"centre to stop (elbow, tee), or stop to stop of a straight fitting": "centro a tope (codo, te), o tope a tope de una conexión recta",

	"children live here or visit": "aquí viven o visitan niños",
	"clear width of the crest":    "ancho libre de la cresta",

	"code of the assumption, as the answer lists it": "código del supuesto, como lo lista la respuesta",

	"code of the finding": "código del hallazgo",

	"corner farthest from the origin":    "esquina más lejana del origen",
	"corner nearest the origin":          "esquina más cercana al origen",
	"corners in order round the outline": "esquinas en orden alrededor del contorno",

	"current drawn": "corriente que toma",

	"day of the acceptance, year-month-day":                         "día de la aceptación, año-mes-día",
	"place of that counter in the round, as the price shelf has it": "lugar de ese mostrador en la ronda, como lo tiene el estante de precios",
	"day of the price, year-month-day":                              "día del precio, año-mes-día",
	"day of the survey, year-month-day":                             "día de la medición, año-mes-día",
	"days for which the offer holds":                                "días por los que vale la oferta",
	"days the pump runs a year":                                     "días del año que trabaja la bomba",

	"depth of a cloudburst on the pond that the rim must take on top": "altura de un aguacero sobre el estanque que el borde debe recibir además",

	"depth of its socket, face to stop": "profundidad de su campana, de cara a tope",

	"depth of the trench for the pipe; 0 where it lies on the ground; 18 in when empty": "hondo de la zanja del tubo; 0 donde va sobre el suelo; vacío: 18 in",
	"digest of the sizes worked with, those of the tables among them":                   "huella de las medidas con que se trabajó, las de las tablas entre ellas",

	"distance across": "distancia a lo ancho",
	"distance along":  "distancia a lo largo",

	"distance along the baseline": "distancia a lo largo de la línea base",

	"distance to the next fitting; when empty the hubs touch": "distancia a la siguiente conexión; vacío: las campanas se tocan",
	"drop of level through mat, net or screen":                "lo que baja el nivel al pasar filtro, red o rejilla",

	"each feed starts one: an ordered chain of lips, reaches and pools from its top down to the pond; several are parallel": "cada alimentación empieza uno: una cadena ordenada de labios, arroyos y pozas desde arriba hasta el estanque; varios van en paralelo",

	"electrical power at that flow": "potencia eléctrica a ese caudal",

	"electrical power at this speed, with a curve that gives none": "potencia eléctrica a esta velocidad, con una curva que no la da",

	"electrical power drawn": "potencia eléctrica que toma",

	"elevation of the centre of its inlet": "elevación del centro de su entrada",

	"elevation of the crest": "elevación de la cresta",
	"elevation of the floor": "elevación del piso",

	"elevation of the lowest point of the edge, or of the overflow when there is one": "elevación del punto más bajo de la orilla, o del rebosadero si lo hay",

	"elevation of the open end under water": "elevación de la boca abierta bajo el agua",

	"the opening over it, where that is smaller than the vault":                             "la boca, donde es más chica que la bóveda",
	"clear length of the opening, along the vault's":                                        "largo libre de la boca, a lo largo de la bóveda",
	"clear width of the opening, along the vault's":                                         "ancho libre de la boca, a lo ancho de la bóveda",
	"from the inside of the left wall at the rim to the opening; in the middle when empty":  "desde la cara interior de la pared izquierda, en el borde, hasta la boca; en medio si se deja vacío",
	"from the inside of the front wall at the rim to the opening; in the middle when empty": "desde la cara interior de la pared del frente, en el borde, hasta la boca; en medio si se deja vacío",

	"elevation of the skimmer weir's sill, below which the pond no longer feeds the vault": "elevación del umbral del skimmer, debajo del cual el estanque ya no alimenta la bóveda",

	"elevation of the water line at rest": "elevación de la línea de agua en reposo",
	"equipment and other costs":           "equipo y otros costos",
	"equipment when empty":                "vacío: equipo",

	"every size and word that the layout stands on, as it was": "cada medida y palabra en que se apoya el trazo, como era",

	"fall of the pond by evaporation and splash before someone tops up; two days' where not given": "lo que baja el estanque por evaporación y salpique antes de que alguien rellene; si no se da, la de dos días",

	"fall of the water below the crest, for sound and splash": "caída del agua bajo la cresta, para el sonido y el salpique",

	"fall over length": "caída entre largo",

	"fields of the job that are otherwise in it": "campos del trabajo que en ella son distintos",
	"findings accepted with a reason":            "hallazgos aceptados con un motivo",

	"fittings by name and count, in the order the water meets them where that is known": "conexiones por nombre y cantidad, en el orden en que el agua las encuentra donde se sabe",

	"fittings in order from the pump's port to the wall":          "conexiones en orden de la salida de la bomba a la pared",
	"fittings measured by the fitter; they beat the tables":       "conexiones medidas por el instalador; van antes que las tablas",
	"fittings of the suction pipe, from its open end to the pump": "conexiones del tubo de succión, de su boca abierta a la bomba",

	"fittings on the truck, and those that cannot be had; the counter has all others unless only is said": "conexiones en el camión, y las que no se consiguen; el mostrador tiene todas las demás salvo que se diga solo",

	"flow delivered": "caudal entregado",

	"flow of best efficiency on its sheet; worked out from the watts along its curve when empty": "caudal de mejor eficiencia según su ficha; vacío: se calcula con los watts de su curva",

	"flow of that float valve when it is all open":    "caudal de ese flotador abierto del todo",
	"flow wanted in this feed, where no lip tells it": "caudal pedido en esta alimentación, donde ningún labio lo dice",

	"flow wanted over this lip":                  "caudal pedido sobre este labio",
	"for a check valve, by its sheet":            "para una válvula check, según su ficha",
	"form of the inside in plan":                 "forma del interior en planta",
	"from its floor up to its lip":               "desde su piso hasta su labio",
	"further pieces to cut, beyond the assembly": "otras piezas por cortar, aparte del armado",

	"further speeds it can be set to; its curve and watts are those of full speed": "otras velocidades a que se puede poner; su curva y watts son los de la máxima",
	"gap between the two hub faces, measured in place":                             "claro entre las dos caras de campana, medido en su lugar",
	"greatest depth, where no section is given":                                    "hondo máximo, donde no se da perfil",

	"greatest electrical power its motor may draw for long, by its plate": "mayor potencia eléctrica que su motor puede tomar por largo tiempo, según su placa",

	"greatest pump flow on the skimmer's sheet": "mayor caudal de bomba según la ficha del skimmer",

	"group of cost": "grupo de costo",

	"habits and distances of the fitter that the user sets otherwise, by code; other defaults have fields of their own": "costumbres y distancias del instalador que se fijan de otro modo, por código; otros valores tienen sus propios campos",

	"head at that flow": "carga a ese caudal",

	"height above the sea: thinner air lets more evaporate, and a pump outside the water suck less": "altura sobre el mar: el aire delgado deja evaporar más, y succionar menos a una bomba fuera del agua",

	"hours of one person for one unit": "horas de una persona por una unidad",
	"hours the pump runs a day":        "horas del día que trabaja la bomba",

	"how far the search had looked when it was kept; drawn where the layout was kept as drawn":            "hasta dónde había mirado la búsqueda cuando se conservó; dibujado donde se conservó como estaba dibujado",
	"how high the liner goes up the sides of a stream, which is how deep its bed is dug; 1 ft when empty": "hasta dónde sube la membrana por los costados de un arroyo, que es el hondo de su lecho; vacío: 1 ft",

	"how it connects": "cómo se conecta",
	"how it stands":   "cómo va",

	"how many alike; one when empty":            "cuántas iguales; vacío: una",
	"how many there are; any number when empty": "cuántas hay; vacío: cualquier número",
	"how many there are; one when empty":        "cuántas hay; vacío: una",
	"how many; one when empty":                  "cuántas; vacío: una",

	"how much higher its far end lies than its near end, the way it runs; below 0 when it falls":                                   "cuánto más alto queda su extremo lejano que el cercano, según corre; menor que 0 si baja",
	"how that distance is taken: centre to centre, face to face of the hubs, stop to stop, or the length of the pipe piece as cut": "cómo se toma esa distancia: de centro a centro, de cara a cara de las campanas, de tope a tope, o el largo de la pieza de tubo cortada",

	"identity of the pump on the shelf": "identidad de la bomba en el estante",

	"in from the outline": "hacia adentro desde el contorno",

	"inner depth, floor to the underside of the lid": "hondo interior, del piso a la cara de abajo de la tapa",

	"inner length": "largo interior",

	"inner length at the floor, when the walls taper":                     "largo interior en el piso, si las paredes se cierran",
	"inner length at the rim (x), or the inner diameter of a round vault": "largo interior en la boca (x), o el diámetro interior de una bóveda redonda",

	"inner width": "ancho interior",

	"inner width at the floor, when the walls taper": "ancho interior en el piso, si las paredes se cierran",

	"inner width at the rim (y)": "ancho interior en la boca (y)",

	"inside diameter as measured; beats the table":               "diámetro interior medido; va antes que la tabla",
	"it is a bed dug in the ground and lined, no ready-made box": "es un lecho excavado y con membrana, no una caja prefabricada",

	"it is also on the taxes before it":      "va también sobre los impuestos anteriores",
	"it is cut by the gap measured in place": "se corta con el claro medido en su lugar",

	"it is made already and stays: on the pump's side, or on the wall's": "ya está hecho y se queda: del lado de la bomba, o del lado de la pared",

	"item as the material list names it":         "artículo como lo nombra la lista de material",
	"its copper conductor: a gauge or a section": "su conductor de cobre: un calibre o una sección",

	"its length": "su largo",

	"its length as cut":    "su largo cortado",
	"its mark on the card": "su marca en la hoja",

	"its name":   "su nombre",
	"its outlet": "su salida",
	"its price":  "su precio",
	"its rate":   "su tasa",

	"the run is there already and stays, pipe and fittings: nothing of it is bought, dug or laid. Where another pipe is tried in its place, that is new": "la línea ya está y se queda, tubo y piezas: nada de ella se compra, se excava ni se tiende. Si en su lugar se prueba otro tubo, ese es nuevo",

	"the pump is there already and stays: it is not bought": "la bomba ya está y se queda: no se compra",

	"its sheet says continuous duty": "su ficha dice servicio continuo",

	"its size": "su medida",

	"its size, when it is not the assembly's":     "su medida, si no es la del armado",
	"its size, when it is not the run's":          "su medida, si no es la de la línea",
	"its value as typed; empty empties the field": "su valor como se escribió; vacío: vacía el campo",

	"its weight":    "su peso",
	"kind and size": "clase y medida",

	"kind and size of the pipe":         "clase y medida del tubo",
	"kind and size of the suction pipe": "clase y medida del tubo de succión",

	"kind of outline": "clase de contorno",
	"kind of pipe":    "clase de tubo",

	"known or agreed elevation (a benchmark)": "elevación conocida o convenida (un banco de nivel)",

	"largest solid it passes": "sólido más grande que deja pasar",

	"layers of underlayment; one when empty": "capas de geotextil; vacío: una",

	"least depth of water over the vault floor that its sheet asks for": "agua mínima sobre el piso de la bóveda que pide su ficha",
	"least flow its sheet allows for lasting use":                       "menor caudal que su ficha permite para uso duradero",

	"length": "largo",

	"length along the water": "largo a lo largo del agua",

	"length of a roll of thread tape; listed by length when empty": "largo de un rollo de cinta de rosca; vacío: se lista por largo",

	"length of a stick": "largo de un tramo",

	"length of cable one way, from the panel to the pumps' outlet": "largo del cable de ida, del tablero al contacto de las bombas",

	"length of its cord": "largo de su cable",
	"length of pipe":     "largo del tubo",

	"length of the cord's way to the outlet": "largo del camino del cable al contacto",
	"length of the suction pipe":             "largo del tubo de succión",
	"lengths that can be bought":             "largos que se pueden comprar",

	"level of the pond at which its float valve shuts, where it has one":       "nivel del estanque al que cierra su flotador, si lo tiene",
	"level to which the pond is topped up while running, if that is the habit": "nivel al que se rellena el estanque trabajando, si esa es la costumbre",

	"liner beyond the edge on each side":                                               "membrana más allá de la orilla por lado",
	"liner, underlayment, rock and soil":                                               "membrana, geotextil, piedra y tierra",
	"lips, reaches and pools in order, downward":                                       "labios, arroyos y pozas en orden, hacia abajo",
	"longer size of a rectangle or ellipse, or the diameter of a circle":               "medida larga de un rectángulo o elipse, o el diámetro de un círculo",
	"loose soil that a truck takes, for the number of loads; none are told when empty": "tierra suelta que lleva un camión, para el número de viajes; vacío: no se dicen",

	"loss coefficient from its sheet":                  "coeficiente de pérdida de su ficha",
	"loss coefficient from its sheet; beats the table": "coeficiente de pérdida de su ficha; va antes que la tabla",

	"loss coefficient of the outlet into the box on the pipe's velocity; 1 for all of it": "coeficiente de pérdida de la salida a la caja, sobre la velocidad del tubo; 1 es toda",
	"loss coefficient of the valve at its present setting, beyond its open value":         "coeficiente de pérdida de la válvula en su ajuste actual, más allá de abierta",
	"make-up gap at each of its ends; 0 because the pump's play takes it up":              "claro en cada uno de sus extremos; 0 porque la holgura de la bomba lo absorbe",
	"make-up gap left at each pipe end; 1/8 in by common practice, 0 is pushed home":      "claro que se deja en cada extremo de tubo; 1/8 in por práctica común, 0 es empujado hasta el tope",

	"mark of the part after it, or wall":   "marca de la parte que sigue, o wall (pared)",
	"mark of the part before it, or pump":  "marca de la parte anterior, o pump (bomba)",
	"mark on the drawing; made when empty": "marca en el dibujo; vacío: se pone sola",

	"mark on the piece": "marca en la pieza",

	"markup or margin by group of cost": "sobreprecio o margen por grupo de costo",

	"mean depth that stays in the reach when the pump is off": "profundidad media que queda en el arroyo con la bomba apagada",
	"mean depth up to the lip, filled once at first start":    "profundidad media hasta el labio, llenada una vez en el primer arranque",

	"mean relative humidity": "humedad relativa media",

	"mean temperature of the air by day and night": "temperatura media del aire de día y de noche",
	"mean wind 2 m above the water":                "viento medio a 2 m sobre el agua",

	"measured surface area, when it is known better than the shape gives it": "superficie medida, si se conoce mejor de lo que la da la forma",

	"name": "nombre",

	"name of the feed":    "nombre de la alimentación",
	"name of the fitting": "nombre de la conexión",
	"name of the lip":     "nombre del labio",

	"name of the option that was accepted; the design itself when empty": "nombre de la opción que se aceptó; vacío: el diseño mismo",

	"name of the point": "nombre del punto",

	"name of the point of known elevation sighted first": "nombre del punto de elevación conocida que se miró primero",

	"name of the pool": "nombre de la poza",

	"name of the pump the job is designed with; the first one when empty": "nombre de la bomba con que se diseña el trabajo; vacío: la primera",

	"name of the reach": "nombre del arroyo",
	"name of the run":   "nombre de la línea",

	"name of the speed it is set to; full speed when empty": "nombre de la velocidad a que está; vacío: la máxima",

	"name of the standing": "nombre de la postura",
	"name on this job":     "nombre en este trabajo",

	"named points; any elevation in the job may be written @name, or @name + 2 in":               "puntos con nombre; toda elevación del trabajo se puede escribir @nombre, o @nombre + 2 in",
	"net radiation that stays in the water, mean of day and night, in watts to the square metre": "radiación neta que queda en el agua, media de día y noche, en watts por metro cuadrado",

	"no boulders or gravel on this job": "sin rocas ni grava en este trabajo",

	"nominal size": "medida nominal",

	"nominal size (inch pipe) or outside diameter (metric pipe)": "medida nominal (tubo en pulgadas) o diámetro exterior (tubo métrico)",

	"number of the state it was taken in":                     "número del estado en que se tomó",
	"of pipe, liner, digging or stone that the hours are for": "de tubo, membrana, excavación o piedra por los que son las horas",

	"off the price before tax": "se quita al precio antes de impuesto",
	"offcuts on the truck":     "retazos en el camión",

	"on top of all cost, for what is not foreseen": "sobre todo el costo, para lo imprevisto",

	"on top of material that is bought loose; what comes in whole sticks, cans and rolls holds its waste already": "sobre el material que se compra suelto; lo que viene en tramos, latas y rollos enteros ya trae su desperdicio",

	"one end is a socket, so that sticks join without couplings": "un extremo es campana, así que los tramos se unen sin coples",

	"one end of the crest above the other": "un extremo de la cresta sobre el otro",

	"other designs offered beside this one, each priced as a whole": "otros diseños ofrecidos junto a este, cada uno con su precio completo",

	"outside diameter of its hub or body": "diámetro exterior de su campana o cuerpo",

	"own prices by item": "precios propios por artículo",

	"own weir coefficient C in Q = C L H^1.5 (metre, second)":                                        "coeficiente de vertedor propio C en Q = C L H^1.5 (metro, segundo)",
	"part of full speed, for the affinity laws; of no account beside a curve":                        "parte de la velocidad máxima, para las leyes de afinidad; no cuenta junto a una curva",
	"part of its bore that a worn check valve leaves open when it should be shut":                    "parte de su paso que una válvula check gastada deja abierta cuando debería cerrar",
	"part of its head lost to wear: 1 minus the head measured against a shut valve over the sheet's": "parte de su carga perdida por desgaste: 1 menos la carga medida contra válvula cerrada entre la de la ficha",

	"part of the total": "parte del total",

	"part of the total that is paid before the work begins":                                   "parte del total que se paga antes de empezar la obra",
	"part of the volume that is water (gravel bed, filter media)":                             "parte del volumen que es agua (lecho de grava, material filtrante)",
	"part of the volume that is water; below 100 percent for a basin full of stone or crates": "parte del volumen que es agua; menos de 100 por ciento en un vaso lleno de piedra o cajones",

	"part of the width that carries water":           "parte del ancho que lleva agua",
	"part of the work that the client sees it under": "parte de la obra bajo la que la ve el cliente",

	"part of the work that the client sees it under; made from the task's unit when empty": "parte de la obra bajo la que la ve el cliente; vacío: según la unidad de la tarea",

	"path of the field, as faults name it":               "ruta del campo, como la nombran los errores",
	"payments on the way; the rest falls due at the end": "pagos en el camino; el resto se paga al final",
	"pipe and valve can freeze on this site":             "tubo y válvula pueden congelarse en este sitio",

	"pipe of the assembly": "tubo del armado",

	"pipe runs; a run starts at a pump or where another ends, and ends at a watercourse or where others start; two ways to one place make a loop": "líneas de tubo; una línea empieza en una bomba o donde otra termina, y termina en un curso de agua o donde otras empiezan; dos caminos a un lugar hacen un circuito",

	"points and rod readings brought to one datum":                                 "puntos y lecturas de estadal llevados a un solo nivel de referencia",
	"points of its curve at this speed; they beat the affinity laws":               "puntos de su curva a esta velocidad; van antes que las leyes de afinidad",
	"points of its curve: four or more are normal, two or three are told":          "puntos de su curva: lo normal son cuatro o más, dos o tres se avisan",
	"points of the suction head it requires (NPSHr), for a pump outside the water": "puntos de la carga de succión que requiere (NPSHr), para una bomba fuera del agua",

	"price of a stick": "precio de un tramo",

	"price of each part of the work, before tax": "precio de cada parte de la obra, antes de impuesto",

	"price of one kWh":  "precio de un kWh",
	"price of one unit": "precio de una unidad",

	"pump turned about the upright, anticlockwise seen from above":                                    "bomba girada sobre la vertical, contra el reloj vista desde arriba",
	"pump turned about the upright, anticlockwise seen from above; any quarter turn when empty":       "bomba girada sobre la vertical, contra el reloj vista desde arriba; vacío: cualquier cuarto de vuelta",
	"pumps that run at the same time as the one in use: side by side with it, or one after the other": "bombas que trabajan al mismo tiempo que la que está en uso: lado a lado con ella, o una tras otra",
	"rating of the breaker or fuse that the circuit has to itself":                                    "calificación del interruptor o fusible que el circuito tiene para sí",
	"relative humidity above 60 percent when gluing":                                                  "humedad relativa mayor de 60 por ciento al pegar",

	"remark": "observación",

	"rod reading": "lectura de estadal",

	"rod reading on the benchmark (backsight)": "lectura de estadal en el banco de nivel (atrás)",

	"room left round the vault in its hole, to set and to fill it in; 6 in on each side when empty": "espacio alrededor de la bóveda en su hoyo, para ponerla y rellenar; vacío: 6 in por lado",

	"running depth as measured; beats Manning's formula":                             "profundidad medida corriendo; va antes que la fórmula de Manning",
	"says that this file is a Plashet job":                                           "dice que este archivo es un trabajo de Plashet",
	"share of cost on top: price = cost x (1 + markup)":                              "parte del costo que se suma: precio = costo x (1 + sobreprecio)",
	"share of the price that is left when cost is paid: price = cost / (1 - margin)": "parte del precio que queda pagado el costo: precio = costo / (1 - margen)",

	"sheet depth wanted": "lámina pedida",

	"shorter size of a rectangle or ellipse": "medida corta de un rectángulo o elipse",
	"shortest remnant worth keeping":         "sobrante más corto que vale la pena guardar",

	"size along x":   "medida en x",
	"size along y":   "medida en y",
	"size along z":   "medida en z",
	"so much higher": "tanto más alto",

	"so much less along the wall": "tanto menos a lo largo de la pared",

	"so much lower": "tanto más bajo",

	"so much more along the wall":        "tanto más a lo largo de la pared",
	"soil to dig, for its swell":         "suelo por excavar, para su hinchamiento",
	"spare fittings on top of the count": "conexiones de repuesto sobre el conteo",
	"standings of the level, in order":   "posturas del nivel, en orden",
	"sticks, offcuts and tools":          "tramos, retazos y herramienta",

	"supply voltage": "voltaje de alimentación",

	"surface area; beats length and width": "superficie; va antes que largo y ancho",

	"taped offsets to both sides of a baseline laid along the pond":        "medidas de cinta a los dos lados de una línea base tendida a lo largo del estanque",
	"tax is rounded for each part of the work; once on the sum when empty": "el impuesto se redondea por cada parte de la obra; vacío: una vez sobre la suma",

	"taxes": "impuestos",

	"taxes on the sale, in the order in which they are worked out": "impuestos sobre la venta, en el orden en que se calculan",
	"temperature of pipe and air when gluing":                      "temperatura de tubo y aire al pegar",
	"terms that are printed on the offer":                          "condiciones que se imprimen en la oferta",

	"the electrical supply of the pumps, as the electrician is to judge it": "la alimentación eléctrica de las bombas, como ha de juzgarla el electricista",

	"the flow printed on the box (at no head)":                        "el caudal impreso en el empaque (sin carga)",
	"the greatest head printed on the box (at no flow)":               "la mayor carga impresa en el empaque (sin caudal)",
	"the group it is for; all that have none of their own when empty": "el grupo para el que es; vacío: todos los que no tienen uno propio",
	"the groups whose price it is on; all when empty":                 "los grupos sobre cuyo precio va; vacío: todos",

	"the hole in the wall": "el hoyo en la pared",

	"the hole is not drilled yet: how far from there its centre may lie": "el hoyo todavía no se perfora: hasta dónde puede quedar su centro desde ahí",

	"the last piece, measured in place":           "la última pieza, medida en su lugar",
	"the lower basin, open pond or hidden basin":  "el vaso de abajo, estanque abierto o vaso oculto",
	"the name of a watercourse, or of a junction": "el nombre de un curso de agua, o de un entronque",

	"the offer as the client accepted it; what changes later becomes a change order": "la oferta como la aceptó el cliente; lo que cambia después es una orden de cambio",
	"the outline is drawn as a smooth curve through the points or offsets":           "el contorno se traza como curva suave por los puntos o medidas",
	"the piece after this fitting is the closing piece":                              "la pieza que sigue a esta conexión es la de cierre",

	"the pieces of the cut card": "las piezas de la hoja de corte",

	"the pool empties when the pump is off, so it must be filled at every start": "la poza se vacía con la bomba apagada, así que hay que llenarla en cada arranque",

	"the pump of the shelf that it was taken from": "la bomba del estante de donde se tomó",

	"the pump vault or skimmer":     "la bóveda de la bomba o el skimmer",
	"the pump's attitude":           "la posición de la bomba",
	"the pumps in hand or on offer": "las bombas que se tienen o se ofrecen",

	"the rigid plumbing in the vault, from the pump's port to the wall":                                             "la tubería rígida en la bóveda, de la salida de la bomba a la pared",
	"the run drains back by gravity when nothing holds it; so taken where neither this nor holdsWater is said":      "la línea se regresa por gravedad cuando nada la sostiene; así se toma donde no se dice ni esto ni que guarda agua",
	"the run stays full when nothing holds it: it sags, or lies under water; drains goes first where both are said": "la línea queda llena cuando nada la sostiene: hace columpio, o va bajo el agua; si se dicen los dos, vale que se vacía",

	"the sentence": "la frase",

	"the shape at the water line": "la forma en la línea de agua",

	"the side from the edge inward, downward: each step gives the depth below the water line and how far in from the outline it is": "el costado desde la orilla hacia adentro y abajo: cada paso da el hondo bajo la línea de agua y cuánto queda adentro del contorno",

	"the spill box, header or gravel bed at the top":                   "la caja de derrame, el cabezal o el lecho de grava de arriba",
	"the standing it was read from; the only one when empty":           "la postura desde la que se leyó; vacío: la única",
	"the total is rounded to a multiple of it; to coins when empty":    "el total se redondea a un múltiplo de esto; vacío: a la moneda",
	"the units in which bare numbers are read and the answer is shown": "las unidades en que se leen los números solos y se muestra la respuesta",

	"how numbers and amounts of money are written for people, and what is typed is read": "cómo se escriben los números y los importes para las personas, y cómo se lee lo que se escribe",

	"the mark before decimals. What is typed is read by it: with a comma 1.234,50 is one thousand two hundred thirty-four and a half. As people write in the country of the currency when empty, and a point with us units": "el signo ante los decimales. Por él se lee lo que se escribe: con coma, 1.234,50 es mil doscientos treinta y cuatro y medio. Vacío: como se escribe en el país de la moneda, y punto con unidades us",

	"the mark between thousands; as people write in the country of the currency when empty": "el signo entre los miles; vacío: como se escribe en el país de la moneda",

	"what stands beside an amount of money: the sign of the currency, or its code; the sign when empty": "lo que va junto a un importe: el signo de la moneda o su código; vacío: el signo",

	"where that stands, before or after the amount; as people write in the country of the currency when empty": "dónde va eso, antes o después del importe; vacío: como se escribe en el país de la moneda",

	"size of the paper that the sheets are printed on; letter with us units and A4 with metric ones when empty": "tamaño del papel en que se imprimen las hojas; carta con unidades us y A4 con métricas si queda vacío",

	"the value to use": "el valor que se usa",

	"the way the port looks, before the pump is turned: left is -x, right +x, front -y, back +y":                                "hacia dónde mira la salida, antes de girar la bomba: izquierda es -x, derecha +x, frente -y, atrás +y",
	"the way the water runs into the first of the parts glued at the wall; as from the pump that they were glued to when empty": "hacia dónde corre el agua al entrar en la primera de las partes pegadas en la pared; vacío: como desde la bomba a la que se pegaron",

	"the ways it may stand, by its sheet": "las posiciones en que puede ir, según su ficha",

	"the ways the pump may stand; every attitude of its own in quarter turns when empty": "las posiciones en que puede ir la bomba; vacío: cada posición suya en cuartos de vuelta",

	"there is none, and none can be had": "no hay, y no se consigue",

	"thin: a plate or blade; broad: a flat sill long in the flow; stone: rounded or rough stone": "thin (delgado): placa u hoja; broad (ancho): umbral plano largo en el flujo; stone (piedra): piedra redondeada o áspera",
	"time in which it comes up to speed after a start; longer with a soft start":                 "tiempo en que toma velocidad después de un arranque; más con arranque suave",

	"time in which that cloudburst falls": "tiempo en que cae ese aguacero",
	"to the edge on the left":             "hasta la orilla de la izquierda",
	"to the edge on the right":            "hasta la orilla de la derecha",
	"up from the floor":                   "hacia arriba desde el piso",
	"version of the document":             "versión del documento",

	"volume by meter or timed fill; beats the geometry":             "volumen por medidor o llenado con reloj; va antes que la geometría",
	"wall the pipe leaves by: left x = 0, right, front y = 0, back": "pared por la que sale el tubo: izquierda x = 0, derecha, frente y = 0, atrás",
	"water temperature for density and viscosity":                   "temperatura del agua para densidad y viscosidad",
	"water up to the lip, when known; beats the sizes":              "agua hasta el labio, si se conoce; va antes que las medidas",

	"what a can of cement, and one of primer, holds; a US quart, or a litre in a metric job, when empty": "lo que trae una lata de cemento, y una de primer; vacío: un cuarto de galón, o un litro en un trabajo métrico",

	"what an hour of one person costs the firm": "lo que una hora de una persona le cuesta a la empresa",
	"what holds for the whole site":             "lo que vale para todo el sitio",

	"what is done": "lo que se hace",

	"what is done otherwise than agreed, in the client's words; it stands on the change order": "lo que se hace de otro modo que lo acordado, en palabras del cliente; sale en la orden de cambio",

	"what it gives more or less": "lo que da de más o de menos",

	"what it is": "lo que es",

	"what it is not for": "para lo que no es",

	"what its place is called; runs start from this name": "cómo se llama su lugar; las líneas empiezan desde este nombre",

	"what one costs the firm": "lo que uno le cuesta a la empresa",

	"what one price is for: each, stick, box of 25, or an amount such as 10 ft or pint": "por qué es un precio: each, stick, box of 25, o una cantidad como 10 ft o pint",
	"what stands in the way: rack, basket, screen, float, bowed wall":                   "lo que estorba: repisa, canasta, rejilla, flotador, pared pandeada",
	"what the client is offered: labour, markup or margin, tax, terms, options":         "lo que se ofrece al cliente: mano de obra, sobreprecio o margen, impuesto, condiciones, opciones",

	"what the client knows it by": "por lo que la conoce el cliente",
	"what the crew calls the job": "cómo le dice la cuadrilla al trabajo",

	"what the hours are for one unit of; the whole job when empty. joint: cemented or threaded; cut: piece of pipe; pipe, liner, digging and stone: see unit": "de qué son las horas por una unidad; vacío: todo el trabajo. joint: unión pegada o roscada; cut: pieza de tubo; pipe, liner, digging y stone: vea la unidad",

	"what the layout was when it was kept, written by plashet arrange --keep": "lo que era el trazo cuando se conservó, escrito por plashet arrange --keep",

	"what the offer is for, in the client's words":                  "para qué es la oferta, en palabras del cliente",
	"what the search for layouts may choose from (plashet arrange)": "de qué puede elegir la búsqueda de trazos (plashet arrange)",
	"what the switch or the controller calls it":                    "cómo le dice el interruptor o el control",

	"what was agreed, with tax": "lo acordado, con impuesto",
	"when it falls due":         "cuándo se paga",

	"where in the job; every such finding when empty": "dónde en el trabajo; vacío: todo hallazgo así",

	"where it draws from: the vault when empty, or a junction that a run ends at, for a pump that lifts on what another sends": "de dónde toma: vacío, la bóveda; o un entronque donde termina una línea, para una bomba que eleva lo que otra manda",

	"where it is": "dónde está",

	"where it is bought, as the price shelf has it":                           "dónde se compra, como lo tiene el estante de precios",
	"where it stands in the job; what is the pump's in use begins with /pump": "dónde está en el trabajo; lo que es de la bomba en uso empieza con /pump",
	"where it stands when it is not in the water, and its suction pipe":       "dónde está si no va en el agua, y su tubo de succión",

	"where its data come from": "de dónde vienen sus datos",

	"where that depth is meant: upstream (head above the crest in still water), critical (2/3 of it, on the crest), edge (thickness as it leaves)": "dónde se entiende esa lámina: upstream (carga aguas arriba de la cresta en agua quieta), critical (2/3 de ella, en la cresta), edge (espesor al salir)",

	"where the corner of the pump's box nearest the origin stands, after turning": "dónde queda la esquina de la caja de la bomba más cercana al origen, ya girada",

	"where the corner of the pump's box nearest the origin stands, after turning; given, it stays there, else the search places it": "dónde queda la esquina de la caja de la bomba más cercana al origen, ya girada; si se da, ahí se queda, si no la pone la búsqueda",

	"which of the pump's attitudes": "cuál de las posiciones de la bomba",
	"which of the pumps it is":      "cuál de las bombas es",

	"who it is for": "para quién es",

	"why": "por qué",

	"why it is accepted; it is printed on the sheets": "por qué se acepta; se imprime en las hojas",

	"width": "ancho",

	"width between the edges":     "ancho entre las orillas",
	"width of the saw cut":        "ancho del corte de sierra",
	"width of the skimmer's weir": "ancho del vertedor del skimmer",

	"width of the trench for the pipe; 8 in when empty": "ancho de la zanja del tubo; vacío: 8 in",
	"work by task, with the crew's own hours and rates": "trabajo por tarea, con las horas y tarifas propias de la cuadrilla",

	"of a fitting with a socket and a spigot (a street elbow) the side that its spigot looks to; its first end comes first when empty, where that fits": "de una conexión con campana y espiga (un codo cachimba) el lado al que mira su espiga; vacío: su primer extremo va primero, donde eso cabe",

	"that piece is the closing piece": "esa pieza es la de cierre",

	"distance from the port to the first fitting, where the port takes a pipe; when empty the hubs touch":                                          "distancia de la salida a la primera conexión, donde a la salida le entra un tubo; vacío: las campanas se tocan",
	"how that distance is taken: from the port's face to the fitting's centre, face to face, stop to stop, or the length of the pipe piece as cut": "cómo se toma esa distancia: de la cara de la salida al centro de la conexión, de cara a cara, de tope a tope, o el largo de la pieza de tubo cortada",
}
