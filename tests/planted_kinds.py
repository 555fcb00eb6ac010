"""Defects that a slip of the hand could leave in a rule: each kind, and every place in the source where it could stand.

Places are found in the syntax tree and changed in the text, so that what is planted is what somebody could have typed.
"""

from __future__ import annotations

import ast
import io
import tokenize
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

ROOMS = ("calc/trade", "calc/formula")
"""The folders that defects are planted in, with all folders below them."""
RULES = "calc/trade"
"""The one of them in which names of lines stand for each other, and a whole number may become a fraction."""

OPERATORS: Mapping[type[ast.operator], str] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/"}
TURNED = {"+": "-", "-": "+", "*": "/", "/": "*", ">": ">=", ">=": ">", "<": "<=", "<=": "<"}
COMPARISONS: Mapping[type[ast.cmpop], str] = {ast.Gt: ">", ast.GtE: ">=", ast.Lt: "<", ast.LtE: "<="}

ROUNDING = (("round_up", "round_down"), ("ceil", "floor"), ("up", "down"))
ENDS = (("largest", "smallest"), ("greatest", "least"), ("maximum", "minimum"), ("max", "min"))
LIMITS = (("greater", "greater_equal"), ("less", "less_equal"))
LIBRARIES = {"np", "rounding"}
"""The modules whose functions are called by their names with a dot."""

CHOOSING = {"when", "where"}
JOINING = {"both", "either"}
GATHERING = {"total", "total_where", "group_total", "running", "greatest", "least", "argmin"}
WITH_UNIT = {"line", "given", "factor", "factors", "price", "prices"}
"""The words of ``calc.declare`` whose second argument is a unit."""
RANGE = {"low", "high", "over", "ask_low", "ask_high"}
"""The arguments that say within what a number is usual."""

Edit = tuple[int, int, str]
"""From this byte to that one of a file, and what stands there instead."""
Members = Mapping[str, tuple[str, int]]
"""The lines of a section by name: what makes two of them alike, and the byte where the declaration of each ends."""


@dataclass(frozen=True)
class Defect:
    """One change of the source: its kind, where it stands, and what becomes of what."""

    kind: str
    file: str
    line: int
    was: str
    becomes: str
    edits: tuple[Edit, ...] = field(compare=False)

    def planted(self, source: bytes) -> bytes:
        """The source of the file with the defect in it."""
        for start, end, text in sorted(self.edits, reverse=True):
            source = source[:start] + text.encode() + source[end:]
        return source

    @property
    def said(self) -> str:
        """Where and what, on one line."""
        return f"{self.file}:{self.line}: {self.kind}: {_short(self.was)}  ->  {_short(self.becomes)}"


def _short(text: str) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= 110 else f"{flat[:70]} ... {flat[-35:]}"


