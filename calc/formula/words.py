"""How a formula is said in words: phrases, their precedence, and the brackets between them.

A phrase is a text with its rank. A phrase whose rank is too low for its place in another stands in brackets, so that
the words have one reading: the formula. `DEVELOPERS.md` describes the grammar as a reader meets it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum


class Rank(IntEnum):
    """The precedence of a phrase, the loosest first."""

    ROWS = 0  # for “a”: A; for “b”: B
    CONDITIONAL = 1  # A if C, else B
    LISTED = 2  # greater of A and B; A where K = B
    DEFAULTED = 3  # A or, if blank, B
    SUFFIXED = 4  # A, rounded up
    JOINED = 5  # A & B
    EITHER = 6  # C or D
    BOTH = 7  # C and D
    COMPARED = 8  # A > B
    PICKED = 9  # total of A; A in row B
    NEGATIVE = 10
    SUM = 11
    PRODUCT = 12
    SQUARED = 13
    ATOM = 14


@dataclass(frozen=True)
class NamedRows:
    """What a phrase ends with: ``value`` of some named rows; ``lead`` stands before it."""

    lead: str
    value: str
    names: tuple[str, ...]


@dataclass(frozen=True)
class Phrase:
    """Words and their rank.

    ``opposite`` says that a condition does not hold, where there is a short way to say it; ``rows`` are the named rows
    that a sum ends with, to which another may be added; ``flag`` says that it is the name of a 1 or 0.
    """

    text: str
    rank: Rank = Rank.ATOM
    opposite: str = ""
    rows: NamedRows | None = None
    flag: bool = False

    def inside(self, least: Rank, *also: Rank) -> str:
        """The text within another phrase: in brackets unless its rank is at least ``least``, or one of ``also``."""
        return self.text if self.rank >= least or self.rank in also else f"({self.text})"


Wording = Callable[..., Phrase]
"""Makes the phrase of a function from the phrases of its arguments."""

_GRAMMAR = re.compile(
    r"[+−×÷&=<>≤≥≠“”‘’;\[\]]|, (?:else|rounded|not below|to the cent|as a date|and)\b|, if blank"
    r"|\b(?:if|where|within|given|squared|blank)\b"
)


def name(label: str, section: str = "", flag: bool = False) -> Phrase:
    """A label as a name in a formula.

    It stands in quotes where it holds a sign or a word of the grammar; ``section`` tells it from another of that label,
    and ``flag`` says that it is only ever 1 or 0.
    """
    shown = f"‘{label}’" if _GRAMMAR.search(label) else label
    return Phrase(f"{shown} [{section}]" if section else shown, flag=flag)


def text(words: str) -> Phrase:
    """A text of the formula itself."""
    return Phrase(f"“{words}”")


def number(value: float) -> Phrase:
    """A number of the formula itself."""
    return Phrase(f"{value:,g}")


ZERO, ONE = number(0), number(1)


def sign(mark: str, rank: Rank, left: Rank, right: Rank) -> Wording:
    """A sign between two arguments."""

    def worded(one: Phrase, other: Phrase) -> Phrase:
        return Phrase(f"{one.inside(left)} {mark} {other.inside(right)}", rank)

    return worded


def addition(one: Phrase, other: Phrase) -> Phrase:
    """An addition; rows of one name are said as their total."""
    if other.rows is None:
        return sign("+", Rank.SUM, Rank.SUM, Rank.SUM)(one, other)
    last = one.rows
    if last is not None and last.value == other.rows.value:
        return _with_rows(replace(last, names=last.names + other.rows.names))
    return _with_rows(replace(other.rows, lead=f"{one.inside(Rank.SUM)} + "))


def named_row(value: str, row: str) -> Phrase:
    """``value`` of the row with a name."""
    return _with_rows(NamedRows("", value, (row,)))


def _with_rows(rows: NamedRows) -> Phrase:
    """The sum that ends with these rows."""
    total = "total of " if len(rows.names) > 1 else ""
    said = f"{total}{rows.value} for {_series([f'“{each}”' for each in rows.names])}"
    return Phrase(f"{rows.lead}({said})", Rank.SUM, "", rows) if rows.lead else Phrase(said, Rank.PICKED, "", rows)


def difference(one: Phrase, other: Phrase) -> Phrase:
    """A subtraction; from nothing, a minus sign."""
    if one == ZERO:
        return Phrase(f"−{other.inside(Rank.PRODUCT)}", Rank.NEGATIVE)
    return sign("−", Rank.SUM, Rank.SUM, Rank.PRODUCT)(one, other)


def product(one: Phrase, other: Phrase) -> Phrase:
    """A multiplication; by 1, which only gives a unit, it is not said, and by itself it is a square."""
    if ONE in (one, other):
        return one if other == ONE else other
    if one == other:
        return Phrase(f"{one.inside(Rank.ATOM)} squared", Rank.SQUARED)
    return sign("×", Rank.PRODUCT, Rank.PRODUCT, Rank.PRODUCT)(one, other)


def quotient(one: Phrase, other: Phrase) -> Phrase:
    """A division; by 1, which only gives a unit, it is not said."""
    return one if other == ONE else sign("÷", Rank.PRODUCT, Rank.PRODUCT, Rank.SQUARED)(one, other)


def compared(mark: str, opposite: str = "") -> Wording:
    """A comparison of two arguments."""

    def worded(one: Phrase, other: Phrase) -> Phrase:
        left, right = one.inside(Rank.PICKED), other.inside(Rank.PICKED)
        return Phrase(f"{left} {mark} {right}", Rank.COMPARED, opposite and f"{left} {opposite} {right}")

    return worded


_ABOVE = compared(">")


def above(one: Phrase, other: Phrase) -> Phrase:
    """Whether one number is above another; that a flag is above 0 is its name alone."""
    return replace(one, rank=Rank.COMPARED) if one.flag and other == ZERO else _ABOVE(one, other)


def given(value: Phrase) -> Phrase:
    """Whether there is a number."""
    shown = value.inside(Rank.ATOM)
    return Phrase(f"{shown} is given", Rank.COMPARED, f"{shown} is blank")


def opposite(condition: Phrase) -> Phrase:
    """That a condition does not hold."""
    if condition.opposite:
        return Phrase(condition.opposite, Rank.COMPARED, condition.text)
    return Phrase(f"not ({condition.text})", Rank.COMPARED, condition.text)


def conditions(word: str, rank: Rank) -> Wording:
    """Conditions with ``word`` between them."""

    def worded(*parts: Phrase) -> Phrase:
        return Phrase(f" {word} ".join(part.inside(Rank.COMPARED) for part in parts), rank)

    return worded


def conditional(condition: Phrase, yes: Phrase, no: Phrase) -> Phrase:
    """A choice by a condition; that one which fails gives 0 is not said."""
    said = f"{yes.inside(Rank.NEGATIVE)} if {condition.inside(Rank.EITHER)}"
    if no != ZERO:
        said += f", else {no.inside(Rank.PICKED, Rank.LISTED, Rank.CONDITIONAL)}"
    return Phrase(said, Rank.CONDITIONAL)


def defaulted(value: Phrase, default: Phrase) -> Phrase:
    """A number that may be blank, and what it is then; that a blank gives 0 is not said."""
    if default == ZERO:
        return value
    return Phrase(f"{value.inside(Rank.SUM)} or, if blank, {default.inside(Rank.SUM, Rank.DEFAULTED)}", Rank.DEFAULTED)


def _suffixed(value: Phrase, suffix: str) -> Phrase:
    return Phrase(f"{value.inside(Rank.NEGATIVE, Rank.SUFFIXED)}, {suffix}", Rank.SUFFIXED)


def suffix(words: str) -> Wording:
    """What is done to all that stands before it."""
    return lambda value: _suffixed(value, words)


def rounded_up_to(value: Phrase, step: Phrase) -> Phrase:
    """A rounding up to a whole number of steps."""
    return _suffixed(value, f"rounded up to the next {step.inside(Rank.ATOM)}")


_DECIMALS = {"1": "a whole number", "100": "2 decimals", "1,000": "3 decimals"}


def rounded(value: Phrase, scale: Phrase) -> Phrase:
    """A rounding to whole numbers, hundredths or thousandths."""
    return _suffixed(value, f"rounded to {_DECIMALS[scale.text]}")


def prefix(words: str) -> Wording:
    """A function of one argument, which stands after its name."""
    return lambda value: Phrase(f"{words} {value.inside(Rank.ATOM)}", Rank.PICKED)


def listed(of_two: str, of_more: str) -> Wording:
    """One out of several arguments."""

    def worded(*parts: Phrase) -> Phrase:
        texts = [part.inside(Rank.SUM) for part in parts]
        return Phrase(f"{of_two if len(parts) == 2 else of_more} of {_series(texts)}", Rank.LISTED)

    return worded


def _series(texts: Sequence[str]) -> str:
    """A; A and B; A, B and C; or with semicolons, where a part has a comma of its own."""
    if len(texts) == 1:
        return texts[0]
    if len(texts) > 2 and any("," in each for each in texts):
        return f"{'; '.join(texts[:-1])}; and {texts[-1]}"
    return f"{', '.join(texts[:-1])} and {texts[-1]}"


_LARGEST = listed("greater", "greatest")


def largest(*parts: Phrase) -> Phrase:
    """The largest of several; beside 0, a limit."""
    if len(parts) == 2 and ZERO in parts:
        return _suffixed(parts[1] if parts[0] == ZERO else parts[0], "not below 0")
    return _LARGEST(*parts)


def joined(*parts: Phrase) -> Phrase:
    """Texts joined to one."""
    return Phrase(" & ".join(part.inside(Rank.SUM) for part in parts), Rank.JOINED)


def by_row(rows: Sequence[str], cases: Sequence[Phrase]) -> Phrase:
    """A case for each named row, those alike said once; that a row has 0 is not said."""
    alike: dict[Phrase, list[str]] = {}
    for row, case in zip(rows, cases, strict=True):
        if case != ZERO:
            alike.setdefault(case, []).append(f"“{row}”")
    if not alike:
        return ZERO
    if len(alike) == 1 and len(*alike.values()) == len(rows):
        return next(iter(alike))
    said = (f"for {_series(names)}: {case.inside(Rank.CONDITIONAL)}" for case, names in alike.items())
    return Phrase("; ".join(said), Rank.ROWS)
