package words

// esDocPipe has what the fields of runs, assembly, search and stock are for, by the English.
var esDocPipe = map[string]string{
	"name of the run": "nombre de la línea",

	"\"pump\", the name of a further pump, or the name of a junction": "\"pump\", el nombre de una bomba adicional, o el nombre de un entronque",

	"the name of a watercourse, or of a junction": "el nombre de un curso de agua, o de un entronque",

	"kind and size of the pipe": "clase y medida del tubo",

	"length of pipe": "largo del tubo",

	"how much higher its far end lies than its near end, the way it runs; below 0 when it falls": "cuánto más alto queda su extremo lejano que el cercano, según corre; menor que 0 si baja",

	"fittings by name and count, in the order the water meets them where that is known": "conexiones por nombre y cantidad, en el orden en que el agua las encuentra donde se sabe",

	"inside diameter as measured; beats the table": "diámetro interior medido; va antes que la tabla",

	"Hazen-Williams C, for a pipe that is known only by it": "C de Hazen-Williams, para un tubo del que solo se conoce ella",

	"absolute roughness; beats the table": "rugosidad absoluta; va antes que la tabla",

	"the run drains back by gravity when nothing holds it; so taken where neither this nor holdsWater is said": "la línea se regresa por gravedad cuando nada la sostiene; así se toma donde no se dice ni esto ni que guarda agua",

	"the run stays full when nothing holds it: it sags, or lies under water; drains goes first where both are said": "la línea queda llena cuando nada la sostiene: hace columpio, o va bajo el agua; si se dicen los dos, vale que se vacía",

	"the run is there already and stays, pipe and fittings: nothing of it is bought, dug or laid. Where another pipe is tried in its place, that is new": "la línea ya está y se queda, tubo y piezas: nada de ella se compra, se excava ni se tiende. Si en su lugar se prueba otro tubo, ese es nuevo",

	"loss coefficient of the valve at its present setting, beyond its open value": "coeficiente de pérdida de la válvula en su ajuste actual, más allá de abierta",

	"kind of pipe": "clase de tubo",

	"nominal size (inch pipe) or outside diameter (metric pipe)": "medida nominal (tubo en pulgadas) o diámetro exterior (tubo métrico)",

	"name of the fitting": "nombre de la conexión",

	"its size, when it is not the run's": "su medida, si no es la de la línea",

	"how many; one when empty": "cuántas; vacío: una",

	"loss coefficient from its sheet; beats the table": "coeficiente de pérdida de su ficha; va antes que la tabla",

	"the pump's attitude": "la posición de la bomba",

	"pump turned about the upright, anticlockwise seen from above": "bomba girada sobre la vertical, contra el reloj vista desde arriba",

	"where the corner of the pump's box nearest the origin stands, after turning": "dónde queda la esquina de la caja de la bomba más cercana al origen, ya girada",

	"pipe of the assembly": "tubo del armado",

	"distance from the port to the first fitting, where the port takes a pipe; when empty the hubs touch": "distancia de la salida a la primera conexión, donde a la salida le entra un tubo; vacío: las campanas se tocan",

	"how that distance is taken: from the port's face to the fitting's centre, face to face, stop to stop, or the length of the pipe piece as cut": "cómo se toma esa distancia: de la cara de la salida al centro de la conexión, de cara a cara, de tope a tope, o el largo de la pieza de tubo cortada",

	"that piece is the closing piece": "esa pieza es la de cierre",

	"fittings in order from the pump's port to the wall": "conexiones en orden de la salida de la bomba a la pared",

	"make-up gap left at each pipe end; 1/8 in by common practice, 0 is pushed home": "claro que se deja en cada extremo de tubo; 1/8 in por práctica común, 0 es empujado hasta el tope",

	"the last piece, measured in place": "la última pieza, medida en su lugar",

	"the flexible pipe that a short hose next to the pump is cut from": "el tubo flexible del que se corta una manguera corta junto a la bomba",

	"what the search for layouts may choose from (plashet arrange)": "de qué puede elegir la búsqueda de trazos (plashet arrange)",

	"what the layout was when it was kept, written by plashet arrange --keep": "lo que era el trazo cuando se conservó, escrito por plashet arrange --keep",

	"its size, when it is not the assembly's": "su medida, si no es la del armado",

	"mark on the drawing; made when empty": "marca en el dibujo; vacío: se pone sola",

	"an elbow's outlet seen along the flow into it: 0 is up (or to the back wall when the inlet is upright), clockwise": "la salida de un codo vista con el flujo que le entra: 0 es arriba (o a la pared de atrás si la entrada es vertical), con el reloj",

	"distance to the next fitting; when empty the hubs touch": "distancia a la siguiente conexión; vacío: las campanas se tocan",

	"how that distance is taken: centre to centre, face to face of the hubs, stop to stop, or the length of the pipe piece as cut": "cómo se toma esa distancia: de centro a centro, de cara a cara de las campanas, de tope a tope, o el largo de la pieza de tubo cortada",

	"an arrow that points against the flow (as found in an old assembly)": "una flecha que apunta contra el flujo (como se halla en un armado viejo)",

	"of a fitting with a socket and a spigot (a street elbow) the side that its spigot looks to; its first end comes first when empty, where that fits": "de una conexión con campana y espiga (un codo cachimba) el lado al que mira su espiga; vacío: su primer extremo va primero, donde eso cabe",

	"the piece after this fitting is the closing piece": "la pieza que sigue a esta conexión es la de cierre",

	"of a hose: the angle by which it bends; straight when empty": "de una manguera: el ángulo que se dobla; recta si queda vacío",

	"of a hose: from where the lines of its two ends meet to its end towards the pump": "de una manguera: de donde se cruzan las líneas de sus dos puntas a su punta hacia la bomba",

	"of a hose: from there to its end towards the wall": "de una manguera: de ahí a su punta hacia la pared",

	"it is made already and stays: on the pump's side, or on the wall's": "ya está hecho y se queda: del lado de la bomba, o del lado de la pared",

	"kind of flexible pipe; flexible PVC when empty": "tipo de tubo flexible; PVC flexible si queda vacío",

	"least radius that it may be bent to, measured to its middle, by its maker's sheet (one that measures to the inside: add half its outside diameter); five times its outside diameter when empty": "radio mínimo al que se puede doblar, medido a su centro, según la hoja del fabricante (si ella mide a la parte de adentro: sume la mitad de su diámetro exterior); cinco veces su diámetro exterior si queda vacío",

	"how much of it stays straight at least beyond each socket; its outside diameter when empty": "cuánto queda recto por lo menos fuera de cada campana; su diámetro exterior si queda vacío",

	"longest piece of it; 3 ft, or 900 mm in a metric job, when empty": "la pieza más larga; 3 ft, o 900 mm en un trabajo métrico, si queda vacío",

	"gap between the two hub faces, measured in place": "claro entre las dos caras de campana, medido en su lugar",

	"make-up gap at each of its ends; 0 because the pump's play takes it up": "claro en cada uno de sus extremos; 0 porque la holgura de la bomba lo absorbe",

	"its size": "su medida",

	"depth of its socket, face to stop": "profundidad de su campana, de cara a tope",

	"centre to stop (elbow, tee), or stop to stop of a straight fitting": "centro a tope (codo, te), o tope a tope de una conexión recta",

	"outside diameter of its hub or body": "diámetro exterior de su campana o cuerpo",

	"loss coefficient from its sheet": "coeficiente de pérdida de su ficha",

	"for a check valve, by its sheet": "para una válvula check, según su ficha",

	"the ways the pump may stand; every attitude of its own in quarter turns when empty": "las posiciones en que puede ir la bomba; vacío: cada posición suya en cuartos de vuelta",

	"a layout without a union will do: the pump then comes out with the saw only": "sirve un trazo sin tuerca unión: la bomba sale entonces solo con sierra",

	"a layout without a check valve will do": "sirve un trazo sin válvula check",

	"a layout may have one short hose, next to the pump": "un trazo puede tener una manguera corta, junto a la bomba",

	"the way the water runs into the first of the parts glued at the wall; as from the pump that they were glued to when empty": "hacia dónde corre el agua al entrar en la primera de las partes pegadas en la pared; vacío: como desde la bomba a la que se pegaron",

	"which of the pump's attitudes": "cuál de las posiciones de la bomba",

	"pump turned about the upright, anticlockwise seen from above; any quarter turn when empty": "bomba girada sobre la vertical, contra el reloj vista desde arriba; vacío: cualquier cuarto de vuelta",

	"where the corner of the pump's box nearest the origin stands, after turning; given, it stays there, else the search places it": "dónde queda la esquina de la caja de la bomba más cercana al origen, ya girada; si se da, ahí se queda, si no la pone la búsqueda",

	"the pieces of the cut card": "las piezas de la hoja de corte",

	"every size and word that the layout stands on, as it was": "cada medida y palabra en que se apoya el trazo, como era",

	"digest of the sizes worked with, those of the tables among them": "huella de las medidas con que se trabajó, las de las tablas entre ellas",

	"how far the search had looked when it was kept; drawn where the layout was kept as drawn": "hasta dónde había mirado la búsqueda cuando se conservó; dibujado donde se conservó como estaba dibujado",

	"its mark on the card": "su marca en la hoja",

	"mark of the part before it, or pump": "marca de la parte anterior, o pump (bomba)",

	"mark of the part after it, or wall": "marca de la parte que sigue, o wall (pared)",

	"it is cut by the gap measured in place": "se corta con el claro medido en su lugar",

	"where it stands in the job; what is the pump's in use begins with /pump": "dónde está en el trabajo; lo que es de la bomba en uso empieza con /pump",

	"as it was typed": "como se escribió",

	"lengths that can be bought": "largos que se pueden comprar",

	"offcuts on the truck": "retazos en el camión",

	"width of the saw cut": "ancho del corte de sierra",

	"shortest remnant worth keeping": "sobrante más corto que vale la pena guardar",

	"further pieces to cut, beyond the assembly": "otras piezas por cortar, aparte del armado",

	"fittings on the truck, and those that cannot be had; the counter has all others unless only is said": "conexiones en el camión, y las que no se consiguen; el mostrador tiene todas las demás salvo que se diga solo",

	"a layout may use only the fittings listed here, and pipe that can be cut from the offcuts and counted sticks": "un trazo solo puede usar las conexiones listadas aquí, y tubo que salga de los retazos y tramos contados",

	"kind and size": "clase y medida",

	"length of a stick": "largo de un tramo",

	"price of a stick": "precio de un tramo",

	"how many there are; any number when empty": "cuántas hay; vacío: cualquier número",

	"one end is a socket, so that sticks join without couplings": "un extremo es campana, así que los tramos se unen sin coples",

	"its length": "su largo",

	"how many alike; one when empty": "cuántas iguales; vacío: una",

	"how many there are; one when empty": "cuántas hay; vacío: una",

	"there is none, and none can be had": "no hay, y no se consigue",

	"its length as cut": "su largo cortado",

	"mark on the piece": "marca en la pieza",
}
