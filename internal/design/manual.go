package design

import (
	"fmt"
	"slices"
	"strings"
)

// Manual is docs/language.md: the rules of the language and, from the schema,
// every block and entry. It is written for a maker.
func Manual() string {
	var b strings.Builder
	b.WriteString(manualHead)
	l := Schema()
	b.WriteString("## Blocks\n\nAt the top level, in any order and any file:\n\n")
	for _, k := range l.Top {
		def, _ := l.Find(k.ID)
		fmt.Fprintf(&b, "- [`%s`](#%s): %s\n", header(def), anchor(def), firstSentence(def.Doc))
	}
	for _, def := range l.Blocks {
		writeBlock(&b, def)
	}
	b.WriteString(manualCodes)
	for _, e := range Explanations() {
		fmt.Fprintf(&b, "- **%s %s.** %s\n", e.Code, e.Title, e.Text)
	}
	return b.String()
}

// title is what a block is called in the manual: its kind, with the block it
// is in where the kind alone is not enough.
func title(b Block) string {
	if outer, _, nested := strings.Cut(b.ID, "/"); nested {
		return b.Type + " of a " + outer
	}
	return b.Type
}

func anchor(b Block) string { return strings.ReplaceAll(title(b), " ", "-") }

func header(b Block) string {
	switch b.Label {
	case MustHaveLabel:
		return b.Type + ` "…"`
	case MayHaveLabel:
		return b.Type + ` ["…"]`
	}
	return b.Type
}

func firstSentence(s string) string {
	if i := strings.Index(s, ". "); i >= 0 {
		return s[:i+1]
	}
	return s
}

func writeBlock(b *strings.Builder, def Block) {
	fmt.Fprintf(b, "\n### %s\n\n%s\n", title(def), def.Doc)
	switch def.Label {
	case MustHaveLabel:
		fmt.Fprintf(b, "\nWritten `%s \"…\" { }`. The name is %s.\n", def.Type, def.LabelDoc)
	case MayHaveLabel:
		fmt.Fprintf(b, "\nWritten `%s { }` or `%s \"…\" { }`. The name is %s.\n", def.Type, def.Type, def.LabelDoc)
	}
	if twin := twinOf(def); twin != "" {
		fmt.Fprintf(b, "\nIt takes the entries and blocks of [`%s`](#%s).\n", twin, anchor(*blockByID(twin)))
		writeExample(b, def)
		return
	}
	if len(def.Attributes) > 0 {
		b.WriteString("\n| entry | takes | meaning | if not given |\n| --- | --- | --- | --- |\n")
	}
	for _, a := range def.Attributes {
		fmt.Fprintf(b, "| `%s` | %s, as `%s` | %s | %s |\n", a.Name, takes(a), cell(a.Example), cell(a.Doc), cell(absent(a)))
	}
	if len(def.Blocks) > 0 {
		inner := make([]string, len(def.Blocks))
		for i, k := range def.Blocks {
			inner[i] = "[`" + k.Type + "`](#" + anchor(*blockByID(k.ID)) + ")"
			if k.Many {
				inner[i] += " (several)"
			}
		}
		fmt.Fprintf(b, "\nInside it: %s.\n", listed(inner, "and"))
	}
	writeExample(b, def)
}

func writeExample(b *strings.Builder, def Block) {
	if def.Example != "" {
		fmt.Fprintf(b, "\n```hcl\n%s```\n", def.Example)
	}
}

// twinOf is the block told earlier that takes exactly the same, so that a long
// table is printed once; "" for a block without one.
func twinOf(def Block) string {
	twin := def.ID + "s"
	other, ok := Schema().Find(twin)
	if !ok || !slices.EqualFunc(def.Attributes, other.Attributes, sameAttribute) || !slices.Equal(def.Blocks, other.Blocks) {
		return ""
	}
	return twin
}

func sameAttribute(a, b Attribute) bool {
	return a.Name == b.Name && a.Kind == b.Kind && a.Doc == b.Doc && a.Usual == b.Usual && a.Required == b.Required && slices.Equal(a.Choices, b.Choices)
}

