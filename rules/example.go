package rules

import _ "embed"

// ExampleShop is the shop in which the smallest recipes of the rules are played, as files
// are written.
//
//go:embed example.hcl
var ExampleShop string
