package words

// enMotion holds the sentences for start and stop. The codes and their
// arguments are listed in engine/motion/code.go and engine/design/motioncodes.go.
var enMotion = map[string]string{
	"motion.value.finite": "{where}: “{name}” is not a number that can be used. Enter it again.",
	"motion.value.range":  "{where}: “{name}” is {found}; the limit of what is possible is {limit}. Check the figure and its unit.",
	"motion.missing":      "{where}: “{name}” is not given, and start and stop cannot be followed without it. Add it.",
	"motion.supply":       "{where}: at a level that the water comes to in start or stop, pump and pipe have no steady flow, so start and stop are not told. Look at the pump's curve and the runs.",
	"motion.steps":        "{where}: start and stop could not be followed to the end; the water levels at rest and running stand. Look for a box, pool or vault of hardly any size.",
}
