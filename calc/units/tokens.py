"""Tokenizing of typed numbers: normalized to plain characters, split into tokens, read from left to right."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass

from calc.errors import FindingKind, InputRefused
from calc.units.typed_units import FOOT, Scale, TracedNumber, find, plain_name

MAX_CHARACTERS = 60
"""The most characters a typed number may have; a sensible one has fewer than thirty."""

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"

# Phones and word processors "correct" what is typed. Vulgar fractions are split up with blanks around them, because
# Unicode's own way (NFKC) makes 21/2 of a 2 with a half after it.
_PLAIN = str.maketrans(
    dict.fromkeys("\u2018\u2019\u201a\u201b\u2032\u2035\u02b9\u02bc\u00b4`", "'")  # single quotes, prime, accents
    | dict.fromkeys("\u201c\u201d\u201e\u201f\u2033\u2036\u02ba\u02dd", '"')  # double quotes, double prime
    | dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2015\u2212", "-")  # hyphens, dashes, minus
    | dict.fromkeys("\u2044\u2215", "/")  # fraction slash, division slash
    | dict.fromkeys("\u200b\u200c\u200d\u200e\u200f\u2060\ufeff\u00ad", "")  # zero width, direction marks, soft hyphen
    | {"²": "^2", "³": "^3", "\u00ba": "°"}
    | {sign: f" {unicodedata.normalize('NFKC', sign).replace(chr(0x2044), '/')} " for sign in _VULGAR}
)

_TOKEN = re.compile(
    r"(?P<number>[0-9]+\.?[0-9]*|\.[0-9]+)"
    # ft2 is a word, but not in 10ft2in, 10ft2.5in and 10ft2 1/2in
    r"|(?P<word>[A-Za-z°]+(?:\^?[23](?![0-9A-Za-z]|\.[0-9]|\s*-?\s*[0-9]+/[0-9]))?\.?)"
    r"|(?P<sign>\S)"
)
_POWER_OF_TEN = re.compile(r"[0-9.][eE][-+]?[0-9]")
_PLACEHOLDERS = {
    "-",
    "--",
    "---",
    "?",
    "??",
    "???",
    "tbd",
    "tba",
    "n/a",
    "na",
    "none",
    "unknown",
    "x",
    "xx",
    "...",
    ".",
}


def _has_other_digits(text: str) -> bool:
    return any(sign.isnumeric() and not sign.isascii() for sign in text)


def _has_no_digit(text: str) -> bool:
    return not any(sign.isdigit() for sign in text)


# Texts that are refused before tokenizing: the test, what is wrong, and what to do where it is not the usual remedy.
_REFUSED_TEXTS: tuple[tuple[Callable[[str], object], str, str], ...] = (
    (
        lambda text: text[0] == "=",
        "is a formula that the spreadsheet did not compute",
        "Make the cell a number and enter the formula again, or type its result.",
    ),
    (
        lambda text: text[0] == "#",
        "is an error that the spreadsheet shows",
        "Mend the formula behind it, or type its result.",
    ),
    (lambda text: text.casefold() in _PLACEHOLDERS, "only keeps the place of a number", ""),
    (_has_other_digits, "has digits other than 0 to 9 in it", "Type it again with the digits 0 to 9."),
    (
        lambda text: "," in text,
        "has a comma in it that parts no thousands",
        "Type a decimal point, as in 10.5; between thousands a comma may stand, as in 1,200.",
    ),
    (_POWER_OF_TEN.search, "is written with a power of ten", "Write the number out, as in 1000."),
    (_has_no_digit, "has no number in it", ""),
)


def tidy(text: str) -> str:
    """``text`` in the plain characters of a keyboard.

    Curly quotes, primes and doubled apostrophes become ``'`` and ``"``, every dash and minus ``-``, every blank one
    space, ``½`` becomes ``1/2`` and ``²`` becomes ``^2``; invisible characters go. Digits of other scripts stay, so
    that they are refused and not guessed at.
    """
    return " ".join(text.translate(_PLAIN).replace("''", '"').split())


_THOUSANDS = re.compile(r"(?<![\d.,])\d{1,3}(?:,\d{3})+(?![\d,])")


def without_thousands(text: str) -> str:
    """``text`` without the commas between thousands: each stands before exactly three digits."""
    return _THOUSANDS.sub(lambda found: found[0].replace(",", ""), text)


@dataclass(frozen=True, slots=True)
class Token:
    """One piece of a typed text; ``kind`` is ``number``, ``word``, ``sign``, or ``end`` past the last one."""

    kind: str
    text: str

    @property
    def is_whole(self) -> bool:
        """Whether it is a number without a decimal point."""
        return self.kind == "number" and "." not in self.text

    @property
    def name(self) -> str:
        """Its text as the tables spell it."""
        return plain_name(self.text)

    @property
    def scale(self) -> Scale | None:
        """The unit with this name, if there is one."""
        return find(self.name)

    @property
    def fits_unit(self) -> bool:
        """Whether it can be part of a unit: a word, a slash, or a mark such as ``"`` for inches."""
        return self.kind == "word" or self.text == "/" or (self.kind == "sign" and self.scale is not None)


