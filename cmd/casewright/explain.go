package main

import (
	"bytes"
	"fmt"
	"strings"

	"casewright/internal/check"
	"casewright/internal/design"
	"casewright/internal/diag"
	"casewright/internal/piece"
	"casewright/internal/solid"

	"github.com/spf13/cobra"
)

func newExplain() *cobra.Command {
	return &cobra.Command{
		Use:   "explain [CODE]",
		Short: "Tell what the code of an error or a finding means",
		Long: `Tells at length what the code of an error or a finding means: for findings what is
reckoned, by which formula, against which limit, and who says so.

The first word of a finding's code stands for all that begin with it. Without a CODE
all codes are listed.`,
		Example: `  casewright explain E110
  casewright explain movement.panel
  casewright explain movement
  casewright explain`,
		Args: atMost(1, "one CODE"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return write(c.OutOrStdout(), listCodes())
			}
			text, err := explainCode(args[0])
			if err != nil {
				return err
			}
			return write(c.OutOrStdout(), text)
		},
	}
}

// codeGroup is the codes of one stage.
type codeGroup struct {
	title string
	codes []diag.Explanation
}

func codeGroups() []codeGroup {
	findings := codeGroup{title: "findings"}
	for _, r := range check.Rules() {
		findings.codes = append(findings.codes, diag.Explanation{Code: r.Code, Title: r.Title, Text: r.Explains})
	}
	return []codeGroup{{"the text", design.Explanations()}, {"sizes that do not work out", piece.Explanations()}, {"parts that cannot be", solid.Explanations()}, findings}
}

func listCodes() []byte {
	var b bytes.Buffer
	t := table{columns: []column{{title: "code"}, {title: "means"}}}
	for _, g := range codeGroups() {
		t.rows = append(t.rows, row{heading: g.title})
		for _, e := range g.codes {
			t.rows = append(t.rows, row{cells: []string{e.Code, e.Title}})
		}
	}
	t.write(&b)
	return b.Bytes()
}

func explainCode(code string) ([]byte, error) {
	var b bytes.Buffer
	var codes []string
	for _, g := range codeGroups() {
		for _, e := range g.codes {
			codes = append(codes, e.Code)
			if !strings.EqualFold(e.Code, code) && !strings.HasPrefix(e.Code, strings.ToLower(code)+".") {
				continue
			}
			if b.Len() > 0 {
				b.WriteByte('\n')
			}
			fmt.Fprintf(&b, "%s: %s\n\n", e.Code, e.Title)
			for para := range strings.SplitSeq(e.Text, "\n") {
				prose(&b, "", para)
			}
		}
	}
	if b.Len() == 0 {
		return nil, fmt.Errorf("there is no code %q%s\n  “casewright explain” lists all codes", clip(code), didYouMean(code, codes))
	}
	return b.Bytes(), nil
}
