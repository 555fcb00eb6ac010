"""The tables of the manual that are generated: the inputs, from their declarations, and the finding codes.

``python -m calc.intake.manual README.md DEVELOPERS.md`` rewrites them between their marks.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc.declared import Input, Kind
from calc.errors import FindingKind
from calc.intake.schema import EXAMPLE, FACT_TABLES, TABLES, Heading, Table, facts_of
from calc.intake.spelling import one_of
from calc.intake.unused import EDGE_COLUMNS, words_of
from calc.trade.inputs.areas import Edge

Row = tuple[str, str, str, str, str]
"""A column of a sheet: its header, what it is, what may be typed, an example, and what a blank cell means."""


def inputs_manual() -> str:
    """A heading and a table for each sheet of the input books, in Markdown."""
    return "\n\n".join(_sheet(table) for table in TABLES.values())


def findings_manual() -> str:
    """The table of finding codes, in Markdown."""
    rows = [f"| `{each.code}` | {each.severity.word} | {each.meaning} |" for each in FindingKind]
    return "\n".join(("| code | severity | meaning |", "|---|---|---|", *rows))


def renewed(page: str) -> str:
    """The page with the tables between its marks, such as ``<!-- inputs: start -->``, generated again."""
    for name, tables in (("inputs", inputs_manual()), ("findings", findings_manual())):
        start, end = f"<!-- {name}: start -->", f"<!-- {name}: end -->"
        if start in page:
            before, rest = page.split(start)
            _, after = rest.split(end)
            page = f"{before}{start}\n\n{tables}\n\n{end}{after}"
    return page


def _sheet(table: Table) -> str:
    parts = [f"**{table.name}**: {table.help}", _table("column", [_column(each) for each in table.headings])]
    if table.name in FACT_TABLES:
        parts.append(_table("fact", [_fact(given) for given in facts_of(table.name)]))
    return "\n\n".join(parts)


def _table(first: str, rows: Sequence[Row]) -> str:
    heads = (first, "what it is", "what may stand in it", "example", "when blank")
    return "\n".join(f"| {' | '.join(row)} |" for row in (heads, ("---",) * len(heads), *rows))


def _column(heading: Heading) -> Row:
    if heading.given is None:
        example = "" if heading.example == EXAMPLE else heading.example  # rows of that job are ignored
        return heading.header, heading.help, "", example, ""
    in_short = "Used only with length."  # of an edge, whose length is in a column of its own in Areas
    told = _help(heading.given, heading.help)
    if heading.label in EDGE_COLUMNS.values():
        told = told.replace(in_short, f"Used only with {EDGE_COLUMNS[Edge.length]}.")
    return heading.header, told, *_typed(heading.given, heading.example)


def _fact(given: Input) -> Row:
    return given.header, _help(given, given.help), *_typed(given, given.example)


def _typed(given: Input, example: str) -> tuple[str, str, str]:
    return _allowed(given), example, _blank(given)


def _help(given: Input, text: str) -> str:
    """What an input is, with what it does nothing without."""
    used = [given.used_if] if given.used_if is not None and given.used_if != given.needed_if else []
    conditions = [words_of(each) for each in (*used, *given.needs)]
    return f"{text} Used only {' and '.join(conditions)}." if conditions else text


def _allowed(given: Input) -> str:
    if given.kind is Kind.CHOICE:
        return ", ".join(given.words_allowed)
    if given.kind is Kind.DATE:
        return "a date"
    if given.kind is Kind.TEXT:
        return "words"
    if given.kind is Kind.ROW:
        return f"the name of a {given.rows}"
    return ", ".join(("a whole number" if given.whole else "a number", *_limits(given)))


def _limits(given: Input) -> Iterator[str]:
    for words, limit in (("more than", given.over), ("at least", given.low), ("at most", given.high)):
        if limit is not None:
            yield f"{words} {limit:g}"
    asked = (("below", given.ask_low), ("above", given.ask_high))
    outside = [f"{words} {limit:g}" for words, limit in asked if limit is not None]
    if outside:
        yield f"asked about {' and '.join(outside)}"


def _blank(given: Input) -> str:
    if given.required:
        return "it must be typed"
    if given.needed_if is not None:
        asker, *words = given.needed_if
        label = asker.label.lower() if isinstance(asker, Input) else ""
        return f"needed where {label} is {one_of(words)}"
    if given.kind is Kind.ROW or given.default is None:
        return "none"
    return f"{given.default:g}" if isinstance(given.default, float | int) else str(given.default)


if __name__ == "__main__":
    import sys
    from pathlib import Path

    for path in map(Path, sys.argv[1:]):
        path.write_text(renewed(path.read_text(encoding="utf-8")), encoding="utf-8")
