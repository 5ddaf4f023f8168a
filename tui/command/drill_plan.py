"""`drill --plan` and `drill --next`: what covers a pathway, and which drill comes next."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.model.drill import DrillBook, Opening
    from chamberwise.engine.model.words import ActId
    from chamberwise.engine.reading.library import Loaded
    from chamberwise.engine.store.runs import Runs

TRIES = 1_000
"""Seeds looked at for one that begins at the stage wanted."""


def show_plan(loaded: Loaded, pathway: str) -> int:
    """Print the fewest drills found that walk every answer of a pathway."""
    from chamberwise.engine.drill.coverage.loops import loops
    from chamberwise.engine.drill.coverage.plan import plan
    from chamberwise.engine.drill.coverage.replaying import steps_of
    from chamberwise.engine.store.home import runs_path
    from chamberwise.exports.coverage.text import plan_text

    with _runs(runs_path()) as runs:
        met = runs.met(pathway) if runs else frozenset()
    library = loaded.library
    found = plan(library, pathway)
    walks = [steps_of(library, pathway, drill.answers) for drill in found.drills]
    product(plan_text(library, found, met, loops(library, walks)).rstrip("\n"))
    return Status.CLEAN


def next_seed(loaded: Loaded, book: DrillBook) -> int:
    """Return a seed whose drill begins where least is known of how critical acts go, and say why.

    Told are the stage, and which critical acts nobody has tried there in a run that counts.
    """
    from chamberwise.engine.drill.coverage.teaching import UNTRIED, teaching
    from chamberwise.engine.drill.generate import opening_of
    from chamberwise.engine.store.home import runs_path
    from chamberwise.exports.coverage.next_text import next_text
    from chamberwise.tui.rehearsing import SEEDS

    contexts = _contexts(book)
    with _runs(runs_path()) as runs:
        tallies = runs.tallies(book.pathway) if runs else {}
    wanted = teaching(tallies, contexts)[0].context
    drawn = (random.randrange(SEEDS) for _try in range(TRIES))
    found = next((seed for seed in drawn if _stage(opening_of(book, seed)) == wanted), None)
    if found is None:
        raise UnusableError(
            _("No drill of `{pathway}` begins at `{stage}`.").format(
                pathway=book.pathway, stage=wanted
            )
        )
    untried = [act for act in contexts[wanted] if not tallies.get((act, wanted), UNTRIED).of]
    for line in next_text(loaded.library, book.pathway, wanted, untried):
        talk(line)
    return found


def _contexts(book: DrillBook) -> Mapping[str, Sequence[ActId]]:
    acts = tuple(each.act for each in book.critical)
    return {_stage(opening): acts for opening in book.openings}


def _stage(opening: Opening) -> str:
    from chamberwise.engine.drill.remembering.remembered import STAGE

    return dict(opening.known).get(STAGE, "")


@contextmanager
def _runs(path: Path) -> Iterator[Runs | None]:
    """Open the store to be read where there is one."""
    from chamberwise.engine.store.runs import Runs
    from chamberwise.engine.store.runs_file import RunsError

    if not path.exists():
        yield None
        return
    try:
        runs = Runs(path, to_read=True)
    except RunsError as error:
        talk(error.args[0])
        yield None
        return
    try:
        yield runs
    finally:
        runs.close()
