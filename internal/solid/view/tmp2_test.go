package view

import "fmt"

func checkBalance(bodies []Body, cam Camera) {
	fmt.Println("scene")
	s := stage(bodies, cam, Options{Fills: true})
	a := arrange(s.segments(), coincident)
	m := &mapped{scene: s, arrangement: a, cast: newCaster(s)}
	m.look()
	type key struct{ r, v int32 }
	bal := map[key]int{}
	for i, p := range a.pieces {
		l, r := m.left[i], m.right[i]
		if l == r {
			continue
		}
		if l >= 0 {
			bal[key{l, p.u}]++
			bal[key{l, p.v}]--
		}
		if r >= 0 {
			bal[key{r, p.v}]++
			bal[key{r, p.u}]--
		}
	}
	n := 0
	for k, b := range bal {
		if b != 0 {
			f := &m.faces[k.r]
			fmt.Println("unbalanced", k, b, f.id, f.tag, a.at[k.v], f.plane.q)
			for i, p := range a.pieces {
				if p.u == k.v || p.v == k.v {
					fmt.Println("   ", a.at[p.u], a.at[p.v], a.at[p.u].to(a.at[p.v]), m.left[i], m.right[i])
				}
			}
			if n++; n > 12 {
				return
			}
		}
	}
}
