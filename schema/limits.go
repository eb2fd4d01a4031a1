package schema

import "fettle/schema/model"

// StandingLimits gives every limit of judgement with the figure that holds until a shop
// sets another.
func StandingLimits() map[string]model.Known[float64] { return bindThumbs(written{}) }
