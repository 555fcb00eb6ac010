"""What the file format makes of words: how long they may be, what it cannot carry, and what means something else in it.

ECMA-376 Part 1, 22.9.2.19: a character that XML cannot carry is spelled ``_x0001_``.
"""

from __future__ import annotations

import re
from typing import Final

MAX_TEXT: Final = 32_767
"""Letters of one cell, of which a few rare ones count twice: no spreadsheet program lets a person type more."""

_CODED = re.compile(r"_(?=x[0-9a-fA-F]{4}_)")
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\ufffe\uffff]")
_SPELLED = re.compile(r"_x(00[01][0-9A-Fa-f])_")
_MARKS = re.compile("[&<>]")


def too_long(words: str) -> bool:
    """Whether no cell can hold them: what counts is their length in UTF-16."""
    return len(words) > MAX_TEXT // 2 and len(words.encode("utf-16-le", "surrogatepass")) > 2 * MAX_TEXT


def escape_control(words: str) -> str:
    """Words with what XML cannot carry spelled as ``_x0001_``, and what looks like that spelled apart from it."""
    if "_x" in words:
        words = _CODED.sub("_x005F_", words)
    return _CONTROL.sub(lambda found: f"_x{ord(found[0]):04X}_", words)


def unescape_control(words: str) -> str:
    """Words of a file with the control characters that are spelled in them."""
    return _SPELLED.sub(lambda code: chr(int(code[1], 16)), words)


def xml_escape(words: str) -> str:
    """Words as they stand between two tags."""
    if _MARKS.search(words):
        return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return words


def rich_text_run(words: str) -> str:
    """Words for the writer, which puts what looks like runs of rich text into the file as it stands: one such run."""
    if words.startswith("<r>") and words.endswith("</r>"):
        return f'<r><t xml:space="preserve">{xml_escape(words)}</t></r>'
    return words
