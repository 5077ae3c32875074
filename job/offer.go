package job

// Offer is what the client is offered: what comes on top of the material, how
// cost becomes price, tax and terms.
type Offer struct {
	Labour      []Labour  `json:"labour,omitempty" doc:"work by task, with the crew's own hours and rates"`
	Expenses    []Expense `json:"expenses,omitempty" doc:"equipment and other costs"`
	Waste       Ratio     `json:"waste,omitzero" kind:"percent" range:"0..1" doc:"on top of material that is bought loose; what comes in whole sticks, cans and rolls holds its waste already" eg:"5 %"`
	Contingency Ratio     `json:"contingency,omitzero" kind:"percent" range:"0..1" doc:"on top of all cost, for what is not foreseen" eg:"3 %"`
	Profit      []Profit  `json:"profit,omitempty" doc:"markup or margin by group of cost"`
	Discount    Ratio     `json:"discount,omitzero" kind:"percent" range:"0..1" doc:"off the price before tax" eg:"2 %"`
	Taxes       []Tax     `json:"taxes,omitempty" doc:"taxes on the sale, in the order in which they are worked out"`
	TaxByScope  bool      `json:"taxByScope,omitempty" doc:"tax is rounded for each part of the work; once on the sum when empty"`
	RoundTo     Money     `json:"roundTo,omitzero" doc:"the total is rounded to a multiple of it; to coins when empty" eg:"10"`
	Deposit     Ratio     `json:"deposit,omitzero" kind:"percent" range:"0..1" doc:"part of the total that is paid before the work begins" eg:"30 %"`
	Stages      []Stage   `json:"stages,omitempty" doc:"payments on the way; the rest falls due at the end"`
	ValidDays   int       `json:"validDays,omitempty" range:"1..3650" doc:"days for which the offer holds" eg:"30"`
	Includes    []Clause  `json:"includes,omitempty" doc:"what the offer is for, in the client's words"`
	Excludes    []Clause  `json:"excludes,omitempty" doc:"what it is not for"`
	Terms       []Clause  `json:"terms,omitempty" doc:"terms that are printed on the offer"`
	Options     []Choice  `json:"options,omitempty" doc:"other designs offered beside this one, each priced as a whole"`
	Changed     []Clause  `json:"changed,omitempty" doc:"what is done otherwise than agreed, in the client's words; it stands on the change order"`
	Agreed      Agreed    `json:"agreed,omitempty" doc:"the offer as the client accepted it; what changes later becomes a change order"`
}

// Labour is a task by the crew's own hours and rate: hours for one unit, times
// the units that the design needs, times the rate of an hour.
type Labour struct {
	Task  string `json:"task" want:"must" key:"yes" doc:"what is done" eg:"glue the plumbing"`
	Per   string `json:"per,omitempty" one-of:"job,joint,cut,fall,pump,pipe,liner,digging,stone" doc:"what the hours are for one unit of; the whole job when empty. joint: cemented or threaded; cut: piece of pipe; pipe, liner, digging and stone: see unit" eg:"joint"`
	Unit  string `json:"unit,omitempty" doc:"of pipe, liner, digging or stone that the hours are for" eg:"10 ft"`
	Hours Ratio  `json:"hours" kind:"ratio" want:"must" range:"0..10000" doc:"hours of one person for one unit" eg:"0.15"`
	Rate  Money  `json:"rate" want:"must" doc:"what an hour of one person costs the firm" eg:"48"`
	Scope string `json:"scope,omitempty" doc:"part of the work that the client sees it under; made from the task's unit when empty" eg:"plumbing"`
}

// Expense is a cost that is neither material nor labour.
type Expense struct {
	Name  string `json:"name" want:"must" key:"yes" doc:"what it is" eg:"small digger, two days"`
	Group string `json:"group,omitempty" one-of:"equipment,other" doc:"equipment when empty" eg:"equipment"`
	Count Ratio  `json:"count,omitzero" kind:"count" range:"0..100000" doc:"how many; one when empty" eg:"2"`
	Price Money  `json:"price" want:"must" doc:"what one costs the firm" eg:"210"`
	Scope string `json:"scope,omitempty" doc:"part of the work that the client sees it under" eg:"earthwork"`
}

// Profit is a markup or a margin on a group of cost.
type Profit struct {
	Group  string `json:"group,omitempty" one-of:"all,material,labour,equipment,other" doc:"the group it is for; all that have none of their own when empty" eg:"material"`
	Markup Ratio  `json:"markup,omitzero" kind:"percent" range:"0..10" doc:"share of cost on top: price = cost x (1 + markup)" eg:"20 %"`
	Margin Ratio  `json:"margin,omitzero" kind:"percent" range:"0..0.95" doc:"share of the price that is left when cost is paid: price = cost / (1 - margin)" eg:"35 %"`
}

// Tax is one rule of tax on the sale.
type Tax struct {
	Name string  `json:"name" want:"must" key:"yes" doc:"its name" eg:"sales tax"`
	Rate Ratio   `json:"rate" kind:"percent" want:"must" range:"0..1" doc:"its rate" eg:"8.25 %"`
	On   []Taxed `json:"on,omitempty" doc:"the groups whose price it is on; all when empty"`
	Over bool    `json:"over,omitempty" doc:"it is also on the taxes before it"`
}

// Taxed is a group that a tax is on.
type Taxed struct {
	Group string `json:"group" want:"must" one-of:"material,labour,equipment,other" doc:"group of cost" eg:"material"`
}

// Stage is a payment on the way.
type Stage struct {
	Name  string `json:"name" want:"must" key:"yes" doc:"when it falls due" eg:"pond dug and lined"`
	Share Ratio  `json:"share" kind:"percent" want:"must" range:"0..1" doc:"part of the total" eg:"40 %"`
}

// Clause is a sentence of the offer.
type Clause struct {
	Text string `json:"text" want:"must" doc:"the sentence" eg:"Electrical work by a licensed electrician is not included."`
}

// Choice is another design offered beside this one.
type Choice struct {
	Name    string    `json:"name" want:"must" key:"yes" doc:"what the client knows it by" eg:"with the larger pump"`
	Note    string    `json:"note,omitempty" doc:"what it gives more or less" eg:"a third more water over the falls"`
	Changes []Setting `json:"changes,omitempty" doc:"fields of the job that are otherwise in it"`
}

// Setting is one field set otherwise.
type Setting struct {
	Path  string `json:"path" want:"must" key:"yes" doc:"path of the field, as faults name it" eg:"/use"`
	Value string `json:"value,omitempty" doc:"its value as typed; empty empties the field" eg:"L"`
}

// Agreed is an offer as it was accepted.
type Agreed struct {
	Date   string   `json:"date,omitempty" doc:"day of the acceptance, year-month-day" eg:"2026-06-02"`
	Option string   `json:"option,omitempty" doc:"name of the option that was accepted; the design itself when empty" eg:"with the larger pump"`
	Scopes []Amount `json:"scopes,omitempty" doc:"price of each part of the work, before tax"`
	Taxes  []Amount `json:"taxes,omitempty" doc:"taxes"`
	Total  Money    `json:"total,omitzero" doc:"what was agreed, with tax" eg:"8450"`
}

// Amount is a named amount.
type Amount struct {
	Name   string `json:"name" want:"must" key:"yes" doc:"name" eg:"plumbing"`
	Amount Money  `json:"amount" want:"must" doc:"amount" eg:"1240.50"`
}
