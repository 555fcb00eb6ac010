"""Text in the XML of a workbook: its maximum length, and the escaping of characters that XML cannot store.

ECMA-376 Part 1, 22.9.2.19: a character that XML cannot store is written as ``_x0001_``.
"""

from __future__ import annotations

import re
from typing import Final

MAX_TEXT: Final = 32_767
"""Characters of one cell in UTF-16 code units, the limit of the file format."""

_LOOKS_ESCAPED = re.compile(r"_(?=x[0-9a-fA-F]{4}_)")
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\ufffe\uffff]")
_ESCAPED = re.compile(r"_x(00[01][0-9A-Fa-f])_")
_MARKUP = re.compile("[&<>]")


def too_long(text: str) -> bool:
    """Whether a text is too long for a cell, in UTF-16 code units."""
    return len(text) > MAX_TEXT // 2 and len(text.encode("utf-16-le", "surrogatepass")) > 2 * MAX_TEXT


def escape_control(text: str) -> str:
    """The text with control characters written as ``_x0001_``, and with text that looks like that escaped too."""
    if "_x" in text:
        text = _LOOKS_ESCAPED.sub("_x005F_", text)
    return _CONTROL.sub(lambda found: f"_x{ord(found[0]):04X}_", text)


def unescape_control(text: str) -> str:
    """The text of a file with its escaped control characters decoded."""
    return _ESCAPED.sub(lambda code: chr(int(code[1], 16)), text)


def xml_escape(text: str) -> str:
    """The text escaped for the content of an XML element."""
    if _MARKUP.search(text):
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return text


def rich_text_run(text: str) -> str:
    """The text for the writer, as one rich-text run if it looks like runs: those the writer copies unescaped."""
    if text.startswith("<r>") and text.endswith("</r>"):
        return f'<r><t xml:space="preserve">{xml_escape(text)}</t></r>'
    return text
