"""Two versions of a pathway beside each other: the whole comparison."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property

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
from chamberwise.engine.comparing.mending import to_mend
from chamberwise.engine.comparing.names.calling import in_new_names
from chamberwise.engine.comparing.names.named import Names
from chamberwise.engine.comparing.names.renamed import of_library
from chamberwise.engine.comparing.names.same_pathway import pathways_called, same_pathways
from chamberwise.engine.comparing.names.told_again import told_again
from chamberwise.engine.comparing.touched import Touched, touched
from chamberwise.engine.comparing.unit import changes_of_unit
from chamberwise.engine.comparing.used import used_words
from chamberwise.engine.comparing.verdicts import Judged, judged
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import File, Loaded
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


@dataclass(frozen=True)
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
    names: Names = field(default_factory=dict)
    """What bears another name now. Walks and cases of the old side are told in names of the new."""
    cannot_be_walked: tuple[str, ...] = ()
    """Which sides cannot be walked: `old`, `new`."""

    @cached_property
    def before(self) -> Library:
        """The old library with everything in it called as it is called now."""
        return in_new_names(self.old.library, self.names)

    @property
    def is_same(self) -> bool:
        """Whether both say the same."""
        return not self.changes

    @property
    def rating(self) -> Rating:
        """How grave the gravest change is."""
        return gravest(change.rating for change in self.changes)


def compare(
    old: Version, new: Version, register: Register, today: date, sheets: Sequence[File] = ()
) -> Comparison:
    """Return the comparison of two versions. It proves both, where anything but wording changed.

    `sheets` are the local sheets to look through for names that are other ones now.
    """
    renamed = same_pathways(old.library, new.library)
    was = _called(old, renamed)
    names = told_again(was.library, new.library, _beside_each_other(was, new))
    before = in_new_names(was.library, names)
    pathways = before.pathways[was.pathway], new.library.pathways[new.pathway]
    units = before.local_to(was.pathway), new.library.local_to(new.pathway)
    reached = reached_by_handover(new.library, new.pathway)
    used = frozenset().union(
        used_words(before, was.pathway),
        *(used_words(new.library, name) for name in reached),
    )
    found = by_gravity(
        (
            *changes_of_pathway(*pathways, names),
            *changes_of_shared(before, new.library, used, names),
            *changes_of_unit(*units, new.pathway),
            *changes_over_there(before, new.library, reached[1:], names),
            *of_library({each: now for each, now in renamed.items() if now in reached}),
        )
    )
    bears_on = replace(
        touched(before, new.library, new.pathway, found, register, (old.library, renamed)),
        mend=to_mend(sheets, old.library, old.pathway, names, found, renamed),
    )
    sides = {"old": old, "new": new}
    unwalkable = tuple(name for name, side in sides.items() if not side.can_be_walked(today))
    if unwalkable:
        return Comparison(was, new, found, bears_on, names=names, cannot_be_walked=unwalkable)
    if gravest(change.rating for change in found) is Rating.EDITORIAL:
        return Comparison(was, new, found, bears_on, Alike(0), names=names)
    both = (before, was.pathway), (new.library, new.pathway)
    return Comparison(
        was,
        new,
        found,
        bears_on,
        behaviour(*both),
        judged(*both),
        case_changes(*both),
        names,
    )


def _called(old: Version, renamed: Mapping[PathwayId, PathwayId]) -> Version:
    """Return the old side with its pathways under the names of now."""
    if not renamed:
        return old
    library = pathways_called(old.library, renamed)
    file_of = {renamed.get(name, name): file for name, file in old.loaded.file_of.items()}
    loaded = replace(old.loaded, library=library, file_of=file_of)
    return Version(loaded, renamed.get(old.pathway, old.pathway))


def _beside_each_other(old: Version, new: Version) -> dict[PathwayId, PathwayId]:
    """Return the names of every pathway that both sides have, and of the one compared."""
    names = {name: name for name in old.library.pathways if name in new.library.pathways}
    names[old.pathway] = new.pathway
    return names
