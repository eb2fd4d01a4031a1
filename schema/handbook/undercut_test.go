package handbook

import "testing"

// Laws of the table: the floor of an undercut lies below the root of the thread (1.2268 pitches on diameter: ISO 68-1, external root
// at 17/24 of the height), beyond its crests in a bore; it is two pitches long or more in a shaft, four in a bore; all grow with the pitch.
func TestThreadUndercuts(t *testing.T) {
	for _, bore := range []bool{false, true} {
		last, n := ThreadUndercut{}, 0
		for _, r := range load("thread_undercut").rows {
			p := r.number("pitch_mm")
			u, ok := UndercutFor(p, bore)
			if !ok {
				continue
			}
			if u.Beyond < last.Beyond || u.Least < last.Least || u.Most < last.Most || u.Most <= u.Least {
				if r.text("on") == "bore" == bore {
					t.Errorf("pitch %v: %v after %v", p, u, last)
				}
			}
			if least := 1.2268 * p; !bore && u.Beyond < least {
				t.Errorf("pitch %v: the floor lies %v below the crest, the root of the thread %v", p, u.Beyond, least)
			}
			if r.text("on") == "bore" == bore {
				last, n = u, n+1
			}
		}
		if n < 10 {
			t.Errorf("%d rows", n)
		}
	}
	if u, ok := UndercutFor(1.5, false); !ok || u != (ThreadUndercut{2.3, 3.2, 5.2}) { // from memory: DIN 76-1
		t.Error(u, ok)
	}
	if _, ok := UndercutFor(0.33, false); ok {
		t.Error("a pitch of 0.33 has an undercut")
	}
}
