package child

import (
	"encoding/binary"
	"fmt"
	"io"
)

// Message is a request or an answer: a small description and raw bytes (a document, a picture), which are not encoded again.
type Message struct {
	Head []byte
	Body []byte
}

// write sends the two lengths and the two parts.
func (m Message) write(w io.Writer) error {
	var lengths [8]byte
	binary.LittleEndian.PutUint32(lengths[:4], uint32(len(m.Head)))
	binary.LittleEndian.PutUint32(lengths[4:], uint32(len(m.Body)))
	for _, part := range [][]byte{lengths[:], m.Head, m.Body} {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}

// readMessage takes one message of at most limit bytes; io.EOF where the sender has ended between messages.
func readMessage(r io.Reader, limit int) (Message, error) {
	var lengths [8]byte
	if _, err := io.ReadFull(r, lengths[:]); err != nil {
		return Message{}, err
	}
	head, body := int(binary.LittleEndian.Uint32(lengths[:4])), int(binary.LittleEndian.Uint32(lengths[4:]))
	if head > limit || body > limit-head {
		return Message{}, fmt.Errorf("a message of %d bytes is above the limit of %d", head+body, limit)
	}
	both := make([]byte, head+body)
	if _, err := io.ReadFull(r, both); err != nil {
		return Message{}, io.ErrUnexpectedEOF
	}
	return Message{Head: both[:head:head], Body: both[head:]}, nil
}
