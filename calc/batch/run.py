"""What one run was given and what came of it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from calc.errors import Finding, Place, Severity
from calc.files import Saved, safe_name
from calc.intake.spelling import normalize

CHUNK = 200
"""Jobs that are evaluated together: memory stays flat however many there are."""

WEEK_FILE = "week.xlsx"
"""The workbook of the whole run."""

COMPANY_BOOK = "company.xlsx"
"""The house book that is taken when none is named, if it stands beside the week's book."""


class Progress:
    """Who wants to know how far a run is hears it here; this one keeps it to itself."""

    def begin(self, what: str, steps: int) -> None:
        """A part of the run begins that takes so many steps."""

    def step(self) -> None:
        """One more step is done."""

    def end(self) -> None:
        """The part is over."""


@dataclass(frozen=True, slots=True)
class JobRef:
    """All that a run keeps at hand of a job; the rest is packed away. ``typed`` is the print of what was typed."""

    id: str
    place: Place
    typed: str

    @property
    def file(self) -> str:
        """The file name of its workbook."""
        return f"{safe_name(self.id)}.xlsx"


class FindingIndex:
    """Which findings concern which job, however many there are of either."""

    def __init__(self, findings: Sequence[Finding]) -> None:
        self._findings = findings
        self._of_job: dict[str, list[int]] = defaultdict(list)
        self._of_book: dict[str, list[int]] = defaultdict(list)
        for number, each in enumerate(findings):
            if each.job:
                self._of_job[normalize(each.job)].append(number)
            else:
                self._of_book[each.place.book].append(number)

    def of(self, card: JobRef, books: Sequence[str]) -> tuple[Finding, ...]:
        """The findings of a job itself, and those of its whole book and of ``books``, in the order they were made."""
        of_books = (self._of_book.get(book, []) for book in {card.place.book, *books, ""})
        numbers = sorted({*self._of_job.get(normalize(card.id), []), *(each for some in of_books for each in some)})
        return tuple(self._findings[number] for number in numbers)


@dataclass
class Run:
    """One run: its jobs in order, packed in chunks, and everything that there is to say about them."""

    findings: list[Finding] = field(default_factory=list)
    failures: list[str] = field(default_factory=list)
    written: list[tuple[str, Path, Saved]] = field(default_factory=list)
    held: list[str] = field(default_factory=list)
    company: str = ""
    company_books: tuple[str, ...] = ()
    """The names of all books that say something of the house."""
    company_print: str = ""
    """The print of what they say."""
    beside: Path = Path()
    """The folder of the first book: results go to a folder beside it when none is named."""
    folder: Path | None = None
    """The folder of the results; None for a run that writes none."""
    cards: list[JobRef] = field(default_factory=list)
    chunks: list[bytes] = field(default_factory=list)
    """The jobs of the cards, :data:`CHUNK` by :data:`CHUNK`, packed."""

    @property
    def jobs(self) -> int:
        """How many jobs it was given."""
        return len(self.cards)

    @property
    def code(self) -> int:
        """The exit code: 3 when a file could not be read or written, 1 when a job has a stop, else 0."""
        if self.failures:
            return 3
        return 1 if any(each.severity is Severity.STOP for each in self.findings) else 0

    @property
    def beside_others(self) -> list[Path]:
        """The workbooks that lie beside one that somebody changed."""
        meant = {card.id: card.file for card in self.cards} | {"": WEEK_FILE}
        return [path for job, path, _ in self.written if path.name != meant[job]]

    def ready(self) -> Iterator[tuple[int, list[int]]]:
        """For each chunk, its number and the cards in it that no stop holds back, by their place among all cards."""
        held = {normalize(each) for each in self.held}
        for number in range(len(self.chunks)):
            cards = range(number * CHUNK, min((number + 1) * CHUNK, len(self.cards)))
            yield number, [place for place in cards if normalize(self.cards[place].id) not in held]
