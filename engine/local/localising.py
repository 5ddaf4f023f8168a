"""From a library and a unit's sheet over it to the library as the unit has it.

Pure: the files of the library stay as they were read. Where the sheet itself has an error nothing
of it is carried out; what it does is then told by nobody but the sheet's own problems.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace
from functools import lru_cache

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity, pointer_text
from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.local import codes
from chamberwise.engine.local.applying import applied, arrows_to, conflicts, with_head
from chamberwise.engine.local.expecting import more_than_wording, unmet
from chamberwise.engine.local.leaving_out import left_out
from chamberwise.engine.local.locating import Located, NowhereError, RefusedError, located
from chamberwise.engine.local.naming import unknown_names
from chamberwise.engine.local.rewording import no_text
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.codes import TOO_LARGE
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.engine.reading.library import File, Loaded, assemble, understood
from chamberwise.engine.reading.local_sheet import LocalSheet, Operation, Verb
from chamberwise.engine.reading.tree import Tree
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.translating.of_sheet import check_sheet_translations

MOST_OPERATIONS = 1000
"""Each is held against all before it."""


@lru_cache(maxsize=8)
def base_digest(library: Library, pathway: PathwayId) -> str:
    """Return the digest that a sheet names of what lies below it."""
    return short_digest(content_digest(library, pathway))


def localised(base: Loaded, file: File, leaving_out: Collection[Pointer] = ()) -> Loaded:
    """Return a library under a sheet; operations whose places are named are left out."""
    tree = Tree(file.shown_as, file.tree.root, [*file.problems], file.tree.lines)
    shown = replace(file, tree=tree)
    sheet = file.sheet
    if sheet is None or not _has_base(base, sheet, tree):
        return _unchanged(base, shown)
    covers = reached_by_handover(base.library, sheet.local.over)
    _compare_base(base, sheet, tree)
    operations = [each for each in sheet.operations if each.at not in leaving_out]
    _refuse_too_many(operations, tree)
    places = _resolved(base, covers, operations[:MOST_OPERATIONS], tree)
    if any(_stops(each) for each in tree.problems):
        return _unchanged(base, shown)
    trees = dict(applied(base, tree, places))
    for name in covers:
        at = base.file_of[name]
        trees.setdefault(at, _copy(base.files[at].tree))
        with_head(trees[at], tree)
    files = [
        understood(File(name, trees[name], each.text)) if name in trees else each
        for name, each in base.files.items()
    ]
    local = replace(sheet.local, covers=covers)
    loaded = assemble([*files, shown], shown.shown_as, local)
    tree.problems += unknown_names(loaded.library, local, tree)
    tree.problems += _weaker(base, loaded, covers, places, tree)
    tree.problems += check_sheet_translations(loaded, sheet, local, tree)
    return loaded


def _unchanged(base: Loaded, shown: File) -> Loaded:
    return assemble([*base.files.values(), shown], shown.shown_as)


def _copy(tree: Tree) -> Tree:
    return Tree(tree.file, tree.root, [], tree.lines)


def _stops(problem: Problem) -> bool:
    """Whether nothing may be carried out: all errors but one of the ground below."""
    return problem.severity is Severity.ERROR and problem.code != codes.BASE_CHANGED.slug


def _has_base(base: Loaded, sheet: LocalSheet, tree: Tree) -> bool:
    over, at = sheet.local.over, ("over", "pathway")
    if not over:
        return False
    if over not in base.file_of:
        advice = did_you_mean(over, base.file_of, _("`chamberwise list` shows those there are."))
        message = _("there is no pathway `{over}` to lie over").format(over=over)
        tree.problems.append(codes.NO_BASE.at(tree.file, at, tree.span(at), message, advice))
        return False
    reached = [base.source(name) for name in reached_by_handover(base.library, over)]
    unread = next((each for each in (*reached, *base.vocabulary) if not each.is_whole), None)
    if unread is not None:
        message = _("{file}, which it lies over, could not be read whole").format(
            file=unread.shown_as
        )
        advice = _("Put that file right first: `chamberwise check {file}`.").format(
            file=unread.shown_as
        )
        tree.problems.append(codes.NO_BASE.at(tree.file, at, tree.span(at), message, advice))
    return unread is None


def _compare_base(base: Loaded, sheet: LocalSheet, tree: Tree) -> None:
    local = sheet.local
    now = base_digest(base.library, local.over)
    edition = base.library.pathways[local.over].edition
    if local.base_digest == now:
        _compare_edition(local.base_edition, edition, tree)
    if not local.base_digest or local.base_digest == now:
        return
    at = ("over", "digest")
    message = _(
        "it was written over edition {old_edition} with digest {old_digest}; what "
        "stands there now is edition {edition} with digest {now}"
    ).format(old_edition=local.base_edition, old_digest=local.base_digest, edition=edition, now=now)
    advice = _(
        "Look at what changed below, and at every expectation that no longer holds. If "
        "the sheet still fits, write `edition: {edition}` and `digest: {now}`."
    ).format(edition=edition, now=now)
    tree.problems.append(codes.BASE_CHANGED.at(tree.file, at, tree.span(at), message, advice))


def _compare_edition(said: str, edition: str, tree: Tree) -> None:
    """Tell where a sheet calls what it lies over by another edition, as its pages would."""
    if not said or said == edition:
        return
    at = ("over", "edition")
    message = _("it says edition {said}, and edition {edition} stands there").format(
        said=said, edition=edition
    )
    advice = _("Write `edition: {edition}`.").format(edition=edition)
    tree.problems.append(codes.BASE_CHANGED.at(tree.file, at, tree.span(at), message, advice))


def _refuse_too_many(operations: list[Operation], tree: Tree) -> None:
    if len(operations) > MOST_OPERATIONS:
        at = operations[MOST_OPERATIONS].said
        message = _("more than {most} changes in one sheet").format(most=thousands(MOST_OPERATIONS))
        advice = _("A unit that changes so much writes a pathway of its own.")
        tree.problems.append(TOO_LARGE.at(tree.file, at, tree.span(at), message, advice))


def _resolved(
    base: Loaded, covers: tuple[PathwayId, ...], operations: list[Operation], tree: Tree
) -> list[Located]:
    """Return where the operations take hold; what is wrong with any is a problem of the sheet."""
    places = []
    for each in operations:
        code = codes.NOT_FOR_A_SHEET
        try:
            places.append(located(base, covers, each))
        except RefusedError as error:
            code = codes.NO_SUCH_PLACE if isinstance(error, NowhereError) else code
            is_unknown_name = each.verb is Verb.SET and isinstance(error, NowhereError)
            span = tree.span(each.at, at_key=True) if is_unknown_name else tree.span(each.said)
            tree.problems.append(code.at(tree.file, each.said, span, error.message, error.advice))
    tree.problems += conflicts(tree, places)
    for place in places:
        tree.problems += _misfits(base, place, tree)
    return places


def _misfits(base: Loaded, place: Located, tree: Tree) -> Iterator[Problem]:
    is_wording = place.operation.verb is Verb.REWORD
    found = no_text(base, tree, place) if is_wording else None
    found = found or unmet(base, tree, place)
    if found is None and is_wording:
        found = more_than_wording(tree, place)
    if found is None and place.operation.verb is Verb.REMOVE:
        found = _led_nowhere(base, place, tree)
    if found is not None:
        yield found


def _led_nowhere(base: Loaded, place: Located, tree: Tree) -> Problem | None:
    """Return the problem of a step taken away to which arrows lead that get no other target."""
    operation, at = place.operation, place.place
    if at[0] != "steps" or len(at) != 2 or operation.go_to is not None:
        return None
    arrows = list(arrows_to(base.files[place.file].tree.root, str(at[1])))
    if not arrows:
        return None
    message = _("`{arrow}` leads to `{step}`, and it does not say where instead").format(
        arrow=pointer_text(arrows[0]), step=at[1]
    )
    advice = _("Add `go to:` with the step at which those walks go on.")
    span = tree.span(operation.said)
    return codes.NO_SUCH_PLACE.at(tree.file, operation.said, span, message, advice)


def _weaker(
    base: Loaded, now: Loaded, covers: tuple[PathwayId, ...], places: list[Located], tree: Tree
) -> Iterator[Problem]:
    name_of = {base.file_of[name]: name for name in covers}
    for place in places:
        name = name_of.get(place.file)
        if name is not None:
            was, is_now = base.library.pathways[name], now.library.pathways[name]
            problem = left_out(was, is_now, tree, place)
            if problem is not None:
                yield problem
