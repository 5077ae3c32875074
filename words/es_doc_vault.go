package words

// esDocVault has what the fields of the vault are for, by the English.
var esDocVault = map[string]string{
	"form of the inside in plan": "forma del interior en planta",

	"inner length at the rim (x), or the inner diameter of a round vault": "largo interior en la boca (x), o el diámetro interior de una bóveda redonda",

	"inner width at the rim (y)": "ancho interior en la boca (y)",

	"inner depth, floor to the underside of the lid": "hondo interior, del piso a la cara de abajo de la tapa",

	"inner length at the floor, when the walls taper": "largo interior en el piso, si las paredes se cierran",

	"inner width at the floor, when the walls taper": "ancho interior en el piso, si las paredes se cierran",

	"elevation of the floor": "elevación del piso",

	"elevation of the skimmer weir's sill, below which the pond no longer feeds the vault": "elevación del umbral del skimmer, debajo del cual el estanque ya no alimenta la bóveda",

	"width of the skimmer's weir": "ancho del vertedor del skimmer",

	"drop of level through mat, net or screen": "lo que baja el nivel al pasar filtro, red o rejilla",

	"greatest pump flow on the skimmer's sheet": "mayor caudal de bomba según la ficha del skimmer",

	"the opening over it, where that is smaller than the vault": "la boca, donde es más chica que la bóveda",

	"the hole in the wall": "el hoyo en la pared",

	"what stands in the way: rack, basket, screen, float, bowed wall": "lo que estorba: repisa, canasta, rejilla, flotador, pared pandeada",

	"clear length of the opening, along the vault's": "largo libre de la boca, a lo largo de la bóveda",

	"clear width of the opening, along the vault's": "ancho libre de la boca, a lo ancho de la bóveda",

	"from the inside of the left wall at the rim to the opening; in the middle when empty": "desde la cara interior de la pared izquierda, en el borde, hasta la boca; en medio si se deja vacío",

	"from the inside of the front wall at the rim to the opening; in the middle when empty": "desde la cara interior de la pared del frente, en el borde, hasta la boca; en medio si se deja vacío",

	"wall the pipe leaves by: left x = 0, right, front y = 0, back": "pared por la que sale el tubo: izquierda x = 0, derecha, frente y = 0, atrás",

	"centre of the hole along the wall: y on left and right, x on front and back": "centro del hoyo a lo largo de la pared: y en izquierda y derecha, x en frente y atrás",

	"centre of the hole above the floor": "centro del hoyo sobre el piso",

	"the hole is not drilled yet: how far from there its centre may lie": "el hoyo todavía no se perfora: hasta dónde puede quedar su centro desde ahí",

	"so much less along the wall": "tanto menos a lo largo de la pared",

	"so much more along the wall": "tanto más a lo largo de la pared",

	"so much lower": "tanto más bajo",

	"so much higher": "tanto más alto",

	"what it is": "lo que es",

	"corner nearest the origin": "esquina más cercana al origen",

	"corner farthest from the origin": "esquina más lejana del origen",

	"along the length": "a lo largo",

	"along the width": "a lo ancho",

	"up from the floor": "hacia arriba desde el piso",
}
