"""Signs that stand for words beside a quantity: less than, more than, and, at.

The sign of a lens power ("+21 D"), arrows and addresses are left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from chamberwise.engine.checks.wording.quantity import QUANTITY
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, TextKind, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_WORDS = {"<": "less than", ">": "more than", "&": "and", "+": "and", "@": "at"}
_COMPARISON = r"(?<![-=<>])(?P<comparison>[<>])(?=\s?[0-9.])"
_JOINING = r"(?P<joining>(?<!\w)[&@]|[&@](?!\w)|(?<=[a-z\s%)])\+(?![0-9.+])(?=\s?\w))"
_SIGN = re.compile(f"{_COMPARISON}|{_JOINING}")


def _find(text: str) -> Iterator[Hit]:
    dosed = QUANTITY.search(text) is not None
    for found in _SIGN.finditer(text):
        if dosed or found.group("comparison"):
            sign = found.group()
            message = _('"{sign}" stands for a word').format(sign=sign)
            yield Hit(
                found.start(), found.end(), message, _('write "{word}"').format(word=_WORDS[sign])
            )


RULE = WordingRule(
    slug="dose-symbol",
    title=N_("Sign instead of a word beside a quantity"),
    severity=Severity.WARNING,
    why=N_(
        "< and > are mistaken for each other or for 4 and 7, & for 2, + for 4 and @ "
        "for 2: the limit is turned round or the dose changed."
    ),
    source=N_("ISMP list of error-prone symbols (secondary copy read)"),
    reads=EVERY_KIND - {TextKind.REASON, TextKind.TITLE},
    find=_find,
    wrong="Keep the infusion pressure < 30 mmHg.",
    right="Keep the infusion pressure below 30 mmHg.",
)
