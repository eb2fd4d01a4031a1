package eval

// CutsReverse says whether the tool cuts with the spindle running in reverse, anticlockwise
// seen from the spindle towards the work: a left-hand tool, a tap for a left-hand thread,
// or a disc that is turned over on its arbor.
func (c *CutChoice) CutsReverse() bool {
	t := c.Tool
	if t.Cutter == nil {
		return false
	}
	left := t.Cutter.Hand.V == "left" || t.Thread.Left
	return left != (c.Turned && c.onArbor())
}

func (c *CutChoice) onArbor() bool {
	for _, m := range c.Mounts {
		if m.Holder != nil && m.Holder.Kind == "arbor" {
			return true
		}
	}
	return false
}