@dataclass(frozen=True)
class Source:
    """A file of the rules, parsed; ``sections`` are those of all the files, by name."""

    name: str
    content: bytes
    sections: Mapping[str, Members] = field(default_factory=dict)

    @cached_property
    def tree(self) -> ast.Module:
        """The syntax tree."""
        return ast.parse(self.content)

    @cached_property
    def starts(self) -> list[int]:
        """The byte at which each line starts."""
        starts = [0]
        for line in self.content.splitlines(keepends=True):
            starts.append(starts[-1] + len(line))
        return starts

    @cached_property
    def signs(self) -> list[Edit]:
        """Every operator with its bytes."""
        lines = self.content.decode().splitlines(keepends=True)
        found = []
        for token in tokenize.generate_tokens(io.StringIO(self.content.decode()).readline):
            if token.type == tokenize.OP:
                start = self.starts[token.start[0] - 1] + len(lines[token.start[0] - 1][: token.start[1]].encode())
                found.append((start, start + len(token.string), token.string))
        return found

    @cached_property
    def imported(self) -> dict[str, ast.alias]:
        """The names that are imported from other modules."""
        return {
            each.asname or each.name: each
            for node in ast.walk(self.tree)
            if isinstance(node, ast.ImportFrom)
            for each in node.names
        }

    @cached_property
    def defined(self) -> set[str]:
        """The functions of the module itself."""
        return {node.name for node in self.tree.body if isinstance(node, ast.FunctionDef)}

    @cached_property
    def own(self) -> list[tuple[int, int, Members]]:
        """The sections of the file: their bytes, and what they declare."""
        return [
            (self.starts[node.lineno - 1], self.starts[node.end_lineno or 0], members_of(self, node))
            for node in ast.walk(self.tree)
            if isinstance(node, ast.ClassDef)
        ]

    def span(self, node: ast.expr | ast.alias) -> tuple[int, int]:
        """The bytes of a node."""
        assert node.end_lineno is not None and node.end_col_offset is not None
        return self.starts[node.lineno - 1] + node.col_offset, self.starts[node.end_lineno - 1] + node.end_col_offset

    def text(self, node: ast.expr) -> str:
        """The text of a node."""
        start, end = self.span(node)
        return self.content[start:end].decode()

    def sign(self, left: ast.expr, right: ast.expr, text: str) -> Edit:
        """The operator between two nodes."""
        start, end = self.span(left)[1], self.span(right)[0]
        return next(each for each in self.signs if each[0] >= start and each[1] <= end and each[2] == text)

    def defect(self, kind: str, node: ast.expr, *edits: Edit) -> Defect:
        """The defect of some edits, told by what stands at ``node``, or by its whole line when that is a word."""
        start, end = self.span(node)
        if isinstance(node, ast.Constant | ast.Name | ast.Attribute):
            start, end = self.starts[node.lineno - 1], self.starts[node.lineno] - 1
        within = [each for each in edits if each[0] >= start and each[1] <= end]
        moved = tuple((a - start, b - start, text) for a, b, text in within)
        was = self.content[start:end]
        becomes = Defect("", "", 0, "", "", moved).planted(was)
        return Defect(kind, self.name, node.lineno, was.decode(), becomes.decode(), edits)


Finder = Callable[[Source, ast.expr], Iterator[Defect]]


def turned_sign(signs: str) -> Finder:
    """Plus for minus, or times for divided by."""

    def find(source: Source, node: ast.expr) -> Iterator[Defect]:
        if isinstance(node, ast.BinOp) and OPERATORS.get(type(node.op), "no") in signs and not _of_words(node):
            start, end, sign = source.sign(node.left, node.right, OPERATORS[type(node.op)])
            yield source.defect(f"{signs[0]} for {signs[1]}, or the reverse", node, (start, end, TURNED[sign]))

    return find


def _of_words(node: ast.BinOp) -> bool:
    """Whether it joins texts or lists."""
    parts = (ast.JoinedStr, ast.List, ast.Tuple, ast.ListComp)
    return any(
        isinstance(each, parts)
        or (isinstance(each, ast.Constant) and isinstance(each.value, str))
        or (isinstance(each, ast.BinOp) and _of_words(each))
        for each in (node.left, node.right)
    )


def dropped_part(source: Source, node: ast.expr) -> Iterator[Defect]:
    """One part of a sum is left out."""
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub) and not _of_words(node):
        kept = [node.left, node.right] if isinstance(node.op, ast.Add) else [node.left]
        for each in kept:
            yield source.defect("a part of a sum left out", node, (*source.span(node), f"({source.text(each)})"))


def comparison(source: Source, node: ast.expr) -> Iterator[Defect]:
    """A limit that counts on the wrong side."""
    kind = "> for >=, < for <=, or the reverse"
    if isinstance(node, ast.Compare) and len(node.ops) == 1 and type(node.ops[0]) in COMPARISONS:
        start, end, sign = source.sign(node.left, node.comparators[0], COMPARISONS[type(node.ops[0])])
        yield source.defect(kind, node, (start, end, TURNED[sign]))
    yield from _other_name(kind, LIMITS, source, node)


