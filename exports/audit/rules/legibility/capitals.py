"""Capitals are for short labels."""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_most
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Role

WORDS = at_most(N_("words in capitals"), warning=3)
LETTERS = at_most(N_("characters in capitals"), warning=24)
_WORD = re.compile(r"[^\W_]+(?:['’-][^\W_]+)*")


def longest_run(text: str) -> tuple[int, str]:
    """Return how many words the longest run of capitals has, and the run.

    >>> longest_run("Then CALL FOR HELP now")
    (3, 'CALL FOR HELP')
    """
    best: tuple[int, str] = (0, "")
    run: list[re.Match[str]] = []
    for word in [*_WORD.finditer(text), None]:
        if word and _is_capital(word.group()):
            run.append(word)
            continue
        if len(run) > best[0]:
            best = len(run), " ".join(text[run[0].start() : run[-1].end()].split())
        run = []
    return best


def _is_capital(word: str) -> bool:
    return len(word) > 1 and word.isupper() and any(each.isalpha() for each in word)


def _measure(subject: Subject) -> Iterator[Measure]:
    for _where, block in subject.blocks():
        # A mark such as DRAFT is worded by document control, and has to strike.
        if block.role is not Role.MARK:
            words, run = longest_run(block.flat)
            yield Measure(
                words, block.where, _("{words} words in capitals").format(words=words), WORDS
            )
            yield Measure(
                len(run),
                block.where,
                _("{count} characters in capitals").format(count=len(run)),
                LETTERS,
            )


RULE = Rule(
    id="LEG-15",
    title=N_("Longest run of capitals: 3 words, 24 characters"),
    limit=WORDS,
    source=N_("NASA CR-177605 list; Tinker 1963"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
