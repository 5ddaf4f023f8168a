"""Every kind of sheet can be told as text, for a screen reader."""

from __future__ import annotations

import pytest
from chamberwise.tui.command.main import run
from chamberwise.tui.command.print import WHAT
from chamberwise.tui.command.status import Status


@pytest.mark.parametrize("kind", WHAT)
def test_every_kind_of_sheet_has_a_text_form(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    typed = ["print", "dropped-nucleus", "--what", kind, "--format", "text"]
    assert run(typed) == Status.CLEAN
    assert "Follow local protocol." in capsys.readouterr().out
