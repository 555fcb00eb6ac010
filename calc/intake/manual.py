"""The manual's tables of inputs, read off the declarations, so that no page can fall behind the program.

``python -m calc.intake.manual README.md`` makes those of the README anew.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc.declared import Input, Kind
from calc.intake.schema import EXAMPLE, FACT_TABLES, TABLES, Heading, Table, facts_of
from calc.intake.spelling import one_of

START, END = "<!-- inputs: start -->", "<!-- inputs: end -->"
"""The marks between which the tables stand in a page."""

Row = tuple[str, str, str, str, str]
"""A column of a sheet: its header, what it is, what may stand in it, an example, and what a blank cell means."""


def inputs_manual() -> str:
    """Markdown: a heading and a table for each sheet of the input books."""
    return "\n\n".join(_sheet(table) for table in TABLES.values())


def renewed(page: str) -> str:
    """A page with the tables between its marks made anew."""
    before, rest = page.split(START)
    _, after = rest.split(END)
    return f"{before}{START}\n\n{inputs_manual()}\n\n{END}{after}"


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
        example = "" if heading.example == EXAMPLE else heading.example  # rows of that job are passed over
        return heading.header, heading.help, "", example, ""
    return heading.header, heading.help, _allowed(heading.given), heading.example, _blank(heading.given)


def _fact(given: Input) -> Row:
    return given.header, given.help, _allowed(given), given.example, _blank(given)


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
    if given.kind is Kind.ROW:
        return "the first"
    if given.default is None or given.kind is Kind.TEXT:
        return "none"
    return f"{given.default:g}" if isinstance(given.default, float | int) else str(given.default)


if __name__ == "__main__":
    import sys
    from pathlib import Path

    readme = Path(sys.argv[1])
    readme.write_text(renewed(readme.read_text(encoding="utf-8")), encoding="utf-8")
