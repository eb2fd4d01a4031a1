package reckon

import "fmt"

// counted says how many of a thing there are: "1 turn", "3 turns".
func counted[N int | int64](n N, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