def swapped_name(kind: str, names: tuple[tuple[str, str], ...]) -> Finder:
    """One function for its opposite."""
    return lambda source, node: _other_name(kind, names, source, node)


def _other_name(kind: str, names: tuple[tuple[str, str], ...], source: Source, node: ast.expr) -> Iterator[Defect]:
    other = dict(names) | {one: another for another, one in names}
    if isinstance(node, ast.Attribute) and node.attr in other:
        if isinstance(node.value, ast.Name) and node.value.id in LIBRARIES:
            _, end = source.span(node)
            yield source.defect(kind, node, (end - len(node.attr), end, other[node.attr]))
    elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in other:
        name, new = node.func.id, other[node.func.id]
        edits: list[Edit] = [(*source.span(node.func), new)]
        known = {*source.imported, *source.defined, "max", "min"}
        if new not in known and "*" not in known:
            if name not in source.imported:
                return
            start, _ = source.span(source.imported[name])
            edits.append((start, start, f"{new}, "))
        yield source.defect(kind, node, *edits)


def swapped_branches(source: Source, node: ast.expr) -> Iterator[Defect]:
    """What is so where the condition holds, and what is so elsewhere, the wrong way round."""
    if isinstance(node, ast.IfExp):
        pair = (node.body, node.orelse)
    elif isinstance(node, ast.Call) and _called(node) in CHOOSING and len(node.args) == 3:
        pair = (node.args[1], node.args[2])
    else:
        return
    one, other = pair
    yield source.defect(
        "branches swapped", node, (*source.span(one), source.text(other)), (*source.span(other), source.text(one))
    )


def dropped_condition(source: Source, node: ast.expr) -> Iterator[Defect]:
    """One of several conditions is left out."""
    if isinstance(node, ast.Call) and _called(node) in JOINING:
        parts = node.args
    elif isinstance(node, ast.BoolOp):
        parts = node.values
    else:
        return
    if len(parts) < 2 or any(isinstance(each, ast.Starred) for each in parts):
        return
    for left_out in parts:
        kept = [source.text(each) for each in parts if each is not left_out]
        text = f"({kept[0]})" if len(kept) == 1 else _joined(source, node, kept)
        yield source.defect("a condition left out", node, (*source.span(node), text))


def _joined(source: Source, node: ast.Call | ast.BoolOp, kept: list[str]) -> str:
    if isinstance(node, ast.Call):
        return f"{source.text(node.func)}({', '.join(kept)})"
    return f"({(' and ' if isinstance(node.op, ast.And) else ' or ').join(f'({each})' for each in kept)})"


def _called(node: ast.Call) -> str:
    if isinstance(node.func, ast.Name):
        return node.func.id
    return node.func.attr if isinstance(node.func, ast.Attribute) else ""


def wrong_number(source: Source, node: ast.expr) -> Iterator[Defect]:
    """A number a tenth too large, or one too large."""
    yield from _number("a number off by a tenth or by one", source, node)


def _number(kind: str, source: Source, node: ast.expr) -> Iterator[Defect]:
    value = node.value if isinstance(node, ast.Constant) else None
    if isinstance(value, bool) or not isinstance(value, int | float):
        return
    values: list[float] = [value + 1]
    if value and (isinstance(value, float) or source.name.startswith(RULES)):
        values.append(float(f"{value * 1.1:.12g}"))
    for each in values:
        yield source.defect(kind, node, (*source.span(node), repr(each)))


def wrong_range(source: Source, node: ast.expr) -> Iterator[Defect]:
    """An end of a usual range a tenth too large, or one too large."""
    if isinstance(node, ast.Call):
        for keyword in node.keywords:
            if keyword.arg in RANGE:
                yield from _number("an end of a range off", source, keyword.value)


def wrong_line(source: Source, node: ast.expr) -> Iterator[Defect]:
    """Another line of the same section, in the same unit."""
    yield from _siblings("another line of the section", source, node, node)


