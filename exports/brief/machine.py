"""The brief as plain values for programs."""

from __future__ import annotations

from typing import Any

from chamberwise.engine.brief.brief import Backup, Brief, CaseBrief
from chamberwise.exports.brief.content import BriefContent


def values(brief: Brief, content: BriefContent) -> dict[str, Any]:
    """Return the brief; figures are texts, so that no digit is lost."""
    return {
        "title": content.title,
        "unit": brief.unit or None,
        "day": brief.head.day or None,
        "shelf counted": brief.counted or None,
        "people": dict(content.people),
        "chance of at least one rupture": _ends(brief.chance),
        "to do": list(content.to_do),
        "cases": [_case(each) for each in brief.cases],
        "remarks": list(content.remarks),
    }


def _ends(chance: tuple[Any, Any] | None) -> dict[str, str] | None:
    return {"low": str(chance[0]), "high": str(chance[1])} if chance else None


def _case(case: CaseBrief) -> dict[str, Any]:
    risk = case.risk
    return {
        "case": case.label,
        "eye": case.eye or None,
        "anaesthesia": case.anaesthesia or None,
        "risk": {
            "low": str(risk.low),
            "high": str(risk.high),
            "points": list(risk.points),
            "open": risk.open or None,
        }
        if risk
        else None,
        "have open": list(case.ready),
        "planned": case.planned,
        "backups": [_backup(each) for each in case.backups],
        "ceiling": case.ceiling,
        "to do": list(case.to_do),
    }


def _backup(backup: Backup) -> dict[str, Any]:
    return {
        "position": str(backup.position),
        "lens": backup.model,
        "power": None if backup.exact is None else str(backup.exact),
        "way": backup.way or None,
        "beside": backup.beside or None,
        "missing": backup.is_missing,
        "refused": backup.refused or None,
        "shelf": [
            {"power": str(each.power), "count": each.count, "leaves": each.leaves or None}
            for each in backup.shelf
        ],
    }
