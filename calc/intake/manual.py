"""The manual's tables of inputs, read off the declarations, so that no page can fall behind the program."""

from __future__ import annotations

from calc.declared import Given, Kind
from calc.intake.schema import FACT_TABLES, TABLES, Heading, Table, facts_of

START, END = "<!-- inputs: start -->", "<!-- inputs: end -->"
"""Where the tables stand in the README; `python -m calc.intake.manual README.md` renews them."""


def inputs_manual() -> str:
    """Markdown: a heading and a table for each sheet of the input books."""
    return "\n\n".join(_of_table(table) for table in TABLES.values())


def _of_table(table: Table) -> str:
    lines = [f"**{table.name}**: {table.help}", "", "| column | what it is | what may stand in it | when blank |"]
    lines.append("|---|---|---|---|")
    lines += [_row(heading) for heading in table.headings]
    if table.name in FACT_TABLES:
        lines += ["", "| fact | what it is | what may stand in it | when blank |", "|---|---|---|---|"]
        lines += [_fact(given) for given in facts_of(table.name)]
    return "\n".join(lines)


def _row(heading: Heading) -> str:
    given = heading.given
    if given is None:
        return f"| {heading.header} | {heading.help} | | |"
    return f"| {heading.header} | {heading.help} | {_allowed(given)} | {_blank(given)} |"


def _fact(given: Given) -> str:
    return f"| {given.header} | {given.help} | {_allowed(given)} | {_blank(given)} |"


def _allowed(given: Given) -> str:
    if given.kind is Kind.CHOICE:
        return ", ".join(given.words_allowed)
    if given.kind is Kind.DATE:
        return "a date"
    if given.kind is Kind.TEXT:
        return "words"
    if given.kind is Kind.ROW:
        return f"the name of a {given.rows}"
    limits = [
        f"over {given.over:g}" if given.over is not None else "",
        f"from {given.low:g}" if given.low is not None else "",
        f"to {given.high:g}" if given.high is not None else "",
    ]
    number = "a whole number" if given.whole else "a number"
    return " ".join(part for part in (number, *limits, f"({given.example})" if given.example else "") if part)


def _blank(given: Given) -> str:
    if given.required:
        return "it must be typed"
    if given.needed_if is not None:
        asker, *words = given.needed_if
        label = asker.label.lower() if isinstance(asker, Given) else ""
        return f"needed where {label} is {' or '.join(str(word) for word in words)}"
    if given.kind is Kind.ROW:
        return "the first"
    if given.default is None or given.kind is Kind.TEXT:
        return "none"
    return f"{given.default:g}" if isinstance(given.default, float | int) else str(given.default)


def renewed(page: str) -> str:
    """A page with the tables between its marks made anew."""
    before, rest = page.split(START)
    _, after = rest.split(END)
    return f"{before}{START}\n\n{inputs_manual()}\n\n{END}{after}"


if __name__ == "__main__":
    import sys
    from pathlib import Path

    readme = Path(sys.argv[1])
    readme.write_text(renewed(readme.read_text(encoding="utf-8")), encoding="utf-8")
