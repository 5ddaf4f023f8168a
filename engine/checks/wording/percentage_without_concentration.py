"""The percentage of an injected drug comes with its mg per mL.

Drops, ointments and viscoelastics keep their percentage: nobody draws up a mass of them. A title,
such as that of a piece of kit, names the product as its box does.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from chamberwise.engine.checks.wording.quantity import (
    NUMBER,
    NUMBER_START,
    gives_strength,
    plainly,
    value_of,
)
from chamberwise.engine.checks.wording.rule import EVERY_KIND, Hit, TextKind, WordingRule
from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

_DRUG = (
    r"\b(?:l(?:ido|igno)caine|(?:levo)?bupivacaine|ropivacaine|mepivacaine|prilocaine|articaine"
    r"|acetylcholine|carbachol|phenylephrine|adrenaline|epinephrine|atropine|triamcinolone"
    r"|dexamethasone|cefuroxime|moxifloxacin|vancomycin|ceftazidime|mitomycin|fluorouracil"
    r"|trypan\sblue|hyaluronidase|acetazolamide|tranexamic\sacid|ketorolac)\b"
)
_SIGN = r"\s?(?:%|per\scent\b)(?!\sof\b)"
_DRUG_FIRST = rf"{_DRUG}[^.;%0-9]{{0,30}}?{NUMBER_START}(?P<after>{NUMBER}){_SIGN}"
_PERCENT_FIRST = (
    rf"{NUMBER_START}(?P<before>{NUMBER}){_SIGN}\s(?:[A-Za-z-]{{1,20}}\s){{0,2}}{_DRUG}"
)
_FIND = re.compile(f"{_DRUG_FIRST}|{_PERCENT_FIRST}", re.IGNORECASE)
_ON_THE_SURFACE = re.compile(
    r"\b(?:drops?|eyedrops?|topical(?:ly)?|ointment|gel|minims?|cream|spray|swab|soaked)\b",
    re.IGNORECASE,
)


def _find(text: str) -> Iterator[Hit]:
    if "%" not in text and "cent" not in text.lower():
        return
    if gives_strength(text) or _ON_THE_SURFACE.search(text):
        return
    for found in _FIND.finditer(text):
        group = "after" if found.group("after") else "before"
        start, end = found.span(group)
        end = text.find("%", end, end + 2) + 1 or end
        strength = plainly(value_of(found.group(group)) * Decimal(10))
        message = _('"{found}" gives no mg per mL').format(found=text[start:end])
        advice = _('write "{percent} % ({strength} mg per mL)" as the label gives it').format(
            percent=found.group(group), strength=strength
        )
        yield Hit(start, end, message, advice)


RULE = WordingRule(
    slug="percentage-without-concentration",
    title=N_("Percentage of an injected drug without mg per mL"),
    severity=Severity.WARNING,
    why=N_(
        "The mass drawn up has to be worked out in the head, and a slip of the point "
        "gives ten times the dose inside the eye or around it."
    ),
    source=N_("common practice, no source"),
    reads=EVERY_KIND - {TextKind.TITLE},
    find=_find,
    wrong="Inject 0.5 mL of lidocaine 1 % into the chamber.",
    right="Inject 0.5 mL of lidocaine 1 % (10 mg per mL) into the chamber.",
)
