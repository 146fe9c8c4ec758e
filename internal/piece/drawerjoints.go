package piece

import (
	"casewright/internal/joinery"
	"casewright/internal/measure"
	"casewright/internal/why"
)

// drawerSlope is the usual slope of drawer dovetails: Joyce has 1:7 for drawers
// and show work.
var drawerSlope = measure.Slope{Rise: 1, Run: 7}

func (d *drawerWork) slope() measure.Slope {
	if d.spec.HasSlope {
		return d.spec.Slope
	}
	return drawerSlope
}

// drawerJoints dovetails the front half-blind, so that it shows none, and the
// back through, or houses it.
func (b *builder) drawerJoints(d *drawerWork) {
	b.drawerFrontJoints(d)
	if d.spec.BackJoint.Value == "dado" {
		in := why.Rule("housing of the back", d.sideT.Length()/3, "a third of the side", practice, d.sideT)
		b.house(d.left, d.back, joinery.Near, in, why.Size{}, d.asm.At)
		b.house(d.right, d.back, joinery.Far, in, why.Size{}, d.asm.At)
		return
	}
	l, problems := joinery.LayDovetails(joinery.DovetailSpec{Width: d.back.Width.Length(), TailStock: d.sideT.Length(), PinStock: d.backT.Length(),
		Slope: d.slope(), Chisel: b.spec.Shop.SmallestChisel.Length(), Kerf: b.spec.Shop.DovetailKerf.Length(), Step: b.fine()})
	problems = ours(problems, d.spec.Tails.Set || d.spec.HasSlope)
	for i, side := range [2]*Part{d.left, d.right} {
		pinEnd, inTail := joinery.Near, joinery.High
		if i == 1 {
			pinEnd, inTail = joinery.Far, joinery.Low
		}
		b.dovetail(&l, problems, corner{tail: side, tailEnd: joinery.Far, inTail: inTail, pin: d.back, pinEnd: pinEnd, inPin: joinery.High,
			front: d.back.Place.At}, side.Name+" to back", d.asm.At)
	}
}

func (b *builder) drawerFrontJoints(d *drawerWork) {
	run := joinery.Run{From: d.up.Length(), To: d.up.Length() + d.bottomT.Length(), TailDepth: d.groove.Length(), PinDepth: d.groove.Length()}
	l, problems := joinery.LayDovetails(joinery.DovetailSpec{Width: d.height.Length(), TailStock: d.sideT.Length(), PinStock: d.joinT.Length(),
		Slope: d.slope(), Lap: d.lap.Length(), Tails: int(d.spec.Tails.Value), Runs: []joinery.Run{run},
		Chisel: b.spec.Shop.SmallestChisel.Length(), Kerf: b.spec.Shop.DovetailKerf.Length(), Step: b.fine()})
	problems = ours(problems, d.spec.Tails.Set || d.spec.HasSlope)
	for i, side := range [2]*Part{d.left, d.right} {
		pinEnd, inTail := joinery.Near, joinery.High
		if i == 1 {
			pinEnd, inTail = joinery.Far, joinery.Low
		}
		b.dovetail(&l, problems, corner{tail: side, tailEnd: joinery.Near, inTail: inTail, pin: d.front, pinEnd: pinEnd, inPin: joinery.Low,
			front: d.at}, side.Name+" to front", d.asm.At)
	}
}
