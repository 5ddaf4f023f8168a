"""A drill at a keyboard: every entry is on disk before anybody sees what it led to.

Line mode and screen hand it what was typed, and show what it says.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field, replace
from datetime import datetime
from pathlib import Path

from chamberwise.engine.drill.entries import (
    Began,
    Did,
    Level,
    Looked,
    Milliseconds,
    Mode,
    Recognised,
    Resumed,
    Rewound,
)
from chamberwise.engine.drill.fold import Drill, add
from chamberwise.engine.drill.ladder import Option, level_now, menu, nudge, title_of, told
from chamberwise.engine.drill.taking import (
    Taken,
    Typed,
    choose,
    give_up,
    helped,
    is_over,
    next_due,
    not_meant,
    say_it,
    take,
    tick,
)
from chamberwise.engine.drill.wording.marks import unmarked
from chamberwise.engine.drill.wording.phrasebook import Target
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.drill_file import append_entries
from chamberwise.engine.store.journal_file import InUseError, writing
from chamberwise.tui.debriefing import Debriefing
from chamberwise.tui.numbers import numbers_in
from chamberwise.tui.present.drill_typing import option_parts, valid_parts
from chamberwise.tui.present.parts import Part, Tone
from chamberwise.tui.sitting import local_time

Stopwatch = Callable[[], Milliseconds]
"""Returns how long the drill has run, by a clock that never goes back."""

NO_WAY_BACK = N_("A run has no way back; only a rehearsal does. Go on from where the eye is now.")
NOTHING_BACK = N_("There is nothing to go back to.")
WENT_BACK = N_("Back to before: {act}. What came after is kept as a branch.")
NO_CHOICE = N_("There is nothing to choose from now. Say it in words.")
NOT_IT = N_("That is not it. Look again.")
IS_IT = N_("Did you mean this? 1 for yes, 0 for no:")
CHOOSE = N_("Which did you mean? A number, several in their order (2 1), or 0 for none:")
LEFT_OPEN = N_("Left open, so nothing came of it: “{typed}”")
ONE_ONLY = N_("One number at a time here.")
MENU = N_("One of these is due. Type its number, or say it in your own words:")


@dataclass
class Rehearsal:
    """One drill and the file it is kept in. `path` is `None` where it is not kept."""

    drill: Drill
    watch: Stopwatch
    path: Path | None
    written: int = 0
    is_waiting: bool = False
    """Whether the brief is still being read; no time goes by until `start`."""
    begins: Milliseconds = 0
    """How long it had run before, where it is taken up again."""
    lost: str = ""
    options: tuple[Option, ...] = ()
    """What a number typed picks."""
    last_seen: tuple[str, ...] = ()
    _started: Milliseconds = 0
    debriefing: Debriefing = field(default_factory=lambda: Debriefing(local_time))
    """What is said once it is over."""
    _debrief: list[Part] | None = None
    _meant: Typed | None = None
    """The words that the options are to settle; none where they are a menu."""
    _held: ExitStack = field(default_factory=ExitStack)
    _is_held: bool = False

    def stopwatch(self) -> Milliseconds:
        """Return how long the drill has run."""
        return self.begins + (0 if self.is_waiting else self.watch() - self._started)

    def start(self) -> None:
        """Let time go by from now on."""
        if self.is_waiting:
            self._started, self.is_waiting = self.watch(), False

    @property
    def is_over(self) -> bool:
        """Whether the drill has ended."""
        return is_over(self.drill)

    @property
    def mode(self) -> Mode:
        """Whether one may go back."""
        began = self.drill.journal[0]
        assert isinstance(began, Began)
        return began.mode

    @property
    def waits(self) -> Milliseconds | None:
        """How long until the clock brings something; `None` where it brings nothing more."""
        due = None if self.is_waiting else next_due(self.drill)
        return None if due is None else max(0, due - self.stopwatch())

    def open(self, *, resumed_on: datetime | None = None) -> None:
        """Begin to keep the drill, or mark that it was taken up again."""
        drill = self.drill
        if resumed_on is not None:
            drill = add(drill, Resumed(self.stopwatch(), resumed_on))
        self.go_on(drill)

    def tick(self) -> list[Part]:
        """Return what the clock has brought."""
        if self.is_waiting:
            return []
        return self._taken(tick(self.drill, self.stopwatch()))

    def hear(self, text: str, first_key: Milliseconds | None = None) -> list[Part]:
        """Return what is said and seen of a line typed."""
        self.start()
        brought = self.tick()
        if self.is_over:
            return brought
        return [*brought, *self._heard(text.strip(), Typed(text.strip(), self.now, first_key))]

    def debrief(self) -> list[Part]:
        """Return what is said of the drill as it stands; once it is over, always the same."""
        if self._debrief is not None:
            return self._debrief
        told = self.debriefing(self.drill)
        if self.is_over:
            self._debrief = told
        return told

    def close(self) -> None:
        """Let go of the journal."""
        self._held.close()

    @property
    def now(self) -> Milliseconds:
        """The time for the next entry, never before the last one."""
        last = self.drill.stands[-1][1].at
        return max(last, self.stopwatch())

    def _heard(self, text: str, typed: Typed) -> list[Part]:
        if not text:
            return []
        chosen, certainty = unmarked(text)
        if numbers := numbers_in(chosen):
            typed = replace(typed, certainty=certainty)
            return self._picked(numbers, typed) if self.options else [Part(_(NO_CHOICE))]
        match text.casefold():
            case "?" | "help":
                return self._help()
            case "??":
                return valid_parts()
            case "back" | "b" | "undo":
                return self._back()
            case "again" | "r":
                return [Part(each, "  ") for each in self.last_seen]
            case "end":
                self.go_on(give_up(self.drill, self.now))
                return []
        left = self._left_open(typed)
        return [*left, *self._taken(take(self.drill, typed), typed)]

    def _help(self) -> list[Part]:
        drill = helped(self.drill, self.now)
        self.options, self._meant = (), None
        level = level_now(drill)
        self.go_on(drill)
        if level is Level.NUDGED:
            return [Part(nudge(drill), _("Nudge:") + " ", lead_tone=Tone.KEY)]
        if level is Level.MENU:
            self.options = menu(drill)
            return [Part(_(MENU)), *option_parts(self.options)]
        return [Part(told(drill), _("Told:") + " ", lead_tone=Tone.KEY)]

    def _left_open(self, typed: Typed) -> list[Part]:
        """Return what is said of words that were asked about and never settled."""
        meant, self.options, self._meant = self._meant, (), None
        if meant is None:
            return []
        self.go_on(not_meant(self.drill, replace(meant, at=typed.at)).drill)
        return [Part(_(LEFT_OPEN).format(typed=meant.text), "! ")]

    def _picked(self, numbers: tuple[int, ...], typed: Typed) -> list[Part]:
        options, meant = self.options, self._meant
        if max(numbers) > len(options):
            return [Part(_("There are {count} to choose from.").format(count=len(options)))]
        if len(numbers) > 1 and (meant is None or 0 in numbers):
            return [Part(_(ONE_ONLY))]
        self.options, self._meant = (), None
        if meant is not None:
            return self._settled([options[each - 1] for each in numbers if each], meant, typed)
        if numbers == (0,):
            return []
        option = options[numbers[0] - 1]
        picked = replace(typed, text=option.text, level=Level.MENU)
        if option.target is not None:
            return self._taken(choose(self.drill, (option.target,), picked), picked)
        return self._taken(say_it(self.drill, picked)) if option.is_it else [Part(_(NOT_IT))]

    def _settled(self, options: Sequence[Option], meant: Typed, typed: Typed) -> list[Part]:
        """Return what comes of words that were asked about, once it is said what they mean."""
        targets = [each.target for each in options if each.target is not None]
        if not targets:
            return self._taken(not_meant(self.drill, meant))
        settled = replace(meant, at=typed.at, certainty=typed.certainty or meant.certainty)
        return self._taken(choose(self.drill, targets, settled), settled)

    def _back(self) -> list[Part]:
        if self.mode is Mode.RUN:
            return [Part(_(NO_WAY_BACK))]
        done = [
            (number, entry)
            for number, entry in self.drill.stands
            if isinstance(entry, Did | Looked | Recognised)
        ]
        if not done:
            return [Part(_(NOTHING_BACK))]
        number, entry = done[-1]
        self.options = ()
        self.go_on(add(self.drill, Rewound(self.now, number)))
        return [Part(_(WENT_BACK).format(act=self._named(entry)))]

    def _named(self, entry: Did | Looked | Recognised) -> str:
        if isinstance(entry, Did):
            return title_of(self.drill, Target(act=entry.act))
        if isinstance(entry, Looked):
            return title_of(self.drill, Target(finding=entry.finding))
        return entry.typed

    def _taken(self, taken: Taken, typed: Typed | None = None) -> list[Part]:
        self.go_on(taken.drill)
        if taken.seen:
            self.last_seen = taken.seen
        parts = [Part(each, "= ") for each in taken.said]
        parts += [Part(each, "  ", Tone.STRONG) for each in taken.seen]
        if taken.asked and typed is not None:
            self.options = tuple(Option(title_of(self.drill, each), each) for each in taken.asked)
            certainty = unmarked(typed.text)[1]
            self._meant = replace(typed, text=taken.asked_about or typed.text, certainty=certainty)
            parts += [
                Part(_(CHOOSE if len(self.options) > 1 else IS_IT)),
                *option_parts(self.options),
            ]
        return parts

    def go_on(self, drill: Drill) -> None:
        """Keep what is new, then go on: nothing is shown that is not on disk."""
        fresh = drill.journal[self.written :]
        if self.path is not None and fresh:
            try:
                self.hold()
                append_entries(self.path, fresh)
                self.written = len(drill.journal)
            except (OSError, InUseError) as error:
                reason = getattr(error, "strerror", None) or _("another program has it open")
                self.lost = _("From here on this drill is not kept ({reason}).").format(
                    reason=reason
                )
                self.path = None
        self.drill = drill

    def hold(self) -> None:
        """Hold the journal for this keyboard alone. Raises `InUseError`."""
        if self.path is not None and not self._is_held:
            self._held.enter_context(writing(self.path))
            self._is_held = True
