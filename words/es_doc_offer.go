package words

// esDocOffer has what the fields of works, prices and the offer are for, by the English.
var esDocOffer = map[string]string{
	"liner beyond the edge on each side": "membrana más allá de la orilla por lado",

	"layers of underlayment; one when empty": "capas de geotextil; vacío: una",

	"soil to dig, for its swell": "suelo por excavar, para su hinchamiento",

	"spare fittings on top of the count": "conexiones de repuesto sobre el conteo",

	"what a can of cement, and one of primer, holds; a US quart, or a litre in a metric job, when empty": "lo que trae una lata de cemento, y una de primer; vacío: un cuarto de galón, o un litro en un trabajo métrico",

	"length of a roll of thread tape; listed by length when empty": "largo de un rollo de cinta de rosca; vacío: se lista por largo",

	"loose soil that a truck takes, for the number of loads; none are told when empty": "tierra suelta que lleva un camión, para el número de viajes; vacío: no se dicen",

	"how high the liner goes up the sides of a stream, which is how deep its bed is dug; 1 ft when empty": "hasta dónde sube la membrana por los costados de un arroyo, que es el hondo de su lecho; vacío: 1 ft",

	"room left round the vault in its hole, to set and to fill it in; 6 in on each side when empty": "espacio alrededor de la bóveda en su hoyo, para ponerla y rellenar; vacío: 6 in por lado",

	"width of the trench for the pipe; 8 in when empty": "ancho de la zanja del tubo; vacío: 8 in",

	"depth of the trench for the pipe; 0 where it lies on the ground; 18 in when empty": "hondo de la zanja del tubo; 0 donde va sobre el suelo; vacío: 18 in",

	"no boulders or gravel on this job": "sin rocas ni grava en este trabajo",

	"item as the material list names it": "artículo como lo nombra la lista de material",

	"price of one unit": "precio de una unidad",

	"what one price is for: each, stick, box of 25, or an amount such as 10 ft or pint": "por qué es un precio: each, stick, box of 25, o una cantidad como 10 ft o pint",

	"where it is bought, as the price shelf has it": "dónde se compra, como lo tiene el estante de precios",

	"place of that counter in the round, as the price shelf has it": "lugar de ese mostrador en la ronda, como lo tiene el estante de precios",

	"day of the price, year-month-day": "día del precio, año-mes-día",

	"code of the assumption, as the answer lists it": "código del supuesto, como lo lista la respuesta",

	"the value to use": "el valor que se usa",

	"why": "por qué",

	"code of the finding": "código del hallazgo",

	"where in the job; every such finding when empty": "dónde en el trabajo; vacío: todo hallazgo así",

	"why it is accepted; it is printed on the sheets": "por qué se acepta; se imprime en las hojas",

	"work by task, with the crew's own hours and rates": "trabajo por tarea, con las horas y tarifas propias de la cuadrilla",

	"equipment and other costs": "equipo y otros costos",

	"on top of material that is bought loose; what comes in whole sticks, cans and rolls holds its waste already": "sobre el material que se compra suelto; lo que viene en tramos, latas y rollos enteros ya trae su desperdicio",

	"on top of all cost, for what is not foreseen": "sobre todo el costo, para lo imprevisto",

	"markup or margin by group of cost": "sobreprecio o margen por grupo de costo",

	"off the price before tax": "se quita al precio antes de impuesto",

	"taxes on the sale, in the order in which they are worked out": "impuestos sobre la venta, en el orden en que se calculan",

	"tax is rounded for each part of the work; once on the sum when empty": "el impuesto se redondea por cada parte de la obra; vacío: una vez sobre la suma",

	"the total is rounded to a multiple of it; to coins when empty": "el total se redondea a un múltiplo de esto; vacío: a la moneda",

	"part of the total that is paid before the work begins": "parte del total que se paga antes de empezar la obra",

	"payments on the way; the rest falls due at the end": "pagos en el camino; el resto se paga al final",

	"days for which the offer holds": "días por los que vale la oferta",

	"what the offer is for, in the client's words": "para qué es la oferta, en palabras del cliente",

	"what it is not for": "para lo que no es",

	"terms that are printed on the offer": "condiciones que se imprimen en la oferta",

	"other designs offered beside this one, each priced as a whole": "otros diseños ofrecidos junto a este, cada uno con su precio completo",

	"what is done otherwise than agreed, in the client's words; it stands on the change order": "lo que se hace de otro modo que lo acordado, en palabras del cliente; sale en la orden de cambio",

	"the offer as the client accepted it; what changes later becomes a change order": "la oferta como la aceptó el cliente; lo que cambia después es una orden de cambio",

	"what is done": "lo que se hace",

	"what the hours are for one unit of; the whole job when empty. joint: cemented or threaded; cut: piece of pipe; pipe, liner, digging and stone: see unit": "de qué son las horas por una unidad; vacío: todo el trabajo. joint: unión pegada o roscada; cut: pieza de tubo; pipe, liner, digging y stone: vea la unidad",

	"of pipe, liner, digging or stone that the hours are for": "de tubo, membrana, excavación o piedra por los que son las horas",

	"hours of one person for one unit": "horas de una persona por una unidad",

	"what an hour of one person costs the firm": "lo que una hora de una persona le cuesta a la empresa",

	"part of the work that the client sees it under; made from the task's unit when empty": "parte de la obra bajo la que la ve el cliente; vacío: según la unidad de la tarea",

	"equipment when empty": "vacío: equipo",

	"what one costs the firm": "lo que uno le cuesta a la empresa",

	"part of the work that the client sees it under": "parte de la obra bajo la que la ve el cliente",

	"the group it is for; all that have none of their own when empty": "el grupo para el que es; vacío: todos los que no tienen uno propio",

	"share of cost on top: price = cost x (1 + markup)": "parte del costo que se suma: precio = costo x (1 + sobreprecio)",

	"share of the price that is left when cost is paid: price = cost / (1 - margin)": "parte del precio que queda pagado el costo: precio = costo / (1 - margen)",

	"its name": "su nombre",

	"its rate": "su tasa",

	"the groups whose price it is on; all when empty": "los grupos sobre cuyo precio va; vacío: todos",

	"it is also on the taxes before it": "va también sobre los impuestos anteriores",

	"group of cost": "grupo de costo",

	"when it falls due": "cuándo se paga",

	"part of the total": "parte del total",

	"the sentence": "la frase",

	"what the client knows it by": "por lo que la conoce el cliente",

	"what it gives more or less": "lo que da de más o de menos",

	"fields of the job that are otherwise in it": "campos del trabajo que en ella son distintos",

	"path of the field, as faults name it": "ruta del campo, como la nombran los errores",

	"its value as typed; empty empties the field": "su valor como se escribió; vacío: vacía el campo",

	"day of the acceptance, year-month-day": "día de la aceptación, año-mes-día",

	"name of the option that was accepted; the design itself when empty": "nombre de la opción que se aceptó; vacío: el diseño mismo",

	"price of each part of the work, before tax": "precio de cada parte de la obra, antes de impuesto",

	"taxes": "impuestos",

	"what was agreed, with tax": "lo acordado, con impuesto",

	"name": "nombre",

	"amount": "importe",
}
