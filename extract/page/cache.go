package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"
)

// Results of the slow reader are kept in the user's cache folder: by the content, the settings, Tesseract's version and this program's own build, so that nothing
// outlives what made it. What cannot be read or written there is done again; the cache is never a reason to fail.
const (
	recognisedFolder = "pvtally/recognised"
	keptFor          = 60 * 24 * time.Hour // since it was last used
	maxKept          = 64 << 20            // bytes of one entry
)

// keyOf names a result by everything it depends on.
func keyOf(data []byte, settings ...any) string {
	h := sha256.New()
	sum := sha256.Sum256(data)
	h.Write(sum[:])
	fmt.Fprintf(h, "%s\x00%#v", build(), settings)
	return hex.EncodeToString(h.Sum(nil))
}

// build tells this program's builds apart, by the size and date of its file.
var build = sync.OnceValue(func() string {
	path, err := os.Executable()
	if err != nil {
		return ""
	}
	info, err := os.Stat(path)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%d %d", info.Size(), info.ModTime().UnixNano())
})

func keptPath(key string) (string, bool) {
	root, err := os.UserCacheDir()
	if err != nil {
		return "", false
	}
	return filepath.Join(root, filepath.FromSlash(recognisedFolder), key+".gob"), true
}

// loadKept fills out with a kept result; a damaged one is none.
func loadKept(key string, out any) bool {
	path, ok := keptPath(key)
	if !ok {
		return false
	}
	info, err := os.Stat(path)
	if err != nil || info.Size() > maxKept {
		return false
	}
	data, err := os.ReadFile(path)
	if err != nil || len(data) < sha256.Size || sha256.Sum256(data[sha256.Size:]) != [sha256.Size]byte(data) {
		return false
	}
	if gob.NewDecoder(bytes.NewReader(data[sha256.Size:])).Decode(out) != nil {
		return false
	}
	now := time.Now()
	_ = os.Chtimes(path, now, now)
	return true
}

// saveKept keeps a result behind its checksum; other processes see all of it or nothing.
func saveKept(key string, in any) {
	path, ok := keptPath(key)
	if !ok {
		return
	}
	var b bytes.Buffer
	if gob.NewEncoder(&b).Encode(in) != nil || b.Len() > maxKept || os.MkdirAll(filepath.Dir(path), 0o700) != nil {
		return
	}
	forgetOld(filepath.Dir(path))
	f, err := os.CreateTemp(filepath.Dir(path), "new-*")
	if err != nil {
		return
	}
	sum := sha256.Sum256(b.Bytes())
	_, err = f.Write(append(sum[:], b.Bytes()...))
	if f.Close() != nil || err != nil || os.Rename(f.Name(), path) != nil {
		_ = os.Remove(f.Name())
	}
}

var forgetting sync.Once

// forgetOld removes, once a run, what was not used for long.
func forgetOld(folder string) {
	forgetting.Do(func() {
		entries, err := os.ReadDir(folder)
		if err != nil {
			return
		}
		for _, e := range entries {
			if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > keptFor {
				_ = os.Remove(filepath.Join(folder, e.Name()))
			}
		}
	})
}
