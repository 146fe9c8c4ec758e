package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// Exit codes.
const (
	codeGood   = 0
	codeStop   = 1
	codeMisuse = 2
)

// Main is the command line without the process around it.
type Main struct{}

// Run runs one command and returns its exit code. Results go to stdout,
// messages to stderr; stdin is not read by any command yet. It panics on
// nothing a person can type.
func (Main) Run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	var stop stopped
	switch {
	case err == nil:
		return codeGood
	case errors.As(err, &stop):
		return codeStop
	}
	fmt.Fprintf(stderr, "casewright: %s\n", strings.TrimSpace(err.Error()))
	return codeMisuse
}

// stopped ends a command with exit code 1; what there was to say has been said.
type stopped struct{}

func (stopped) Error() string { return "stopped" }

const rootLong = `Casewright works out solid-wood case furniture from a short text.

A commission is a folder of texts whose names end in .hcl. From it come the parts
with all joinery, what stands against the piece, and a book to build it from.

Sizes wait: a drawer or a door is planned until its opening is measured. Such sizes
are printed with ~ before them.`

const rootExample = `  casewright init bench          begin a commission in the folder bench
  casewright check bench         say what is wrong with it
  casewright parts bench         list its parts
  casewright why bench A3.length tell how a size came about
  casewright book bench          print the build book
  casewright weigh bench         weigh it and find its balance
  casewright model bench         write it in three dimensions`

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:           "casewright",
		Short:         "Work out solid-wood case furniture from a short text",
		Long:          rootLong,
		Example:       rootExample,
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          knownCommand,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetVersionTemplate("casewright {{.Version}}\n")
	root.SetFlagErrorFunc(flagError)
	root.CompletionOptions.HiddenDefaultCmd = true
	root.SetHelpCommand(newHelp(root))
	root.AddCommand(newVersion(), newCheck(), newParts(), newWhy(), newBook(), newModel(), newWeigh(), newExplain(), newInit())
	return root
}

// newHelp is cobra's command help, which for an unknown word says so.
func newHelp(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Tell how a command is used",
		RunE: func(_ *cobra.Command, args []string) error {
			c, rest, err := root.Find(args)
			switch {
			case err != nil || c == nil || c == root && len(rest) > 0:
				return knownCommand(root, args)
			case len(rest) > 0:
				return fmt.Errorf("%s has no commands of its own\n  see: %s --help", c.Name(), c.CommandPath())
			}
			c.InitDefaultHelpFlag()
			c.InitDefaultVersionFlag()
			return c.Help()
		},
	}
}

// newVersion is --version for those who type it as a command.
func newVersion() *cobra.Command {
	return &cobra.Command{
		Use:    "version",
		Short:  "Tell which build this is, as --version does",
		Hidden: true,
		Args:   atMost(0, "nothing"),
		RunE: func(c *cobra.Command, _ []string) error {
			return write(c.OutOrStdout(), []byte("casewright "+version()+"\n"))
		},
	}
}

// knownCommand reports a first word that is no command.
func knownCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, k := range c.Commands() {
		if !k.Hidden || k.Name() == "version" {
			names = append(names, k.Name())
		}
	}
	return fmt.Errorf("there is no command %q%s\n  see: casewright --help", clip(args[0]), didYouMean(args[0], names))
}

// flagError says which option is wrong, offers a close one and the help.
func flagError(c *cobra.Command, err error) error {
	if errors.Is(err, pflag.ErrHelp) {
		return err
	}
	text := err.Error()
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) {
		text = "there is no option --" + unknown.GetSpecifiedName()
		if unknown.GetSpecifiedShortnames() != "" {
			text = "there is no option -" + unknown.GetSpecifiedName()
		}
		var names []string
		c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
		text += didYouMean("--"+unknown.GetSpecifiedName(), names)
	}
	return fmt.Errorf("%s\n  see: %s --help", text, c.CommandPath())
}

// atMost is cobra's check of the number of arguments, in plain words.
func atMost(n int, takes string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) > n {
			return fmt.Errorf("%s takes %s, and here are %d arguments\n  see: %s --help", c.Name(), takes, len(args), c.CommandPath())
		}
		return nil
	}
}

// pathArg is the argument PATH, or the current folder.
func pathArg(args []string) string {
	if len(args) == 0 {
		return "."
	}
	return args[0]
}
