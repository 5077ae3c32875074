package words

// esCatalog is enCatalog in Spanish.
var esCatalog = map[string]string{
	"catalog.pipe.unknown":     "{where}: el libro no tiene tubo de clase “{kind}”.[ Parecido: {near}.] Elija una clase del libro, o dé el diámetro interior.",
	"catalog.pipe.size":        "{where}: el libro no tiene tubo {kind} en medida {size}.[ Hay: {near}.]",
	"catalog.fitting.unknown":  "{where}: el libro no tiene conexión “{fitting}”.[ Parecido: {near}.] Elija una del libro, o mida la que tiene en la mano.",
	"catalog.fitting.size":     "{where}: el libro no tiene dimensiones de {fitting} en medida {size}.[ Hay: {near}.] Mida la conexión que tiene en la mano y dé sus medidas de centro a cara.",
	"catalog.fitting.twosizes": "{where}: {fitting} une dos medidas, pero la medida es “{size}”. Escriba las dos, como “2 x 1-1/2”.",
	"catalog.fitting.onesize":  "{where}: {fitting} viene en una sola medida, pero la medida es “{size}”. Escriba una medida, o elija una conexión de reducción.",
	"catalog.size.unread":      "{where}: “{size}” no se puede leer como medida. Escríbala como “1-1/2”, o “50 mm”.",
	"catalog.size.dn":          "{where}: “{size}” puede ser dos diámetros exteriores en tubo métrico. Dé el diámetro exterior, como “50 mm”.",
	"catalog.loss.none":        "{where}: el libro no tiene coeficiente de pérdida para “{fitting}”. Tome K de la ficha del fabricante.",
	"catalog.loss.size":        "{where}: las tablas de pérdidas no tienen {fitting} en medida {size}. Tome K de la ficha del fabricante.",
	"catalog.loss.which":       "{where}: la pérdida de “{fitting}” depende del camino que toma el agua. Elija: {near}.",
	"catalog.measured.value":   "{where}: la medida “{value}” de {fitting} {size} es menor que cero o no es número. Mídala otra vez.",
	"catalog.thread.unknown":   "{where}: el libro no tiene rosca “{thread}” en medida “{size}”.[ Hay: {near}.]",
	"catalog.table.outside":    "{where}: la tabla de {table} no llega tan lejos: {value} queda fuera. Pregunte al fabricante de la parte.",
	"catalog.soil.unknown":     "{where}: el libro no tiene hinchamiento para el suelo “{soil}”.[ Parecido: {near}.]",
}
