"""Help in four steps: from memory, a nudge, a long menu, told. What was needed is recorded."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from chamberwise.engine.drill.entries import Cued, Did, Helped, Level, Looked, Recognised
from chamberwise.engine.drill.fold import Drill
from chamberwise.engine.drill.playing import Next, whats_next
from chamberwise.engine.drill.standing import step_of
from chamberwise.engine.drill.wording.clauses import Clause
from chamberwise.engine.drill.wording.phrasebook import Target, phrasebook_of
from chamberwise.engine.drill.wording.triggers import says_trigger
from chamberwise.engine.language.capitals import small
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

MENU_LENGTH = 8
MOST_RIGHT = 2
MOST_WRONG = 2

WHAT_IS_IT = N_("What have you just seen? Say aloud what you think it is.")
LOOK_FIRST = N_("Something has to be looked at before the next hand moves.")
WHAT_NOW = N_("What is due now, and who does it?")


@dataclass(frozen=True, slots=True)
class Option:
    """One line of a menu. `is_it` marks one that says what this is, right or wrong."""

    text: str
    target: Target | None = None
    is_it: bool | None = None


def is_recognised(drill: Drill) -> bool:
    """Whether somebody said what this is once it showed, or knew it from the start."""
    if drill.scenario.begins_at is not None:
        return True
    entries = [entry for _at, entry in drill.stands]
    shown = (each.at for each in entries if isinstance(each, Cued) and each.is_first)
    first = next(shown, None)
    said = [each.at for each in entries if isinstance(each, Recognised)]
    return first is not None and any(at >= first for at in said)


def level_now(drill: Drill) -> Level:
    """Return how much help came since the last thing that was done, seen or said."""
    for _at, entry in reversed(drill.stands):
        if isinstance(entry, Helped):
            return entry.level
        if isinstance(entry, Did | Looked | Recognised):
            break
    return Level.RECALLED


def level_of(drill: Drill, target: Target) -> Level:
    """Return with how much help a target is done now: only what the help spoke of counts."""
    level = level_now(drill)
    if level is Level.MENU:
        return level if target in [each.target for each in menu(drill)] else Level.RECALLED
    if level is Level.TOLD:
        asked = whats_next(drill.scenario, drill.standing)[:1]
        return level if target in [_target(each) for each in asked] else Level.RECALLED
    return level


def nudge(drill: Drill) -> str:
    """Return a hint that names nothing; before anybody has said it, only what to ask oneself."""
    if not is_recognised(drill):
        return _(WHAT_IS_IT)
    asked = whats_next(drill.scenario, drill.standing)
    why = step_of(drill.scenario, drill.standing).why
    if asked and asked[0].finding:
        return why or _(LOOK_FIRST)
    return why or _(WHAT_NOW)


def menu(drill: Drill) -> tuple[Option, ...]:
    """Return the options of a long menu: what is due, and plausible others, in no order."""
    scenario, book = drill.scenario, drill.scenario.book
    random = Random(f"{scenario.seed}/menu/{_acts_so_far(drill)}")
    if not is_recognised(drill):
        options = [Option(book.what_it_is, is_it=True)]
        options += [Option(text, is_it=False) for text in book.could_be]
    else:
        asked = whats_next(scenario, drill.standing)
        right = [_target(each) for each in asked[:MOST_RIGHT]]
        options = [_option(drill, target) for target in dict.fromkeys(right)]
        others = _decoys(drill, {_target(each) for each in asked})
        random.shuffle(others)
        wrong = [Target(act=act) for act in sorted(scenario.harms)]
        random.shuffle(wrong)
        few = MENU_LENGTH - len(options) - MOST_WRONG
        options += [_option(drill, each) for each in (*others[:few], *wrong[:MOST_WRONG])]
    random.shuffle(options)
    return tuple(options)


def told(drill: Drill) -> str:
    """Return the answer."""
    if not is_recognised(drill):
        what = small(drill.scenario.book.what_it_is.rstrip("."))
        return _("This is it: {what}.").format(what=what)
    asked = whats_next(drill.scenario, drill.standing)
    if not asked:
        return _("Nothing more is due here.")
    if act := asked[0].act:
        return _("Next: {act}.").format(act=drill.scenario.title_of(act))
    return _("Next: {line}").format(line=asked[0].line)


def names_it(drill: Drill, text: str) -> bool:
    """Whether a text says what this is."""
    return says_trigger(phrasebook_of(drill.scenario), Clause(text))


def _acts_so_far(drill: Drill) -> int:
    return sum(isinstance(entry, Did | Looked) for _at, entry in drill.stands)


def _target(asked: Next) -> Target:
    return Target(asked.act or "", asked.finding or "")


def _option(drill: Drill, target: Target) -> Option:
    return Option(title_of(drill, target), target)


def title_of(drill: Drill, target: Target) -> str:
    """Return what an act or a look is called."""
    if target.act:
        return drill.scenario.title_of(target.act)
    place = drill.standing.state.place.pathway
    title = drill.scenario.library.finding(place, target.finding).title
    return _("Look: {finding}").format(finding=small(title))


def _decoys(drill: Drill, but: set[Target]) -> list[Target]:
    """Return acts and looks of other steps, in a fixed order."""
    book = phrasebook_of(drill.scenario)
    targets = dict.fromkeys(phrase.target for phrase in book.phrases)
    return [
        each
        for each in targets
        if each not in but
        and not book.is_harmful(each)
        and each.act != drill.scenario.book.announce
    ]
