# A garage where everything is in inches: dials, drills, collets, bar. Most drawings that come in from outside are metric.
shop "garage" {
  title = "An inch lathe and a knee mill in the garage"
  units = "in"
  as_of = "2026-11-22"
}