_END = Token("end", "")


class TokenReader:
    """The tokens of one typed text, and the current position.

    ``wanted`` is what the column expects ("a length in ft"), ``remedy`` what to type, as a whole sentence. The
    constructor raises InputRefused for a text that cannot be a number.
    """

    def __init__(self, text: str, wanted: str, remedy: str) -> None:
        self._shown = "".join(sign if sign.isprintable() else " " for sign in text)
        self._wanted = wanted
        self._remedy = remedy
        if len(text) > MAX_CHARACTERS:
            start = self._shown[:20]
            found = f'"{start}..." is {len(text)} characters long, too long to be {wanted}.'
            raise InputRefused(FindingKind.NOT_A_NUMBER, found, remedy)
        plain = without_thousands(tidy(text))
        if not plain:
            raise InputRefused(FindingKind.NOT_A_NUMBER, f"Nothing is typed where {wanted} is wanted.", remedy)
        for matches, what, instead in _REFUSED_TEXTS:
            if matches(plain):
                raise InputRefused(FindingKind.NOT_A_NUMBER, f'"{self._shown}" {what}.', instead or remedy)
        self._tokens = [Token(str(piece.lastgroup), piece[0]) for piece in _TOKEN.finditer(plain)]
        self._at = 0

    def refused(self, what: str = "", advice: str = "", kind: FindingKind = FindingKind.NOT_A_NUMBER) -> InputRefused:
        """The refusal of the whole text, to be raised: ``"10..5" cannot be read as a length in ft.``"""
        what = what or f"cannot be read as {self._wanted}"
        return InputRefused(kind, f'"{self._shown}" {what}.', f"{advice} {self._remedy}".strip())

    def peek(self, steps: int = 0) -> Token:
        """The next token, or the one ``steps`` after it, without taking it."""
        place = self._at + steps
        return self._tokens[place] if place < len(self._tokens) else _END

    @property
    def at_end(self) -> bool:
        """Whether no token is left."""
        return self.peek() == _END

    def take(self, name: str) -> bool:
        """Step over the next token if it is ``name``; whether it was."""
        found = self.peek().name == name
        self._at += found
        return found

    def word(self) -> str:
        """Take the unit that comes next: one mark such as ``"`` or ``%``, or all words up to a ``per`` or a sign."""
        name = ""
        while self.peek().kind == "word" and self.peek().name != "per":
            name += self._step().text
        return plain_name(name or (self._step().text if self.peek().scale else ""))

    def rest(self) -> list[Token]:
        """Take everything that is left."""
        left, self._at = self._tokens[self._at :], len(self._tokens)
        return left

    def number(self) -> TracedNumber:
        """Take a number: 12, 4.5, 1/2, 4 1/2 or 4-1/2. Raises InputRefused when none comes next."""
        if self._fraction_at(0):
            return self._fraction()
        whole = self._step()
        if whole.kind != "number":
            raise self.refused()
        dash = self.peek().text == "-"
        if not (whole.is_whole and self._fraction_at(dash)):
            return self._plain(whole)
        self._at += dash
        part = self._fraction()
        if part.exact >= 1:
            raise self.refused("has a fraction of one or more after a whole number")
        return self._plain(whole).then("+", part)

    def inches_follow(self) -> bool:
        """Whether inches come next, after a number: after a mark or word for feet, or after a bare dash."""
        after = int(self.peek().scale == FOOT)
        dash = self.peek(after).text == "-"
        return bool(after or dash) and self.peek(after + dash).kind == "number"

    def _step(self) -> Token:
        token = self.peek()
        self._at += 1
        return token

    def _fraction_at(self, steps: int) -> bool:
        over, slash, under = (self.peek(steps + place) for place in range(3))
        return over.is_whole and slash.text == "/" and under.is_whole

    def _fraction(self) -> TracedNumber:
        over, _, under = self._step(), self._step(), self._step()
        if not int(under.text):
            raise self.refused("has a fraction with 0 under the line")
        return self._plain(over).then("/", self._plain(under))

    def _plain(self, token: Token) -> TracedNumber:
        whole, point, part = token.text.partition(".")
        whole = whole.lstrip("0") or "0"
        if len(whole) > 9:
            raise self.refused("has a number of more than nine digits before the point")
        return TracedNumber.number(whole + point * bool(part) + part)
