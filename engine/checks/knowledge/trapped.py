"""A state from which no walk comes to an outcome, although arrows seem to lead there."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.knowledge.story import story
from chamberwise.engine.checks.shape import loop_without_bound, loop_without_exit, no_way_out
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.exploration.explored import trapped
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Branch

CODE = Code(
    "trapped",
    Severity.ERROR,
    N_("A walk that can never end"),
    N_("What is known keeps sending the team round; often an effect is missing."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield one problem an entry: the nearest state from which no outcome can be reached.

    Where arrows alone keep the team in, that is told already.
    """
    if _every_loop_ends(subject) or any(no_way_out.check(subject)):
        return
    for name in subject.entries[:1]:
        found = subject.explore(name)  # the whole: where a look stopped, nothing seems to go on
        if found.stopped:
            return
        for state in trapped(found):
            place = found.at_node(state)
            stuck = isinstance(subject.library.step(place), Branch) and not found.leads_to[state]
            if stuck:
                return  # reported where the branch cannot decide
            if place.pathway != subject.pathway.id:
                continue
            way = story(subject.library, found, state)
            message = _("from `{step}` no outcome can be reached (walk: {way})").format(
                step=place.step, way=way
            )
            advice = _(
                "Let an action on the loop make stale what it changes, or add an answer out."
            )
            yield subject.problem(CODE, ("steps", place.step), message, advice, at_key=True)
            return


def _every_loop_ends(subject: Subject) -> bool:
    """Whether bounds alone make every walk finite: then it ends, for every step has a way on."""
    loops = (loop_without_bound.check(subject), loop_without_exit.check(subject))
    return not any(problem for found in loops for problem in found)
