package extract

import (
	"context"
	"strings"

	"pvtally/extract/page"
)

// figures are the characters a number can be printed with.
const figures = "0123456789.,+-±−–~/×x*()% "

// readAgain reads the places of all values that come from a picture once more, each alone.
func readAgain(ctx context.Context, data []byte, claims []claim, opt Options) (map[place]page.CellReading, error) {
	out := map[place]page.CellReading{}
	cells := map[int][]page.CellRequest{}
	for _, c := range claims {
		at := place{c.page, c.box}
		if _, ok := out[at]; ok || c.by != page.ByPicture || !strings.ContainsAny(c.printed, "0123456789") {
			continue
		}
		out[at] = page.CellReading{}
		cells[c.page] = append(cells[c.page], page.CellRequest{Box: c.box, Whitelist: whitelist(c.printed), Known: c.printed})
	}
	for number, asked := range cells {
		read, err := page.ReadCells(ctx, data, number, asked, page.Options{Cache: opt.Cache})
		if err != nil {
			return nil, err
		}
		for i, r := range read {
			out[place{number, asked[i].Box}] = r
		}
	}
	return out, nil
}

// whitelist: a place that prints only a number may hold nothing else; where words stand beside it, any letter may come.
func whitelist(printed string) string {
	if strings.Trim(printed, figures) == "" {
		return figures
	}
	return ""
}
