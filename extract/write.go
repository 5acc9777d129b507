package extract

import (
	"fmt"
	"strconv"
	"strings"

	"pvtally/schema"
)

// textFields are the record's text fields that the reader fills with evidence.
func textField(s *schema.Sheet, field string) *string {
	switch field {
	case "/maker":
		return &s.Maker
	case "/series":
		return &s.Series
	case "/revision":
		return &s.Revision
	case "/issued":
		return &s.Issued
	case "/cell/technology":
		return &s.Cell.Technology
	case "/cell/arrangement":
		return &s.Cell.Arrangement
	case "/cell/cut":
		return &s.Cell.Cut
	case "/body/junction_box_ip":
		return &s.Body.JunctionBoxIP
	case "/body/connector":
		return &s.Body.Connector
	case "/body/frame":
		return &s.Body.Frame
	case "/limits/safety_class":
		return &s.Limits.SafetyClass
	case "/limits/fire_class":
		return &s.Limits.FireClass
	}
	if rest, ok := strings.CutPrefix(field, "/models/"); ok {
		index, tail, _ := strings.Cut(rest, "/")
		if i, err := strconv.Atoi(index); err == nil && i < len(s.Models) && tail == "name" {
			return &s.Models[i].Name
		}
	}
	return nil
}

// write puts a claim's value into the record.
func write(s *schema.Sheet, field string, c claim) error {
	if c.text {
		p := textField(s, field)
		if p == nil {
			return fmt.Errorf("no text field %s", field)
		}
		*p = c.literal
		return nil
	}
	n, err := schema.ParseNumber(c.literal)
	if err != nil {
		return err
	}
	return s.Set(field, n)
}

func sameValue(a, b claim) bool {
	if a.text || b.text {
		return strings.EqualFold(a.literal, b.literal)
	}
	x, errX := strconv.ParseFloat(a.literal, 64)
	y, errY := strconv.ParseFloat(b.literal, 64)
	if errX != nil || errY != nil {
		return a.literal == b.literal
	}
	if a.halfStep == "" && b.halfStep == "" {
		return x == y
	}
	return abs(x-y) <= halfOf(a)+halfOf(b)+1e-9
}

// halfOf is half the step of a claim's literal.
func halfOf(c claim) float64 {
	if h, err := strconv.ParseFloat(c.halfStep, 64); err == nil {
		return h
	}
	if n, err := schema.ParseNumber(c.literal); err == nil {
		return n.HalfStep()
	}
	return 0
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

func itoa(n int) string { return strconv.Itoa(n) }

// literalOf writes a half step with the digits it needs.
func literalOf(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }
