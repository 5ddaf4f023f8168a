"""The form of a calculation, line by line: each input is asked for until it can be used."""

from __future__ import annotations

import sys
from collections.abc import Mapping

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import Calculation, Input
from chamberwise.engine.working.given import tried
from chamberwise.engine.working.refusal import RefusedError
from chamberwise.exports.working.described import takes
from chamberwise.tui.command.output import talk


def asked_for(of: Calculation, typed: Mapping[str, str]) -> dict[str, str]:
    """Return what was typed for every input that was not given yet; an empty line leaves it out.

    Where there is nothing more to read, what is missing stays missing and is refused in the end.
    """
    talk(_("{title}. An empty line leaves an input out.").format(title=_(of.title)))
    known = {found.name: text for name, text in typed.items() if (found := of.input(name))}
    known |= {name: text for name, text in typed.items() if of.input(name) is None}
    for each in of.inputs:
        if each.name in known:
            continue
        text = _asked(each)
        if text is None:
            talk("")
            break
        if text:
            known[each.name] = text
    return known


def _asked(of: Input) -> str | None:
    """Return what was typed, nothing where it is left out, `None` where there is no more."""
    talk(f"\n{of.name}: {_(of.meaning)} ({takes(of)})")
    while True:
        sys.stderr.write(f"{of.symbol or of.name} = ")
        sys.stderr.flush()
        line = sys.stdin.readline()
        text = line.strip()
        if not text:
            return "" if line else None
        try:
            remarks = tried(of, text)
        except RefusedError as error:
            for each in error.refusals:
                talk(_("refused: {refusal}").format(refusal=each))
        else:
            for remark in remarks:
                talk(remark)
            return text
