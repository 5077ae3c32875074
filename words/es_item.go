package words

// esItem has the items of lists that are neither pipe nor fittings, and what is
// said behind them, by the English: "soil, common earth", "liner, pond".
var esItem = map[string]string{
	"bed":          "lecho",
	"boulders":     "rocas",
	"cement":       "cemento solvente",
	"clay":         "arcilla",
	"common earth": "tierra común",
	"digging":      "excavación",
	"gravel":       "grava",
	"liner":        "membrana",
	"loam":         "tierra franca",
	"pond":         "estanque",
	"primer":       "primer (limpiador)",
	"soil":         "tierra",
	"thread tape":  "cinta selladora de rosca",
	"truck load":   "viaje de camión",
	"underlayment": "geotextil",
}

// esMeasure has what the formulas call the figures put into them, where a fault
// names one.
var esMeasure = map[string]string{
	"altitude": "altitud", "angle": "ángulo", "area": "área", "atmosphere": "presión del aire", "body": "cuerpo", "bore": "diámetro interior",
	"contractions": "contracciones", "crest": "cresta", "crestHeight": "altura de la cresta", "daysPerYear": "días al año", "dayOfYear": "día del año",
	"depth": "hondo", "drawn": "lo que pide", "driest": "humedad más baja", "efficiency": "eficiencia", "elevation": "elevación", "energy": "energía",
	"flow": "caudal", "form": "fórmula", "friction": "fricción", "gauge": "manómetro", "head": "carga", "highest": "máxima", "hoursPerDay": "horas al día",
	"humidest": "humedad más alta", "humidity": "humedad", "latitude": "latitud", "length": "largo", "line": "línea de agua", "lowest": "mínima",
	"netRadiation": "radiación neta", "opening": "abertura", "outline": "contorno", "place of the pump": "lugar de la bomba", "pond": "estanque",
	"port": "boca", "pump": "bomba", "rim": "borde", "roll": "giro", "roughness": "rugosidad", "running line": "línea de agua andando", "sill": "umbral", "sheet": "lámina", "sheetAt": "lugar de la lámina",
	"slope": "pendiente", "suction": "succión", "sun": "sol", "tank": "tanque", "temperature": "temperatura", "units": "unidades", "vault": "bóveda", "vault floor": "piso de la bóveda",
	"velocity": "velocidad", "speed": "velocidad", "volume beyond the wall": "volumen más allá de la pared", "water": "agua", "watercourse": "curso de agua",
	"watts": "watts", "wear": "desgaste", "width": "ancho", "wind": "viento", "windAt": "altura del viento",
}
