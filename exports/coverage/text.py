"""A plan of drills as plain text: each drill by where it ends and what it shows first."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from textwrap import wrap

from chamberwise.engine.drill.coverage.guide import Answer
from chamberwise.engine.drill.coverage.loops import Loops
from chamberwise.engine.drill.coverage.plan import Plan, Planned
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Question
from chamberwise.exports.record.naming import answer_label, pathway_title, sentence, step_name

WIDTH = 78
MOST_NAMED = 6
STANDING = "Rehearsal and teaching only, never live care. Follow local protocol."


def plan_text(
    library: Library, of: Plan, met: Collection[Answer] = (), round_loops: Loops | None = None
) -> str:
    """Return the plan as text; drills that show nothing new to somebody come without detail.

    `met` are the answers that somebody has come by already, `round_loops` says how far the drills
    go round the loops of the pathway.
    """
    return "\n".join([*_lines(library, of, met, round_loops), "", STANDING, ""])


def _lines(
    library: Library, of: Plan, met: Collection[Answer], round_loops: Loops | None
) -> Iterator[str]:
    yield from _wrapped(f"Drills that cover: {pathway_title(library, of.pathway)}")
    answers = f"{of.answers - len(of.never)} of {of.answers} answers"
    rules = f"{of.rules - len(of.never_arise)} of {of.rules} safety rules"
    yield from _wrapped(f"{len(of.drills)} drills give {answers} and set off {rules}.")
    if of.at_least < len(of.drills):
        yield from _wrapped(
            f"With fewer than {of.at_least} it cannot be done; whether with fewer than "
            f"{len(of.drills)} is not known."
        )
    elif of.drills:
        yield "With fewer it cannot be done."
    yield from _loops(round_loops)
    if met:
        every = {answer for drill in of.drills for answer in drill.answers}
        yield from _wrapped(f"Met so far: {len(every & set(met))} of {len(every)} answers.")
    for number, drill in enumerate(of.drills, 1):
        yield from _drill(library, number, drill, met)
    if of.never:
        yield from ("", "FOUND ON NO WALK: known before it is asked, or out of the search's reach")
        for answer in of.never:
            yield from _wrapped(_told(library, answer), "  - ")
    if of.never_arise:
        yield from ("", "RULES THAT NO DRILL OF THIS PLAN SETS OFF")
        yield from _wrapped(", ".join(of.never_arise), "  ")


def _loops(of: Loops | None) -> Iterator[str]:
    if of is None or not of.rings:
        return
    yield from _wrapped(
        f"Loops: of {of.rings} rings of steps these drills go round {of.walked}, "
        f"{of.walked_again} of them twice running, and past the others. A stronger aim, which "
        f"they were not chosen for: of {of.ways:,} ways through loops (prime paths) they go "
        f"{of.ways_walked:,}. Not all of these can really happen."
    )


def _drill(library: Library, number: int, drill: Planned, met: Collection[Answer]) -> Iterator[str]:
    yield ""
    new = [answer for answer in drill.first_answers if answer not in met]
    asked = len(drill.answers)
    plural = "s" * (asked != 1)
    yield from _wrapped(
        f"{number}. Ends at: {sentence(step_name(library, drill.ends_at))}. "
        f"{asked} look{plural}, {len(new)} of them new."
    )
    for answer in new[:MOST_NAMED]:
        yield from _wrapped(_told(library, answer), "   - ")
    if len(new) > MOST_NAMED:
        yield f"   - and {len(new) - MOST_NAMED} more"


def _told(library: Library, answer: Answer) -> str:
    place, name = answer
    step = library.step(place)
    assert isinstance(step, Question)
    said = next(each for each in step.answers if each.id == name)
    return f"{step.question} {answer_label(library.finding(place.pathway, step.ask), said)}"


def _wrapped(text: str, lead: str = "") -> list[str]:
    return wrap(lead + text, WIDTH, subsequent_indent=" " * len(lead), break_long_words=False)
