package sheet

import (
	"crypto/sha256"
	"encoding/hex"

	"fettle/schema/model"
)

// Stamp says from what a sheet was made.
type Stamp struct {
	On     string // the day; "" is left blank
	Digest string // of all files of recipe and shop
}

func stampOf(b *model.Build, on string) Stamp { return Stamp{On: on, Digest: DigestOf(b)} }

// DigestOf reduces the bytes of every file of recipe and shop, in the order of their names, to
// sixteen hexadecimal digits.
func DigestOf(b *model.Build) string {
	h := sha256.New()
	for _, name := range b.Sources.Names() {
		for _, part := range [][]byte{[]byte(name), b.Sources.Bytes(name)} {
			h.Write(part)
			h.Write([]byte{0})
		}
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}
