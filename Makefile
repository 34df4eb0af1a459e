# make demo   install into .venv and show what the demo rig weighs and whether it may be towed
# make test   lint, types, tests
# Needs Python 3.11 or newer with its venv module, and the package index. Nothing else, no git.

.PHONY: demo test nightly docs bench clean

PYTHON ?= $(shell for python in python3 python3.14 python3.13 python3.12 python3.11; do \
	"$$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null && echo "$$python" && break; done)
BIN := .venv/bin

# The answer is the exit code too, and "no" is an answer, not a failure: only 3 (nothing could be read) or more stops
# the demo.
ANSWERED = code=$$?; echo "(exit code $$code: 0 go, 1 limits or ask, 2 no, 3 nothing could be read)"; test $$code -le 2

demo: .venv/installed
	@echo '$$ boxwright check rigs/whimbrel.yaml'
	@$(BIN)/boxwright check rigs/whimbrel.yaml; $(ANSWERED)
	@echo
	@echo '$$ boxwright weight rigs/whimbrel.yaml'
	@$(BIN)/boxwright weight rigs/whimbrel.yaml; $(ANSWERED)

test: .venv/installed-for-tests
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/pytest -n 2 --dist worksteal -q --durations=20

nightly: .venv/installed-for-tests
	BOXWRIGHT_TESTS=nightly $(BIN)/pytest -n 2 --dist worksteal -q -m nightly

# What the documents copy from the program: the schema, and the output in the tour of README.md.
docs: .venv/installed
	$(BIN)/boxwright schema > docs/rig.schema.json
	$(BIN)/python tools/tour.py

bench: .venv/installed
	$(BIN)/python benchmarks/run.py

clean:
	rm -rf .venv dist build .pytest_cache .mypy_cache .ruff_cache .import_linter_cache .hypothesis

.venv/bin/python:
	@test -n "$(PYTHON)" || { echo 'Boxwright needs Python 3.11 or newer: none was found on PATH.'; \
	echo 'Install it, or say where it is: make demo PYTHON=/path/to/python3.11'; exit 1; }
	@$(PYTHON) -c 'import venv, ensurepip' 2>/dev/null || { echo '$(PYTHON) has no venv module.'; \
	echo 'Debian, Ubuntu and their kin: sudo apt install python3-venv'; exit 1; }
	$(PYTHON) -m venv .venv

.venv/installed: pyproject.toml | .venv/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e .
	@touch $@

.venv/installed-for-tests: pyproject.toml | .venv/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[test]'
	@touch $@ .venv/installed
