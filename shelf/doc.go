// Package shelf knows what the shelves that all jobs share hold, pumps and
// prices, and how they come in from CSV and go out again: bytes in, tables,
// guesses, values and faults out. It reads no file, keeps nothing and knows no
// sentences; who keeps the shelves is package store, who shows them package app.
//
// A pump on the shelf is a job document that holds one pump and nothing else, so
// that every rule of the job holds for it, its units and its currency go with it,
// and taking it into a job is copying fields. A price list is a document of its
// own: prices in any currency, each with what it is for, its day and the counter
// where it is bought.
//
// A file from elsewhere is never believed in silence: what was guessed (letters,
// separator, decimal mark, which column is which) is given as a guess, and each
// row that cannot be taken comes with its line, its column, what was read and
// what is expected.
package shelf
