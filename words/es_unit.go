package words

// esUnit is enUnit in Spanish.
var esUnit = map[string]string{
	"unit.empty":     "No hay nada escrito. Escríbalo como “{example}”.",
	"unit.long":      "“{text}” es demasiado largo para una cifra. Escríbalo como “{example}”.",
	"unit.number":    "“{text}”: se espera un número donde está “{found}”. Escríbalo como “{example}”.",
	"unit.fraction":  "“{text}”: “{found}” no es una fracción. Escríbalo como “{example}”.",
	"unit.unknown":   "“{text}”: “{found}” no es una unidad conocida aquí. Escríbalo como “{example}”.",
	"unit.dimension": "“{text}”: “{found}” es unidad de otra cosa. Escríbalo como “{example}”.",
	"unit.trailing":  "“{text}”: sobra “{found}”. Escríbalo como “{example}”.",
	"unit.ambiguous": "“{text}”: “{found}” se puede leer de dos maneras. Quite la marca que agrupa miles, o escriba los decimales con punto y una cifra más.",
	"unit.parts":     "“{text}”: “{found}” no concuerda. Con dos unidades el primer número es entero, y el segundo menos que una de la primera, como “{example}”.",
	"unit.range":     "“{text}” es una cifra fuera de toda medida. Escríbalo como “{example}”.",
	"unit.percent":   "“{text}”: aquí un número mayor que 1 necesita su signo de porcentaje. Escríbalo como “{example}”.",
	"unit.whole":     "“{text}”: se espera un número entero. Escríbalo como “{example}”.",
	"unit.currency":  "“{text}”: “{found}” no es la moneda del trabajo. Escríbalo como “{example}”.",
	"unit.kind":      "“{text}” no se puede leer aquí: el programa lo pidió de un modo que no existe. Por favor repórtelo.",
}
