package design

import "casewright/internal/measure"

// Limits that keep rubbish from costing time or memory. A large commission has
// 2 000 lines, 10 000 tokens and a few hundred blocks; each limit is far from
// that. Our choice.
const (
	mostBytes    = 16 << 20 // of all texts together
	mostSources  = 1000
	mostLines    = 200_000 // of one text
	mostTokens   = 150_000 // of all texts together
	mostBlocks   = 10_000
	mostNames    = 2_000   // in sizes blocks
	mostProblems = 200     // reported by one Read
	longestLine  = 4_000   // bytes
	longestItem  = 4_000   // tokens in one attribute
	deepest      = 40      // brackets within brackets
	longestWord  = 40      // characters of one number
	mostRounds   = 20      // syntax errors looked for in one block
	mostWritten  = 2 << 20 // bytes of all texts that are not blank or a remark
	parseBudget  = 2 << 20 // bytes looked at again after syntax errors
	mostBits     = 2_000   // of a number's numerator and denominator together
	mostTerms    = 40      // of a sum that keeps its names
	longestName  = 80      // characters of a label
)

// Limits of sizes. Furniture is not longer than 20 m, and nothing of wood or
// metal in it is thinner than 0.1 mm.
const (
	largestSize  = 20 * measure.Metre
	smallestSize = measure.Millimetre / 10
)
