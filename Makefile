# Every target sets up what it needs in .venv; a second run starts at once.
PYTHON ?= python3
BIN    := .venv/bin
# How many tests run side by side; those of one file stay together, so a wheel is built once.
WORKERS ?= 2

# An environment that happens to be active must not leak in; byte code makes every start faster.
unexport VIRTUAL_ENV PYTHONPATH PYTHONHOME PYTHONDONTWRITEBYTECODE

# "make test INSTALL=no" changes nothing on the machine, even as root on a Debian.
INSTALL ?= yes
# Where "make shots" puts its pictures.
SHOTS ?= heatledger-shots

.PHONY: help app demo test lint types bench docs shots fonts vendor lock clean
.DEFAULT_GOAL := help

help: ## list the targets
	@sed -n 's/^\([a-z]*\):.*## /\1\t/p' $(MAKEFILE_LIST) | while IFS='	' read -r name words; do \
		printf 'make %-8s %s\n' "$$name" "$$words"; done

app: .venv/.runtime ## start the app on this machine and say where to look
	@$(BIN)/heatledger app

demo: .venv/.runtime ## design the invented demo houses: room table here, papers in heatledger-demo/
	@$(BIN)/heatledger demo

test: lint ## everything that must hold: lint, then all tests
	@$(BIN)/python tests/needed.py $(if $(filter yes,$(INSTALL)),--install)
	$(BIN)/python -m pytest -q -n $(WORKERS) --dist loadfile

lint: .venv/.dev ## style, types, and the order of the layers
	$(BIN)/ruff check .
	$(BIN)/ruff format --check --quiet .
	$(BIN)/mypy
	$(BIN)/lint-imports --no-cache --no-logo
	@$(BIN)/python tests/script_types.py --lenient

types: .venv/.dev ## types of the scripts in the browser (needs npm)
	@$(BIN)/python tests/script_types.py

bench: .venv/.dev ## the table of ratios
	$(BIN)/python benchmarks/run.py

docs: .venv/.dev ## write the pages that are made from the code anew
	$(BIN)/python docs/make_docs.py
	$(BIN)/python docs/make_findings.py
	$(BIN)/python -m pytest -q tests/published/test_page.py --write-checks

shots: .venv/.dev ## pictures of every sheet of the app, in heatledger-shots/
	$(BIN)/python docs/make_shots.py $(SHOTS)

fonts: .venv/.fonts ## cut the typefaces of the app anew (needs npm)
	@.venv/tools/fonts/bin/python docs/make_fonts.py

vendor: .venv/.runtime ## fetch the vendored files again and compare (needs npm)
	@$(BIN)/python docs/make_vendor.py

lock: .venv/.dev ## resolve constraints.txt anew (no host names in it)
	$(BIN)/python -m pip install --quiet uv
	$(BIN)/uv pip compile pyproject.toml --universal --all-extras --upgrade --no-annotate --no-header \
		--no-emit-index-url --no-emit-find-links --quiet -o constraints.txt

clean: ## remove the environment and everything that was built
	rm -rf .venv build dist heatledger-demo heatledger-shots .mypy_cache .pytest_cache .ruff_cache .hypothesis

# The runtime set is enough for the demo; the tests add the rest to the same environment.
.venv/.runtime: pyproject.toml constraints.txt
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo "Python 3.11 or newer is needed; name one with: make PYTHON=python3.11 ..." >&2; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || \
		{ echo "This Python cannot make an environment. On Debian: apt-get install python3-venv" >&2; exit 1; }
	@$(BIN)/python -m pip --version >/dev/null 2>&1 || \
		{ echo "Setting up .venv, once ..."; $(PYTHON) -m venv --clear .venv; }
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e .
	@touch $@

.venv/.dev: .venv/.runtime
	@echo "Adding what the tests need, once ..."
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --use-pep517 -c constraints.txt -e '.[dev,postgres]'
	@touch $@

.venv/.fonts: .venv/.runtime
	@$(PYTHON) -m venv .venv/tools/fonts
	@.venv/tools/fonts/bin/python -m pip install --quiet --disable-pip-version-check fonttools==4.68.0 brotli==1.2.1
	@touch $@
