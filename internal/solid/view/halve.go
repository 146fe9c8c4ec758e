package view

import (
	"cmp"
	"slices"
)

// appendChains takes the runs of kept corners off a ring, and the ports at
// their ends.
func appendChains(chains [][]Vec3, ports []port, ring []Vec3, before func(Vec3) float64) ([][]Vec3, []port) {
	kept := func(i int) bool { return before(ring[i%len(ring)]) < -touching }
	for i := range ring {
		if kept(i) || !kept(i+1) {
			continue
		}
		c := len(chains)
		run := []Vec3{}
		n := i + 1
		for ; kept(n); n++ {
			run = append(run, ring[n%len(ring)])
		}
		chains = append(chains, run)
		ports = append(ports,
			port{at: pass(run[0], ring[i], before), chain: c},
			port{at: pass(run[len(run)-1], ring[n%len(ring)], before), chain: c, out: true})
	}
	return chains, ports
}

// pass is where the edge from a kept corner to one that is not meets the plane.
// A corner that is as good as on the plane is taken as it is, so that edges
// that share it still do.
func pass(in, out Vec3, before func(Vec3) float64) Vec3 {
	a, b := before(in), before(out)
	if b <= touching {
		return out
	}
	return in.lerp(out, a/(a-b))
}

// alternate sorts ports along the seam. Walking it one leaves and enters the
// face by turns; where ports share a place that says which comes first.
func alternate(ports []port) {
	slices.SortStableFunc(ports, func(a, b port) int { return cmp.Compare(a.k, b.k) })
	for i := range ports {
		if i == 0 || ports[i].out != ports[i-1].out {
			continue
		}
		for n := i + 1; n < len(ports) && ports[n].k-ports[i].k < touching; n++ {
			if ports[n].out != ports[i].out {
				ports[i], ports[n] = ports[n], ports[i]
				break
			}
		}
	}
}

// link closes the chains along the seam: from the port where one leaves to its
// neighbour where one enters.
func link(chains [][]Vec3, ports []port) (rings [][]Vec3, seam [][2]Vec3) {
	next := make([]int, len(chains)) // port where the chain after this one starts
	end := make([]int, len(chains))
	for i := 0; i+1 < len(ports); i += 2 {
		from, to := i, i+1
		if !ports[from].out {
			from, to = to, from
		}
		next[ports[from].chain], end[ports[from].chain] = to, from
		seam = append(seam, [2]Vec3{ports[from].at, ports[to].at})
	}
	done := make([]bool, len(chains))
	for c := range chains {
		var ring []Vec3
		for !done[c] {
			done[c] = true
			ring = append(append(ring, chains[c]...), ports[end[c]].at, ports[next[c]].at)
			c = ports[next[c]].chain
		}
		if ring = distinct(ring); len(ring) >= 3 {
			rings = append(rings, ring)
		}
	}
	return rings, seam
}

// distinct drops corners that repeat the one before.
func distinct(ring []Vec3) (out []Vec3) {
	for i, v := range ring {
		if v != ring[(i+1)%len(ring)] {
			out = append(out, v)
		}
	}
	return out
}
