"""Independent witnesses: spreadsheet programs that are not ours recalculate what we wrote.

A workbook carries, beside each formula, the value that this program computed for it. A witness throws those values
away, computes every formula itself and saves a copy; :func:`differences` holds the two against each other. Agreement
says that the sheet computes what Python computes, not that the rule is right.
"""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from enum import Enum
from pathlib import Path
from typing import Any

import openpyxl
from openpyxl.cell.cell import ERROR_CODES
from openpyxl.utils.datetime import to_excel

Place = tuple[str, str]
"""A cell: the name of its sheet and its reference, as in ``("Takeoff", "C7")``."""

TOLERANCE = 1e-9
"""The largest difference between two numbers, as a part of the larger one or of 1."""

HALF_A_CENT = 0.005
FILES_A_CALL = 100
SECONDS_A_CALL = 60
SECONDS_A_FILE = 5

# LibreOffice keeps the values that a file carries unless its profile says "recalculate on load: always" (0).
PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
  <item oor:path="/org.openoffice.Office.Calc/Formula/Load">
    <prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop>
  </item>
</oor:items>
"""


class Program(Enum):
    """A spreadsheet program that can be asked; the value is its command and the Debian package that brings it."""

    LIBREOFFICE = ("soffice", "libreoffice-calc")
    GNUMERIC = ("ssconvert", "gnumeric")

    @property
    def command(self) -> str:
        """What is run."""
        return self.value[0]

    @property
    def package(self) -> str:
        """What to install when the command is not there."""
        return self.value[1]


class WitnessFailed(Exception):
    """A witness wrote nothing for a file: the message names the file and carries what the program said."""


@dataclass(frozen=True)
class Difference:
    """A formula cell whose written value is not what the witness computed; ``None`` is a value that is not there."""

    sheet: str
    ref: str
    formula: str
    written: object
    recalculated: object

    def __str__(self) -> str:
        written, recalculated = _said(self.written), _said(self.recalculated)
        return f"{self.sheet}!{self.ref} {self.formula}: written {written}, recalculated {recalculated}"


class Recalculations:
    """Recalculates many files in few calls: LibreOffice takes a second to start and little more for each file.

    ``add`` files as they are written; the first ``result`` asked for takes all that were added so far along. A file
    must not change after it was added.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._files: dict[Path, None] = {}
        self._done: dict[Program, dict[Path, Path]] = {program: {} for program in Program}

    def add(self, *files: Path) -> None:
        """Files that will be asked for."""
        self._files.update(dict.fromkeys(files))

    def result(self, file: Path, program: Program) -> Path:
        """The copy of ``file`` that ``program`` recalculated."""
        self.add(file)
        done = self._done[program]
        if file not in done:
            done.update(recalculate([each for each in self._files if each not in done], program, self._folder))
        return done[file]


def available(program: Program) -> bool:
    """Is the program installed?"""
    return shutil.which(program.command) is not None


def recalculate(files: Sequence[Path], program: Program, folder: Path) -> dict[Path, Path]:
    """Have ``program`` recalculate every formula of ``files``; gives the recalculated copy of each.

    The copies stand in a new folder inside ``folder`` under numbers for names, so that two files of one name, and
    names that a program's command line cannot take, do no harm. Raises :class:`WitnessFailed` for a file that the
    program could not load.
    """
    room = Path(tempfile.mkdtemp(prefix=f"{program.name.lower()}-", dir=folder))
    asked, told = room / "asked", room / "told"
    asked.mkdir()
    told.mkdir()
    copies = {file: asked / f"{number:04}.xlsx" for number, file in enumerate(dict.fromkeys(files), start=1)}
    for file, copy in copies.items():
        shutil.copyfile(file, copy)
    said = _ASK[program](list(copies.values()), told, room)
    results = {file: told / copy.name for file, copy in copies.items()}
    lost = [str(file) for file, result in results.items() if not result.is_file()]
    if lost:
        raise WitnessFailed(f"{program.command} wrote nothing for {', '.join(lost)}. It said: {said[-500:].strip()}")
    return results


def values(path: Path) -> dict[Place, object]:
    """Every value that a workbook carries, typed or cached, by sheet and reference; an empty cell is left out."""
    return {place: cell.value for place, cell in _cells(path, data_only=True)}


def formulas(path: Path) -> dict[Place, str]:
    """Every formula of a workbook, as text with its equals sign, by sheet and reference."""
    return {place: formula for place, formula, _ in _formula_cells(path)}


