package joinery

import "casewright/internal/measure"

func oneIn(n int) measure.Slope { return measure.Slope{Rise: 1, Run: int64(n)} }
