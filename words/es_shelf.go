package words

// esShelf is enShelf in Spanish.
var esShelf = map[string]string{
	"shelf.csv.empty":   "El archivo no tiene ningún renglón con valores. Guarde como CSV la hoja que los tiene y elija ese archivo.",
	"shelf.csv.large":   "El archivo es más grande que {limit}, lo más que se toma de una vez. Revise que sea el correcto, o guárdelo en partes.",
	"shelf.csv.rows":    "El archivo tiene más de {limit} renglones, lo más que se toma de una vez. Guárdelo en partes.",
	"shelf.csv.columns": "El renglón {line} tiene más de {limit} columnas, lo más que se lee. Revise que el archivo sea el correcto, o borre columnas que no hacen falta.",
	"shelf.csv.cell":    "Una celda del renglón {line} tiene más de {limit} signos. Puede faltarle una comilla; mire ese renglón.",
	"shelf.csv.binary":  "Este no es un archivo de texto sino de otro tipo ({sort}). En el programa que lo hizo elija “guardar como” y CSV, luego elija ese archivo.",
	"shelf.csv.quote":   "Una comilla que se abre en el renglón {line} nunca se cierra; el archivo puede haberse cortado. Ciérrela, o guarde otra vez el archivo.",
	"shelf.prices.form": "No se puede leer la lista de precios: no está en la forma en que la escribe este programa.",
	"shelf.full":        "La lista tendría más de {limit} precios, lo más que puede tener. Deje fuera lo que ya no se compra.",

	"shelf.choice.form":     "“{found}” no tiene = entre el campo y lo que se elige para él. Escríbalo como {example}.",
	"shelf.choice.field":    "No hay campo “{found}”. Hay: {expected}.",
	"shelf.choice.column":   "El archivo no tiene columna “{found}”. Tiene: {expected}.",
	"shelf.choice.unit":     "“{found}” no es una unidad en que pueda estar “{field}”. Un valor con su unidad es, por ejemplo, {example}.",
	"shelf.choice.unitless": "“{field}” no lleva unidad. Quite esa elección.",

	"shelf.row.missing":  "[Columna “{column}”: ]“{field}” está vacío. Escríbalo como “{example}”.",
	"shelf.row.unmapped": "No hay columna elegida para “{field}”, y sin ella no se puede tomar nada. Elija la que tiene valores como “{example}”.",
	"shelf.row.money":    "[Columna “{column}”: ]“{found}” no es un importe en esta moneda. Escríbalo como “{example}”.",
	"shelf.row.negative": "[Columna “{column}”: ]“{found}” es menor que cero, lo que no es un precio. Escríbalo como “{example}”.",
	"shelf.row.currency": "[Columna “{column}”: ]“{found}” no es código de una moneda. Escriba tres letras, como “{example}”, o elija la moneda para todos los renglones.",
	"shelf.row.unit":     "[Columna “{column}”: ]“{found}” no es nada por lo que pueda haber precio. Escriba “each”, “stick”, “box of 25”, o una cantidad como “10 ft”, “pint”, “ton”.",
	"shelf.row.date":     "[Columna “{column}”: ]“{found}” no es un día que se lea de una sola manera. Escriba año-mes-día, como “{example}”.",
	"shelf.row.order":    "[Columna “{column}”: ]“{found}” no es un lugar en la vuelta. Escriba un número entero de 1 a 999, como “{example}”.",
	"shelf.row.text":     "[Columna “{column}”: ]“{found}” tiene más de {limit} letras o trae un signo que no se imprime. Acórtelo.",
	"shelf.row.twice":    "“{item}” está también en el renglón {first}, por la misma unidad, moneda y mostrador. Se toma ese; borre uno de los dos.",
	"shelf.row.differs":  "[Columna “{column}”: ]la bomba “{name}” tiene “{found}” aquí y “{first}” arriba. Solo puede tener uno: escriba lo mismo en los dos renglones, o deje uno vacío.",
	"shelf.row.pair":     "Bomba “{name}”: un punto de la curva necesita caudal y carga, y aquí uno está vacío. Escriba los dos, o ninguno.",
	"shelf.row.comma":    "[Columna “{column}”: ]“{found}” no concuerda con los decimales elegidos, con punto o con coma. Elija los otros, o escríbalo así.",

	"chart.near":     "Las dos marcas del eje de {axis} están a menos de {least} pixeles, así que poco se puede leer entre ellas. Ponga una más lejos.",
	"chart.alike":    "Las dos marcas del eje de {axis} tienen el mismo valor. Escriba para cada una el valor que dice ahí la ficha.",
	"chart.parallel": "Los dos ejes van casi igual. Ponga las marcas del caudal a lo largo de un eje y las de la carga a lo largo del otro.",
	"chart.number":   "Falta una marca o su valor. Ponga las cuatro marcas y escriba el valor que dice en cada una.",

	"chart.picture.sort":   "El archivo no es una foto PNG o JPEG[ sino {sort}]. Fotografíe la ficha, o guarde la página como una de estas, y elija ese archivo.",
	"chart.picture.header": "El principio de la foto está dañado o cortado. Guárdela otra vez como PNG o JPEG y elija ese archivo.",
	"chart.picture.bytes":  "La foto tiene {found}; lo más son {limit}. Guárdela más chica.",
	"chart.picture.pixels": "La foto tiene {found} pixeles; lo más son {limit} millones. Guárdela más chica, o recorte la gráfica.",
	"chart.picture.small":  "La foto tiene {found} pixeles, muy pocos para leer una curva; lo menos son {least}. Tómela de más cerca.",
}
