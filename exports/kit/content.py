"""What stands on a kit list."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import NOT_SET

AT_ONCE = N_("In the room at once: needed in the first phase")
LATER = N_("Needed later")
UNSET = N_(
    "Local product, par level, shelf, expiry and seal are NOT SET LOCALLY: write them "
    "in. Checked: by whom and when."
)
EMPTY = N_(
    "An empty field is NOT SET LOCALLY: write it in, as expiry and seal. Checked: by whom and when."
)
OVER = "↗"
MOST_NAMED = 3
"""Steps told by their headline; further ones by their number."""


@dataclass(frozen=True, slots=True)
class Use:
    """A step for which an item is needed, by its headline and its number in the full pathway.

    `pathway` is named where it is handed over to.
    """

    of: str
    step: str
    number: int
    pathway: str = ""


@dataclass(frozen=True, slots=True)
class KitRow:
    """An item by its generic name, how much of it the pathway asks for, why, and for what."""

    item: str
    amount: str
    why: str
    uses: tuple[Use, ...]
    is_at_once: bool
    product: str = ""
    place: str = ""
    stock: str = ""

    @property
    def only_after_handover(self) -> bool:
        """Whether the pathway itself never needs it, but one that it hands over to."""
        return all(each.pathway for each in self.uses)


@dataclass(frozen=True, slots=True)
class KitList:
    """The rows, those needed at once first."""

    title: str
    rows: tuple[KitRow, ...]
    is_local: bool = False
    """Whether a unit's sheet says what the unit uses and where it lies."""
    machine: str = ""
    """The unit's machine and its pages, in words."""

    @property
    def unset(self) -> str:
        """What is not set, and what is written in by hand."""
        if not self.is_local:
            return _(UNSET)
        machine = _("Machine: {machine}.").format(machine=self.machine or _(NOT_SET))
        return f"{machine} {_(EMPTY)}"

    def local(self, told: str) -> str:
        """Return what a unit has set, or that it has not; nothing where it has no sheet."""
        return told or (_(NOT_SET) if self.is_local else "")

    @property
    def parts(self) -> tuple[tuple[str, tuple[KitRow, ...]], ...]:
        """The rows under their headings; an empty part is left out."""
        now = tuple(row for row in self.rows if row.is_at_once)
        later = tuple(row for row in self.rows if not row.is_at_once)
        return tuple(
            (title, rows) for title, rows in ((_(AT_ONCE), now), (_(LATER), later)) if rows
        )


def by_pathway(row: KitRow) -> tuple[tuple[str, str], ...]:
    """Return the steps that need an item by pathway, the pathway's own first, unnamed."""
    found: dict[str, list[Use]] = {}
    for use in row.uses:
        found.setdefault(use.pathway, []).append(use)
    return tuple(
        (name, _told(uses, 0 if name and "" in found else MOST_NAMED))
        for name, uses in sorted(found.items(), key=_own_first)
    )


def _told(uses: list[Use], most: int) -> str:
    """Return e.g. `Call for help; Fill the chamber; and steps 31, 42`."""
    named = [use.step for use in uses[:most]]
    numbers = ", ".join(str(use.number) for use in uses[most:])
    left = len(uses) - most
    said = ngettext("step {numbers}", "steps {numbers}", left)
    if named:
        said = ngettext("and step {numbers}", "and steps {numbers}", left)
    return "; ".join([*named, *([said.format(numbers=numbers)] if numbers else [])])


def _own_first(found: tuple[str, object]) -> bool:
    return bool(found[0])