def wrong_total(source: Source, node: ast.expr) -> Iterator[Defect]:
    """Another line of the same section and unit is gathered from the rows."""
    if isinstance(node, ast.Call) and _called(node) in GATHERING and node.args:
        yield from _siblings("another line gathered", source, node, node.args[0])


def _siblings(kind: str, source: Source, node: ast.expr, named: ast.expr) -> Iterator[Defect]:
    if not source.name.startswith(RULES):
        return
    start, end = source.span(named)
    if isinstance(named, ast.Attribute) and isinstance(named.value, ast.Name):
        members, name, before = source.sections.get(named.value.id, {}), named.attr, len(source.content) * 1000
    elif isinstance(named, ast.Name):
        members, name, before = _own_section(source, start), named.id, start
    else:
        return
    alike, declared = members.get(name, ("", 0))
    for other, (as_well, place) in members.items():
        if name in members and other != name and as_well == alike and place < before and declared < before:
            yield source.defect(kind, node, (end - len(name), end, other))


def _own_section(source: Source, at: int) -> Members:
    """The lines of the section that a byte lies in."""
    return next((members for start, end, members in source.own if start <= at < end), {})


def members_of(source: Source, section: ast.ClassDef) -> Members:
    """The lines that a section declares. Two are alike when their units are, or where they have none, their words."""
    members = {}
    for node in section.body:
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call) and isinstance(node.targets[0], ast.Name):
            _, end = source.span(node.value)
            members[node.targets[0].id] = (_alike(node.value), end)
    return members


def _alike(call: ast.Call) -> str:
    unit = call.args[1].value if len(call.args) > 1 and isinstance(call.args[1], ast.Constant) else ""
    return str(unit) if _called(call) in WITH_UNIT and unit else f"({_called(call)})"


KINDS: tuple[Finder, ...] = (
    turned_sign("+-"),
    turned_sign("*/"),
    swapped_name("up for down in rounding, or the reverse", ROUNDING),
    swapped_name("largest for smallest, or the reverse", ENDS),
    comparison,
    wrong_number,
    wrong_range,
    swapped_branches,
    dropped_part,
    dropped_condition,
    wrong_line,
    wrong_total,
)
"""What is looked for at every node."""


def expressions(node: ast.AST) -> Iterator[ast.expr]:
    """Every expression that is computed with: no type, no place in a list, no part of a text, no end of a range."""
    for name, part in ast.iter_fields(node):
        if name in ("annotation", "returns", "slice", "type_comment"):
            continue
        for each in part if isinstance(part, list) else [part]:
            if isinstance(each, ast.JoinedStr) or not isinstance(each, ast.AST):
                continue
            if isinstance(each, ast.keyword) and each.arg in RANGE and isinstance(each.value, ast.Constant):
                continue
            if isinstance(each, ast.expr):
                yield each
            yield from expressions(each)


def sources(checkout: Path) -> list[Source]:
    """The files of the rooms, each with the sections of all."""
    paths = sorted(path for room in ROOMS for path in (checkout / room).rglob("*.py"))
    bare = [Source(path.relative_to(checkout).as_posix(), path.read_bytes()) for path in paths]
    sections: dict[str, Members] = {}
    for each in bare:
        for node in each.tree.body:
            if isinstance(node, ast.ClassDef) and each.name.startswith(RULES):
                # bytes of another file say nothing about what comes first: whatever is imported is there whole
                sections[node.name] = {name: (alike, 0) for name, (alike, _) in members_of(each, node).items()}
    return [Source(each.name, each.content, sections) for each in bare]


def defects(checkout: Path) -> dict[str, list[Defect]]:
    """Every defect that could be planted in a checkout, by kind, in order of file and place."""
    found: dict[str, dict[Defect, None]] = {}
    for source in sources(checkout):
        for node in expressions(source.tree):
            for kind in KINDS:
                for each in kind(source, node):
                    found.setdefault(each.kind, {})[each] = None
    return {kind: list(those) for kind, those in found.items()}
