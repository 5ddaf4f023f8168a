"""A plan of drills as plain text: each drill by where it ends and what it shows first."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from textwrap import wrap

from chamberwise.engine.drill.coverage.guide import Answer
from chamberwise.engine.drill.coverage.loops import Loops
from chamberwise.engine.drill.coverage.plan import Plan, Planned
from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Question
from chamberwise.exports.record.naming import answer_label, pathway_title, sentence, step_name

WIDTH = 78
MOST_NAMED = 6
STANDING = N_("Rehearsal and teaching only, never live care. Follow local protocol.")


def plan_text(
    library: Library, of: Plan, met: Collection[Answer] = (), round_loops: Loops | None = None
) -> str:
    """Return the plan as text; drills that show nothing new to somebody come without detail.

    `met` are the answers that somebody has come by already, `round_loops` says how far the drills
    go round the loops of the pathway.
    """
    return "\n".join([*_lines(library, of, met, round_loops), "", _(STANDING), ""])


def _lines(
    library: Library, of: Plan, met: Collection[Answer], round_loops: Loops | None
) -> Iterator[str]:
    yield from _wrapped(
        _("Drills that cover: {title}").format(title=pathway_title(library, of.pathway))
    )
    answers = _("{number} of {answers} answers").format(
        number=of.answers - len(of.never), answers=of.answers
    )
    rules = _("{number} of {rules} safety rules").format(
        number=of.rules - len(of.never_arise), rules=of.rules
    )
    yield from _wrapped(
        _("{count} drills give {answers} and set off {rules}.").format(
            count=len(of.drills), answers=answers, rules=rules
        )
    )
    if of.at_least < len(of.drills):
        yield from _wrapped(
            _(
                "With fewer than {at_least} it cannot be done; whether with fewer than {count} is "
                "not known."
            ).format(at_least=of.at_least, count=len(of.drills))
        )
    elif of.drills:
        yield _("With fewer it cannot be done.")
    yield from _loops(round_loops)
    yield from _met(of, met)
    for number, drill in enumerate(of.drills, 1):
        yield from _drill(library, number, drill, met)
    if of.never:
        yield from (
            "",
            _("FOUND ON NO WALK: known before it is asked, or out of the search's reach"),
        )
        for answer in of.never:
            yield from _wrapped(_told(library, answer), "  - ")
    if of.never_arise:
        yield from ("", _("RULES THAT NO DRILL OF THIS PLAN SETS OFF"))
        yield from _wrapped(", ".join(of.never_arise), "  ")


def _met(of: Plan, met: Collection[Answer]) -> Iterator[str]:
    """Yield how much of the plan somebody has come by, and where the rest stands."""
    every = {answer for drill in of.drills for answer in drill.answers}
    if not every:
        return
    yield ""
    count = len(every & set(met))
    told = _("Nothing of it was met yet in a drill that is kept here.")
    if count:
        told = _("Met so far: {met} of {every} answers; not met yet: {rest}.").format(
            met=count, every=len(every), rest=len(every) - count
        )
    where = _("What was not met yet stands under the first drill that shows it.")
    yield from _wrapped(f"{told} {where}")


def _loops(of: Loops | None) -> Iterator[str]:
    if of is None or not of.rings:
        return
    yield from _wrapped(
        _(
            "Loops: of {rings} rings of steps these drills go round {walked}, {walked_again} of "
            "them twice running, and past the others. A stronger aim, which they were not chosen "
            "for: of {ways} ways through loops (prime paths) they go {ways_walked}. Not all of "
            "these can really happen."
        ).format(
            rings=of.rings,
            walked=of.walked,
            walked_again=of.walked_again,
            ways=thousands(of.ways),
            ways_walked=thousands(of.ways_walked),
        )
    )


def _drill(library: Library, number: int, drill: Planned, met: Collection[Answer]) -> Iterator[str]:
    yield ""
    new = [answer for answer in drill.first_answers if answer not in met]
    asked = len(drill.answers)
    yield from _wrapped(
        ngettext(
            "{place}. Ends at: {step}. {number} look, {new} of them not met yet.",
            "{place}. Ends at: {step}. {number} looks, {new} of them not met yet.",
            asked,
        ).format(
            place=number,
            step=sentence(step_name(library, drill.ends_at)),
            number=asked,
            new=len(new),
        )
    )
    for answer in new[:MOST_NAMED]:
        yield from _wrapped(_told(library, answer), "   - ")
    if len(new) > MOST_NAMED:
        yield _("   - and {number} more").format(number=len(new) - MOST_NAMED)


def _told(library: Library, answer: Answer) -> str:
    place, name = answer
    step = library.step(place)
    assert isinstance(step, Question)
    said = next(each for each in step.answers if each.id == name)
    return f"{step.question} {answer_label(library.finding(place.pathway, step.ask), said)}"


def _wrapped(text: str, lead: str = "") -> list[str]:
    return wrap(
        lead + text,
        WIDTH,
        subsequent_indent=" " * len(lead),
        break_long_words=False,
        break_on_hyphens=False,
    )
