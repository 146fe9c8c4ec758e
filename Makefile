# Everything runs without network once the modules are there (go mod download).
# `make check` is what decides; .ci/run calls the same target.

# The program is pure Go; only the race detector wants a C compiler.
export CGO_ENABLED := 0

GO      ?= go
EXAMPLE ?= examples/hall-cabinet
FUZZTIME ?= 10s

# Packages that share anything between goroutines.
RACED := $(wildcard internal/compile internal/sheet/lettering)
# Packages with golden files: -update is unknown to the others.
GOLDEN = $(shell grep -rl --include='*_test.go' 'testkit[.]Golden\b' internal cmd 2>/dev/null | xargs -r -n1 dirname | sort -u | grep -v internal/testkit)

.PHONY: check format vet arch readers test race generated golden bench fuzz explore build book clean

check: format vet arch readers test race generated
	@echo "make check: all good"

format:
	@left=$$(gofmt -l $(wildcard cmd internal)); \
	if [ -n "$$left" ]; then echo "gofmt -w these:"; echo "$$left"; exit 1; fi

vet:
	$(GO) vet ./...

# Never from the test cache: it reads the whole tree.
arch:
	$(GO) test -count=1 ./internal/arch

# Other people's readers of our files (outside/README.md), for the tests; new
# only when the lock file is. Where they cannot be had, those tests are skipped.
readers:
	@if [ outside/node_modules/.package-lock.json -nt outside/package-lock.json ]; then echo "readers: there"; \
	elif ! command -v npm >/dev/null; then echo "readers: no npm (install nodejs)"; [ "$$CI" != true ]; \
	else npm ci --prefix outside || { echo "readers: could not be fetched"; [ "$$CI" != true ]; }; fi

test:
	$(GO) test ./...

# Short, and only where goroutines meet: the detector slows tests about tenfold.
race:
	@if [ -z "$(RACED)" ]; then echo "race: nothing to do"; \
	elif command -v gcc >/dev/null; then set -x; CGO_ENABLED=1 $(GO) test -race -short $(addprefix ./,$(RACED)); \
	elif [ "$$CI" = true ]; then echo "race: no C compiler and CI=true: install gcc"; exit 1; \
	else echo "race: skipped, no C compiler (install gcc)"; fi

# Generator and result are both in the tree; running the one must not change
# the other.
SUMS = find docs internal $(wildcard cmd) -type f -exec sha256sum {} + | sort -k2
generated:
	@if ! grep -rq --include='*.go' '^//go:generate ' internal $(wildcard cmd); then echo "generated: nothing to do"; exit 0; fi; \
	before=$$($(SUMS)); $(GO) generate ./... && after=$$($(SUMS)) || exit 1; \
	if [ "$$before" != "$$after" ]; then \
		echo "generated files were out of date; they are new now, read and commit them:"; \
		diff <(echo "$$before") <(echo "$$after") | sed -n 's/^> [0-9a-f]*  /  /p'; exit 1; fi
generated: SHELL := bash

# Accept what the program prints now as right. Read the diff before committing.
golden:
	@if [ -z "$(GOLDEN)" ]; then echo "golden: nothing to do"; else set -x; $(GO) test $(addprefix ./,$(GOLDEN)) -update; fi

# Minutes long, and only comparable on a quiet machine: not part of check.
bench:
	$(GO) test -run '^$$' -bench . -benchmem ./...

# FUZZTIME for each target in turn; seeds alone run with every `make test`.
fuzz:
	@grep -rHo --include='*_test.go' '^func Fuzz[A-Za-z0-9_]*' internal $(wildcard cmd) | while IFS=: read -r file func; do \
		name=$${func#func }; echo "== $$name ($$file)"; \
		$(GO) test -run '^$$' -fuzz "^$$name\$$" -fuzztime $(FUZZTIME) "./$$(dirname $$file)" </dev/null || exit 1; \
	done

# Properties on new random cases, several times as many: make test holds the
# same ones at every run.
explore:
	EXPLORE=1 $(GO) test -count=3 $(shell grep -rl --include='*_test.go' 'testkit[.]Check\b' internal | xargs -r -n1 dirname | sort -u | sed 's|^|./|')

build:
	$(GO) build -trimpath -ldflags "-s -w" -o casewright ./cmd/casewright

# The build book of EXAMPLE, named after its folder.
book: build
	./casewright book $(EXAMPLE) -o $(notdir $(EXAMPLE)).pdf

clean:
	rm -f casewright $(notdir $(EXAMPLE)).pdf
