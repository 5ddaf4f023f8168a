"""Requirements that the form of the pathways shows, not one walk; each with a way to break it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

import networkx as nx
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Line,
    Outcome,
    Question,
    Step,
)
from chamberwise.engine.model.words import Act

from tests.conformance.doubt import DOUBT, EVERY
from tests.conformance.driver import CLOSING, RUPTURE, VITRECTOMY

Found = list[str]


@dataclass(frozen=True)
class FormRule:
    """A requirement looked up in the files: `faults` finds what breaks it, `broken` breaks it."""

    number: int
    says: str
    sources: str
    faults: Callable[[Library], Found]
    broken: Callable[[Library], Library]


def lines(of: Library) -> Iterator[tuple[Step, Line]]:
    """Yield every instruction, those owed at outcomes among them."""
    for pathway in of.pathways.values():
        for step in pathway.steps.values():
            told = step.lines if isinstance(step, Action) else ()
            for line in step.owed if isinstance(step, Outcome) else told:
                yield step, line


def names_of_acts(word: str, allowed: tuple[str, ...] = ()) -> Callable[[Library], Found]:
    """Return a finder of acts and instructions that speak of a thing no act may do."""

    def faults(of: Library) -> Found:
        acts = [act for act in of.shared.acts.values() if word in f"{act.id} {act.title}".lower()]
        told = [step.id for step, line in lines(of) if word in line.text.lower()]
        return [each for each in (*(act.id for act in acts), *told) if each not in allowed]

    return faults


def stands_at_work(of: Library) -> Found:
    """Every line of the cutter's way in and out says that it cuts."""
    wanted = ("insert-cutter", "withdraw-cutter")
    return [
        step.id
        for step, line in lines(of)
        if line.act in wanted and "while it cuts" not in line.text
    ]


def doubt_elsewhere(of: Library) -> Found:
    """Questions whose "cannot tell" is missing or leads elsewhere than the reviewed table says."""
    found = []
    for pathway in of.pathways.values():
        said = DOUBT.get(pathway.id, {})
        asked = {step.id: step for step in pathway.steps.values() if isinstance(step, Question)}
        found += [f"{pathway.id} {name} unlisted" for name in asked if name not in said]
        found += [f"{pathway.id} {name} is no question" for name in said if name not in asked]
        found += [
            f"{pathway.id} {name}: {leads}"
            for name, step in asked.items()
            if (leads := leads_in_doubt(step)) != said.get(name)
        ]
    return found


def leads_in_doubt(step: Question) -> str:
    """Return the answers that "cannot tell" goes with, or the step of its own."""
    to = next((each.go_to for each in step.answers if each.id == CANNOT_TELL), "nowhere")
    others = [each for each in step.answers if each.id != CANNOT_TELL]
    alike = [each.id for each in others if each.go_to == to]
    if len(alike) == len(others):
        return EVERY
    return ", ".join(alike) or f"to {to}"


def two_hands(of: Library) -> Found:
    """Instructions of nobody, of nobody known, or of two people, and acts done by two."""
    found = []
    for step, line in lines(of):
        if line.who not in of.shared.duties:
            found.append(f"{step.id}: {line.who}")
    for pathway in of.pathways.values():
        for step in pathway.steps.values():
            by_act: dict[str, set[str]] = {}
            for line in step.lines if isinstance(step, Action) else ():
                by_act.setdefault(line.act or line.text, set()).add(line.who)
            found += [f"{step.id}: {act}" for act, who in by_act.items() if len(who) > 1]
    return found


def unbounded(of: Library) -> Found:
    """Loops that pass no step with a bound."""
    found = []
    for pathway in of.pathways.values():
        graph = nx.DiGraph()
        for step in pathway.steps.values():
            if step.bound is None:
                graph.add_edges_from((step.id, each.step) for each in targets(step))
        free = graph.subgraph(name for name in graph if pathway.steps[name].bound is None)
        found += [f"{pathway.id}: {' '.join(loop)}" for loop in nx.simple_cycles(free)]
    return found


def with_step(of: Library, pathway: str, step: Step) -> Library:
    """Return the library with one step put in, or in place of its namesake."""
    changed = replace(of.pathways[pathway], steps={**of.pathways[pathway].steps, step.id: step})
    return Library(of.shared, {**of.pathways, pathway: changed})


def saying(
    pathway: str, step: str, text: str, act: str | None = None, who: str = "surgeon"
) -> Callable[[Library], Library]:
    """Return a way to break a library: one more line in a step."""

    def broken(of: Library) -> Library:
        there = of.pathways[pathway].steps[step]
        assert isinstance(there, Action)
        line = Line(who, text, act=act)
        return with_step(of, pathway, replace(there, lines=(*there.lines, line)))

    return broken


def _doubt_taken_as_good(of: Library) -> Library:
    step = of.pathways[RUPTURE].steps["is-the-eye-soft"]
    assert isinstance(step, Question)
    good = step.answers[0].go_to
    answers = tuple(
        replace(each, go_to=good) if each.id == CANNOT_TELL else each for each in step.answers
    )
    return with_step(of, RUPTURE, replace(step, answers=answers))


def _bound_taken_off(of: Library) -> Library:
    step = of.pathways[VITRECTOMY].steps["cut-the-gel"]
    return with_step(of, VITRECTOMY, replace(step, bound=None))


def _hydrodissection_put_in(of: Library) -> Library:
    act = Act("do-hydrodissection", "Do hydrodissection")
    return Library(replace(of.shared, acts={**of.shared.acts, act.id: act}), of.pathways)


PLANNED = ("plan-without-hydrodissection", "plan-after-injury")

RULES = (
    FormRule(
        6,
        "No act is a hydrodissection or a rotation.",
        "S19, S12",
        lambda of: [
            *names_of_acts("hydrodissect", PLANNED)(of),
            *names_of_acts("rotat")(of),
        ],
        _hydrodissection_put_in,
    ),
    FormRule(
        14,
        "The cutter cuts as it enters and leaves.",
        "S52",
        stands_at_work,
        saying(VITRECTOMY, "cutter-out", "Withdraw the cutter.", "withdraw-cutter"),
    ),
    FormRule(
        15,
        "No sponge touches vitreous.",
        "S23; exception S16",
        names_of_acts("sponge"),
        saying(VITRECTOMY, "free-the-wound", "Touch the wound with a sponge."),
    ),
    FormRule(
        38,
        "Nobody injects vancomycin.",
        "S77",
        names_of_acts("vancomycin"),
        saying(CLOSING, "local-antibiotic", "Inject vancomycin."),
    ),
    FormRule(
        51,
        "Every question takes a doubt, and leads it the cautious way or to a second look.",
        "derived",
        doubt_elsewhere,
        _doubt_taken_as_good,
    ),
    FormRule(
        53,
        "One person holds each step.",
        "common practice",
        two_hands,
        saying(VITRECTOMY, "cut-the-gel", "Cut gel too.", "cut-vitreous", who="assistant"),
    ),
    FormRule(
        54,
        "Every cycle has a counter and an exit.",
        "derived",
        unbounded,
        _bound_taken_off,
    ),
)
