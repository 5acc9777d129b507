package rules

import "strconv"

// Grade says how the size of a gap makes a level.
type Grade struct {
	Of   string // what is measured
	Unit string
	// Above these the finding is a note, a warning, an error; Never for a level the rule does not have.
	Note, Warning, Error float64
}

// Never is the threshold of a level that a rule does not have.
const Never = -1

var gradeNames = [...]string{Note: "note_above", Warning: "warning_above", Error: "error_above"}

func gradeOf(setting string) Level {
	for l := Note; l <= Error; l++ {
		if gradeNames[l] == setting {
			return l
		}
	}
	return 0
}

// document turns the grade into the rule's settings and levels.
func (r *Rule) document() {
	g := r.Grade
	if g.Of == "" {
		return
	}
	var settings []Setting
	var levels []Threshold
	for i, above := range []float64{g.Note, g.Warning, g.Error} {
		if above == Never {
			continue
		}
		l := Note + Level(i)
		settings = append(settings, Setting{gradeNames[l], above, g.Unit, "above it the finding is of level " + l.String()})
		levels = append(levels, Threshold{l, g.Of + " above " + strconv.FormatFloat(above, 'g', -1, 64) + " " + g.Unit})
	}
	r.Settings, r.Levels = append(settings, r.Settings...), append(levels, r.Levels...)
}
