package rules

import "testing"
import "os"

func TestScratch(t *testing.T) {
	os.MkdirAll("/tmp/divide_try/r", 0o777); os.MkdirAll("/tmp/divide_try/s", 0o777)
	for _, r := range Catalogue() {
		os.MkdirAll("/tmp/divide_try/ex/"+r.Name, 0o777)
		os.WriteFile("/tmp/divide_try/ex/"+r.Name+"/trips", []byte(r.Trips), 0o666)
		os.WriteFile("/tmp/divide_try/ex/"+r.Name+"/sound", []byte(r.Sound), 0o666)
	}
	os.WriteFile("/tmp/divide_try/s/a.hcl", []byte(ExampleShop), 0o666)
}
