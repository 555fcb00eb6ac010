"""A workbook as PDF, by the LibreOffice of the machine; the program itself needs none."""

from __future__ import annotations

import shutil
import subprocess
import tempfile
from pathlib import Path

from calc.errors import Unreadable

COMMANDS = ("soffice", "libreoffice")
"""What LibreOffice goes by."""

_SECONDS = 120


def find_office() -> str:
    """The command of LibreOffice on this machine; blank when there is none."""
    return next((found for found in map(shutil.which, COMMANDS) if found), "")


def pdf_of(name: str, workbook: bytes) -> bytes:
    """The PDF of a workbook that is called ``name`` in what the program says.

    Raises Unreadable with one plain line when LibreOffice is not there or gives no PDF.
    """
    office = find_office()
    if not office:
        raise Unreadable(
            f"{name}: no PDF was made, since LibreOffice is not on this machine. Install it, or open the workbook and "
            "print it to PDF."
        )
    with tempfile.TemporaryDirectory() as room:
        source = Path(room) / "workbook.xlsx"
        source.write_bytes(workbook)
        profile = (Path(room) / "profile").as_uri()
        command = [office, f"-env:UserInstallation={profile}", "--headless", "--norestore", "--convert-to", "pdf"]
        try:
            subprocess.run(
                [*command, "--outdir", room, str(source)],
                stdin=subprocess.DEVNULL,
                capture_output=True,
                timeout=_SECONDS,
                check=False,
            )
        except (OSError, subprocess.TimeoutExpired) as reason:
            raise Unreadable(
                f"{name}: no PDF was made: LibreOffice did not answer ({type(reason).__name__})."
            ) from reason
        made = source.with_suffix(".pdf")
        if not made.is_file():
            raise Unreadable(f"{name}: no PDF was made: LibreOffice could not print the workbook.")
        return made.read_bytes()