def differences(original: Path, recalculated: Path) -> list[Difference]:
    """Every formula cell of ``original`` whose value there and in ``recalculated`` are not the same.

    Numbers are the same within :data:`TOLERANCE`, money (a number format with ``$``) to the cent as well; text,
    and TRUE and FALSE, exactly. A value that is missing and an error value always differ: a formula whose result is
    an empty text counts as missing, since the file cannot tell them apart.
    """
    written, computed = values(original), values(recalculated)
    found = []
    for place, formula, number_format in _formula_cells(original):
        ours, theirs = written.get(place), computed.get(place)
        if not _same(ours, theirs, money="$" in number_format):
            found.append(Difference(*place, formula, ours, theirs))
    return found


def edit(path: Path, changes: Mapping[Place, object], out: Path) -> None:
    """Write ``path`` with other values in some cells to ``out``, as a person does who types over an input.

    Every cached value is lost: recalculate ``out`` before reading values from it. Raises ``ValueError`` for a cell
    that is empty, since an edit there moves nothing, and ``KeyError`` for a sheet that is not there.
    """
    workbook = openpyxl.load_workbook(path)
    for (sheet, ref), value in changes.items():
        cell = workbook[sheet][ref]
        if cell.value is None:
            raise ValueError(f"{path.name} {sheet}!{ref} is empty: there is nothing to edit")
        cell.value = value
    workbook.save(out)
    workbook.close()


def _ask_libreoffice(files: Sequence[Path], told: Path, room: Path) -> str:
    """One call for each hundred files, each on a profile of its own: two calls on one profile lose files."""
    said = []
    for start in range(0, len(files), FILES_A_CALL):
        chunk = files[start : start + FILES_A_CALL]
        profile = room / f"profile-{start}"
        (profile / "user").mkdir(parents=True)
        (profile / "user" / "registrymodifications.xcu").write_text(PROFILE, encoding="utf-8")
        command = [
            Program.LIBREOFFICE.command,
            f"-env:UserInstallation={profile.resolve().as_uri()}",
            "--headless",
            "--norestore",
            "--convert-to",
            "xlsx:Calc MS Excel 2007 XML",
            "--outdir",
            str(told),
            *map(str, chunk),
        ]
        said.append(_run(command, SECONDS_A_CALL + SECONDS_A_FILE * len(chunk)))
        shutil.rmtree(profile)
    return "".join(said)


def _ask_gnumeric(files: Sequence[Path], told: Path, room: Path) -> str:
    """One call a file, as many at a time as there are processors."""

    def ask(file: Path) -> str:
        command = [Program.GNUMERIC.command, "--recalc", str(file), str(told / file.name)]
        return _run(command, SECONDS_A_CALL)

    with ThreadPoolExecutor(max_workers=os.cpu_count()) as pool:
        return "".join(pool.map(ask, files))


_ASK = {Program.LIBREOFFICE: _ask_libreoffice, Program.GNUMERIC: _ask_gnumeric}


def _run(command: Sequence[str], seconds: float) -> str:
    """Run a witness and give what it printed. Its exit code says nothing (soffice gives 0 when it could not load)."""
    with subprocess.Popen(
        command,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
        start_new_session=True,
    ) as process:
        try:
            return process.communicate(timeout=seconds)[0]
        except subprocess.TimeoutExpired as late:
            os.killpg(process.pid, signal.SIGKILL)  # soffice is a script: the program itself is its child
            raise WitnessFailed(f"{command[0]} was not done after {seconds:.0f} s") from late


def _cells(path: Path, *, data_only: bool) -> Iterator[tuple[Place, Any]]:
    """Every cell that holds something, with its place; ``data_only`` gives cached values in place of formulas."""
    workbook = openpyxl.load_workbook(path, read_only=True, data_only=data_only)
    for sheet in workbook.worksheets:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.value is not None:
                    yield (sheet.title, cell.coordinate), cell
    workbook.close()


def _formula_cells(path: Path) -> Iterator[tuple[Place, str, str]]:
    """Place, formula and number format of every formula cell."""
    for place, cell in _cells(path, data_only=False):
        if cell.data_type == "f":
            # an array formula is an object that carries its text
            yield place, str(getattr(cell.value, "text", cell.value)), cell.number_format


def _same(ours: object, theirs: object, *, money: bool) -> bool:
    """Do the written and the recalculated value say the same?"""
    ours, theirs = _plain(ours), _plain(theirs)
    if ours is None or theirs is None or ours in ERROR_CODES or theirs in ERROR_CODES:
        return False
    if isinstance(ours, bool) or isinstance(theirs, bool):
        return ours is theirs
    if isinstance(ours, int | float) and isinstance(theirs, int | float):
        apart = abs(ours - theirs)
        return apart <= TOLERANCE * max(1.0, abs(ours), abs(theirs)) and not (money and apart >= HALF_A_CENT)
    return ours == theirs


def _plain(value: object) -> object:
    """A date or a time as the number that the cell holds: the witnesses word their date formats differently."""
    if isinstance(value, datetime | date | time | timedelta):
        return to_excel(value)
    return value


def _said(value: object) -> str:
    return "nothing" if value is None else repr(value)
