package report

import (
	"embed"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"

	"pvtally/rules"
)

//go:embed html
var htmlFiles embed.FS

// Style is the style sheet of every page the program makes: colours told apart by lightness and shape as well, WCAG AA on both grounds.
//
//go:embed html/style.css
var Style template.CSS

// htmlPage is parsed when it is first wanted: most runs start for another form.
var htmlPage = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").ParseFS(htmlFiles, "html/*.gohtml"))
})

// maxDetailed is how many sheets are shown with their pages and curves: a browser has to hold them all. The others stand in the table.
const maxDetailed = 60

// htmlRun is what the page shows, top to bottom.
type htmlRun struct {
	Title, Version string
	Style          template.CSS
	Single         bool   // one sheet and nothing else: it is the page
	Verdict        string // the worst of the run, "incomplete" where something could not be looked at
	Counts         string
	Rows           []htmlRow
	Left           int // sheets that are only in the table
	Sheets         []*htmlSheet
	Unread         []*Unread
	Silenced       string
	Stale          []string
}

// htmlRow is a sheet in the table of all.
type htmlRow struct {
	File, About, Verdict string
	ID                   string // of its section; "" where it has none
	Errors, Warnings     int
	Notes                int
}

// writeHTML writes one file with everything in it: it loads nothing, runs no script, and reads on a phone, on paper and aloud.
func writeHTML(w io.Writer, run Run) error {
	var sum summary
	var sheets []*Sheet
	view := htmlRun{Version: run.Version, Style: Style}
	worst := rules.Level(0)
	for e := range run.Entries {
		sum.add(e)
		if e.Unread != nil {
			u := *e.Unread
			u.File, u.Problem, u.Remedy = Plain(u.File), Plain(u.Problem), Plain(u.Remedy)
			view.Unread = append(view.Unread, &u)
			continue
		}
		sheets = append(sheets, e.Sheet)
		for _, f := range e.Sheet.Findings {
			worst = max(worst, f.Level)
		}
	}
	shown := detailed(sheets)
	for i, s := range sheets {
		row := htmlRow{File: Plain(s.File), About: Plain(s.about()), Verdict: s.Verdict()}
		var own summary
		own.add(Entry{Sheet: s})
		row.Errors, row.Warnings, row.Notes = own.Errors, own.Warnings, own.Notes
		if shown[i] {
			sheet := newHTMLSheet(i+1, s)
			row.ID = sheet.ID
			view.Sheets = append(view.Sheets, sheet)
		} else {
			view.Left++
		}
		view.Rows = append(view.Rows, row)
	}
	view.Verdict = verdictOf(worst)
	if len(view.Unread) > 0 && view.Verdict == "clear" {
		view.Verdict = "incomplete" // nothing wrong was found, and not everything looked at
	}
	view.Title = fmt.Sprintf("%s: %d to reject, %d to query, %d clear", plural(len(sheets), "sheet"),
		sheetsOf(view.Rows, "reject"), sheetsOf(view.Rows, "query"), sheetsOf(view.Rows, "clear"))
	if len(view.Rows) == 1 && len(view.Unread) == 0 {
		view.Single, view.Sheets[0].Only = true, true
		view.Title = view.Sheets[0].Name
	}
	view.Counts = fmt.Sprintf("%s, %s, %s, %s, %s", plural(sum.Sheets, "sheet"), plural(sum.Models, "model"),
		plural(sum.Errors, "error"), plural(sum.Warnings, "warning"), plural(sum.Notes, "note"))
	if sum.Unread > 0 {
		view.Counts += fmt.Sprintf(", %d unread", sum.Unread)
	}
	if run.Silenced != nil {
		s := run.Silenced()
		view.Silenced = Plain(s.sources())
		for _, stale := range s.Stale {
			view.Stale = append(view.Stale, Plain(stale.String()))
		}
	}
	var b strings.Builder
	if err := htmlPage().ExecuteTemplate(&b, "page.gohtml", view); err != nil {
		return err
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func sheetsOf(rows []htmlRow, verdict string) (n int) {
	for _, r := range rows {
		if r.Verdict == verdict {
			n++
		}
	}
	return n
}

// detailed chooses the sheets that are shown whole: those with something wrong first, in input order.
func detailed(sheets []*Sheet) map[int]bool {
	shown := map[int]bool{}
	for _, verdict := range []string{"reject", "query", "clear"} {
		for i, s := range sheets {
			if len(shown) < maxDetailed && s.Verdict() == verdict {
				shown[i] = true
			}
		}
	}
	return shown
}
