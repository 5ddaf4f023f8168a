"""Names that both versions have and that mean now what another name meant: the worst of drifts.

Whoever knows the name by heart, and every sheet that refers to it, goes on to something else.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from functools import partial
from typing import Any

from chamberwise.engine.comparing.change import Change, Kind, Where
from chamberwise.engine.comparing.names.named import TABLES
from chamberwise.engine.comparing.names.same_word import nameless, title
from chamberwise.engine.comparing.saying import SAFETY, At, told
from chamberwise.engine.comparing.steps import told_step
from chamberwise.engine.graph.met import view
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Branch, Handover, Outcome, PathwayId, Question
from chamberwise.engine.model.words import Words


def reused_words(old: Words, new: Words, pathway: PathwayId | None) -> Iterator[Change]:
    """Yield every word, and every value of a finding, whose name meant something else."""
    for table in TABLES.values():
        before = {name: nameless(each) for name, each in getattr(old, table).items()}
        after = {name: nameless(each) for name, each in getattr(new, table).items()}
        yield from _reused(before, after, partial(_at, pathway, table))
    for name, finding in old.findings.items():
        if name in new.findings:
            yield from _reused(
                {each.id: nameless(each) for each in finding.values},
                {each.id: nameless(each) for each in new.findings[name].values},
                partial(_value_at, _at(pathway, "findings", name)),
            )


def reused_in_pathway(old: Pathway, new: Pathway) -> Iterator[Change]:
    """Yield every step, phase and answer whose name meant something else."""
    yield from _reused(old.phases, new.phases, partial(_at, new.id, "phases"))
    yield from _reused(
        {name: view(each) for name, each in old.steps.items()},
        {name: view(each) for name, each in new.steps.items()},
        partial(_at, new.id, "steps"),
    )
    for name, step in old.steps.items():
        twin = new.steps.get(name)
        if isinstance(step, Question) and isinstance(twin, Question):
            yield from _reused(
                {each.id: each.means for each in step.answers},
                {each.id: each.means for each in twin.answers},
                partial(_answer_at, _at(new.id, "steps", name)),
            )


def _reused(
    old: Mapping[str, Hashable], new: Mapping[str, Hashable], at: Callable[[str], At]
) -> Iterator[Change]:
    for name in old:
        if name not in new or old[name] == new[name] or old[name] == ():
            continue
        meant = next(
            (each for each in old if old[each] == new[name] and new.get(each) != old[each]), None
        )
        if meant is not None:
            why = _("the name means what `{other}` meant: what refers to it is led astray")
            was, now = _said(old[name]), _said(new[name])
            place = at(name).where
            yield Change(Kind.REUSED, SAFETY, place, was, now, why.format(other=meant))


def _at(pathway: PathwayId | None, table: str, name: str) -> At:
    return At(Where(pathway, table, name))


def _value_at(finding: At, value: str) -> At:
    return finding.part(_("value `{name}`").format(name=value))


def _answer_at(step: At, answer: str) -> At:
    return step.part(_("answer `{answer}`").format(answer=answer))


def _said(thing: Any) -> str:
    if isinstance(thing, str | tuple):
        return told(thing)
    if isinstance(thing, Question | Action | Branch | Handover | Outcome):
        return told_step(thing)
    return title(thing)
