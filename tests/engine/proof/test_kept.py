"""One proof at a time: what stands of the last is not touched by two at once."""

from __future__ import annotations

from threading import Event, Thread

from chamberwise.engine.exploration.wanted import NobodyWaitsError, wanted_while
from chamberwise.engine.model.library import Library
from chamberwise.engine.proof.kept import Kept
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Verdict

from tests.engine.proof.test_standing import RULES, example
from tests.support.build import library


def ruled(after_rest: str) -> Library:
    found = example(after_rest)
    shared = found.shared
    return library(
        *found.pathways.values(),
        findings=shared.findings.values(),
        acts=shared.acts.values(),
        rules=RULES,
    )


def test_a_later_proof_waits_for_one_that_is_given_up() -> None:
    kept, is_asked, may_end = Kept(), Event(), Event()
    kept.proof(ruled("cut-it"), "p")
    ended: list[str] = []
    found: list[Verdict] = []

    def is_wanted() -> bool:
        is_asked.set()
        may_end.wait(10)
        return False

    def given_up() -> None:
        try:
            with wanted_while(is_wanted):
                kept.proof(ruled("fill-it"), "p")
        except NobodyWaitsError:
            ended.append("given up")

    def later() -> None:
        found.extend(kept.proof(ruled("over"), "p").verdicts)
        ended.append("later")

    first, second = Thread(target=given_up), Thread(target=later)
    first.start()
    assert is_asked.wait(10)
    second.start()
    second.join(0.2)
    assert ended == []
    may_end.set()
    first.join(10)
    second.join(10)
    assert ended == ["given up", "later"]
    assert tuple(found) == prove(ruled("over"), "p").verdicts
