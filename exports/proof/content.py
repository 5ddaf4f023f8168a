"""What a proof says, as plain values. Renderers see nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.content import Cited


class VerdictWord(StrEnum):
    """A verdict in a word; the first comes first in a report."""

    BROKEN = "broken"
    UNPROVEN = "unproven"
    BEING_PROVED = "being proved"
    """Nothing is known yet: so while a file is written, never in a report."""
    DOES_NOT_ARISE = "does not arise"
    HOLDS = "holds"


FINAL = tuple(each for each in VerdictWord if each is not VerdictWord.BEING_PROVED)
"""The verdicts of a proof that came to its end."""


class StoryKind(StrEnum):
    """What a step of a story tells."""

    ASKED = "asked"
    DONE = "done"
    HANDED_OVER = "handed over"
    ENDED = "ended"


@dataclass(frozen=True, slots=True)
class StoryLine:
    """One instruction of an action, or one thing owed; `act` where the rule speaks of it."""

    who: str
    voice: str
    text: str
    act: str = ""
    remark: str = ""
    breaks: bool = False


@dataclass(frozen=True, slots=True)
class StoryStep:
    """One step of a story: a question with its answer, an action, a handover, or the end."""

    number: int
    kind: StoryKind
    place: str
    """The pathway and the step by their names."""
    text: str
    answer: str = ""
    lines: tuple[StoryLine, ...] = ()
    remark: str = ""
    breaks: bool = False
    passed: tuple[str, ...] = ()
    """What was passed silently after it and bears on the rule or on the way."""


@dataclass(frozen=True, slots=True)
class KnownThen:
    """What was known of a finding at the moment at which the rule broke."""

    finding: str
    said: str


@dataclass(frozen=True, slots=True)
class Story:
    """A shortest walk that breaks a rule, told in order."""

    passed_at_start: tuple[str, ...]
    steps: tuple[StoryStep, ...]
    cause: str
    """What broke the rule, as a sentence."""
    at_end: bool
    """Whether it broke because the walk ended and something had not come."""
    known: tuple[KnownThen, ...]
    key: str
    replay: str
    """The command that takes one through it."""


@dataclass(frozen=True, slots=True)
class RuleShown:
    """One rule with its verdict; `story` where it is broken, `reason` where it is unproven."""

    id: str
    title: str
    is_house_rule: bool
    verdict: VerdictWord
    meaning: str
    lists: tuple[str, ...]
    """The acts that the meaning only counts."""
    harm: str
    severity: str
    instead: str
    sources: tuple[Cited, ...]
    file: str
    line: int
    column: int
    story: Story | None = None
    reason: str = ""
    brought_by: tuple[str, ...] = ()
    """The places in the unit's sheet that break it together, where the sheet does."""

    @property
    def binds(self) -> str:
        """Which walks it binds."""
        return _("every pathway") if self.is_house_rule else _("this pathway")

    @property
    def place(self) -> str:
        """Where it is written: file, line and column, as far as they are known."""
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file

    @property
    def is_finding(self) -> bool:
        """Whether it makes the proof one with findings: broken, or its own and never arising."""
        own_and_idle = self.verdict is VerdictWord.DOES_NOT_ARISE and not self.is_house_rule
        return self.verdict is VerdictWord.BROKEN or own_and_idle


@dataclass(frozen=True, slots=True)
class ProofShown:
    """The proof of one pathway: its rules in reading order, the broken ones first."""

    pathway: str
    title: str
    edition: str
    marks: tuple[str, ...]
    states: int
    rules: tuple[RuleShown, ...]
    switched_off: tuple[str, ...] = ()
    """The rules that the unit has switched off: which, who, when and why, a sentence each."""

    @property
    def is_under_way(self) -> bool:
        """Whether some rule has no verdict yet."""
        return bool(self.of(VerdictWord.BEING_PROVED))

    def of(self, verdict: VerdictWord) -> tuple[RuleShown, ...]:
        """Return the rules with one verdict."""
        return tuple(each for each in self.rules if each.verdict is verdict)
