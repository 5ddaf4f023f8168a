"""Nothing that sheets and reports say in the program's own words escapes the catalogues."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from chamberwise.engine.model.library import Library
from chamberwise.engine.proof.prove import prove
from chamberwise.exports.audit.audit import audit
from chamberwise.exports.audit.text import report_text
from chamberwise.exports.control.frame import Frame
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.printing import Job, ordered, told_as_text
from chamberwise.exports.proof.extract import proof_shown
from chamberwise.exports.proof.text import proof_text, what_it_means
from chamberwise.exports.typesetting.measuring import Ruler

from tests.exports.audit.sheets import CONTROL, wall
from tests.exports.flow.stage import shipped
from tests.exports.language.stage import bracketed, in_other_letters, untold
from tests.exports.proof.stage import loaded

DAY = date(2026, 11, 25)
SIZED = Sized(Paper.A4, Turn.LANDSCAPE)
PATHWAY = "anterior-vitrectomy"
OF_THE_ENGINE = frozenset(
    [
        "OR",
        "AND",
        "cannot",
        "Cannot",
        "tell",
        "otherwise",
        "Otherwise",
        "not",
        "Not",
        "known",
        "until",
        "Until",
        "then",
        "with",
        "After",
        "after",
        "round",
        "rounds",
    ]
)
"""Words between answers on a chart, which the engine's own room tells."""
BY_NAME = frozenset({"Made", "by", "CP"})
"""The mark by which our files are known, and that of a threshold."""


@cache
def library() -> Library:
    made = in_other_letters(shipped())
    assert isinstance(made, Library)
    return made


@pytest.mark.parametrize("kind", list(Kind))
def test_every_sheet_as_text(kind: Kind) -> None:
    name = "posterior-capsule-rupture" if kind is Kind.CASE_TABLE else PATHWAY
    with bracketed():
        text = told_as_text(ordered(Job(library(), name, DAY), [(kind, SIZED)]))
    assert untold(text, known=OF_THE_ENGINE | BY_NAME) == []


def test_head_and_foot_of_a_page() -> None:
    with bracketed():
        page = Frame(Ruler(), CONTROL, SIZED.format).page((), 1, 1)
        text = "\n".join(each.text for each in page.texts)
    own = {
        *CONTROL.title.split(),
        *["Clinical", "content", "lead", "Surgical", "Eye", "theatres", "wall", "chart"],
    }
    assert untold(text.replace("\u00a0", " "), known=frozenset(own)) == []


def test_the_report_of_an_audit() -> None:
    case = wall()
    with bracketed():
        report = audit(case.sheet, case.pdf, case.terms)
        text = report_text(report)
    found = untold(text, known=BY_NAME)
    assert [each for each in found if not each.strip().startswith(",")] == [], (
        "but for words quoted"
    )


def test_a_proof() -> None:
    found = loaded()
    (name, *_others) = found.library.pathways
    verdicts = in_other_letters(prove(found.library, name))
    made = in_other_letters(found.library)
    with bracketed():
        shown = proof_shown(replace(found, library=made), verdicts, DAY, lambda key: f"`{key}`")
        text = f"{what_it_means()}\n{proof_text(shown, everything=True)}"
    known = frozenset(word for rule in made.words(name).rules for word in rule.split("-"))
    assert untold(text, known=known) == []


def test_an_untold_word_is_seen() -> None:
    assert untold("⟦Told {x}⟧ ⟦a ⟦b⟧⟧ шорд `name` 12 mm") == []
    assert untold("⟦Told⟧ and not") == ["  and not"]
