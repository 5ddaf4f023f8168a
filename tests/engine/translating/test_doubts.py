"""Figures, units and negations compared between English and German, trap by trap.

How numbers are written: the Unicode CLDR, through Babel (decimal comma and grouping point in
German). Symbols of units: the SI brochure, ninth edition, from memory.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.checks.texts import of_words, texts
from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.language.languages import ENGLISH, LANGUAGES
from chamberwise.engine.reading.library import load_library
from chamberwise.engine.translating.doubts import Kind, doubts
from chamberwise.engine.translating.negations import negations
from chamberwise.engine.translating.word_list import word_list
from chamberwise.tui.command.finding_files import shipped

ALIKE = [
    ("Give 0.5 mg.", "0,5 mg geben."),
    ("Give 0.50 mg.", "0,5 mg geben."),
    ("Give 1,000 units.", "1.000 Einheiten geben."),
    ("Give 1,000.5 mL.", "1.000,5 mL geben."),
    ("Wait two minutes.", "2 Minuten warten."),
    ("Up to 4.5 mg per kg.", "Bis 4,5 mg/kg."),
    ("Lidocaine 2 % (20 mg per mL)", "Lidocain 2 % (20 mg pro mL)"),
    ("A 23 G cutter", "Ein 23-G-Vitrektor"),
    ("Dilute 1:10.", "1:10 verdünnen."),
    ("Never pull.", "Nie ziehen."),
    ("Not today.", "Heute nicht."),
    ("No lens.", "Keine Linse."),
    ("Close without a lens.", "Ohne Linse schließen."),
    ("Stop unless it is dry.", "Aufhören, es sei denn, es ist trocken."),
    ("It is unstable.", "Es ist instabil."),
    ("The lens is unsuitable.", "Die Linse ist ungeeignet."),
    ("No more than 5 mL.", "Nicht mehr als 5 mL."),
    ("No more than 5 mL.", "Höchstens 5 mL."),
    ("Look under the iris until it is clear.", "Unter die Iris sehen, bis alles klar ist."),
    ("Don\u2019t pull.", "Nicht ziehen."),
    ("Close at once.", "Unverzüglich schließen."),
    ("Replay it with `chamberwise walk`.", "Mit `chamberwise walk` abspielen."),
]
DIFFERENT = [
    ("Give 0.5 mg.", "0.5 mg geben.", Kind.QUANTITY),
    ("Give 0.5 mg.", "5 mg geben.", Kind.QUANTITY),
    ("Give 0.5 mg.", "0,5 µg geben.", Kind.QUANTITY),
    ("Give 5 µg.", "5 mg geben.", Kind.QUANTITY),
    ("Give 5 micrograms.", "5 Milligramm geben.", Kind.QUANTITY),
    ("Give 5 mg.", "5 geben.", Kind.QUANTITY),
    ("Give 4.5 mg per kg.", "4,5 mg geben.", Kind.QUANTITY),
    ("Give 1,000 units.", "1,000 Einheiten geben.", Kind.QUANTITY),
    ("Wait 30 seconds.", "30 Minuten warten.", Kind.QUANTITY),
    ("Dilute 1:10.", "1:100 verdünnen.", Kind.FIGURE),
    ("Press at two places.", "An drei Stellen drücken.", Kind.FIGURE),
    ("Press at two places.", "An Stellen drücken.", Kind.FIGURE),
    ("Never pull.", "Immer ziehen.", Kind.NEGATION),
    ("Pull.", "Nicht ziehen.", Kind.NEGATION),
    ("No lens.", "Eine Linse.", Kind.NEGATION),
    ("Close without a lens.", "Mit Linse schließen.", Kind.NEGATION),
    ("It is stable.", "Es ist instabil.", Kind.NEGATION),
    ("It is unstable.", "Es ist stabil.", Kind.NEGATION),
    ("It is under the iris.", "Es ist nicht unter der Iris.", Kind.NEGATION),
    ("Do not pull or push.", "Nicht ziehen und nicht drücken.", Kind.NEGATION),
    ("Stop unless it is dry.", "Aufhören, wenn es trocken ist.", Kind.NEGATION),
    ("Wait.", "Warten. TODO", Kind.LEFT_OVER),
    ("Wait.", "[en] Wait.", Kind.LEFT_OVER),
    ("Wait.", "<warten>", Kind.LEFT_OVER),
    ("Type `check`.", "`prüfen` tippen.", Kind.LEFT_OVER),
    ("There are {number}.", "Es sind {zahl}.", Kind.LEFT_OVER),
]


@pytest.mark.parametrize(("source", "says"), ALIKE)
def test_what_says_the_same_leaves_no_doubt(source: str, says: str) -> None:
    assert doubts(source, says, "de") == ()


@pytest.mark.parametrize(("source", "says", "kind"), DIFFERENT)
def test_what_differs_is_found_and_told(source: str, says: str, kind: Kind) -> None:
    assert [each.kind for each in doubts(source, says, "de")] == [kind]


def test_a_dose_is_accepted_by_nobody_and_a_figure_with_a_reason() -> None:
    assert not doubts("5 mg", "6 mg", "de")[0].can_be_accepted
    assert doubts("5", "6", "de")[0].can_be_accepted


def test_every_language_has_its_words() -> None:
    assert all(word_list(code) for code in LANGUAGES)
    assert word_list("xx") is None
    units = [set(found.units.values()) for code in LANGUAGES if (found := word_list(code))]
    assert all(each <= units[0] for each in units), "a unit that English cannot name"


def test_every_negation_that_the_wording_rules_know_is_counted_here_too() -> None:
    loaded = load_library(shipped())
    words = [
        each.words
        for name in loaded.library.pathways
        for each in texts(loaded.library.pathways[name])
    ]
    words += [each.words for each in of_words(loaded.library.shared)]
    # Neither and nor say no once together, as do weder and noch.
    told = [text for text in words if "either" not in text and any(negators(text, adjectives=True))]
    assert len(told) > 100
    missed = [
        text
        for text in told
        if len([*negators(text, adjectives=True)]) > len(negations(text, ENGLISH.code))
    ]
    assert missed == []
