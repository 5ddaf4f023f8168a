"""A walk that cannot end is told from one that was only not followed to its end."""

from __future__ import annotations

from chamberwise.engine.checks.knowledge import trapped

from tests.support.build import ask, branch, do, end, finding, library, pathway, row
from tests.support.subjects import places, subject

FINDINGS = [finding("depth", "a1 a2 a3"), finding("wound", "dry leaking")]


def test_where_a_look_sufficed_nothing_is_trapped() -> None:
    one = library(
        pathway(
            "one",
            ask("first", "wound", dry="second", leaking="second"),
            ask("second", "wound", dry="third", leaking="third"),
            ask("third", "wound", dry="fourth", leaking="fourth"),
            ask("fourth", "depth", a1="which", a2="which", a3="which"),
            branch("which", row("last", wound="dry"), otherwise="last", not_known="last"),
            ask("last", "wound", dry="close", leaking="close", unclear="first"),
            end("close"),
        ),
        findings=FINDINGS,
    )
    assert places(trapped.check, subject(one, "one")) == set()


def test_where_what_is_known_leads_round_the_nearest_step_is_told() -> None:
    one = library(
        pathway(
            "one",
            ask("look", "wound", dry="close", leaking="press"),
            do("press", "which", known={"depth": "a1"}),
            branch("which", row("press", depth="a1"), otherwise="close", not_known="close"),
            end("close"),
        ),
        findings=FINDINGS,
    )
    assert places(trapped.check, subject(one, "one")) == {"press"}