func takes(a Attribute) string {
	if len(a.Choices) == 1 {
		return "only " + choiceWords(a.Choices)
	}
	if len(a.Choices) > 0 {
		return "one of " + choiceWords(a.Choices)
	}
	return a.Kind
}

func absent(a Attribute) string {
	switch {
	case a.Required:
		return "must be given"
	case a.Usual == "":
		return "nothing is assumed"
	}
	return a.Usual
}

// cell keeps a table's columns apart.
func cell(s string) string { return strings.ReplaceAll(s, "|", `\|`) }

const manualHead = `<!-- Generated from internal/design. Do not edit: change the tables there and run
     go test ./internal/design -run TestManual -update -->

# The design language

A commission is a folder of texts whose names end in ` + "`.hcl`" + `, or a single one. Together they say what is to be built; everything
else is worked out. A text is made of two things only:

- an **entry**, ` + "`name = value`" + `, on a line of its own;
- a **block**, a kind, often a name in quotes, and what it holds between ` + "`{`" + ` and ` + "`}`" + `.

A remark goes from ` + "`#`" + ` to the end of the line. Blocks may stand in any order, with one exception: inside a case, order is
what you see, from the top down and from left to right.

This is a whole commission:

` + "```hcl" + `
commission "first" {}

case "box" {
  width  = 20
  height = 30
  depth  = 12
  wood   = "cherry"
  inside {
    door {}
  }
}
` + "```" + `

## Sizes

- **A bare number is in the commission's unit**, inches unless ` + "`commission`" + ` says ` + "`units = \"mm\"`" + `. Fractions are written as a maker says
  them: ` + "`20 1/2`, `5 3/8`, `9/16`" + `. Decimals work as well: ` + "`20.5`" + `.
- **A size with its own unit stands in quotes**, wherever a size can stand: ` + "`\"136.5 mm\"`, `\"13.65 cm\"`, `\"5 3/8 in\"`, `\"1 ft 4 in\"`" + `.
- Not ` + "`23-1/2`" + ` (write ` + "`23 1/2`" + `; a subtraction has blanks, ` + "`23 - 1/2`" + `), not ` + "`23.5in`, `23.5 in` or `23\"`" + ` (quotes), not ` + "`5½`" + ` (a slash),
  not ` + "`32,5`" + ` (the decimal sign is a point).
- Sizes are kept exactly, to the nanometre. Nothing is rounded before it is printed.
- A size is more than nothing and at most 20 m, and at least 0.1 mm; where 0 or less makes sense, it is allowed.
- Sizes may be reckoned: ` + "`20 1/2 - 2 * side`, `(a + b) / 3`, `max(a, b)`, `min(a, b)`" + `, and ` + "`mm(12)` or `inch(1/2)`" + ` for a number in another unit
  than the commission's. A length times a length is refused.
- Where a size is not given, the last column of the tables below tells what holds. In a millimetre commission sizes told in inches alone are round
  millimetres: the nearest 5 mm from 40 mm up, the nearest 1 mm from 5 mm up, the nearest half below; “the nearest 1/16” is then the
  nearest millimetre. ` + "`casewright why`" + ` tells of any size what it came from.
- **A size gets a name in a block ` + "`sizes`" + `** and is then used by that name, without quotes, anywhere and in any order.

## Words, numbers, yes and no

Text stands in quotes, on one line. Yes and no are ` + "`true` and `false`" + `. Lists stand in square brackets: ` + "`[12 1/2, 28 1/4]`" + `.
Names are letters, digits, blanks, ` + "`-` and `_`" + `. A **path** leads to a part or an opening through names with dots between:
` + "`cabinet.upper.keys`" + `; ` + "`*`" + ` stands for any one name. A row, column or shelf without a name is called by its number, from 1.

`

const manualCodes = `
## What can go wrong

Every message has a code that keeps its meaning.

`
