// Package site says what modules' numbers mean on a roof: how many are needed and how they lie, what heat and cold do to power, current
// and voltage, how many make a string, what it costs. It is arithmetic on records and on a description of the site: it knows no files,
// no forms of report and no currency. It must not import extract or cmd.
//
// Every quantity is a Value: a number with the interval that printed rounding and tolerance leave it, or the reason why there is none.
package site

// Caution accompanies every voltage, current and fuse that this package calculates.
const Caution = "These figures are arithmetic on printed numbers, not a design: the module's own label and manual, the electronics' limits, local code and a licensed professional decide."
