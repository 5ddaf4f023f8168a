"""Two versions of a pathway beside each other: the whole comparison."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from chamberwise.engine.checks.run import check_for_walk
from chamberwise.engine.comparing.behaviour import Alike, Behaviour, behaviour
from chamberwise.engine.comparing.case_changes import CaseChange, case_changes
from chamberwise.engine.comparing.change import Change, Rating, gravest
from chamberwise.engine.comparing.changes import (
    by_gravity,
    changes_of_pathway,
    changes_of_shared,
    changes_over_there,
)
from chamberwise.engine.comparing.renames import Renames, in_new_names, renames
from chamberwise.engine.comparing.touched import Touched, touched
from chamberwise.engine.comparing.unit import changes_of_unit
from chamberwise.engine.comparing.used import used_words
from chamberwise.engine.comparing.verdicts import Judged, judged
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.stamp.copies import Register


@dataclass(frozen=True, slots=True)
class Version:
    """One side: a pathway in the library it is read in."""

    loaded: Loaded
    pathway: PathwayId

    @property
    def library(self) -> Library:
        """The library it stands in."""
        return self.loaded.library

    def can_be_walked(self, today: date) -> bool:
        """Whether every name is defined, so that it has walks at all."""
        return not check_for_walk(self.loaded, self.pathway, today)


@dataclass(frozen=True, slots=True)
class Comparison:
    """What one version says that the other does not, the gravest changes first.

    Without walks on both sides there is no behaviour, no verdict and no case to compare.
    """

    old: Version
    new: Version
    changes: tuple[Change, ...]
    touched: Touched
    behaviour: Behaviour | None = None
    verdicts: tuple[Judged, ...] = ()
    cases: tuple[CaseChange, ...] = ()
    renamed: Mapping[PathwayId, Renames] = field(default_factory=dict)
    cannot_be_walked: tuple[str, ...] = ()
    """Which sides cannot be walked: `old`, `new`."""

    @property
    def is_same(self) -> bool:
        """Whether both say the same."""
        return not self.changes

    @property
    def rating(self) -> Rating:
        """How grave the gravest change is."""
        return gravest(change.rating for change in self.changes)


def compare(old: Version, new: Version, register: Register, today: date) -> Comparison:
    """Return the comparison of two versions. It proves both, where anything but wording changed."""
    renamed = _renames(old, new)
    before = in_new_names(old.library, renamed)
    pathways = before.pathways[old.pathway], new.library.pathways[new.pathway]
    sheets = before.local_to(old.pathway), new.library.local_to(new.pathway)
    reached = reached_by_handover(new.library, new.pathway)
    used = frozenset().union(
        used_words(before, old.pathway),
        *(used_words(new.library, name) for name in reached),
    )
    found = by_gravity(
        (
            *changes_of_pathway(*pathways, renamed.get(old.pathway, {})),
            *changes_of_shared(before, new.library, used),
            *changes_of_unit(*sheets, new.pathway),
            *changes_over_there(before, new.library, reached[1:], renamed),
        )
    )
    bears_on = touched(before, new.library, new.pathway, found, register)
    sides = {"old": old, "new": new}
    unwalkable = tuple(name for name, side in sides.items() if not side.can_be_walked(today))
    if unwalkable:
        return Comparison(old, new, found, bears_on, renamed=renamed, cannot_be_walked=unwalkable)
    if gravest(change.rating for change in found) is Rating.EDITORIAL:
        return Comparison(old, new, found, bears_on, Alike(0), renamed=renamed)
    both = (old.library, old.pathway), (new.library, new.pathway)
    return Comparison(
        old,
        new,
        found,
        bears_on,
        behaviour(*both),
        judged(*both),
        case_changes(*both, renamed),
        renamed,
    )


def _renames(old: Version, new: Version) -> dict[PathwayId, Renames]:
    """Return the renamed steps of every pathway that both sides have, and of the one compared."""
    names = {name: name for name in old.library.pathways if name in new.library.pathways}
    names[old.pathway] = new.pathway
    found = {
        was: renames(old.library.pathways[was], new.library.pathways[now])
        for was, now in names.items()
        if old.library.pathways[was] is not new.library.pathways[now]
    }
    return {name: each for name, each in found.items() if each}
