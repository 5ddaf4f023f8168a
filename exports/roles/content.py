"""What stands on the card of one duty."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_

IN_THIS_ORDER = N_("In this order")
NO_TIMES = N_("Split into 10 s, 30 s and 60 s: a local choice, NOT SET LOCALLY.")
TIMES = N_("By the pathway's own targets, added up; local, no benchmark.")


@dataclass(frozen=True, slots=True)
class Task:
    """Something this duty does, or says in the quotation marks it carries."""

    of: str
    text: str
    step: str = ""
    """The headline of its step, where tasks of several steps stand side by side."""


@dataclass(frozen=True, slots=True)
class Part:
    """Tasks under a heading: a stretch of the first minute, or a phase."""

    title: str
    tasks: tuple[Task, ...]


@dataclass(frozen=True, slots=True)
class RoleCard:
    """One duty's card. `heard` is what others say to it before it acts."""

    duty: str
    pathway: str
    has_times: bool
    opening: tuple[Part, ...]
    heard: tuple[str, ...]
    missing: tuple[str, ...]
    """Kit of the first actions in which it acts; `missing_later` of all others."""
    unset: tuple[str, ...]
    words: tuple[str, ...]
    missing_later: tuple[str, ...]
    later: tuple[Part, ...]
