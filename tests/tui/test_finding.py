"""What is told of a file while its proof is under way, and work that nobody waits for any more."""

from __future__ import annotations

from pathlib import Path

import pytest
from chamberwise.engine.exploration.wanted import NobodyWaitsError, wanted_while
from chamberwise.engine.proof.kept import Kept
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.reading.library import load_library
from chamberwise.exports.proof.content import VerdictWord
from chamberwise.tui import finding
from chamberwise.tui.drafting import draft_of
from chamberwise.tui.examining import Examined
from chamberwise.tui.finding import Finder

from tests.support.build import TODAY

LIBRARY = Path(__file__).parents[1] / "library"
PATHWAY = "shallow-chamber"
LOADED = load_library(LIBRARY)


def test_what_is_told_on_the_way_is_what_is_found_in_the_end(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(finding, "SECONDS_BETWEEN_WORDS", 0)
    finder, told = Finder(TODAY), list[Examined]()
    draft = draft_of(LOADED, LOADED.file_of[PATHWAY])
    proved = finder.proof(draft, finder.whole(draft), told.append)
    assert proved.proof is not None
    assert not proved.proof.is_under_way
    final = {rule.id: rule for rule in proved.proof.rules}
    open_still = []
    for each in told:
        assert each.proof is not None
        settled = [r for r in each.proof.rules if r.verdict is not VerdictWord.BEING_PROVED]
        assert all(final[rule.id] == rule for rule in settled)
        assert len(each.proof.rules) == len(final)
        open_still.append(len(final) - len(settled))
    assert open_still[0] == len(final)
    assert open_still == sorted(open_still, reverse=True)
    assert open_still[-1] < len(final)


def test_work_that_nobody_waits_for_is_left_off_and_leaves_nothing_behind() -> None:
    kept, whole = Kept(), prove(LOADED.library, PATHWAY)
    asked = iter(range(20))
    with pytest.raises(NobodyWaitsError), wanted_while(lambda: next(asked) < 10):
        kept.proof(LOADED.library, PATHWAY)
    assert kept.proof(LOADED.library, PATHWAY).verdicts == whole.verdicts


def test_what_was_proved_is_not_proved_again() -> None:
    kept = Kept()
    first = kept.proof(LOADED.library, PATHWAY)
    with wanted_while(lambda: False):  # a search would be left off at once
        again = kept.proof(load_library(LIBRARY).library, PATHWAY)
    assert again == first
