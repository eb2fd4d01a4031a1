package choose

import "fettle/schema/model"

// ofPitch is the share by which the pitch of a knurling tool may differ from the drawing's and
// count as the same: 21 ridges to the inch for 1.2 mm. Common practice.
const ofPitch = 0.05

// knurls says whether a tool presses the knurl of the drawing. What is not known of either may fit.
func (k *asked) knurls(cu *model.Cutter) bool {
	f := k.target.Form
	if f == nil || !f.Feature.Pitch.Is() || !cu.Pitch.Is() {
		return true
	}
	want := f.Feature.Pitch.V
	return len(cu.Pitch.V.Within(want*(1-ofPitch), want*(1+ofPitch), 1)) > 0
}
