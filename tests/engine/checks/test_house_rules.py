"""What the checks say of rules that bind every pathway, and what they leave unsaid."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from chamberwise.engine.checks.run import check_files, check_for_walk
from chamberwise.engine.checks.texts import Text, of_words
from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.checks.wording_of import wording
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.reading.library import Loaded, assemble, load_library, read_text

from tests.support.build import TODAY

FOLDER = Path(__file__).parents[2] / "library"
RULES = "rules.yaml"


@cache
def _good() -> Loaded:
    return load_library(FOLDER)


def with_changes(*changes: tuple[str, str, str], without: str = "") -> Loaded:
    """Return the library with some texts replaced in some files, or a file left out."""
    files = []
    for shown, file in _good().files.items():
        text = file.text
        for name, old, new in changes:
            if Path(shown).name == name:
                assert old in text
                text = text.replace(old, new, 1)
        if Path(shown).name != without:
            files.append(read_text(text, shown))
    return assemble(files)


def told(loaded: Loaded) -> list[Problem]:
    return check_files(loaded, list(loaded.files), TODAY)


def codes(problems: list[Problem]) -> set[tuple[str, str]]:
    return {(Path(each.file).name, each.code) for each in problems}


OUTCOME = (RULES, "before: {outcome: any}", "before: {outcome: lids-are-tight}")


def test_a_house_rule_speaks_of_the_outcomes_of_every_pathway() -> None:
    assert told(with_changes(OUTCOME)) == []
    found = told(with_changes(OUTCOME, without="pressing-lids.yaml"))
    assert (RULES, "not-defined") in codes(found)
    assert (RULES, "rule-says-nothing") in codes(found)


def test_an_outcome_that_is_nowhere_keeps_no_pathway_from_being_walked() -> None:
    loaded = with_changes((RULES, "{outcome: any}", "{outcome: no-such-end}"))
    assert (RULES, "not-defined") in codes(told(loaded))
    for name in loaded.library.pathways:
        assert check_for_walk(loaded, name, TODAY) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [("some time: call-for-help", "some time: call-for-hepl"), ("depth: deep", "depth: deeper")],
)
def test_a_word_of_a_house_rule_that_nobody_defined_stands_in_the_way(old: str, new: str) -> None:
    loaded = with_changes((RULES, old, new))
    for name in loaded.library.pathways:
        (problem,) = check_for_walk(loaded, name, TODAY)
        assert (Path(problem.file).name, problem.code[:3]) in [(RULES, "not"), (RULES, "no-")]


def test_a_finding_defined_again_stands_in_the_way_and_names_the_shared_one() -> None:
    again = (
        "findings:\n",
        "findings:\n  depth: {title: D, about: eye, values: {a: {label: A}, b: {label: B}}}\n",
    )
    loaded = with_changes(("shallow-chamber.yaml", *again))
    (problem,) = [
        each
        for each in check_for_walk(loaded, "shallow-chamber", TODAY)
        if each.code == "redefined"
    ]
    (note,) = problem.notes
    assert Path(note.file).name == "words.yaml"
    assert note.span
    assert loaded.files[note.file].text.splitlines()[note.span.line - 1].strip() == "depth:"


def test_a_local_file_that_stands_for_a_shipped_pathway_defines_nothing_again() -> None:
    file = next(each for name, each in _good().files.items() if "shallow" in name)
    other = read_text(file.text, "elsewhere/shallow-chamber.yaml")
    loaded = assemble([*_good().files.values(), other])
    assert loaded.file_of["shallow-chamber"] == "elsewhere/shallow-chamber.yaml"
    assert told(loaded) == []


@pytest.mark.parametrize(
    ("name", "old", "new", "slug"),
    [
        ("shallow-chamber.yaml", "never: suture-wound", "never: Suture", "wrong-value"),
        ("shallow-chamber.yaml", "until: tell-patient", "untl: tell-patient", "unknown-key"),
        (RULES, "some time: call-for-help", "sometime: call-for-help", "unknown-key"),
        (RULES, "at most: 3", "at most: x", "wrong-value"),
        (RULES, "rules:\n", "rules: none\nacts:\n", "wrong-kind"),
        ("words.yaml", "{title: Withdraw", "{titel: Withdraw", "unknown-key"),
        ("pressing-lids.yaml", "act: numb-eye", "act: [numb-eye]", "wrong-kind"),
    ],
)
def test_what_could_not_be_read_is_not_told_again_of_a_rule(
    name: str, old: str, new: str, slug: str
) -> None:
    found = {each.code for each in told(with_changes((name, old, new)))}
    assert slug in found
    assert found <= {slug, "missing-key", "wrong-kind", "yaml-syntax", "unknown-key"}


def test_a_misspelt_act_is_told_where_it_stands_and_of_no_rule() -> None:
    found = told(with_changes(("shallow-chamber.yaml", "act: fill-chamber", "act: fill-chambre")))
    assert codes(found) == {("shallow-chamber.yaml", "not-defined")}


def test_a_rule_that_could_not_be_read_hides_no_fault_of_the_steps() -> None:
    bound = "    at most: 2\n    after that: suture\n"
    loaded = with_changes(
        ("shallow-chamber.yaml", "never: suture-wound", "never: Suture"),
        ("shallow-chamber.yaml", bound, ""),
    )
    assert {"wrong-value", "loop-without-bound"} <= {each.code for each in told(loaded)}


def test_an_act_no_step_does_is_told_at_the_rule_and_not_as_a_word_unused() -> None:
    acts = ("words.yaml", "acts:\n", "acts:\n  press-lid: {title: Press}\n")
    assert codes(told(with_changes(acts))) == {("words.yaml", "never-used")}
    named = (RULES, "{act: withdraw-tip}", "{act: [withdraw-tip, press-lid]}")
    assert codes(told(with_changes(acts, named))) == {(RULES, "rule-says-nothing")}


def test_what_a_rule_says_instead_may_be_two_acts_and_what_a_caution_says_may_not() -> None:
    words = "Fill the chamber and then withdraw the tip."
    file = next(each for name, each in _good().files.items() if name.endswith(RULES))

    def found(kind: TextKind) -> list[str]:
        return [each.code for each in wording([Text(kind, words, ())], file.tree)]

    assert found(TextKind.REMEDY) == []
    assert found(TextKind.INSTEAD) == ["several-instructions"]


def test_the_texts_of_a_rule_are_read_each_as_what_it_is() -> None:
    file = next(each for name, each in _good().files.items() if name.endswith(RULES))
    assert file.words
    kinds = {"title": TextKind.TITLE, "harm": TextKind.CAUTION, "instead": TextKind.REMEDY}
    assert {each.pointer[1:]: each.kind for each in of_words(file.words)} == {
        (name, key): kind for name in file.words.rules for key, kind in kinds.items()
    }
