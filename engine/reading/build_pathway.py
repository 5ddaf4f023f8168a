"""From read values to a pathway. What could not be read is left out; the reader has said so."""

from __future__ import annotations

from datetime import date
from typing import Any

from chamberwise.engine.model.pathway import (
    Acceptance,
    CaseTable,
    Impossible,
    Pathway,
    Seal,
    Status,
    WallChart,
)
from chamberwise.engine.model.step import (
    Action,
    Answer,
    Bound,
    Branch,
    Caution,
    Handover,
    Line,
    Outcome,
    Question,
    Row,
    SignalWord,
    Step,
)
from chamberwise.engine.reading.build_values import Raw, condition, effects, listed, names
from chamberwise.engine.reading.build_words import words

_NO_DAY = date.max


def pathway(raw: Raw) -> Pathway:
    """Return the pathway that a file's values describe."""
    return Pathway(
        id=raw.get("pathway", ""),
        title=raw.get("title", ""),
        summary=raw.get("summary", ""),
        edition=raw.get("edition", "0"),
        status=Status(raw.get("status", Status.DRAFT)),
        authors=names(raw, "authors"),
        approved_by=raw.get("approved by"),
        approved_on=raw.get("approved on"),
        reviewed=raw.get("reviewed", _NO_DAY),
        review_by=raw.get("review by", _NO_DAY),
        start=raw.get("start", ""),
        phases=raw.get("phases", {}),
        steps={name: _step(name, value) for name, value in raw.get("steps", {}).items()},
        words=words(raw),
        cases=_cases(raw["cases"]) if "cases" in raw else None,
        accepted=tuple(_acceptance(each or {}) for each in raw.get("accepted", ())),
        wall_chart=_wall_chart(raw["wall chart"]) if "wall chart" in raw else None,
        reason_for_change=raw.get("reason for change", ""),
        seal=seal(raw),
    )


def seal(raw: Raw) -> Seal | None:
    """Return what an approval was given to."""
    content = raw.get("approved content")
    return Seal(content, raw.get("approved parts", {})) if content else None


def _acceptance(raw: Raw) -> Acceptance:
    return Acceptance(raw.get("check", ""), raw.get("at", ""), raw.get("reason", ""))


def _wall_chart(raw: Raw) -> WallChart:
    return WallChart(raw.get("use when", ""), names(raw, "first"), names(raw, "then"))


def _cases(raw: Raw) -> CaseTable:
    impossible = tuple(
        Impossible(condition((each or {}).get("when")), (each or {}).get("because", ""))
        for each in raw.get("impossible", ())
    )
    assume = tuple(raw.get("assume", {}).items())
    return CaseTable(
        names(raw, "over"), assume, tuple(raw.get("asked again", {}).items()), impossible
    )


def _step(name: str, raw: Raw) -> Step:
    common = _common(name, raw)
    if "ask" in raw or "question" in raw:
        return _question(raw, common)
    if "do" in raw:
        return _action(raw, common)
    if "branch" in raw:
        rows = tuple(
            Row(condition((row or {}).get("when")), (row or {}).get("go to", ""))
            for row in raw["branch"]
        )
        return Branch(
            rows=rows, otherwise=raw.get("otherwise"), not_known=raw.get("not known"), **common
        )
    if "hand over to" in raw:
        back = tuple(raw.get("on return", {}).items())
        return Handover(to=raw["hand over to"], says=raw.get("says", ""), on_return=back, **common)
    owed = tuple(_line(line or {}) for line in raw.get("owed", ()))
    return Outcome(title=raw.get("outcome", ""), owed=owed, **common)


def _common(name: str, raw: Raw) -> dict[str, Any]:
    bound = None
    if "at most" in raw and "after that" in raw:
        bound = Bound(raw["at most"], raw["after that"])
    return {
        "id": name,
        "phase": raw.get("phase", ""),
        "why": raw.get("why", ""),
        "short": raw.get("short", ""),
        "sources": names(raw, "sources"),
        "cautions": tuple(_caution(each or {}) for each in raw.get("cautions", ())),
        "bound": bound,
        "plan": tuple(raw.get("plan", {}).items()),
        "work": names(raw, "work"),
    }


def _caution(raw: Raw) -> Caution:
    signal = next((word for word in SignalWord if word in raw), SignalWord.NOTICE)
    guards, sources = raw.get("guards"), names(raw, "sources")
    return Caution(signal, raw.get(signal, ""), raw.get("instead", ""), guards, sources)


def _question(raw: Raw, common: dict[str, Any]) -> Question:
    answers = tuple(_answer(name, value) for name, value in raw.get("answers", {}).items())
    return Question(
        ask=raw.get("ask", ""), question=raw.get("question", ""), answers=answers, **common
    )


def _answer(name: str, raw: str | Raw) -> Answer:
    if isinstance(raw, str):
        raw = {"go to": raw}
    means = listed(raw["means"]) if "means" in raw else (() if " " in name else (name,))
    return Answer(name, means, raw.get("go to", ""), raw.get("label", ""))


def _action(raw: Raw, common: dict[str, Any]) -> Action:
    return Action(
        lines=tuple(_line(line or {}) for line in raw["do"]),
        go_to=raw.get("go to", ""),
        needs=names(raw, "needs"),
        choices=names(raw, "choices"),
        time_target=raw.get("time target"),
        effects=effects(raw),
        **common,
    )


def _line(raw: Raw) -> Line:
    aloud = "says" in raw
    return Line(
        raw.get("who", ""),
        raw.get("says" if aloud else "does", ""),
        aloud,
        raw.get("act"),
        raw.get("when", ""),
        names(raw, "sources"),
    )
