package words

// enAnswer holds the fixed words of the printed answer.
var enAnswer = map[string]string{
	"way.up": "up", "way.down": "down", "way.right": "to the right", "way.left": "to the left", "way.back": "to the back", "way.front": "to the front",
	"level.course.first": "first start", "level.course.kept": "everyday, valve holding", "level.course.open": "everyday, no valve", "level.course.topped": "topped up running",
	"level.moment.rest": "at rest", "level.moment.run": "running", "level.moment.stop": "stopped", "level.moment.rerun": "running again",
	"level.moment.stop-open": "stopped, valve open", "level.moment.rerun-open": "running again after that",
	"moves.flow": "the pump's flow", "moves.draw": "what a restart draws",
}
