"""The example that each calculation shows can be typed as it stands, and works."""

from __future__ import annotations

import shlex

import pytest
from chamberwise.engine.working.form import Calculation
from chamberwise.engine.working.registry import calculations
from chamberwise.exports.working.described import typed
from chamberwise.tui.command.main import run
from chamberwise.tui.command.status import Status


@pytest.mark.parametrize("of", [*calculations()], ids=lambda of: of.name)
def test_the_example_shown_works(of: Calculation, capsys: pytest.CaptureFixture[str]) -> None:
    status = run(["work", of.name, *shlex.split(typed(of))])
    said = capsys.readouterr()
    assert status == Status.CLEAN, said.err
    assert "Follow local protocol." in " ".join(said.out.split())
