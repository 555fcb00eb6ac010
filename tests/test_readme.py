"""The pages cannot fall behind the program."""

from __future__ import annotations

import re
from pathlib import Path

from calc.cli import commands
from calc.intake.manual import renewed

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_tables_of_inputs_are_those_of_the_declarations() -> None:
    assert renewed(README) == README, "run: python -m calc.intake.manual README.md"


def test_the_two_commands_of_set_up_stand_as_they_are_run() -> None:
    assert "python3 -m venv .venv && .venv/bin/pip install -q . && .venv/bin/flatwork demo" in README
    assert 'python3 -m venv .venv && .venv/bin/pip install -q -e ".[dev]" && .venv/bin/python -m pytest -q' in README
    assert '.venv/bin/pip install -q -e ".[dev]" && .venv/bin/python -m pytest -q' in (ROOT / ".ci/run").read_text()


def test_every_command_and_every_option_is_in_the_readme() -> None:
    for name, command in commands.commands.items():
        assert f"flatwork {name}" in README
        for option in (each for each in command.params if each.param_type_name == "option"):
            assert any(word in README for word in option.opts), f"{name} {option.opts}"


def test_every_picture_and_page_that_is_shown_is_there() -> None:
    for page in ("README.md", "DEVELOPERS.md"):
        text = (ROOT / page).read_text(encoding="utf-8")
        for target in re.findall(r"\]\(([^)]+)\)", text):
            assert (ROOT / target).is_file(), f"{page}: {target}"


def test_what_developers_are_told_to_run_is_there() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    for path in re.findall(r"`(?:calc|tests|\.samples|\.pictures|\.ci)/[\w./*]+`", text):
        assert list(ROOT.glob(path.strip("`"))), path
