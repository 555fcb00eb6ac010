"""Imports run one way, each third party has one door, and no room grows for ever."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

CALC = Path(__file__).parent.parent / "calc"
LAYERS = (
    ("errors", "units"), ("formula",), ("declared",), ("declare",), ("trade",), ("cells", "intake"), ("workbook",),
    ("files",), ("batch",), ("cli",),
)  # fmt: skip
DOORS = {
    "pint": {"units/registry.py"},
    "openpyxl": {"workbook/read.py"},
    "xlsxwriter": {"workbook/write.py", "workbook/blank.py", "workbook/blank_sheets.py"},
    "click": {"cli.py"},
    "pandas": {"workbook/week.py"},
}
MODULES = sorted(path.relative_to(CALC).as_posix() for path in CALC.rglob("*.py"))


def imports(module: str) -> Iterator[str]:
    """What a module imports, inside functions too."""
    for node in ast.walk(ast.parse((CALC / module).read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (each.name for each in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{each.name}" for each in node.names if node.module == "calc")


def layer_of(name: str) -> int:
    """The layer of a module of the program, by its first word."""
    first = name.removeprefix("calc.").split(".")[0].removesuffix(".py").split("/")[0]
    return next((place for place, names in enumerate(LAYERS) if first in names), -1)


@pytest.mark.parametrize("module", [module for module in MODULES if module != "__init__.py"])
def test_no_module_imports_from_a_later_layer(module: str) -> None:
    own = layer_of(module)
    assert own >= 0, f"{module} belongs to no layer"
    later = [each for each in imports(module) if each.startswith("calc.") and layer_of(each) > own]
    assert not later, f"{module} imports {later}"


@pytest.mark.parametrize("module", [module for module in MODULES if module.startswith("trade/")])
def test_a_rule_imports_the_words_of_rules_and_earlier_rules_only(module: str) -> None:
    wrong = [
        each for each in imports(module)
        if not each.startswith(("calc.declare", "calc.trade", "__future__", "dataclasses")) or each == "calc.declared"
    ]  # fmt: skip
    assert not wrong, f"{module} imports {wrong}"


@pytest.mark.parametrize("library", DOORS)
def test_a_third_party_comes_in_by_its_own_door(library: str) -> None:
    users = {module for module in MODULES if any(each.split(".")[0] == library for each in imports(module))}
    assert users <= DOORS[library]


@pytest.mark.parametrize("module", MODULES)
def test_no_module_and_no_function_is_too_long_to_be_read(module: str) -> None:
    text = (CALC / module).read_text(encoding="utf-8")
    tree = ast.parse(text)
    assert text.count("\n") <= 300 or "over 300 lines because" in (ast.get_docstring(tree) or "")
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef) and "class " not in (ast.get_source_segment(text, node) or ""):
            length = (node.end_lineno or 0) - node.lineno
            assert length <= 60, f"{module} {node.name} has {length} lines"


@pytest.mark.parametrize("module", MODULES)
def test_whatever_others_use_says_what_it_is(module: str) -> None:
    tree = ast.parse((CALC / module).read_text(encoding="utf-8"))
    assert ast.get_docstring(tree), f"{module} says nothing of itself"
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            assert ast.get_docstring(node), f"{module} {node.name}"
