package job

// The codes of the faults that this package finds. They are stable; package
// words holds the sentence for each.
//
// Every fault carries "where": the place in the job's own words ("watercourse
// cascade, part 3, lip lower, width"; empty for the document as a whole). An
// argument that shows what was typed is cut to a readable length. The further
// arguments stand beside each code.
const (
	// The document cannot be read at all: the only faults that stop decoding.

	CodeTooLarge    = "job.too-large"        // more bytes than a job may have: limit
	CodeTooMany     = "job.too-many"         // more values than a job may have: limit
	CodeNoText      = "job.no-text"          // the file is empty
	CodeEncoding    = "job.encoding"         // not UTF-8: found (the bytes, hexadecimal)
	CodeTooDeep     = "job.too-deep"         // objects and lists nested too deep: limit
	CodeNoObject    = "job.no-object"        // something else than an object at the top: found
	CodeCutOff      = "job.cut-off"          // the file ends in the middle
	CodeShelf       = "job.shelf.form"       // a shelf is neither a list of pumps nor a job
	CodeExtra       = "job.extra"            // something behind the end of the document: found
	CodeInchMark    = "job.inch-mark"        // a quotation mark inside a text, most likely an inch mark: found
	CodeComma       = "job.comma"            // a comma is missing before: found
	CodeCommaExtra  = "job.comma-extra"      // a comma with nothing behind it: found
	CodeColon       = "job.colon"            // a colon is missing between name and value: found
	CodeQuotes      = "job.quotes"           // a name or text without double quotes: found
	CodeComment     = "job.comment"          // a comment, which JSON has not: found
	CodeLineInText  = "job.line-in-text"     // a text runs over the end of its line, or holds a control character
	CodeEscape      = "job.escape"           // a backslash followed by what JSON does not know: found
	CodeNumber      = "job.number"           // a number written as JSON does not write it: found
	CodeBracket     = "job.bracket"          // a closing bracket of the wrong kind: found
	CodeSyntax      = "job.syntax"           // any other break of JSON's grammar: found
	CodeFormat      = "job.format"           // another sort of file: found, expected
	CodeNewer       = "job.version-newer"    // a version that this program does not know: found, newest
	CodeVersionOdd  = "job.version-unknown"  // a version there never was: found, newest
	CodeMore        = "job.more"             // more faults than are listed: count, listed
	CodeUnreadable  = "job.unreadable"       // the reader broke off: found (its own error)
	CodeUpgradeHeld = "job.upgrade-conflict" // an old field and its new name both stand: field, near

	// A field is faulty and is left empty; the rest is kept.

	CodeUnknownNear  = "job.unknown-field"       // no such field; one is spelt nearly so: field, near
	CodeUnknown      = "job.unknown-field-alone" // no such field and none like it: field, known
	CodeTwice        = "job.twice"               // a field stands twice, neither is used: field, line (of the first)
	CodeTwicePart    = "job.twice-part"          // an object or list stands twice, the first is used: field, line
	CodeMissing      = "job.missing"             // a field without which its part means nothing: field, doc, example
	CodeMissingPart  = "job.missing-part"        // the same, for an object: field, doc
	CodeNull         = "job.null"                // null, which says nothing: found
	CodeWantText     = "job.want-text"           // something else than a text: found, example
	CodeWantTrue     = "job.want-true"           // something else than true or false: found
	CodeWantWhole    = "job.want-whole"          // something else than a whole number: found, example
	CodeWantQuantity = "job.want-quantity"       // something else than a quantity: found, example
	CodeWantUnit     = "job.want-unit"           // the same where a bare number has a unit: found, example, unit
	CodeWantMoney    = "job.want-money"          // something else than an amount: found, example
	CodeWantPart     = "job.want-part"           // something else than an object: found, known
	CodeWantList     = "job.want-list"           // something else than a list: found
	CodeWordNear     = "job.word"                // not one of the words; one is spelt nearly so: found, near, known
	CodeWord         = "job.word-alone"          // not one of the words: found, known
	CodeRange        = "job.range"               // absurd: found, value (as read), low, high
	CodeLong         = "job.long"                // a text too long: count, limit
	CodeListLong     = "job.list-long"           // a list too long, what is beyond the limit is not read: count, limit
	CodeDate         = "job.date"                // no day of the calendar: found, example
	CodeCurrency     = "job.currency"            // no currency code: found, example
	CodeNameSpace    = "job.name-space"          // a name with blanks at its ends or unprintable signs in it: found
	CodePointName    = "job.point-name"          // a point's name that reads like an elevation: found

	// A quantity is not readable. Each carries: found (as typed), part (the part
	// of it that is wrong), near (a unit spelt nearly so), example.

	CodeReadEmpty     = "job.read.empty"     // no figure in it
	CodeReadLong      = "job.read.long"      // too long for a quantity
	CodeReadNumber    = "job.read.number"    // part is not a number
	CodeReadEnd       = "job.read.end"       // a number is missing at the end
	CodeReadFraction  = "job.read.fraction"  // part is not a fraction
	CodeReadUnit      = "job.read.unit"      // part is not a unit
	CodeReadUnitNear  = "job.read.unit-near" // part is not a unit, near is one
	CodeReadDimension = "job.read.dimension" // part is a unit of something else
	CodeReadTrailing  = "job.read.trailing"  // part is left over
	CodeReadAmbiguous = "job.read.ambiguous" // part has a comma or dot that can be read in two ways: plain, decimal (the two as they would be typed), likely (where the field takes one alone)
	CodeReadUnclear   = "job.read.unclear"   // the same, though the job says its marks: plain, decimal, likely
	CodeReadParts     = "job.read.parts"     // feet and inches that do not go together
	CodeReadHuge      = "job.read.huge"      // a figure beyond all measure
	CodeReadPercent   = "job.read.percent"   // a number above 1 without its percent sign
	CodeReadWhole     = "job.read.whole"     // a count that is not whole
	CodeReadCurrency  = "job.read.currency"  // an amount in another currency than the job's: part
	CodeReadLevel     = "job.read.level"     // "@" without a name, or an offset that cannot be read
	CodeMoneyBelow    = "job.money-below"    // a price below zero: found, example
	CodeTolerance     = "job.tolerance"      // a tolerance below zero: found, example
	CodeToleranceOf   = "job.tolerance-of"   // a share of a value that has no natural zero: found, example

	// Found by looking across the document.

	CodeNameTwice   = "job.name-twice"   // two of a list with the same name: name, number (of the first in the list)
	CodePartNone    = "job.part-none"    // a part is neither lip, reach nor pool: known
	CodePartSeveral = "job.part-several" // a part is more than one of them: found, known

	CodeNoSuch     = "job.no-such"      // a name that refers to nothing: found, doc (what the field names), known
	CodeNoSuchNear = "job.no-such-near" // the same, one is spelt nearly so: found, doc, near
	CodeNoSuchAny  = "job.no-such-any"  // the same, and there is none it could refer to: found, doc

	CodeSurveyNothing = "job.survey.nothing"  // a point with neither elevation nor reading
	CodeSurveyNoSetup = "job.survey.no-setup" // a reading, but no standing of the level
	CodeSurveyWhich   = "job.survey.which"    // a reading from one of several standings, not said which: known
	CodeSurveyCircle  = "job.survey.circle"   // points that hang on one another in a circle: chain
	CodeSurveyClosure = "job.survey.closure"  // given and levelled elevation differ: found, levelled, misclosure, limit
	CodeNoPoint       = "job.no-point"        // a level names a point the survey has not: found, name, known
	CodeNoPointNear   = "job.no-point-near"   // the same, one is spelt nearly so: found, name, near
	CodeLevelCircle   = "job.level.circle"    // water line and rim are each told by the other: found
	CodeLevelDiffers  = "job.level.differs"   // the pond's level is not that of the survey point of its name: found, name, level, point
	CodeLevelBase     = "job.level.base"      // @water or @rim, which the pond does not tell: found, base

	CodeShapeNeeds   = "job.shape-needs"      // a size the shape cannot do without: shape, doc
	CodeShapeIdle    = "job.shape-idle"       // a size the shape does not use: shape
	CodeFewPoints    = "job.few-points"       // too few to make an outline: count, least
	CodeRimLow       = "job.rim-low"          // the rim lies below the water line: rim, water
	CodeLineHigh     = "job.line-high"        // the running line lies above the rim: line, rim
	CodeStepRises    = "job.step-rises"       // a step of the section goes up: found, above
	CodeDepthDiffers = "job.depth-differs"    // depth and section disagree: found, section
	CodePoolSize     = "job.pool-size"        // a pool with neither area nor length and width
	CodeLipLow       = "job.lip-low"          // a lip below the pond's water line: found, crest, water, by
	CodeLipRises     = "job.lip-rises"        // a lip above the one before it: found, above (its name), crest, limit, by
	CodeOutside      = "job.outside"          // a hole outside its wall, a hatch larger than the vault: found, limit
	CodeHatch        = "job.hatch"            // a hatch that reaches beyond the vault: found, limit
	CodeHatchRound   = "job.hatch.round"      // a corner of it beyond a round vault's rim: length, width, left, front, found and limit (from the middle), square (that fits)
	CodeBoxEmpty     = "job.box-empty"        // an obstacle whose far corner is not beyond its near one: found, from
	CodeSillHigh     = "job.sill-high"        // a sill above the water line, so that no water gets over it: sill, water
	CodeFloorHigh    = "job.floor-high"       // a vault floor that is not below the sill: floor, sill
	CodeReserved     = "job.reserved"         // a feed or a further pump named as a pump is: name
	CodeNumbersSame  = "job.numbers-same"     // decimals and thousands have the same mark: found
	CodeSetNumbers   = "job.set-numbers"      // with other marks a figure would be read otherwise: found, at (its place)
	CodeNoCurrency   = "job.currency-missing" // amounts, and no currency: first (its place)
	CodePumpIdle     = "job.pump-idle"        // a further pump that no run leaves: name
	CodeRunRound     = "job.run-round"        // a run that ends where it starts: found
	CodeRunIntoPump  = "job.run-into-pump"    // a run that ends at a pump
	CodeRunFromFeed  = "job.run-from-feed"    // a run that starts at a watercourse: found
	CodeRunCutOff    = "job.run-cut-off"      // a run that no water from the pump reaches: found
	CodeFeedDry      = "job.feed-dry"         // a watercourse that no run ends at: name
	CodeClosesTwice  = "job.closes-twice"     // two closing pieces: number (of the first part)
	CodeNextBy       = "job.next-by"          // a distance to the next fitting, not said how taken: found
	CodeGapLoose     = "job.gap-loose"        // a gap for a closing piece, but no part closes: found
	CodeGluedApart   = "job.glued-apart"      // a part glued on a side, with one between that is not: found
	CodeNoneCount    = "job.none-count"       // a fitting that there is none of, with a count: count

	// Setting one field by its path.

	CodeSetNowhere = "job.set-nowhere" // nothing stands below this field: found
	CodeSetPart    = "job.set-part"    // a place with fields of its own: known
	CodeSetFixed   = "job.set-fixed"   // format and version are not set by hand: found
	CodeSetIndex   = "job.set-index"   // an element there is not: found, count
	CodeSetMust    = "job.set-must"    // a field that may not be left empty: field, doc, example
)
