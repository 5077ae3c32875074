package words

// enShelf holds what packages shelf and chart find in a file from elsewhere. The
// row is told before the sentence by who shows it. The codes and their arguments
// are listed in shelf/codes.go and shelf/chart/codes.go.
var enShelf = map[string]string{
	// A file that cannot be taken at all.
	"shelf.csv.empty":   "There is no row with values in the file. Save the sheet that has them as CSV and choose that file.",
	"shelf.csv.large":   "The file is larger than {limit}, the most that is taken at once. Check that it is the right one, or save it in parts.",
	"shelf.csv.rows":    "The file has more than {limit} rows, the most that are taken at once. Save it in parts.",
	"shelf.csv.columns": "Row {line} has more than {limit} columns, the most that are read. Check that the file is the right one, or delete columns that are not needed.",
	"shelf.csv.cell":    "A cell in row {line} is longer than {limit} signs. A quotation mark may be missing in it; look at that row.",
	"shelf.csv.binary":  "This is no text file but another sort ({sort}). In the program that made it choose “save as” and CSV, then choose that file.",
	"shelf.csv.quote":   "A quotation mark that is opened in row {line} is never closed; the file may have been cut off. Close it, or save the file again.",
	"shelf.prices.form": "The list of prices cannot be read: it is not in the form in which this program writes it.",
	"shelf.full":        "The list would have more than {limit} prices, the most it may have. Leave out what is not bought any more.",

	"shelf.choice.form":     "“{found}” has no = between the field and what is chosen for it. Write it like {example}.",
	"shelf.choice.field":    "There is no field “{found}”. There are: {expected}.",
	"shelf.choice.column":   "The file has no column “{found}”. It has: {expected}.",
	"shelf.choice.unit":     "“{found}” is no unit that “{field}” can be in. A value with its unit is, for example, {example}.",
	"shelf.choice.unitless": "“{field}” takes no unit. Leave that choice out.",

	// A row that cannot be taken.
	"shelf.row.missing":  "[Column “{column}”: ]“{field}” is empty. Write it like “{example}”.",
	"shelf.row.unmapped": "No column is chosen for “{field}”, and nothing can be taken without it. Choose the one with values like “{example}”.",
	"shelf.row.money":    "[Column “{column}”: ]“{found}” is not an amount in this currency. Write it like “{example}”.",
	"shelf.row.negative": "[Column “{column}”: ]“{found}” is below zero, which is no price. Write it like “{example}”.",
	"shelf.row.currency": "[Column “{column}”: ]“{found}” is no code of a currency. Write three letters, like “{example}”, or choose the currency for all rows.",
	"shelf.row.unit":     "[Column “{column}”: ]“{found}” is nothing that a price can be for. Write “each”, “stick”, “box of 25”, or an amount such as “10 ft”, “pint”, “ton”.",
	"shelf.row.date":     "[Column “{column}”: ]“{found}” is no day that can be read in one way only. Write year-month-day, like “{example}”.",
	"shelf.row.order":    "[Column “{column}”: ]“{found}” is no place in the round. Write a whole number from 1 to 999, like “{example}”.",
	"shelf.row.text":     "[Column “{column}”: ]“{found}” is longer than {limit} letters or holds a sign that cannot be printed. Shorten it.",
	"shelf.row.twice":    "“{item}” stands in row {first} too, for the same unit, currency and counter. That one is taken; delete one of them.",
	"shelf.row.differs":  "[Column “{column}”: ]pump “{name}” has “{found}” here and “{first}” above. It can have one only: write the same in both rows, or leave one empty.",
	"shelf.row.pair":     "Pump “{name}”: a point of the curve needs a flow and a head, and one of them is empty here. Write both, or neither.",
	"shelf.row.comma":    "[Column “{column}”: ]“{found}” does not fit the decimals as chosen, with a point or with a comma. Choose the other, or write it that way.",

	// Marks on the picture of a chart.
	"chart.near":     "The two marks on the axis of the {axis} stand closer than {least} pixels, so that little can be read between them. Set one of them further along.",
	"chart.alike":    "Both marks on the axis of the {axis} have the same value. Type for each the value that stands there on the sheet.",
	"chart.parallel": "The two axes run almost the same way. Set the marks of the flow along one axis and those of the head along the other.",
	"chart.number":   "A mark or its value is missing. Set all four marks and type the value that stands at each.",

	"chart.picture.sort":   "The file is no PNG or JPEG picture[ but {sort}]. Photograph the sheet, or save the page as one of these, and choose that file.",
	"chart.picture.header": "The beginning of the picture is damaged or cut off. Save it again as PNG or JPEG and choose that file.",
	"chart.picture.bytes":  "The picture has {found}; {limit} are the most. Save it smaller.",
	"chart.picture.pixels": "The picture has {found} pixels; {limit} million are the most. Save it smaller, or cut out the chart.",
	"chart.picture.small":  "The picture has {found} pixels, too few to read a curve from; {least} are the least. Take it from nearer.",
}
