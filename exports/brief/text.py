"""The brief as plain text, in the order in which it is read aloud."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from chamberwise.exports.brief.content import BackupLine, BriefContent, CaseLine

WIDTH = 78


def text(brief: BriefContent) -> str:
    """Return the brief."""
    return "\n".join(_lines(brief))


def _lines(brief: BriefContent) -> Iterator[str]:
    yield brief.title.upper()
    yield " · ".join(each for each in (brief.unit, brief.day) if each)
    yield from _wrapped(brief.remarks[0])
    yield ""
    yield from (f"{what + ':':<13} {said}" for what, said in brief.people)
    yield f"At least one rupture on this list: {brief.chance}"
    yield from ("", "TO DO BEFORE THE LIST STARTS")
    for said in brief.to_do or ("Nothing was found to be missing.",):
        yield from _wrapped(said, "  [ ] ", "      ")
    for case in brief.cases:
        yield from ("", *_case(case))
    yield ""
    for said in brief.remarks[1:]:
        yield from _wrapped(said)


def _case(case: CaseLine) -> Iterator[str]:
    about = ", ".join(each for each in (f"{case.eye} eye", case.anaesthesia) if each)
    yield f"CASE {case.label}: {about}"
    yield from _wrapped(f"Risk of rupture: {case.risk}", "  ", "    ")
    yield from (f"    {each}" for each in case.points)
    if case.ready:
        yield from _wrapped(f"Have open: {'; '.join(case.ready)}", "  ", "    ")
    yield from _wrapped(f"Planned: {case.planned}", "  ", "    ")
    for backup in case.backups:
        yield from _backup(backup)
    yield from _wrapped(f"Ceiling: {case.ceiling}", "  ", "    ")


def _backup(backup: BackupLine) -> Iterator[str]:
    mark = "MISSING " if backup.is_missing else ""
    yield from _wrapped(
        f"{mark}Backup, {backup.position}: {backup.lens}, {backup.power}", "  ", "    "
    )
    how = "; ".join(each for each in (backup.way, backup.beside) if each)
    yield from _wrapped(f"by {how}" if how else "", "    ", "      ")
    yield from _wrapped(f"on the shelf: {_shelf(backup)}", "    ", "      ")


def _shelf(backup: BackupLine) -> str:
    if backup.refused:
        return backup.refused
    told = (
        f"{power} ({count} there{f', leaves {left}' if left else ''})"
        for power, count, left in backup.shelf
    )
    return "; ".join(told) or "none near"


def _wrapped(said: str, first: str = "", rest: str = "") -> list[str]:
    return wrap(
        said,
        WIDTH,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=False,
        break_on_hyphens=False,
    )
