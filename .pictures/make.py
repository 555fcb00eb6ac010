"""Draws the pictures of the README: two sheets of the demo, printed by LibreOffice and turned into PNG by pdftoppm."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).parent
PAGES = {"bid.png": "Bid", "takeoff.png": "Takeoff"}


def main() -> None:
    """Bids the demo, prints its first job, and keeps the first page of each sheet that is shown."""
    sys.path.insert(0, str(HERE.parent))
    from openpyxl import load_workbook

    from calc import batch
    from calc.files import shipped

    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        run = batch.take([shipped("sample_inputs") / "week.xlsx"], None, None)
        batch.bid(run, place)
        job = next(path for name, path, _ in run.written if name)
        for picture, sheet in PAGES.items():
            book = load_workbook(job, data_only=True)
            for other in book.sheetnames:
                if other != sheet:
                    del book[other]
            one = place / f"{sheet}.xlsx"
            book.save(one)
            printed(one, HERE / picture)


def printed(book: Path, picture: Path) -> None:
    """The first page of a workbook as a picture."""
    folder = book.parent
    subprocess.run(
        ["soffice", f"-env:UserInstallation={(folder / 'profile').as_uri()}", "--headless", "--convert-to", "pdf",
         "--outdir", str(folder), str(book)],
        check=True, capture_output=True, stdin=subprocess.DEVNULL,
    )  # fmt: skip
    subprocess.run(
        ["pdftoppm", "-png", "-r", "80", "-singlefile", "-f", "1", "-l", "1", str(book.with_suffix(".pdf")),
         str(picture.with_suffix(""))],
        check=True, capture_output=True,
    )  # fmt: skip


if __name__ == "__main__":
    main()
