"""Each package opens with one sentence; each public thing of the trade says what it is."""

import ast
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

import shimstock

HOUSE = Path(__file__).parents[2]
SOURCE = HOUSE / "src/shimstock"
PACKAGES = sorted(path.parent for path in SOURCE.rglob("*.py") if path.name == "__init__.py")
MODULES = sorted((SOURCE / "trade").rglob("*.py"))
Named = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


def name(path: Path) -> str:
    return str(path.relative_to(SOURCE.parent))


@pytest.mark.parametrize("package", PACKAGES, ids=name)
def test_a_package_opens_with_one_sentence(package):
    sentence = ast.get_docstring(ast.parse((package / "__init__.py").read_text())) or ""

    assert sentence.endswith("."), f"{name(package)}/__init__.py has no sentence of purpose"
    assert "\n\n" not in sentence and ". " not in sentence, "one sentence is enough at the door"


def test_each_folder_of_modules_is_a_package():
    folders = {path.parent for path in SOURCE.rglob("*.py")}

    assert sorted(folders - set(PACKAGES)) == []


def public(tree: ast.Module) -> Iterator[Named]:
    for node in tree.body:
        if isinstance(node, Named) and not node.name.startswith("_"):
            yield node


@pytest.mark.parametrize("module", MODULES, ids=name)
def test_each_public_thing_of_the_trade_has_its_sentence(module):
    silent = [
        node.name for node in public(ast.parse(module.read_text())) if not ast.get_docstring(node)
    ]

    assert silent == []


def test_the_version_is_the_same_inside_and_outside():
    project = tomllib.loads((HOUSE / "pyproject.toml").read_text())["project"]

    assert shimstock.__version__ == project["version"]
