package words

// esDocPump has what the fields of pumps are for, by the English.
var esDocPump = map[string]string{
	"name on this job": "nombre en este trabajo",

	"points of its curve: four or more are normal, two or three are told": "puntos de su curva: lo normal son cuatro o más, dos o tres se avisan",

	"the flow printed on the box (at no head)": "el caudal impreso en el empaque (sin carga)",

	"the greatest head printed on the box (at no flow)": "la mayor carga impresa en el empaque (sin caudal)",

	"electrical power drawn": "potencia eléctrica que toma",

	"supply voltage": "voltaje de alimentación",

	"current drawn": "corriente que toma",

	"its outlet": "su salida",

	"the ways it may stand, by its sheet": "las posiciones en que puede ir, según su ficha",

	"least depth of water over the vault floor that its sheet asks for": "agua mínima sobre el piso de la bóveda que pide su ficha",

	"time in which it comes up to speed after a start; longer with a soft start": "tiempo en que toma velocidad después de un arranque; más con arranque suave",

	"largest solid it passes": "sólido más grande que deja pasar",

	"length of its cord": "largo de su cable",

	"length of the cord's way to the outlet": "largo del camino del cable al contacto",

	"its weight": "su peso",

	"its price": "su precio",

	"the pump is there already and stays: it is not bought": "la bomba ya está y se queda: no se compra",

	"its sheet says continuous duty": "su ficha dice servicio continuo",

	"further speeds it can be set to; its curve and watts are those of full speed": "otras velocidades a que se puede poner; su curva y watts son los de la máxima",

	"name of the speed it is set to; full speed when empty": "nombre de la velocidad a que está; vacío: la máxima",

	"part of its head lost to wear: 1 minus the head measured against a shut valve over the sheet's": "parte de su carga perdida por desgaste: 1 menos la carga medida contra válvula cerrada entre la de la ficha",

	"least flow its sheet allows for lasting use": "menor caudal que su ficha permite para uso duradero",

	"flow of best efficiency on its sheet; worked out from the watts along its curve when empty": "caudal de mejor eficiencia según su ficha; vacío: se calcula con los watts de su curva",

	"greatest electrical power its motor may draw for long, by its plate": "mayor potencia eléctrica que su motor puede tomar por largo tiempo, según su placa",

	"points of the suction head it requires (NPSHr), for a pump outside the water": "puntos de la carga de succión que requiere (NPSHr), para una bomba fuera del agua",

	"where it stands when it is not in the water, and its suction pipe": "dónde está si no va en el agua, y su tubo de succión",

	"where its data come from": "de dónde vienen sus datos",

	"the pump of the shelf that it was taken from": "la bomba del estante de donde se tomó",

	"identity of the pump on the shelf": "identidad de la bomba en el estante",

	"number of the state it was taken in": "número del estado en que se tomó",

	"flow delivered": "caudal entregado",

	"head at that flow": "carga a ese caudal",

	"electrical power at that flow": "potencia eléctrica a ese caudal",

	"what the switch or the controller calls it": "cómo le dice el interruptor o el control",

	"part of full speed, for the affinity laws; of no account beside a curve": "parte de la velocidad máxima, para las leyes de afinidad; no cuenta junto a una curva",

	"points of its curve at this speed; they beat the affinity laws": "puntos de su curva a esta velocidad; van antes que las leyes de afinidad",

	"electrical power at this speed, with a curve that gives none": "potencia eléctrica a esta velocidad, con una curva que no la da",

	"NPSH required at that flow": "NPSH requerida a ese caudal",

	"elevation of the centre of its inlet": "elevación del centro de su entrada",

	"kind and size of the suction pipe": "clase y medida del tubo de succión",

	"length of the suction pipe": "largo del tubo de succión",

	"fittings of the suction pipe, from its open end to the pump": "conexiones del tubo de succión, de su boca abierta a la bomba",

	"elevation of the open end under water": "elevación de la boca abierta bajo el agua",

	"nominal size": "medida nominal",

	"how it connects": "cómo se conecta",

	"how it stands": "cómo va",

	"size along x": "medida en x",

	"size along y": "medida en y",

	"size along z": "medida en z",

	"centre of the port's face": "centro de la cara de la salida",

	"the way the port looks, before the pump is turned: left is -x, right +x, front -y, back +y": "hacia dónde mira la salida, antes de girar la bomba: izquierda es -x, derecha +x, frente -y, atrás +y",

	"what its place is called; runs start from this name": "cómo se llama su lugar; las líneas empiezan desde este nombre",

	"which of the pumps it is": "cuál de las bombas es",

	"where it draws from: the vault when empty, or a junction that a run ends at, for a pump that lifts on what another sends": "de dónde toma: vacío, la bóveda; o un entronque donde termina una línea, para una bomba que eleva lo que otra manda",
}
