package report

import (
	"fmt"
	"io"
	"iter"
	"strings"

	"github.com/xuri/excelize/v2"

	"pvtally/schema"
)

// WriteXLSX writes rows as a workbook of one sheet; the first row is the head. Texts are texts, never formulas. A literal becomes a
// number and is shown with the decimals it was printed with.
func WriteXLSX(w io.Writer, name string, rows iter.Seq[[]Cell]) error {
	book := excelize.NewFile()
	defer book.Close()
	if err := book.SetSheetName("Sheet1", name); err != nil {
		return err
	}
	head, err := book.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	if err != nil {
		return err
	}
	out, err := book.NewStreamWriter(name)
	if err != nil {
		return err
	}
	if err := out.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	styles := decimalStyles{book: book, known: map[int]int{}}
	n := 0
	for row := range rows {
		n++
		values := make([]any, len(row))
		for i, cell := range row {
			if values[i], err = styles.value(cell); err != nil {
				return err
			}
			if n == 1 {
				values[i] = excelize.Cell{StyleID: head, Value: cell.Text}
			}
		}
		if err := out.SetRow(fmt.Sprintf("A%d", n), values); err != nil {
			return err
		}
	}
	if err := out.Flush(); err != nil {
		return err
	}
	return book.Write(w)
}

// maxDecimals is what a spreadsheet's number format takes.
const maxDecimals = 30

// decimalStyles makes one number format for each count of decimals.
type decimalStyles struct {
	book  *excelize.File
	known map[int]int
}

func (s decimalStyles) value(cell Cell) (any, error) {
	if cell.Text == "" {
		return nil, nil
	}
	n, err := schema.ParseNumber(cell.Text)
	if !cell.Number || err != nil {
		return Plain(cell.Text), nil
	}
	decimals := min(n.Decimals(), maxDecimals)
	id, ok := s.known[decimals]
	if !ok {
		format := "0"
		if decimals > 0 {
			format += "." + strings.Repeat("0", decimals)
		}
		if id, err = s.book.NewStyle(&excelize.Style{CustomNumFmt: &format}); err != nil {
			return nil, err
		}
		s.known[decimals] = id
	}
	return excelize.Cell{StyleID: id, Value: n.Float()}, nil
}
