package words

// esDocSite has what the fields of the job as a whole, its site and its survey are for, by the English.
var esDocSite = map[string]string{
	// of a figure that is written with its source
	"the value, as a text or a bare number": "el valor, como texto o como número solo",

	"where it comes from: measured on site, read on a maker's sheet, a rule of thumb, a guess": "de dónde viene: medido en la obra, leído en la hoja del fabricante, una regla del oficio, una suposición",

	"how far off it may be, to both sides: in the field's own units, or as a share of the value": "cuánto puede variar, para ambos lados: en las unidades del campo, o como parte del valor",

	"says that this file is a Plashet job": "dice que este archivo es un trabajo de Plashet",

	"version of the document": "versión del documento",

	"what the crew calls the job": "cómo le dice la cuadrilla al trabajo",

	"anything worth knowing, for the crew; it stands on no sheet that the client gets. The demo jobs say here that they are invented": "lo que valga la pena saber, para la cuadrilla; no sale en ninguna hoja del cliente. Los trabajos de muestra dicen aquí que son inventados",

	"a note for the client, printed on the offer and on the care sheet": "una nota para el cliente, impresa en la oferta y en la hoja de cuidado",

	"who it is for": "para quién es",

	"where it is": "dónde está",

	"day of the survey, year-month-day": "día de la medición, año-mes-día",

	"the units in which bare numbers are read and the answer is shown": "las unidades en que se leen los números solos y se muestra la respuesta",

	"size of the paper that the sheets are printed on; letter with us units and A4 with metric ones when empty": "tamaño del papel en que se imprimen las hojas; carta con unidades us y A4 con métricas si queda vacío",

	"how numbers and amounts of money are written for people, and what is typed is read": "cómo se escriben los números y los importes para las personas, y cómo se lee lo que se escribe",

	"what holds for the whole site": "lo que vale para todo el sitio",

	"points and rod readings brought to one datum": "puntos y lecturas de estadal llevados a un solo nivel de referencia",

	"the lower basin, open pond or hidden basin": "el vaso de abajo, estanque abierto o vaso oculto",

	"each feed starts one: an ordered chain of lips, reaches and pools from its top down to the pond; several are parallel": "cada alimentación empieza uno: una cadena ordenada de labios, arroyos y pozas desde arriba hasta el estanque; varios van en paralelo",

	"the pump vault or skimmer": "la bóveda de la bomba o el skimmer",

	"the pumps in hand or on offer": "las bombas que se tienen o se ofrecen",

	"the electrical supply of the pumps, as the electrician is to judge it": "la alimentación eléctrica de las bombas, como ha de juzgarla el electricista",

	"name of the pump the job is designed with; the first one when empty": "nombre de la bomba con que se diseña el trabajo; vacío: la primera",

	"pumps that run at the same time as the one in use: side by side with it, or one after the other": "bombas que trabajan al mismo tiempo que la que está en uso: lado a lado con ella, o una tras otra",

	"pipe runs; a run starts at a pump or where another ends, and ends at a watercourse or where others start; two ways to one place make a loop": "líneas de tubo; una línea empieza en una bomba o donde otra termina, y termina en un curso de agua o donde otras empiezan; dos caminos a un lugar hacen un circuito",

	"the rigid plumbing in the vault, from the pump's port to the wall": "la tubería rígida en la bóveda, de la salida de la bomba a la pared",

	"sticks, offcuts and tools": "tramos, retazos y herramienta",

	"fittings measured by the fitter; they beat the tables": "conexiones medidas por el instalador; van antes que las tablas",

	"liner, underlayment, rock and soil": "membrana, geotextil, piedra y tierra",

	"own prices by item": "precios propios por artículo",

	"what the client is offered: labour, markup or margin, tax, terms, options": "lo que se ofrece al cliente: mano de obra, sobreprecio o margen, impuesto, condiciones, opciones",

	"habits and distances of the fitter that the user sets otherwise, by code; other defaults have fields of their own": "costumbres y distancias del instalador que se fijan de otro modo, por código; otros valores tienen sus propios campos",

	"findings accepted with a reason": "hallazgos aceptados con un motivo",

	"the mark before decimals. What is typed is read by it: with a comma 1.234,50 is one thousand two hundred thirty-four and a half. As people write in the country of the currency when empty, and a point with us units": "el signo ante los decimales. Por él se lee lo que se escribe: con coma, 1.234,50 es mil doscientos treinta y cuatro y medio. Vacío: como se escribe en el país de la moneda, y punto con unidades us",

	"the mark between thousands; as people write in the country of the currency when empty": "el signo entre los miles; vacío: como se escribe en el país de la moneda",

	"what stands beside an amount of money: the sign of the currency, or its code; the sign when empty": "lo que va junto a un importe: el signo de la moneda o su código; vacío: el signo",

	"where that stands, before or after the amount; as people write in the country of the currency when empty": "dónde va eso, antes o después del importe; vacío: como se escribe en el país de la moneda",

	"water temperature for density and viscosity": "temperatura del agua para densidad y viscosidad",

	"temperature of pipe and air when gluing": "temperatura de tubo y aire al pegar",

	"relative humidity above 60 percent when gluing": "humedad relativa mayor de 60 por ciento al pegar",

	"height above the sea: thinner air lets more evaporate, and a pump outside the water suck less": "altura sobre el mar: el aire delgado deja evaporar más, y succionar menos a una bomba fuera del agua",

	"pipe and valve can freeze on this site": "tubo y válvula pueden congelarse en este sitio",

	"children live here or visit": "aquí viven o visitan niños",

	"a day's mean weather in the hottest weeks, for what evaporates": "el clima medio de un día en las semanas más calurosas, para lo que se evapora",

	"hours the pump runs a day": "horas del día que trabaja la bomba",

	"days the pump runs a year": "días del año que trabaja la bomba",

	"ISO 4217 code": "código ISO 4217",

	"price of one kWh": "precio de un kWh",

	"fall of the pond by evaporation and splash before someone tops up; two days' where not given": "lo que baja el estanque por evaporación y salpique antes de que alguien rellene; si no se da, la de dos días",

	"depth of a cloudburst on the pond that the rim must take on top": "altura de un aguacero sobre el estanque que el borde debe recibir además",

	"time in which that cloudburst falls": "tiempo en que cae ese aguacero",

	"part of its bore that a worn check valve leaves open when it should be shut": "parte de su paso que una válvula check gastada deja abierta cuando debería cerrar",

	"mean temperature of the air by day and night": "temperatura media del aire de día y de noche",

	"mean relative humidity": "humedad relativa media",

	"mean wind 2 m above the water": "viento medio a 2 m sobre el agua",

	"net radiation that stays in the water, mean of day and night, in watts to the square metre": "radiación neta que queda en el agua, media de día y noche, en watts por metro cuadrado",

	"length of cable one way, from the panel to the pumps' outlet": "largo del cable de ida, del tablero al contacto de las bombas",

	"its copper conductor: a gauge or a section": "su conductor de cobre: un calibre o una sección",

	"rating of the breaker or fuse that the circuit has to itself": "calificación del interruptor o fusible que el circuito tiene para sí",

	"standings of the level, in order": "posturas del nivel, en orden",

	"named points; any elevation in the job may be written @name, or @name + 2 in": "puntos con nombre; toda elevación del trabajo se puede escribir @nombre, o @nombre + 2 in",

	"name of the standing": "nombre de la postura",

	"name of the point of known elevation sighted first": "nombre del punto de elevación conocida que se miró primero",

	"rod reading on the benchmark (backsight)": "lectura de estadal en el banco de nivel (atrás)",

	"name of the point": "nombre del punto",

	"known or agreed elevation (a benchmark)": "elevación conocida o convenida (un banco de nivel)",

	"the standing it was read from; the only one when empty": "la postura desde la que se leyó; vacío: la única",

	"rod reading": "lectura de estadal",

	"remark": "observación",
}
