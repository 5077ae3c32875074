package words

// esLabel is enLabel in Spanish.
var esLabel = map[string]string{
	"app.meant":          "Quiero decir {text}",
	"app.unsaid.assumed": "sin decir: se supone {value}",

	"app.label.numbers-decimal": "Cómo se escriben los decimales", "app.hint.numbers-decimal": "con punto, 12.5, o con coma, 12,5; lo que usted escriba se lee también así",
	"app.label.numbers-thousands": "Qué va entre los millares", "app.hint.numbers-thousands": "con coma 1,234; con espacio 1 234; sin nada 1234",
	"app.label.numbers-money": "Qué va junto a un importe", "app.hint.numbers-money": "el signo de la moneda, $, o su código, USD",
	"app.label.numbers-side": "Dónde va ese signo o código", "app.hint.numbers-side": "antes del importe, $12.50, o después, 12.50 $",

	"app.label.site-designRain": "Aguacero para el que hay que estar listo", "app.label.site-reserve": "Lugar para lo que se evapora", "app.label.site-rainTime": "Cuánto dura el aguacero", "app.label.site-tariff": "Precio del kWh",
	"app.label.site-valveLeak": "Fuga de una válvula check gastada", "app.hint.site-currency": "tres letras: USD, MXN, EUR",
	"app.label.survey-setups": "Estaciones del nivel", "app.label.survey-setups-benchmark": "Punto visado primero", "app.label.survey-points-setup": "Leído desde la estación",

	"app.label.pond-water": "Línea de agua", "app.hint.pond-water": "su nivel en reposo; los demás niveles se pueden decir desde ella",
	"app.hint.pond-rim":    "el punto más bajo de la orilla, o el rebosadero; desde la línea de agua: @water + 3 in",
	"app.label.pond-depth": "Hondo máximo", "app.label.pond-void": "Agua entre piedras", "app.label.pond-measured": "Volumen, medido", "app.hint.pond-measured": "con medidor o por tiempo de llenado; va antes que las medidas",
	"app.label.pond-fillLevel": "El flotador cierra en", "app.label.pond-fillFlow": "El flotador da", "app.label.pond-section-in": "Hacia adentro desde la orilla", "app.label.pond-section": "Costado del estanque",

	"app.label.watercourses-parts-lip-crest": "Nivel de la cresta", "app.hint.watercourses-parts-lip-crest": "desde la línea de agua: @water + 2 ft",
	"app.label.watercourses-parts-lip-c": "Coeficiente C del vertedor", "app.label.watercourses-parts-reach-n": "Rugosidad del lecho", "app.hint.watercourses-parts-reach-n": "n de Manning",
	"app.label.watercourses-parts-reach-name": "Nombre", "app.hint.watercourses-parts-reach-name": "cómo se llama este tramo", "app.hint.watercourses-parts-reach-depth": "hondo trabajando, medido; va antes que la fórmula",
	"app.label.watercourses-parts-reach-holds": "Agua que se queda", "app.hint.watercourses-parts-reach-holds": "hondo medio que se queda en el tramo con la bomba parada",
	"app.label.watercourses-box-inletLoss": "Pérdida en la entrada (K)", "app.hint.watercourses-box-inletLoss": "1 donde ahí se pierde toda la velocidad que trae el agua en el tubo", "app.label.watercourses-box-void": "Agua entre la grava",
	"app.label.watercourses-box": "Caja de derrame", "app.hint.watercourses-name": "cómo le dice a esta agua; el tubo llega a ella con este nombre",

	"app.label.use": "Bomba en uso", "app.label.pumps-boxFlow": "Caudal en la caja", "app.label.pumps-maxHead": "Carga máxima en la caja", "app.label.pumps-minWater": "Agua mínima sobre el piso",
	"app.label.pumps-cordPath": "Camino del cable al tomacorriente", "app.label.pumps-motorWatts": "Watts máximos de su motor", "app.label.pumps-port": "Su salida", "app.label.pumps-port-size": "Medida de la salida", "app.hint.pumps-port-size": "como la dice su ficha",
	"app.label.pumps-port-thread": "La salida conecta por", "app.label.pumps-attitudes": "Maneras en que puede pararse", "app.label.pumps-attitudes-name": "Cómo se para", "app.hint.pumps-attitudes-name": "sobre sus patas, de lado",
	"app.label.pumps-attitudes-length": "La bomba, de izquierda a derecha", "app.label.pumps-attitudes-width": "La bomba, del frente al fondo", "app.label.pumps-attitudes-height": "La bomba, de las patas a lo más alto",
	"app.hint.pumps-attitudes-length": "parada de esta manera", "app.hint.pumps-attitudes-width": "parada de esta manera", "app.hint.pumps-attitudes-height": "parada de esta manera",
	"app.label.pumps-attitudes-port": "Centro de la salida", "app.label.pumps-attitudes-port-x": "Salida desde el lado izquierdo de la bomba", "app.label.pumps-attitudes-port-y": "Salida desde el frente de la bomba", "app.label.pumps-attitudes-port-z": "Salida sobre las patas",
	"app.hint.pumps-attitudes-port-x": "al centro de su cara", "app.hint.pumps-attitudes-port-y": "al centro de su cara", "app.hint.pumps-attitudes-port-z": "al centro de su cara",
	"app.label.pumps-attitudes-points": "La salida mira", "app.hint.pumps-attitudes-points": "parada de esta manera, antes de girarla en la bóveda",
	"app.label.pumps-outside": "Dónde está cuando no está en el agua", "app.label.pumps-outside-centre": "Nivel de su entrada", "app.label.pumps-outside-intake": "Nivel de la boca bajo el agua", "app.label.pumps-outside-length": "Largo del tubo de succión",
	"app.label.pumps-npsh": "Carga de succión que pide (NPSHr)", "app.hint.pumps-npsh-head": "carga de succión que pide a ese caudal", "app.label.circuit": "Circuito eléctrico", "app.label.circuit-length": "Largo del cable, de ida",
	"app.label.furtherPumps": "Bombas que trabajan a la vez",

	"app.label.runs-throttle": "Válvula cerrada en parte (K)", "app.hint.runs-throttle": "coeficiente de pérdida como está puesta, además del de la válvula abierta", "app.label.runs-c": "C de Hazen-Williams", "app.hint.runs-roughness": "de la pared de adentro, por su ficha; va antes que las tablas",
	"app.hint.runs-bore": "diámetro interior medido; va antes que las tablas",

	"app.label.vault-length": "Por dentro, de izquierda a derecha", "app.hint.vault-length": "en el borde; de una bóveda redonda, su diámetro", "app.label.vault-width": "Por dentro, del frente al fondo", "app.hint.vault-width": "en el borde",
	"app.label.vault-floor": "Nivel del piso", "app.hint.vault-floor": "desde la línea de agua del estanque: @water - 22 in", "app.label.vault-sill": "Nivel del umbral", "app.hint.vault-sill": "el borde por donde el estanque entra a la bóveda; desde la línea de agua: @water - 4 in",
	"app.label.vault-weirWidth": "Ancho del umbral", "app.hint.vault-weirWidth": "ancho libre por donde pasa el agua",
	"app.label.vault-screenLoss": "Caída en la malla y el filtro", "app.label.vault-rated": "Caudal máximo según la ficha del skimmer",
	"app.label.vault-hatch": "Una boca más chica que la bóveda", "app.label.vault-hatch-length": "Boca, de izquierda a derecha", "app.hint.vault-hatch-length": "el claro por el que debe pasar la bomba",
	"app.label.vault-hatch-width": "Boca, del frente al fondo", "app.hint.vault-hatch-width": "el claro por el que debe pasar la bomba",
	"app.label.vault-hatch-left": "Desde la pared izquierda", "app.hint.vault-hatch-left": "desde su cara interior, arriba, hasta la boca; en medio si se deja vacío",
	"app.label.vault-hatch-front": "Desde la pared del frente", "app.hint.vault-hatch-front": "desde su cara interior, arriba, hasta la boca; en medio si se deja vacío",
	"app.label.vault-outlet": "El hoyo en la pared", "app.label.vault-outlet-wall": "Pared en que está", "app.hint.vault-outlet-wall": "parado enfrente de la bóveda y mirando hacia adentro",
	"app.label.vault-outlet-along": "A lo largo de la pared", "app.hint.vault-outlet-along": "al centro del hoyo: desde la pared izquierda en el frente y al fondo, desde la pared del frente a la izquierda y a la derecha",
	"app.label.vault-outlet-height": "Sobre el piso", "app.hint.vault-outlet-height": "al centro del hoyo",
	"app.label.vault-outlet-undrilled": "Todavía sin perforar: cuánto se puede mover", "app.label.vault-outlet-undrilled-less": "Menos a lo largo de la pared, por", "app.label.vault-outlet-undrilled-more": "Más a lo largo de la pared, por",
	"app.label.vault-outlet-undrilled-down": "Más abajo, por", "app.label.vault-outlet-undrilled-up": "Más arriba, por",
	"app.label.vault-obstacles-from": "Empieza", "app.label.vault-obstacles-from-x": "Empieza, desde la pared izquierda", "app.label.vault-obstacles-from-y": "Empieza, desde la pared del frente", "app.label.vault-obstacles-from-z": "Empieza, sobre el piso",
	"app.label.vault-obstacles-to": "Termina", "app.label.vault-obstacles-to-x": "Termina, desde la pared izquierda", "app.label.vault-obstacles-to-y": "Termina, desde la pared del frente", "app.label.vault-obstacles-to-z": "Termina, sobre el piso",
	"app.hint.vault-obstacles-from-x": "el lado más cercano a esa pared", "app.hint.vault-obstacles-from-y": "el lado más cercano a esa pared", "app.hint.vault-obstacles-from-z": "su cara de abajo",
	"app.hint.vault-obstacles-to-x": "el lado más lejano de esa pared", "app.hint.vault-obstacles-to-y": "el lado más lejano de esa pared", "app.hint.vault-obstacles-to-z": "su cara de arriba",

	"app.label.assembly-attitude": "La bomba está parada", "app.hint.assembly-attitude": "una de las maneras nombradas en la página Bomba", "app.label.assembly-turn": "Girada", "app.label.assembly-makeUp": "Hueco en cada punta de tubo",
	"app.hint.assembly-makeUp": "lo que queda abierto al pegar un tubo; 1/8 in por práctica común, 0 es metido hasta el tope",
	"app.label.assembly-at":    "Dónde está parada la bomba", "app.label.assembly-at-x": "Desde la pared izquierda", "app.label.assembly-at-y": "Desde la pared del frente", "app.label.assembly-at-z": "Sobre el piso",
	"app.hint.assembly-at-x": "al lado de la bomba más cercano a esa pared, ya girada", "app.hint.assembly-at-y": "al lado de la bomba más cercano a esa pared, ya girada", "app.hint.assembly-at-z": "a sus patas; 0 sobre el piso",
	"app.label.assembly-closing": "La pieza de cierre", "app.label.assembly-search": "De qué puede prescindir un trazo", "app.label.assembly-search-into": "El agua entra a las partes de la pared", "app.label.assembly-search-stands": "Maneras en que puede pararse la bomba",
	"app.label.assembly-start": "De la salida a la primera conexión", "app.label.assembly-startBy": "Tomado", "app.label.assembly-parts": "Conexiones, de la bomba a la pared", "app.label.assembly-parts-next": "Hasta la conexión que sigue", "app.label.assembly-parts-nextBy": "Tomado",
	"app.label.measured": "Conexiones medidas", "app.label.measured-k": "Pérdida (K)", "app.label.measured-toStop": "Del centro al tope", "app.label.measured-attitudes": "Maneras en que puede ir",

	"app.label.stock-keep": "El resto más corto que vale guardar", "app.label.stock-only": "No se consigue nada más",
	"app.hint.stock-only": "un trazo usa entonces solo las conexiones listadas aquí, y tubo que salga de los retazos y los tramos contados", "app.label.stock-pieces": "Más piezas que cortar",
}
