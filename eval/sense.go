package eval

// CutsReverse says whether the tool cuts with the spindle running in reverse, anticlockwise
// seen from the spindle towards the work: a left-hand tool, a tap for a left-hand thread,
// or a disc that is turned over on its arbor.
func (c *CutChoice) CutsReverse() bool {
	t := c.Tool
	if t.Cutter == nil {
		return false
	}
	return t.left() != (c.Turned && c.onArbor())
}

// left says whether a tool cuts left-handed, or cuts a left-hand thread.
func (t Pick) left() bool { return t.Cutter.Hand.V == "left" || t.Thread.Left }

// OnAxis says whether a tool stands on the axis of a lathe and cuts one way round: in the tailstock, or in the
// hand against it.
func (c *TurnChoice) OnAxis() bool {
	if c.Tool.Cutter == nil || c.Post != nil {
		return false
	}
	switch c.Tool.Cutter.Kind {
	case "drill", "centre_drill", "reamer", "tap", "die", "countersink", "counterbore":
		return true
	}
	return false
}

// CutsReverse says whether a tool on the axis cuts with the spindle in reverse.
func (c *TurnChoice) CutsReverse() bool { return c.OnAxis() && c.Tool.left() }

func (c *CutChoice) onArbor() bool {
	for _, m := range c.Mounts {
		if m.Holder != nil && m.Holder.Kind == "arbor" {
			return true
		}
	}
	return false
}

// SaysSense says whether a step writes which way the spindle turns.
func (s *Step) SaysSense() bool { return s.Step != nil && s.Step.Spindle.Is() }
