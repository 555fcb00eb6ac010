"""Which files a run reads: named files, folders and patterns, without files that are no input."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from glob import glob, has_magic
from pathlib import Path

from calc.batch.run import COMPANY_BOOK
from calc.errors import Finding, FindingKind, Place, Unreadable
from calc.files import Results, lock_of, same_file

_EXTENSIONS = (".xlsx", ".xlsm")


def named_files(paths: Sequence[Path], company: Path | None) -> tuple[list[Path], list[Finding], list[str]]:
    """The books that ``paths`` name, each once, in order; the notes about ignored files; the failures.

    A folder names the workbooks in it, and a pattern those that match, except the company book and the program's own
    results.
    """
    files: dict[Path, Path] = {}
    findings: list[Finding] = []
    failures: list[str] = []
    for path in paths:
        try:
            for each in _expand(path, company):
                workbook = lock_of(each)
                if workbook:
                    findings.append(_ignored(each, workbook))
                else:
                    files.setdefault(each.resolve(), each)
        except Unreadable as reason:
            failures.append(str(reason))
    return list(files.values()), list(dict.fromkeys(findings)), failures


def _expand(path: Path, company: Path | None) -> Iterator[Path]:
    if path.is_dir():
        yield from _books(sorted(path.iterdir()), company, f"{path}: there is no input workbook in this folder.")
    elif has_magic(str(path)) and not path.exists():
        found = sorted(Path(each) for each in glob(str(path)))
        yield from _books(found, company, f"{path}: no input workbook matches this pattern.")
    else:
        yield path


def _books(found: Sequence[Path], company: Path | None, if_none: str) -> Iterator[Path]:
    """The input books among the files found. Raises Unreadable with the message ``if_none`` when there are none."""
    own = {folder: Results.names_in(folder) for folder in {each.parent for each in found}}
    companies = {company.resolve()} if company is not None else set()
    any_book = False
    for path in found:
        if path.suffix.lower() not in _EXTENSIONS or path.name.startswith(".") or not path.is_file():
            continue
        if (
            same_file(path.name) in own[path.parent]
            or same_file(path.name) == COMPANY_BOOK
            or path.resolve() in companies
        ):
            continue
        any_book = any_book or not lock_of(path)
        yield path
    if not any_book:
        raise Unreadable(if_none)


def _ignored(lock: Path, workbook: str) -> Finding:
    found = f"This is the lock file of {workbook}, which is open in another program. It is ignored."
    remedy = f"Unsaved changes in {workbook} are not in this run."
    return Finding(FindingKind.LOCK_FILE, Place(lock.name), found, remedy)


def unique_names(files: Sequence[Path]) -> list[str]:
    """A unique name for each book: its file name, with as many of its folders as are needed."""
    names = []
    for path in files:
        parts = path.absolute().parts
        others = [each.absolute().parts for each in files if each is not path]
        count = 1
        while count < len(parts) - 1 and any(_same_parts(parts[-count:], other[-count:]) for other in others):
            count += 1
        names.append("/".join(parts[-count:]))
    return names


def _same_parts(one: Sequence[str], other: Sequence[str]) -> bool:
    return [same_file(part) for part in one] == [same_file(part) for part in other]
