package offer

// Codes of this package.
const (
	// FaultOption: a change of an option cannot be made. Args: name, path, and the cause's code and arguments as the fault behind it.
	FaultOption = "offer.option.change"
	// FaultUnit: hours for pipe, liner, digging or stone without a unit of it. Args: task, found.
	FaultUnit = "offer.labour.unit"
	// FaultNeed: what the hours are for could not be worked out. Args: task, per.
	FaultNeed = "offer.labour.need"
	// FaultProfit: two entries for one group. Args: group.
	FaultProfit = "offer.profit.twice"
	// FaultAgreed: the option that was agreed is not in the job any more. Args: name.
	FaultAgreed = "offer.agreed.option"
	// FindUnpriced: items of the material list or pumps that have no price. Args: count, first.
	FindUnpriced = "offer.unpriced"
	// FindChanged: the design is not what was agreed on any more. Args: by, total.
	FindChanged = "offer.changed"
	// AssumeHigh: of two rules for an amount the higher is priced. Args: low, high.
	AssumeHigh = "assume.offer.high"
)
