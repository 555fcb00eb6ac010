"""Draws the pictures of the README: two pages of the demo's first job, printed by LibreOffice and drawn by pdftoppm.

Run it where the program is installed: ``.venv/bin/python .pictures/make.py``. Needs LibreOffice and poppler-utils.
"""

from __future__ import annotations

import subprocess
import tempfile
from pathlib import Path

from calc import batch
from calc.files import shipped

HERE = Path(__file__).parent
PAGES = {
    "bid.png": ("The price, and the job in numbers", "What was decided"),
    "takeoff.png": ("Takeoff", "copies multiply everything that belongs to an area"),
}
"""Each picture, and words by which its page is known: the first page that has them all."""

DOTS_PER_INCH = 80


def main() -> None:
    """Bids the demo, prints its first job, and draws the pages that are shown."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        run = batch.load_run([shipped("sample_inputs") / "jobs.xlsx"], None, None)
        batch.bid(run, place)
        printed = print_out(next(path for job, path, _ in run.written if job))
        pages = texts(printed)
        for picture, words in PAGES.items():
            page = next(number for number, text in enumerate(pages, start=1) if all(each in text for each in words))
            draw(printed, page, HERE / picture)


def print_out(book: Path) -> Path:
    """The workbook as it prints, every sheet of it."""
    profile = (book.parent / "profile").as_uri()
    _run("soffice", f"-env:UserInstallation={profile}", "--headless", "--convert-to", "pdf", "--outdir",
         str(book.parent), str(book))  # fmt: skip
    return book.with_suffix(".pdf")


def texts(printed: Path) -> list[str]:
    """What stands on each page, each run of blanks as one."""
    whole = _run("pdftotext", "-layout", str(printed), "-")
    return [" ".join(page.split()) for page in whole.split("\f")]


def draw(printed: Path, page: int, picture: Path) -> None:
    """One page as a picture."""
    number = str(page)
    _run("pdftoppm", "-png", "-singlefile", "-r", str(DOTS_PER_INCH), "-f", number, "-l", number, str(printed),
         str(picture.with_suffix("")))  # fmt: skip


def _run(*command: str) -> str:
    return subprocess.run(command, check=True, capture_output=True, text=True, stdin=subprocess.DEVNULL).stdout


if __name__ == "__main__":
    main()
