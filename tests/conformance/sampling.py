"""Many walks: seeded random ones, and every combination of the tables of cases at every stage."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from random import Random

from chamberwise.engine.cases.answering import Answering
from chamberwise.engine.meaning.advance import offered
from chamberwise.engine.meaning.state import State
from chamberwise.engine.model.step import CANNOT_TELL, Answer, Question

from tests.conformance.driver import GOOD, Choose, Walk, library, walk_by
from tests.conformance.situations import SITUATIONS

STAGES = ("hydrodissection", "nucleus", "cortex", "lens-insertion", "viscoelastic-removal")
GATES = frozenset({"suprachoroidal", "cornea", "comfort", "tip"})
"""What stops a walk early when it is answered at random; answered well nearly always."""


def random_walk(entry: str, seed: int) -> Walk:
    """Return a walk of random answers, "cannot tell" among them.

    Each walk favours one answer to each finding, drawn at random or from one of the situations, so
    that walks come deep and differ; how often it keeps to them is drawn too, down to never.
    """
    rng = Random(f"{entry} {seed}")
    by_situation = {**GOOD, **rng.choice(SITUATIONS).found}
    favoured = by_situation if rng.random() < 0.5 else _favoured(rng)
    keeping = rng.choice((0.0, 0.5, 0.8, 0.95))
    times: dict[str, int] = {}

    def choose(state: State, question: Question) -> str:
        offers = offered(library(), state, question)
        keeps = rng.random() < (max(keeping, 0.9) if question.ask in GATES else keeping)
        name = question.id if question.id in favoured else question.ask
        values = favoured.get(name, "").split(", ")
        times[name] = times.get(name, 0) + 1
        value = values[min(times[name], len(values)) - 1]
        for answer in offers if keeps else ():
            if value in answer.means:
                return value
        return _any_value(rng, rng.choice(offers))

    return walk_by(library(), entry, choose)


def _favoured(rng: Random) -> Mapping[str, str]:
    findings = {
        **library().shared.findings,
        **{
            name: finding
            for pathway in library().pathways.values()
            for name, finding in pathway.words.findings.items()
        },
    }
    favoured = {}
    for name, finding in findings.items():
        good = GOOD.get(name, "").split(", ")[-1]
        usual = bool(good) and rng.random() < (0.97 if name in GATES else 0.4)
        favoured[name] = good if usual else rng.choice(finding.values).id
    return favoured


def _any_value(rng: Random, answer: Answer) -> str:
    return rng.choice(answer.means) if answer.means else CANNOT_TELL


def case_walks(entry: str, stage: str) -> Iterator[tuple[str, Walk]]:
    """Yield every combination of a pathway's table of cases, begun at a stage, with its walk."""
    table = library().pathways[entry].cases
    assert table is not None
    assume = {**dict(table.assume), "stage": stage}
    axes = [[each.id for each in library().finding(entry, name).values] for name in table.over]
    for values in product(*axes):
        combination = dict(zip(table.over, values, strict=True))
        answering = Answering(combination, assume, dict(table.asked_again))
        yield " ".join(values), walk_by(library(), entry, _as_the_table(answering))


def _as_the_table(answering: Answering) -> Choose:
    def choose(state: State, question: Question) -> str:
        chosen = answering.answer(library(), state, question).answer
        answer = next(each for each in question.answers if each.id == chosen)
        return answer.means[0] if answer.means else CANNOT_TELL

    return choose
