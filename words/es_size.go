package words

// esSize is enSize in Spanish.
var esSize = map[string]string{
	"size.out.head":  "La bomba “{name}” da {found:both} de carga al caudal pedido; hasta el tubo de menor pérdida necesita {limit:both}. Tome una bomba con más carga.",
	"size.out.end":   "El caudal pedido, {found:both}, queda más allá de la curva publicada de la bomba “{name}”, que termina en {limit:both}. Consiga del fabricante la curva completa, o déjela fuera.",
	"size.out.least": "El caudal pedido, {found:both}, es menos que aquel al que puede trabajar la bomba “{name}”, {limit:both}. Tome una bomba más chica.",
	"size.out.curve": "La bomba “{name}” no tiene curva que se pueda usar, así que queda fuera. Escriba su curva de la ficha del fabricante.",
	"size.out.watts": "No se dan watts de la bomba “{name}”, así que no se sabe lo que cuesta por los años y queda fuera. Escríbalos de su ficha.",
	"size.out.bore":  "La bomba “{name}” deja pasar lo que necesita un diámetro de {found:both}, y ningún tubo a elegir para “{segment}” es tan ancho. Ponga antes una rejilla más fina, o permita tubo más ancho.",

	"size.nothing.wanted": "En ninguna parte se pide caudal, así que no hay para qué dimensionar. Dé a cada labio el caudal o lámina que se quiere.",
	"size.wanted.none":    "En “{name}” no se pide caudal. Dé el caudal o la lámina que se quiere ahí.",
	"size.tree.broken":    "“{name}” no cuelga de nada que lleve de vuelta a la bomba. Dimensionar necesita un camino de la bomba a cada alimentación, sin circuitos.",
	"size.choice.none":    "No hay tubo a elegir para “{name}”[: en el más lento va a {speed:both}, y el límite es {limit:both}]. Permita más medidas, o pida menos caudal.",
	"size.choice.uniform": "“{name}” tiene otras medidas a elegir que lo demás, así que ninguna medida puede ir por todo. Deje que cada tramo tenga la suya.",
	"size.amount.range":   "El importe de “{name}” es menor que cero o demasiado grande para ser cierto. Mírelo otra vez.",
	"size.reserve.steps":  "Los pasos de reserva deben subir desde más de 1, por ejemplo 1.05, 1.1, 1.25.",
	"size.shelf.empty":    "No hay bomba en el estante. Dé una lista de bombas, cada una con su curva.",

	"size.inverse.short":  "“{name}” no recibe su caudal pedido como está: faltan {found:both} de carga, así que no puede ir más alto ni más lejos.",
	"size.inverse.smooth": "El tubo de “{name}” no pierde nada, así que su largo no cuenta.",
}
