"""Which files are meant: folders, patterns, and what lies there that is no input."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from glob import glob, has_magic
from pathlib import Path

from calc.batch.run import COMPANY_BOOK
from calc.errors import Finding, Place, Severity, Unreadable
from calc.files import Results, lock_of, same_file

_ENDINGS = (".xlsx", ".xlsm")


def named_files(paths: Sequence[Path], company: Path | None) -> tuple[list[Path], list[Finding], list[str]]:
    """The books that ``paths`` name, each once, in order; a word about what is passed over; what is not there.

    A folder means the workbooks in it, and a pattern those that fit: not the house book, nor what the program itself
    wrote there.
    """
    files: dict[Path, Path] = {}
    findings: list[Finding] = []
    failures: list[str] = []
    for path in paths:
        try:
            for each in _meant(path, company):
                locked = lock_of(each)
                if locked:
                    findings.append(_ignored(each, locked))
                else:
                    files.setdefault(each.resolve(), each)
        except Unreadable as reason:
            failures.append(str(reason))
    return list(files.values()), list(dict.fromkeys(findings)), failures


def _meant(path: Path, company: Path | None) -> Iterator[Path]:
    if path.is_dir():
        yield from _books(sorted(path.iterdir()), company, f"{path}: there is no input workbook in this folder.")
    elif has_magic(str(path)) and not path.exists():
        found = sorted(Path(each) for each in glob(str(path)))
        yield from _books(found, company, f"{path}: no input workbook fits this pattern.")
    else:
        yield path


def _books(found: Sequence[Path], company: Path | None, none: str) -> Iterator[Path]:
    """What of the files found is an input book. Raises Unreadable, saying ``none``, when none is."""
    own = {folder: Results.names_in(folder) for folder in {each.parent for each in found}}
    companies = {company.resolve()} if company is not None else set()
    any_book = False
    for path in found:
        if path.suffix.lower() not in _ENDINGS or path.name.startswith(".") or not path.is_file():
            continue
        if path.name in own[path.parent] or same_file(path.name) == COMPANY_BOOK or path.resolve() in companies:
            continue
        any_book = any_book or not lock_of(path)
        yield path
    if not any_book:
        raise Unreadable(none)


def _ignored(lock: Path, book: str) -> Finding:
    found = f"It is the lock file of {book}, which is open in another program, so it is passed over."
    return Finding(Severity.NOTE, Place(lock.name), found, f"What is not saved in {book} yet is not in this run.")


def unique_names(files: Sequence[Path]) -> list[str]:
    """A name for each book: its file name, with as many of its folders before it as tell it from the others."""
    names = []
    for path in files:
        parts = path.absolute().parts
        others = [each.absolute().parts for each in files if each is not path]
        count = 1
        while count < len(parts) - 1 and any(_alike(parts[-count:], other[-count:]) for other in others):
            count += 1
        names.append("/".join(parts[-count:]))
    return names


def _alike(one: Sequence[str], other: Sequence[str]) -> bool:
    return [same_file(part) for part in one] == [same_file(part) for part in other]
