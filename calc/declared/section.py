"""The base class of declarations, and the sections they belong to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from calc.formula.build import is_word
from calc.formula.levels import JOB, Level
from calc.formula.tree import Expr, Named
from calc.formula.value_types import FormulaError, ValueType
from calc.units.algebra import DATE, Unit, unit


class Declared(Named):
    """A declaration: a label, a unit, and the section that it belongs to."""

    section: type[Section]
    name: str
    sums_rows = False
    """Whether it is the total of the line whose label it has."""

    def __init__(
        self, label: str, unit_text: str = "", value_type: ValueType = ValueType.NUMBER, help_text: str = ""
    ) -> None:
        self.label = label
        self.unit_text = unit_text
        self.help = help_text
        self._unit = unit(unit_text)
        self._value_type = value_type
        self._level: Level | None = None

    @property
    def value_type(self) -> ValueType:
        return self._value_type

    @property
    def unit(self) -> Unit:
        return self._unit

    @property
    def level(self) -> Level:
        return self.section.level if self._level is None else self._level

    @property
    def resolved_level(self) -> Level | None:
        """Its level; None while the body of its section is still being executed."""
        return self.level if self._level is not None or "section" in vars(self) else None

    @property
    def unit_shown(self) -> str:
        """The unit that is shown beside its number; none for a date, whose format shows what it is."""
        return "" if self.unit_text == DATE else self.unit_text

    @property
    def id(self) -> str:
        """The name that stays the same when a label is reworded: ``Order.trucks``."""
        return f"{self.section.called}.{self.name}"

    def __repr__(self) -> str:
        """Such as ``<Line Order.trucks "Trucks" [truck]>``."""
        place = self.id if "section" in vars(self) else "of no section yet"
        shown = f" [{self.unit_text}]" if self.unit_text else ""
        return f'<{type(self).__name__} {place} "{self.label}"{shown}>'

    def members(self) -> Iterator[tuple[str, Declared]]:
        """The declaration with those that belong to it, in order of evaluation, each with the suffix of its name."""
        yield "", self

    def is_(self, word: str) -> Expr:
        """Whether a choice is that word. Raises FormulaError when the choice has no such word."""
        words = getattr(self, "words_allowed", None)
        if words is None or word not in words:
            raise FormulaError(f"{self.label} is never {word!r}; it is one of {words}")
        return is_word(self, word)

    def check_level(self) -> None:
        """Compares it with the level of its section, once that is known. Raises FormulaError when they do not fit."""


class _SectionType(type):
    """The class of sections: one is shown with its module and its title."""

    def __repr__(cls) -> str:
        title = vars(cls).get("title", "")
        return f'<Section {vars(cls).get("called") or cls.__name__} "{title}" of {cls.__module__}>'


class Section(metaclass=_SectionType):
    """A group of declarations of one level. Its docstring is its heading.

    ``table`` is the input sheet of its inputs, ``sheet`` the sheet of the job workbook for its lines, ``slots_for`` the
    line with the number of slots that the job needs when the level has slots. ``needs`` is a level of typed rows
    without which a job has nothing of the section: it is left out of its workbook, and its lines are 0, or a dash for
    words, wherever they are used. ``called`` replaces the class name in the ids of its lines, for a section made by a
    function.
    """

    called: ClassVar[str] = ""
    title: ClassVar[str] = ""
    heading: ClassVar[str] = ""
    level: ClassVar[Level] = JOB
    table: ClassVar[str] = ""
    sheet: ClassVar[str] = ""
    slots_for: ClassVar[Declared | None] = None
    needs: ClassVar[Level] = JOB
    declarations: ClassVar[tuple[Declared, ...]] = ()
    members: ClassVar[tuple[Declared, ...]] = ()
    registry: ClassVar[list[type[Section]]] = []
    """Every section there is, in the order in which they were made."""

    def __init_subclass__(
        cls,
        *,
        title: str,
        each: Level = JOB,
        table: str = "",
        sheet: str = "",
        slots_for: Declared | None = None,
        needs: Level = JOB,
        called: str = "",
    ) -> None:
        super().__init_subclass__()
        own = [(name, value) for name, value in vars(cls).items() if isinstance(value, Declared)]
        cls.called = called or cls.__name__
        cls.title, cls.heading, cls.level = title, " ".join((cls.__doc__ or "").split()), each
        cls.table, cls.sheet, cls.slots_for, cls.needs = table, sheet, slots_for, needs
        cls.declarations = tuple(value for _, value in own)
        members: list[Declared] = []
        for name, value in own:
            if name in Section.__annotations__:
                raise FormulaError(f"{value.label!r}: the name {name!r} is reserved for the section; take another")
            value.section, value.name = cls, name
            for suffix, member in value.members():
                member.section, member.name = cls, name + suffix
                members.append(member)
        cls.members = tuple(members)
        for member in members:
            member.check_level()
            if needs != JOB and isinstance(getattr(member, "override", None), Declared):
                raise FormulaError(f"{member.label!r} may be overridden, so its section is never left out")
        Section.registry.append(cls)

    @classmethod
    def is_left_out(cls, counts: Mapping[Level, int]) -> bool:
        """Whether a job with so many rows of each level has nothing of the section."""
        return not (counts.get(cls.needs, 1) and counts.get(cls.level, 1))
