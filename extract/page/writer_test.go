package page

import (
	"bytes"
	"crypto/md5"
	"crypto/rc4"
	"encoding/binary"
	"fmt"
	"strings"
)

// doc describes a small PDF for the tests: pages with content streams, in Helvetica as /F1 and Helvetica-Bold as /F2.
type doc struct {
	pages    []leaf
	catalog  string // more entries of the catalogue
	extra    []string
	password string // of the user; encrypted is set with or without one
	locked   bool
}

// leaf is one page.
type leaf struct {
	content   string
	box       string // MediaBox, "0 0 400 300" if empty
	entries   string // more entries of the page
	resources string // more entries of its resources
}

// Object numbers of what every document has. Extra objects follow from firstExtra.
const (
	objCatalog = 1 + iota
	objPages
	objFontPlain
	objFontBold
	firstExtra
)

// one is a document of one page.
func one(content string) []byte { return doc{pages: []leaf{{content: content}}}.bytes() }

func (d doc) bytes() []byte {
	objects := []string{
		"<< /Type /Catalog /Pages 2 0 R " + d.catalog + " >>",
		"",
		"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>",
		"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica-Bold /Encoding /WinAnsiEncoding >>",
	}
	objects = append(objects, d.extra...)
	var kids []string
	for _, p := range d.pages {
		box := p.box
		if box == "" {
			box = "0 0 400 300"
		}
		n := len(objects) + 1
		kids = append(kids, fmt.Sprintf("%d 0 R", n))
		objects = append(objects,
			fmt.Sprintf("<< /Type /Page /Parent 2 0 R /MediaBox [%s] /Contents %d 0 R /Resources << /Font << /F1 3 0 R /F2 4 0 R >> %s >> %s >>", box, n+1, p.resources, p.entries),
			stream("", p.content))
	}
	objects[objPages-1] = fmt.Sprintf("<< /Type /Pages /Kids [%s] /Count %d >>", strings.Join(kids, " "), len(kids))
	trailer := ""
	if d.locked {
		objects, trailer = d.encrypt(objects)
	}
	return assemble(objects, trailer)
}

// stream is a stream object with its dictionary's entries.
func stream(entries, content string) string {
	return fmt.Sprintf("<< %s /Length %d >>\nstream\n%s\nendstream", entries, len(content), content)
}

func assemble(objects []string, trailer string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n")
	offsets := make([]int, len(objects))
	for i, o := range objects {
		offsets[i] = b.Len()
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, o := range offsets {
		fmt.Fprintf(&b, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root 1 0 R %s >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, trailer, start)
	return b.Bytes()
}

// encrypt is the standard security handler's revision 2 (ISO 32000-1, 7.6.3: algorithms 1 to 4), RC4 with 40 bits, for content
// streams; the documents hold no strings that matter.
func (d doc) encrypt(objects []string) ([]string, string) {
	pad := []byte("\x28\xBF\x4E\x5E\x4E\x75\x8A\x41\x64\x00\x4E\x56\xFF\xFA\x01\x08\x2E\x2E\x00\xB6\xD0\x68\x3E\x80\x2F\x0C\xA9\xFE\x64\x53\x69\x7A")
	padded := func(password string) []byte { return append([]byte(password), pad...)[:32] }
	cipher := func(key, plain []byte) []byte {
		c, err := rc4.NewCipher(key)
		if err != nil {
			panic(err)
		}
		out := make([]byte, len(plain))
		c.XORKeyStream(out, plain)
		return out
	}
	ownerKey := md5.Sum(padded("owner"))
	owner := cipher(ownerKey[:5], padded(d.password))
	id, permissions := []byte("0123456789abcdef"), int32(-44)
	seed := append(padded(d.password), owner...)
	seed = binary.LittleEndian.AppendUint32(seed, uint32(permissions))
	sum := md5.Sum(append(seed, id...))
	key := sum[:5]
	for i, o := range objects {
		head, rest, is := strings.Cut(o, "\nstream\n")
		if !is {
			continue
		}
		body, _ := strings.CutSuffix(rest, "\nendstream")
		n := i + 1
		objectSum := md5.Sum(append(bytes.Clone(key), byte(n), byte(n>>8), byte(n>>16), 0, 0))
		objects[i] = head + "\nstream\n" + string(cipher(objectSum[:10], []byte(body))) + "\nendstream"
	}
	objects = append(objects, fmt.Sprintf("<< /Filter /Standard /V 1 /R 2 /O <%x> /U <%x> /P %d >>", owner, cipher(key, pad), permissions))
	return objects, fmt.Sprintf("/Encrypt %d 0 R /ID [<%x> <%x>]", len(objects), id, id)
}

// text shows a string at a place, in points from the bottom left.
func text(x, y, size float64, s string) string {
	return fmt.Sprintf("BT /F1 %g Tf 1 0 0 1 %g %g Tm (%s) Tj ET\n", size, x, y, s)
}
