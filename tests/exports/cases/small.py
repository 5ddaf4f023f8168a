"""A small pathway with a bit of everything that a table of cases can show."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.cases.grouping import apart, grouped
from chamberwise.engine.cases.summary import summary
from chamberwise.engine.cases.table import whole_cases
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.pathway import CaseTable, Impossible
from chamberwise.engine.model.words import Choice
from chamberwise.exports.cases.content import CaseSheet, case_sheet
from chamberwise.exports.cases.told import completeness

from tests.support.build import act, ask, changed, choice, do, end, finding, library, pathway

WHOLE_YET_LOOSE = Condition((("support", ("whole",)), ("vitreous", ("forward",))))
GONE_YET_BACK = Condition((("support", ("gone",)), ("vitreous", ("back",))))

TABLE = CaseTable(
    ("vitreous", "support"),
    assume=(("trained", "untrained"), ("wound", "dry")),
    asked_again=(("vitreous", "back"),),
    impossible=(
        Impossible(WHOLE_YET_LOOSE, "A whole capsule keeps vitreous back."),
        Impossible(GONE_YET_BACK, "Vitreous follows where support is gone."),
    ),
)

SMALL = library(
    pathway(
        "small",
        ask("where", "vitreous", back="support-left", forward="support-left"),
        ask("support-left", "support", whole="check", rim="check", gone="who"),
        changed(do("check", "where-now", acts="rinse"), plan=(("vitreous", "Rinse and look"),)),
        ask("where-now", "vitreous", back="place", forward="closed"),
        changed(do("place", "wound"), plan=(("lens", "In the sulcus"),)),
        ask("who", "trained", trained="which", untrained="closed"),
        ask("which", "method", fixed="fix", none="closed"),
        changed(do("fix", "closed"), plan=(("lens", "Fixed to the iris"),)),
        ask("wound", "wound", dry="closed", leaking="sutured"),
        end("closed"),
        end("sutured"),
        cases=TABLE,
    ),
    findings=[
        finding("vitreous", "back forward"),
        finding("support", "whole rim gone"),
        finding("trained", "trained untrained"),
        finding("wound", "dry leaking"),
        replace(choice("method", "fixed none"), choice=Choice("none", "because", None)),
    ],
    acts=[act("rinse", stale="vitreous")],
)


def sheet(*, short: bool = True) -> CaseSheet:
    """Return the table of the small pathway, equal rows put together or not."""
    found = whole_cases(SMALL, "small")
    groups = grouped(found) if short else apart(found)
    said = completeness(summary(found))
    return case_sheet(SMALL, "small", groups, dict(TABLE.assume), completeness=said)
