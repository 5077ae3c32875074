package words

// esGeom is enGeom in Spanish.
var esGeom = map[string]string{
	"geom.value.finite":      "{where}: “{name}” no es un número que se pueda usar. Escríbalo otra vez.",
	"geom.value.range":       "{where}: “{name}” está fuera de lo que permite la forma. Revise la cifra y su unidad.",
	"geom.outline.points":    "{where}: el contorno tiene muy pocos puntos distintos para encerrar un área, o más de los que se pueden leer. Lo menos son tres puntos. Revise la lista.",
	"geom.outline.crosses":   "{where}: el contorno se cruza o se toca a sí mismo. Liste sus puntos en el orden en que camina por la orilla.",
	"geom.outline.flat":      "{where}: el contorno no encierra área: sus puntos están en una línea. Revise los puntos.",
	"geom.offsets.order":     "{where}: las distancias a lo largo de la línea base deben crecer de una a la siguiente. Póngalas en orden.",
	"geom.inset.middle":      "{where}: lo que va hacia adentro pasa de la mitad, así que no queda área. Haga más angosto el escalón o talud, o más grande el contorno.",
	"geom.simpson.intervals": "{where}: la regla de Simpson necesita un número par de intervalos. Agregue una medida o quite una.",
}
