package report

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"pvtally/rules"
)

// The elements of the JUnit report that build servers read (the XSD of the Jenkins xUnit plugin, testdata/report/junit-10.xsd).
type (
	junitReport struct {
		XMLName  xml.Name     `xml:"testsuites"`
		Name     string       `xml:"name,attr"`
		Tests    int          `xml:"tests,attr"`
		Failures int          `xml:"failures,attr"`
		Errors   int          `xml:"errors,attr"`
		Suites   []junitSuite `xml:"testsuite"`
	}
	junitSuite struct {
		Name     string      `xml:"name,attr"`
		Tests    int         `xml:"tests,attr"`
		Failures int         `xml:"failures,attr"`
		Errors   int         `xml:"errors,attr"`
		Cases    []junitCase `xml:"testcase"`
	}
	junitCase struct {
		Name    string       `xml:"name,attr"`
		Class   string       `xml:"classname,attr"`
		Failure *junitResult `xml:"failure"`
		Error   *junitResult `xml:"error"`
		Out     string       `xml:"system-out,omitempty"`
	}
	junitResult struct {
		Type    string `xml:"type,attr"`
		Message string `xml:"message,attr"`
		Text    string `xml:",chardata"`
	}
)

// writeJUnit writes one suite a sheet and one case a problem (see problem); one below the limit is a case that passes and says so. A sheet
// without findings is one case that passes, an input that could not be read is an error.
func writeJUnit(w io.Writer, run Run) error {
	doc := junitReport{Name: "pvtally"}
	for e := range run.Entries {
		suite := junitSuiteOf(e, run.Limit)
		suite.Tests = len(suite.Cases)
		for _, c := range suite.Cases {
			if c.Failure != nil {
				suite.Failures++
			}
			if c.Error != nil {
				suite.Errors++
			}
		}
		doc.Tests += suite.Tests
		doc.Failures += suite.Failures
		doc.Errors += suite.Errors
		doc.Suites = append(doc.Suites, suite)
	}
	text, err := xml.MarshalIndent(doc, "", "  ")
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "%s%s\n", xml.Header, text)
	return err
}

func junitSuiteOf(e Entry, limit rules.Level) junitSuite {
	if u := e.Unread; u != nil {
		return junitSuite{Name: Plain(u.File), Cases: []junitCase{{Name: "reading", Class: Plain(u.File),
			Error: &junitResult{Type: "unread", Message: Plain(u.String())}}}}
	}
	suite := junitSuite{Name: Plain(e.Sheet.File)}
	if len(e.Sheet.Findings) == 0 {
		suite.Cases = []junitCase{{Name: "all rules", Class: suite.Name}}
	}
	for _, f := range e.Sheet.problems() {
		key, _ := e.Sheet.name(&f)
		c := junitCase{Name: Plain(strings.TrimSpace(f.Rule + " " + key)), Class: suite.Name}
		detail := Plain(fmt.Sprintf("%s: %s", f.Level, f.Message))
		if page := e.Sheet.placeOf(f.cells()).Page; page > 0 {
			detail += fmt.Sprintf(" (page %d)", page)
		}
		if f.Level >= limit {
			c.Failure = &junitResult{Type: f.Level.String(), Message: Plain(f.Message), Text: detail}
		} else {
			c.Out = detail
		}
		suite.Cases = append(suite.Cases, c)
	}
	return suite
}
