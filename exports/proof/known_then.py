"""What was known, at the moment a rule broke, of the findings the rule speaks of."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.layout import Field, layout_of
from chamberwise.engine.meaning.moments import Moment
from chamberwise.engine.model.step import Action
from chamberwise.exports.proof.content import KnownThen
from chamberwise.exports.proof.happenings import quoted, values_in_words
from chamberwise.exports.proof.telling import Telling
from chamberwise.exports.record.naming import act_title, sentence, step_name


def known_then(telling: Telling) -> Iterator[KnownThen]:
    """Yield each finding of the rule with what was surely or possibly so."""
    pathway = telling.counterexample.pathway
    for name in telling.findings:
        field = layout_of(telling.library).field(pathway, name)
        yield KnownThen(field.finding.title, _said(telling, field))


def _said(telling: Telling, field: Field) -> str:
    moment = telling.moments[telling.broke_at]
    seen, possible = moment.last_seen & field.every, moment.possible & field.every
    if seen:
        since = _stale_since(telling, field)
        return _("stale since {since}; last seen {values}").format(
            since=since, values=_values(telling, field, seen)
        )
    if possible == field.every:
        return _("unknown: possibly {values}").format(values=_values(telling, field, possible))
    text = _("possibly {values}") if possible & (possible - 1) else _("surely {values}")
    return text.format(values=_values(telling, field, possible))


def _values(telling: Telling, field: Field, bits: int) -> str:
    words = telling.library.words(telling.counterexample.pathway)
    return values_in_words(words, field.finding.id, field.values(bits))


def _stale_since(telling: Telling, field: Field) -> str:
    """Return what came just before the finding was stale for the first time without a break."""
    number = telling.broke_at
    while number and telling.moments[number - 1].last_seen & field.every:
        number -= 1
    before = max(0, number - 1)
    return _("step {number}, {what}").format(
        number=telling.step_of(before), what=quoted(_done(telling, telling.moments[before]))
    )


def _done(telling: Telling, moment: Moment) -> str:
    library, step = telling.library, telling.library.step(moment.place)
    if moment.act is not None:
        return act_title(library.words(moment.place.pathway), moment.act)
    if isinstance(step, Action) and moment.line is not None:
        return sentence(step.lines[moment.line].text)
    return step_name(library, moment.place)
