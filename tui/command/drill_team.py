"""Who is in today, asked before a team drills. Roles are kept, never names."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from chamberwise.engine.drill.team import NobodyError, Owned, owners, roles_in
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError

if TYPE_CHECKING:
    from chamberwise.engine.model.drill import DrillBook
    from chamberwise.engine.model.words import Duty


def who_is_in(
    book: DrillBook, duties: tuple[Duty, ...], typed: str | None
) -> tuple[tuple[str, ...], tuple[Owned, ...]]:
    """Return the roles of today and who has which task. Raises `UnusableError`.

    `typed` are the roles as given with the command; without any, they are asked for at a
    terminal, and else everybody is taken to be there.
    """
    known = roles_in(book, duties)
    said = typed if typed is not None else _asked(known)
    roles = _roles(said, known) if said.strip() else tuple(each.id for each in known)
    try:
        return roles, owners(book, roles)
    except NobodyError as error:
        raise UnusableError(
            _("{error} Name somebody who does it, or change who may.").format(error=error)
        ) from error


def _asked(known: tuple[Duty, ...]) -> str:
    if not sys.stdin.isatty():
        return ""
    sys.stdout.write(_("Who is in today? Roles, never names.") + "\n")
    for number, duty in enumerate(known, start=1):
        sys.stdout.write(f"  {number}  {duty.title}\n")
    sys.stdout.write(_("Numbers with spaces between; Enter for all of them:") + " ")
    sys.stdout.flush()
    return sys.stdin.readline()


def _roles(said: str, known: tuple[Duty, ...]) -> tuple[str, ...]:
    numbered = {str(number): duty.id for number, duty in enumerate(known, start=1)}
    names = {duty.id: duty.id for duty in known}
    found = []
    for word in said.replace(",", " ").split():
        role = numbered.get(word) or names.get(word.casefold())
        if role is None:
            listed = ", ".join(duty.id for duty in known)
            raise UnusableError(
                _("`{word}` is no role here. There are: {known}.").format(word=word, known=listed)
            )
        found.append(role)
    return tuple(dict.fromkeys(found))
