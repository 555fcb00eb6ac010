"""Finding codes: other programs and the office rely on them, so each is documented, used and stable."""

from __future__ import annotations

import ast
import re
from collections import Counter
from dataclasses import fields

import pytest

from calc.errors import Finding, FindingKind, InputRefused, Severity
from folders import ROOT

SOURCES = {path: path.read_text(encoding="utf-8") for path in sorted((ROOT / "calc").rglob("*.py"))}


def used_kinds() -> Counter[str]:
    """How often the program names each kind outside of the list of kinds."""
    texts = (text for path, text in SOURCES.items() if path.name != "errors.py")
    return Counter(name for text in texts for name in re.findall(r"\bFindingKind\.([A-Z_]+)\b", text))


def refused_kinds() -> set[str]:
    """The kinds with which a value is refused."""
    return {
        argument.attr
        for text in SOURCES.values()
        for call in ast.walk(ast.parse(text))
        if isinstance(call, ast.Call) and call.args and ast.unparse(call.func) in ("InputRefused", "_Refused")
        for argument in call.args[:2]
        if isinstance(argument, ast.Attribute) and ast.unparse(argument.value) == "FindingKind"
    }


def test_a_finding_without_a_code_cannot_be_reported() -> None:
    kind = fields(Finding)[0]
    assert (kind.name, kind.type) == ("kind", "FindingKind")
    for message in (Finding, InputRefused):
        with pytest.raises(TypeError, match="kind"):
            message(**{"found": "A message without a kind.", "remedy": ""})


@pytest.mark.parametrize("kind", FindingKind, ids=lambda kind: kind.code)
def test_every_code_is_a_stable_word_with_a_meaning(kind: FindingKind) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", kind.code)
    assert kind.meaning.endswith(".") and kind.meaning.isprintable()
    assert isinstance(kind.severity, Severity)


def test_no_code_is_listed_that_nothing_reports() -> None:
    assert set(used_kinds()) == {kind.name for kind in FindingKind}


def test_a_value_that_is_refused_is_always_an_error() -> None:
    refused = refused_kinds()
    assert len(refused) > 20
    assert {FindingKind[name].severity for name in refused} == {Severity.ERROR}
