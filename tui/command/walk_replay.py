"""`chamberwise walk --replay`: from a key to the walk with its moves ahead."""

from __future__ import annotations

from argparse import Namespace
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.proof.replay_key import ReplayKeyError, moves_of
from chamberwise.tui.command.finding_files import Asked, UnusableError, asked, shipped
from chamberwise.tui.in_language import in_language
from chamberwise.tui.replay import sit_down_to_replay
from chamberwise.tui.sitting import local_time
from chamberwise.tui.walkable import problems_in_the_way

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import Loaded
    from chamberwise.tui.sitting import Sitting


def replayed(arguments: Namespace) -> tuple[Loaded, str, Sitting]:
    """Return the library, the pathway and the walk of a key. Raises `UnusableError`."""
    if arguments.resume or arguments.answers is not None:
        raise UnusableError(_("--replay brings its own answers. Leave --resume and --answers out."))
    found = asked(
        (arguments.pathway,) if arguments.pathway else (), arguments.library, arguments.local
    )
    walkable = _walkable(found)
    try:
        pathway, moves = moves_of(found.loaded, arguments.replay, walkable)
    except ReplayKeyError as error:
        raise UnusableError(str(error)) from error
    loaded = in_language(found.loaded, arguments.library or shipped())
    return loaded, pathway, sit_down_to_replay(loaded, pathway, moves, local_time)


def _walkable(found: Asked) -> tuple[str, ...]:
    """Return the pathways asked for that can be walked; where none can, say why."""
    told = {
        name: problems_in_the_way(found.loaded, name)
        for name in found.shown
        if len(found.shown) == 1 or found.loaded.files[name].pathway is not None
    }
    if told and all(told.values()):
        raise UnusableError("\n\n".join(told.values()))
    return tuple(
        pathway.id
        for name, problems in told.items()
        if not problems and (pathway := found.loaded.files[name].pathway) is not None
    )
