"""One line, one instruction: a second verb joined on, or a second sentence, is lost under pressure.

An instruction and the prohibition that guards it count as one; so does what another person is
asked to do ("Ask the patient to breathe out and keep still").
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.clauses import PROHIBITION, act_start, prohibition_at
from chamberwise.engine.checks.wording.rule import TO_BE_DONE, Hit, TextKind, WordingRule
from chamberwise.engine.checks.wording.sentences import sentences, without_quotes
from chamberwise.engine.checks.wording.verbs import (
    PLAIN_VERBS,
    SPEECH_VERBS,
    acts_on_something,
    is_verb,
    verb_at,
)
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_MARK = re.compile(
    rf"\b(?P<shelter>{PROHIBITION}|that|whether|who|which|how|what|where)(?!\w)"
    r"|\b(?P<to>to)\b"
    r"|\b(?P<past>is|are|has|was|were|had|does|[a-z]+ed)\b"
    r"|(?P<stop>;|\bthen\b)|(?P<comma>,)|(?P<and>\band\b)",
    re.IGNORECASE,
)


def _find(text: str) -> Iterator[Hit]:
    bare = without_quotes(text)
    acts = 0
    for start, end in sentences(bare):
        sentence = bare[:end]
        first = act_start(sentence, start)
        if first is not None and prohibition_at(sentence, first):
            later = list(_joined_verbs(sentence, first))
        elif acts == 0:
            acts, later = 1, list(_joined_verbs(sentence, start if first is None else first))
        else:
            yield Hit(
                start, end, _("a second sentence in one instruction"), _advice(text, start, end)
            )
            continue
        for verb in later:
            acts += 1
            if acts > 1:
                yield _second(text, verb, end)


def _joined_verbs(sentence: str, start: int) -> Iterator[re.Match[str]]:
    """Yield each verb that a joining word puts beside the first one."""
    first = verb_at(sentence, start)
    told = first is not None and is_verb(first.group(), SPEECH_VERBS)
    sheltered, last = False, first.start() if first else -1
    for mark in _MARK.finditer(sentence, start):
        kind = mark.lastgroup
        sheltered = _is_sheltered(kind, sheltered, told=told)
        if kind not in ("stop", "comma", "and") or sheltered:
            continue
        verb = verb_at(sentence, mark.end())
        if verb and verb.start() > last and _is_instruction(sentence, verb, mark):
            last = verb.start()
            yield verb


def _is_sheltered(kind: str | None, sheltered: bool, *, told: bool) -> bool:
    """Return whether a verb after the mark still belongs to a clause that instructs nobody here."""
    if kind == "shelter" or (kind == "to" and told):
        return True
    return sheltered and kind not in ("past", "stop")


def _is_instruction(sentence: str, verb: re.Match[str], mark: re.Match[str]) -> bool:
    if verb.group().lower() in ("avoid", "refrain"):
        return False
    if mark.group().lower() == "then":
        return True
    plain = is_verb(verb.group(), PLAIN_VERBS) and mark.lastgroup != "comma"
    return plain or acts_on_something(sentence, verb)


def _second(text: str, verb: re.Match[str], end: int) -> Hit:
    message = _('a second instruction, "{verb}", in one line').format(verb=verb.group())
    return Hit(verb.start(), verb.end(), message, _advice(text, verb.start(), end))


def _advice(text: str, start: int, end: int) -> str:
    rest = re.split(
        r"[.;,]\s|[.;,]$|\s(?:and|then)\s", text[start : min(end, start + 80)], maxsplit=1
    )[0]
    return _('end before it; "{rest}" needs a place of its own').format(
        rest=rest[:1].upper() + rest[1:].strip()
    )


RULE = WordingRule(
    slug="several-instructions",
    title=N_("Several instructions in one line"),
    severity=Severity.ERROR,
    why=N_(
        "The second act is done too early or left out: whoever hears the line starts "
        "on its first verb, and nobody can tick off half a line."
    ),
    source=N_("ASD-STE100, one instruction a sentence (secondary source read)"),
    reads=TO_BE_DONE - {TextKind.REMEDY},
    find=_find,
    wrong="Fill the chamber and withdraw the tip.",
    right="Hold the tip and the second instrument still.",
)
