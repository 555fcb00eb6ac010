"""Imports run one way, each third party has one door, and no room grows for ever."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

from calc.trade.catalog import SECTIONS
from folders import ROOT, TESTS
from longest import LONGEST

CALC = ROOT / "calc"
LAYERS = (
    {"_version"}, {"errors"}, {"units"}, {"formula"}, {"declared"}, {"declare"}, {"trade"}, {"cells"}, {"intake"},
    {"model"}, {"cell_text", "xlsx_read"}, {"layout"}, {"xlsx_write"}, {"files"}, {"blanks"}, {"audit"},
    {"batch"}, {"api"}, {"cli"}, {"__init__"},
)  # fmt: skip
"""The first word of every module, from the foot of the house to its door: each may import what stands before it."""

DOORS = {
    "pint": {"calc.units.registry"},
    "openpyxl": {"calc.xlsx_read.read"},
    "defusedxml": {"calc.xlsx_read.package_parts"},
    "xlsxwriter": {"calc.xlsx_write.write", "calc.xlsx_write.xlsxwriter_internals", "calc.blanks.sheets"},
    "click": {"calc.cli"},
    "pandas": {"calc.layout.week_days", "calc.api"},
    "numpy": {"calc.formula.dates", "calc.formula.rounding", "calc.formula.functions", "calc.formula.compute",
              "calc.model.evaluate", "calc.model.results"},
}  # fmt: skip
"""Who else's code is let in, and where."""

LINES, LINES_OF_A_FUNCTION = 450, 40
RULE_MAKERS = {"calc.trade.materials.packs"}
"""Rule files that declare their sections in a function, once for each product."""


def name_of(path: Path) -> str:
    """The name that a module is imported by."""
    parts = path.relative_to(CALC.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" and len(parts) > 2 else parts)


FILES = {name_of(path): path for path in sorted(CALC.rglob("*.py"))}
MODULES = sorted(FILES)
RULES = [module for module in MODULES if module.startswith("calc.trade.")]


@cache
def tree_of(module: str) -> ast.Module:
    """A module, parsed."""
    return ast.parse(FILES[module].read_text(encoding="utf-8"))


def imports(module: str) -> Iterator[str]:
    """The modules that a module imports, inside functions too."""
    for node in ast.walk(tree_of(module)):
        if isinstance(node, ast.Import):
            yield from (each.name for each in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert not node.level and node.module, f"{module} imports by a path of dots"
            of_package = [f"{node.module}.{each.name}" for each in node.names]
            yield from (each if each in FILES else own_name(node.module) for each in of_package)


def own_name(module: str) -> str:
    """``calc`` itself goes by the file that it is."""
    return "calc.__init__" if module == "calc" else module


def layer_of(module: str) -> int:
    """How far up the house a module of the program stands."""
    return next(place for place, names in enumerate(LAYERS) if module.split(".")[1] in names)


def listed(offenders: list[str]) -> str:
    """What a failed test says: how many there are, and each on a line."""
    return "\n".join([f"{len(offenders)} in all", *offenders])


def test_every_room_of_the_house_is_in_the_plan() -> None:
    assert {module.split(".")[1] for module in MODULES} == set().union(*LAYERS)


def test_no_module_imports_from_a_later_layer() -> None:
    later = [
        f"{module} imports {each}"
        for module in MODULES
        for each in imports(module)
        if each.startswith("calc.") and layer_of(each) > layer_of(module)
    ]
    assert not later, listed(later)


def test_no_two_modules_lean_on_each_other() -> None:
    try:
        TopologicalSorter({module: set(imports(module)) & set(FILES) for module in MODULES}).prepare()
    except CycleError as circle:
        pytest.fail(" <- ".join(circle.args[1]))


def test_layout_and_writer_show_results_and_compute_none() -> None:
    rooms = [each for each in MODULES if each.split(".")[1] in ("layout", "xlsx_write")]
    wrong = [
        f"{module} imports {each}"
        for module in rooms
        for each in imports(module)
        if each.startswith("calc.model") and each != "calc.model.results"
    ]
    assert not wrong


def test_only_one_module_uses_private_parts_of_the_writer() -> None:
    """Whatever xlsxwriter does not promise to keep has its check there."""
    named = "xlsxwriter_internals"
    private = {
        f"{module}: {node.attr}"
        for module in MODULES
        if module.split(".")[1] in ("xlsx_write", "blanks", "layout") and not module.endswith(named)
        for node in ast.walk(tree_of(module))
        if isinstance(node, ast.Attribute) and node.attr.startswith("_") and not node.attr.startswith("__")
        if not (isinstance(node.value, ast.Name) and node.value.id in ("self", "cls"))
    }
    assert not private
    derived = {
        module
        for module in MODULES
        for node in ast.walk(tree_of(module))
        if isinstance(node, ast.ClassDef)
        and any(isinstance(base, ast.Name) and base.id == "Worksheet" for base in node.bases)
    }
    assert derived == {f"calc.xlsx_write.{named}"}


def test_a_rule_imports_the_words_of_rules_and_other_rules_only() -> None:
    wrong = [
        f"{module} imports {each}"
        for module in RULES
        for each in imports(module)
        if each != "calc.declare" and each not in RULES and each.split(".")[0] not in sys.stdlib_module_names
    ]
    assert not wrong, listed(wrong)


def test_a_rule_imports_rules_that_the_catalog_has_before_it() -> None:
    order = list(dict.fromkeys(section.__module__ for section in SECTIONS))
    place = {module: number for number, module in enumerate(order)}
    for module in order:
        if module not in RULE_MAKERS:
            later = [
                each for each in imports(module) if place.get(each, -1) > place[module] and each not in RULE_MAKERS
            ]
            assert not later, f"{module} imports {later}"


def test_a_third_party_comes_in_by_its_own_door() -> None:
    found: dict[str, set[str]] = {library: set() for library in DOORS}
    for module in MODULES:
        for each in imports(module):
            if each.split(".")[0] in DOORS:
                found[each.split(".")[0]].add(module)
    assert found == DOORS


def test_nobody_else_comes_in_at_all() -> None:
    known = {"calc", *DOORS, *sys.stdlib_module_names}
    strangers = {each for module in MODULES for each in imports(module) if each.split(".")[0] not in known}
    assert not strangers


def test_no_module_is_too_long_to_be_read() -> None:
    long = [
        f"{module} has {lines} lines"
        for module in MODULES
        if (lines := FILES[module].read_text(encoding="utf-8").count("\n")) > LINES
        if "over 450 lines because" not in (ast.get_docstring(tree_of(module)) or "")
    ]
    assert not long, listed(long)


def test_no_function_is_too_long_to_be_read() -> None:
    long = [
        f"{module}: {node.name} has {length} lines"
        for module in MODULES
        for node in ast.walk(tree_of(module))
        if isinstance(node, ast.FunctionDef)
        if (length := (node.end_lineno or 0) - node.lineno + 1) > LINES_OF_A_FUNCTION
        if not any(isinstance(inner, ast.ClassDef) for inner in node.body)  # a section that a rule file makes
    ]
    assert not long, listed(long)


def test_whatever_others_use_says_what_it_is() -> None:
    silent = [
        f"{module}: {getattr(node, 'name', 'the module')}"
        for module in MODULES
        for node in (tree_of(module), *tree_of(module).body)
        if isinstance(node, ast.Module)
        or (isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"))
        if not ast.get_docstring(node)
    ]
    assert not silent, listed(silent)


def test_every_file_that_is_to_be_begun_first_is_there() -> None:
    assert [name for name in LONGEST if not list(TESTS.glob(f"*/{name}.py"))] == []
