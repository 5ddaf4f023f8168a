"""From rows to phases, words and steps, with what is wrong told by row and column."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, TypeVar

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Bound,
    Handover,
    Line,
    Outcome,
    Question,
    Step,
)
from chamberwise.engine.model.words import About, Act, Finding, Value, Words
from chamberwise.engine.reading.scalars import UntypedError, typed
from chamberwise.engine.reading.shapes import COUNT, NAME
from chamberwise.engine.spreadsheet.cells import Cells, Row, split
from chamberwise.engine.spreadsheet.kinds import KINDS, RowKind

OR = " or "
_Kept = TypeVar("_Kept")
_NAMES = {
    "name": "",
    "who": "",
    "act": "",
    "finding": "",
    "go to": "",
    "after that": "",
    "phase": "",
    "value": OR,
    "sources": ";",
}
"""Cells that hold names, with what stands between several."""
_OF_THE_STEP = ("go to", "phase", "short", "why", "at most", "after that", "sources")


@dataclass(slots=True)
class Steps:
    """What a sheet of steps holds, in the order of its rows; the first step is the entry."""

    phases: dict[str, str] = field(default_factory=dict)
    words: Words = field(default_factory=Words)
    steps: dict[str, Step] = field(default_factory=dict)
    row_of: dict[str, Row] = field(default_factory=dict)
    """The first row of each step."""


def steps_of(found: Cells) -> Steps:
    """Return what the rows say; what is wrong with them is added to their problems."""
    blocks = list(_blocks(found))
    made = Steps()
    findings: dict[str, Finding] = {}
    acts: dict[str, Act] = {}
    for first, rest in blocks:
        name = first["name"]
        match first["row"]:
            case "phase":
                _keep(made.phases, name, first["text"], first, found)
            case "finding":
                _keep(findings, name, _finding(first, rest, found), first, found)
            case "act":
                act = Act(name, first["text"], sources=split(first["sources"], ";"))
                _keep(acts, name, act, first, found)
            case _:
                if _keep(made.steps, name, _step(first, rest, found), first, found):
                    made.row_of[name] = first
    made.words = Words(findings=findings, acts=acts)
    for step in made.steps.values():
        if step.phase and step.phase not in made.phases:
            made.phases[step.phase] = step.phase.replace("-", " ").capitalize()
    return made


def _keep(table: dict[str, _Kept], name: str, value: _Kept, row: Row, found: Cells) -> bool:
    """Keep what a row defines; return whether its name was free."""
    if name in table:
        found.wrong(
            row,
            "name",
            _("`{name}` stands here twice").format(name=name),
            _("Give one of them another name."),
        )
        return False
    table[name] = value
    return True


def _blocks(found: Cells) -> Iterator[tuple[Row, list[Row]]]:
    """Yield each first row with the rows that are parts of it, where they are well formed.

    What follows a first row that is not has no fault of its own.
    """
    block: list[Row] = []
    is_lost = False
    for row in found.rows:
        is_well_formed = _is_well_formed(row, found)
        kind = KINDS.get(row["row"], RowKind(()))
        is_part = bool(kind.within) and not (row["row"] in ("do", "say") and row["name"])
        if not is_part:
            if block:
                yield block[0], block[1:]
            block, is_lost = [row] if is_well_formed else [], not is_well_formed
        elif is_lost or not is_well_formed:
            continue
        elif block and block[0]["row"] in kind.within:
            block.append(row)
        else:
            above = _(" or ").join(f"`{each}`" for each in kind.within)
            found.wrong(
                row,
                "row",
                _("`{kind}` stands alone").format(kind=row["row"]),
                _("It follows a row {above}.").format(above=above),
            )
    if block:
        yield block[0], block[1:]


def _is_well_formed(row: Row, found: Cells) -> bool:
    before = len(found.problems)
    kind = KINDS.get(row["row"])
    if kind is None:
        advice = did_you_mean(
            row["row"], KINDS, _("A row is one of: {kinds}.").format(kinds=", ".join(KINDS))
        )
        found.wrong(row, "row", _("`{kind}` is no kind of row").format(kind=row["row"]), advice)
        return False
    for head in kind.needs:
        if not row[head]:
            found.wrong(
                row,
                head,
                _("a row `{kind}` needs it").format(kind=row["row"]),
                _("Fill in `{head}`.").format(head=head),
            )
    for head in row.cells:
        if head not in ("row", *kind.needs, *kind.may_have):
            message = _("a row `{kind}` has no `{head}`").format(kind=row["row"], head=head)
            found.wrong(row, head, message, _("Leave the cell empty."))
    for head, by in _NAMES.items():
        for name in split(row[head], by) if by else [row[head]] if row[head] else []:
            if not (row["row"] == "answer" and name == CANNOT_TELL):
                _is_typed(row, head, name, found)
    if row["at most"]:
        _is_typed(row, "at most", row["at most"], found)
    return len(found.problems) == before


def _is_typed(row: Row, head: str, text: str, found: Cells) -> None:
    try:
        typed(text, COUNT if head == "at most" else NAME)
    except UntypedError as error:
        found.wrong(
            row,
            head,
            _("`{text}` is not {expected}").format(text=text, expected=error.expected),
            error.advice,
        )


def _finding(first: Row, rest: Iterable[Row], found: Cells) -> Finding:
    about = first["about"] or About.EYE
    if about not in [*About]:
        advice = _("It is one of: {words}.").format(words=", ".join(About))
        found.wrong(
            first,
            "about",
            _("`{about}` is nothing that a finding is about").format(about=about),
            advice,
        )
        about = About.EYE
    values = tuple(
        Value(row["name"], row["text"], row["sign"], split(row["sources"], ";")) for row in rest
    )
    if len(values) < 2:
        found.wrong(
            first, "name", _("it has fewer than two values"), _("Add rows `value` below it.")
        )
    sources = split(first["sources"], ";")
    return Finding(first["name"], first["text"], About(about), values, sources=sources)


def _step(first: Row, rest: list[Row], found: Cells) -> Step:
    shared: dict[str, Any] = {
        "id": first["name"],
        "phase": first["phase"],
        "why": first["why"],
        "short": first["short"],
        "sources": split(first["sources"], ";"),
        "bound": _bound(first, found),
    }
    if not first["phase"]:
        found.wrong(first, "phase", _("a step needs it"), _("Name the part of the operation."))
    match first["row"]:
        case "question":
            answers = tuple(map(_answer, rest))
            if len(answers) < 2:
                found.wrong(
                    first, "name", _("it has fewer than two answers"), _("Add rows `answer`.")
                )
            ask, text = first["finding"], first["text"]
            return Question(ask=ask, question=text, answers=answers, **shared)
        case "hand over":
            back = tuple((row["name"], row["go to"]) for row in rest)
            return Handover(to=first["go to"], says=first["text"], on_return=back, **shared)
        case "end":
            return Outcome(title=first["text"], owed=tuple(map(_line, rest)), **shared)
    return _action(first, rest, shared, found)


def _action(first: Row, rest: list[Row], shared: dict[str, Any], found: Cells) -> Action:
    if not first["name"]:
        found.wrong(
            first, "name", _("a step needs a name"), _("Name it in small letters and hyphens.")
        )
    if not first["go to"]:
        found.wrong(first, "go to", _("an action leads on"), _("Name the step that follows."))
    for row in rest:
        for head in row.cells:
            if head in _OF_THE_STEP:
                advice = _("Write it in the first row of the step.")
                found.wrong(row, head, _("a further line of a step has none"), advice)
    return Action(lines=tuple(map(_line, [first, *rest])), go_to=first["go to"], **shared)


def _bound(row: Row, found: Cells) -> Bound | None:
    if bool(row["at most"]) != bool(row["after that"]):
        missing = "after that" if row["at most"] else "at most"
        found.wrong(
            row,
            missing,
            _("a bound needs both cells"),
            _("Fill in `{missing}`.").format(missing=missing),
        )
        return None
    return Bound(int(row["at most"]), row["after that"]) if row["at most"] else None


def _answer(row: Row) -> Answer:
    name = row["name"]
    means = split(row["value"], OR) or (() if name == CANNOT_TELL else (name,))
    return Answer(name, means, row["go to"], row["text"])


def _line(row: Row) -> Line:
    said = row["row"] == "say"
    return Line(row["who"], row["text"], said, row["act"] or None, row["when"])
