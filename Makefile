# Everything a newcomer needs: `make demo` to see it work, `make test` to check it.
# One virtual environment, .venv, serves all; its stamps tell when a lock file or
# pyproject.toml has changed, so a second run starts at once.

PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
PIP    := $(BIN)/python -m pip --disable-pip-version-check --quiet

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
WITH_TESTS := test trade bench docs pictures
.PHONY: help demo serve test browser pictures trade lock bench docs clean

help: ## show this list
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "make %-6s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

demo: $(VENV)/.package ## lay out an invented shed in ./shed and print its overhaul
	@SHIMSTOCK_SHED=shed $(BIN)/shimstock demo

serve: $(VENV)/.package ## serve ./shed's pages to this computer; to phones: make serve LAN=1
	@SHIMSTOCK_SHED=shed $(BIN)/shimstock serve $(if $(LAN),--lan) $(if $(PORT),--port $(PORT))

test: $(VENV)/.test $(VENV)/.package browser ## every check: style, types, import rules, tests
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(BIN)/pytest -n 2 --ignore=tests/e2e
	@# apart: a browser's event loop stays in its process, and Django minds. What fails is asked
	@# once more alone: browser and server share the machine, and twice red is no accident
	$(BIN)/pytest -n 2 tests/e2e || $(BIN)/pytest --last-failed --last-failed-no-failures=none tests/e2e

trade: $(VENV)/.test $(VENV)/.package ## the quick tests, to run while typing
	$(BIN)/pytest -q tests/trade src/shimstock/trade

bench: $(VENV)/.test $(VENV)/.package ## the figures of speed and quality, each with its budget
	@set -e; for file in benchmarks/*.py; do echo "== $$file"; $(BIN)/python "$$file"; done

docs: $(VENV)/.test $(VENV)/.package ## write docs/commands.md, sums.md and checks.md anew
	$(BIN)/python -m shimstock.faces.cli.commands_page > docs/commands.new
	mv docs/commands.new docs/commands.md
	$(BIN)/python -m shimstock.faces.cli.sums_page > docs/sums.new
	mv docs/sums.new docs/sums.md
	$(BIN)/python tests/published/page.py > docs/checks.new
	mv docs/checks.new docs/checks.md

pictures: $(VENV)/.test $(VENV)/.package browser ## take the pictures of the README anew
	$(BIN)/python tests/e2e/take_pictures.py

clean: ## remove the environment and all caches; a shed is never touched
	rm -rf $(VENV) .hypothesis .import_linter_cache .mypy_cache .pytest_cache .ruff_cache build dist
	find src tests benchmarks -name __pycache__ -type d -prune -exec rm -rf {} + 2>/dev/null || true

# --- the environment -------------------------------------------------------------------

$(VENV)/.made:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { \
	  echo "shimstock needs Python 3.11 or newer; name one with: make PYTHON=python3.12 …"; exit 1; }
	@echo "making $(VENV) …"
	@$(PYTHON) -m venv --clear $(VENV)
	@touch $@

$(VENV)/.run: requirements/run.lock $(VENV)/.made
	@echo "installing what shimstock runs on (about a minute, once) …"
	@$(PIP) install --require-hashes -r $<
	@touch $@

# The test lock holds all that the run lock holds, at the same versions.
$(VENV)/.test: requirements/test.lock requirements/run.lock $(VENV)/.made
	@echo "installing what shimstock is tested with (about a minute, once) …"
	@$(PIP) install --require-hashes -r $<
	@touch $(VENV)/.run $@

# Whichever lock was asked for comes first; the run lock serves when neither is there yet.
$(VENV)/.package: pyproject.toml $(VENV)/.made | $(if $(filter $(WITH_TESTS),$(MAKECMDGOALS)),$(VENV)/.test,$(VENV)/.run)
	@$(PIP) install --no-build-isolation --no-deps --editable .
	@touch $@

# The pages are tested in a real browser: the system's own Chromium, and no other.
browser:
	@command -v chromium >/dev/null || command -v chromium-browser >/dev/null || { \
	  if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
	    echo "installing Chromium, for the tests of the pages (once) …"; \
	    apt-get -qq update && DEBIAN_FRONTEND=noninteractive apt-get -qq install -y \
	      --no-install-recommends chromium >/dev/null; \
	  else \
	    echo "The pages are tested in Chromium, and there is none here: install it"; \
	    echo "(Debian, Ubuntu: sudo apt-get install chromium), then make test again."; exit 1; \
	  fi; }

# --- the locks -------------------------------------------------------------------------

COMPILE := $(BIN)/uv pip compile --quiet --universal --python-version 3.11 --generate-hashes \
	--no-emit-index-url --custom-compile-command "make lock" --group build

lock: $(VENV)/.made ## write requirements/*.lock anew from pyproject.toml (UPGRADE=1 takes newer ones)
	$(PIP) install uv
	$(COMPILE) $(if $(UPGRADE),--upgrade) pyproject.toml -o requirements/run.lock
	$(COMPILE) $(if $(UPGRADE),--upgrade) --group test -c requirements/run.lock pyproject.toml \
	  -o requirements/test.lock
