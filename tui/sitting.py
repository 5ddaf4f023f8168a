"""A walk at a keyboard: every move is on disk before the walk shows where it led."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import ExitStack, suppress
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Move
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.store.journal_file import InUseError, append, new_path, writing
from chamberwise.engine.walk.walk import Walk, make, note, redo, resumed, set_out, undo
from chamberwise.tui.present.figures import CaseGiven
from chamberwise.tui.replaying import Broken

Clock = Callable[[], datetime]


def local_time() -> datetime:
    """Return the time now, with its offset."""
    return datetime.now().astimezone()


@dataclass
class Sitting:
    """One walk and the file it is kept in. Nothing is written before the first move or note.

    `path` is `None` where the walk is not kept; `lost` then says why, if that was not meant.
    """

    loaded: Loaded
    walk: Walk
    clock: Clock
    path: Path | None
    written: int = 0
    """How many entries of the journal are on disk."""
    lost: str = ""
    broken: tuple[Broken, ...] = ()
    """Of a replay: the rules that it breaks."""
    case: CaseGiven | None = None
    """The case of a brief whose figures are shown where a step refers to a calculation."""
    records: list[Path] = field(default_factory=list)
    """The records saved of it at this keyboard; only those may be written anew."""
    _held: ExitStack = field(default_factory=ExitStack)
    _is_held: bool = False

    @property
    def today(self) -> date:
        """Today by the clock passed in."""
        return self.clock().date()

    @property
    def is_kept(self) -> bool:
        """Whether there is anything on disk to resume."""
        return self.path is not None and self.written > 0

    @property
    def is_begun(self) -> bool:
        """Whether anything was done or noted."""
        return len(self.walk.journal) > 1

    @property
    def how_left(self) -> str:
        """What to say on leaving a walk that is neither over nor kept."""
        if self.walk.replay:
            return _("The replay was left. A replay is not kept.")
        if self.is_begun:
            return _("The walk was left. Nothing of it is kept.")
        return _("Nothing was done, so there is nothing to keep.")

    def make(self, move: Move) -> None:
        """Make a move. Raises `IllegalMoveError`; nothing is kept of it then."""
        self._go_on(make(self.walk, move, self.clock()))

    def undo(self) -> None:
        """Take the last move back."""
        self._go_on(undo(self.walk, self.clock()))

    def redo(self) -> None:
        """Make the move last taken back again."""
        self._go_on(redo(self.walk, self.clock()))

    def note(self, text: str) -> None:
        """Write something down; empty text is no note."""
        kept = "".join(letter for letter in text if letter.isprintable()).strip()
        if kept:
            self._go_on(note(self.walk, kept, self.clock()))

    def mark_resumed(self) -> None:
        """Mark that the walk was taken up again. Raises `InUseError`."""
        with suppress(OSError):
            self._hold()
        self._go_on(resumed(self.walk, self.clock()))

    def close(self) -> None:
        """Let go of the journal."""
        self._held.close()
        self._is_held = False

    def _go_on(self, walk: Walk) -> None:
        self._keep(walk)
        self.walk = walk

    def _keep(self, walk: Walk) -> None:
        fresh = walk.journal[self.written :]
        if self.path is None or not fresh:
            return
        try:
            self._hold()
            append(self.path, fresh)
            self.written = len(walk.journal)
        except (OSError, InUseError) as error:
            reason = getattr(error, "strerror", None) or _("another program has it open")
            lost = _("This walk is not kept ({reason}). It goes on without a history.")
            if self.written:
                lost = _(
                    "From here on this walk is not kept ({reason}). It goes on without a history."
                )
            self.lost = lost.format(reason=reason)
            self.path = None
            self.close()

    def _hold(self) -> None:
        if self.path is not None and not self._is_held:
            self._held.enter_context(writing(self.path))
            self._is_held = True


def sit_down(loaded: Loaded, pathway: str, clock: Clock, folder: Path | None) -> Sitting:
    """Return a fresh walk, kept in a folder or, with `None`, not kept at all."""
    now = clock()
    walk = set_out(loaded.library, pathway, digest(loaded, pathway), now)
    return Sitting(loaded, walk, clock, _fresh_path(folder, pathway, now))


def _fresh_path(folder: Path | None, pathway: str, now: datetime) -> Path | None:
    if folder is None:
        return None
    try:
        return new_path(folder, pathway, now)
    except OSError:
        return folder / f"{pathway}.walk.jsonl"
