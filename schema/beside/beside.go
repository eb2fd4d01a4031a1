// Package beside does several things at the same time.
package beside

import "sync"

// hands is how many things are done at the same time. What comes of it does not hang on it.
const hands = 4

// Do does n things, several at the same time. What panics is done once more where the
// caller is, for its fault and the way there to come out as if nothing stood beside it.
func Do(n int, do func(int)) {
	failed := make([]bool, n)
	next := make(chan int, n)
	for i := range n {
		next <- i
	}
	close(next)
	var all sync.WaitGroup
	for range min(hands, n) {
		all.Go(func() {
			for i := range next {
				func() {
					defer func() { failed[i] = recover() != nil }()
					do(i)
				}()
			}
		})
	}
	all.Wait()
	for i, again := range failed {
		if again {
			do(i)
		}
	}
}
