"""What a sheet does to what lies below it: laws, and who is told to have done it."""

from __future__ import annotations

from functools import partial
from pathlib import Path

import pytest
from chamberwise.engine.checks.run import check_files, check_for_walk
from chamberwise.engine.local.breaking import broken_by
from chamberwise.engine.local.leaving_out import what_is_gone
from chamberwise.engine.local.localising import base_digest, localised
from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.rules import rules_for, switched_off
from chamberwise.engine.proof.verdict import Violated
from chamberwise.engine.reading.digest import digest
from chamberwise.engine.reading.library import read_file, read_text
from chamberwise.engine.stamp.content import content_digest
from hypothesis import given
from hypothesis import strategies as st

from tests.engine.local.stage import PATHWAY, SHEETS, TODAY, below, edited, problems, sheet

EMPTY = edited(
    "one-line",
    ("choices:\n  air-or-fluid: {chosen: air, because: It is what the unit teaches.}\n", ""),
)
HEAD = EMPTY.text
HEAD_FIELDS = ("edition", "authors", "reason_for_change")


def test_an_empty_sheet_changes_nothing_but_who_stands_for_it() -> None:
    was, now = below().library, localised(below(), EMPTY).library
    assert now.shared == was.shared
    assert now.local is not None
    pathway = now.pathways[PATHWAY]
    assert pathway.steps == was.pathways[PATHWAY].steps
    assert pathway.words == was.pathways[PATHWAY].words
    assert (pathway.edition, pathway.authors) == ("0.1", ("Theatre educator",))


@pytest.mark.parametrize("path", SHEETS, ids=[path.stem for path in SHEETS])
def test_applying_is_deterministic_and_leaves_what_was_read_alone(path: Path) -> None:
    before = content_digest(below().library, PATHWAY)
    texts = {name: (file.text, list(file.problems)) for name, file in below().files.items()}
    one, two = (localised(below(), read_file(path)) for _ in "12")
    assert one.library.pathways == two.library.pathways
    assert content_digest(one.library, PATHWAY) == content_digest(two.library, PATHWAY)
    assert content_digest(below().library, PATHWAY) == before
    assert {n: (f.text, list(f.problems)) for n, f in below().files.items()} == texts


@pytest.mark.parametrize("path", SHEETS, ids=[path.stem for path in SHEETS])
def test_no_sheet_takes_away_or_bends_a_rule(path: Path) -> None:
    library = localised(below(), read_file(path)).library
    off = {name: rule for name, (rule, _) in switched_off(library, PATHWAY).items()}
    bound = {rule.id: rule for rule in rules_for(library, PATHWAY)} | off
    for rule in rules_for(below().library, PATHWAY):
        assert bound[rule.id] == rule
    assert {*library.shared.acts} == {*below().library.shared.acts}
    for name, act in below().library.shared.acts.items():
        assert library.shared.acts[name].effects == act.effects


PLACES = (
    "rules / patient-is-told",
    "rules / patient-is-told / title",
    "acts / suture-wound / makes stale",
    "findings / leak / values",
    "steps / tell / do",
    "steps / look-again",
    "steps / fill / go to",
    "vocabulary",
    "rules",
    "start",
)


@given(
    st.lists(
        st.tuples(
            st.sampled_from(("change", "add", "remove")),
            st.sampled_from(PLACES),
            st.sampled_from(("nothing", "tell", "suture", "[leak]", "{title: x}")),
            st.sampled_from(("tell", "closed", "[]", "{title: x}", "[{who: surgeon}]")),
        ),
        max_size=4,
    )
)
def test_whatever_is_written_no_rule_of_the_house_is_lost(ops: list[tuple[str, ...]]) -> None:
    text = HEAD + "changes:\n" if ops else HEAD
    for verb, place, expects, to in ops:
        ground = {"change": f"expects: {expects}, to: {to}", "add": f"as: {to}"}
        rest = ground.get(verb, f"expects: {expects}, go to: tell")
        text += f"  - {{{verb}: {place}, {rest}, because: Made up.}}\n"
    library = localised(below(), read_text(text, "made-up.yaml")).library
    for name, rule in below().library.shared.rules.items():
        assert library.shared.rules[name] == rule
    assert library.shared.acts == below().library.shared.acts


WEAKENING = {
    "skips the fill": "  - {change: steps / first-look / answers, expects: DIGEST, "
    "to: {none: tell, fast: suture, cannot tell: fill}, because: Faster.}\n",
    "forgets the act": "  - {change: steps / fill / do / 1 / act, expects: fill-chamber, "
    "to: call-for-help, because: A slip.}\n",
    "tells nobody": "  - {change: steps / tell / do / 1, expects: DIGEST, "
    "to: {who: surgeon, says: Done.}, because: Shorter.}\n",
    "ends before telling": "  - {change: steps / look-again / answers / none, expects: tell, "
    "to: closed, because: Shorter.}\n",
    "takes the fill away": "  - {remove: steps / fill, expects: DIGEST, go to: suture, "
    "because: Shorter.}\n",
}


@pytest.mark.parametrize("name", WEAKENING)
def test_a_planted_weakening_is_found_and_blamed_on_its_line(name: str) -> None:
    harmless = (
        "  - {change: steps / stop / go to, expects: first-look, to: note-it, because: A board.}\n"
        "  - add: steps / note-it\n"
        "    as: {phase: look, do: [{who: surgeon, does: Write the time on the board.}], "
        "sources: [handbook], go to: first-look}\n"
        "    because: A board.\n"
    )
    text = HEAD + "changes:\n" + harmless + WEAKENING[name]
    text = text.replace("DIGEST", expected_at(text))
    file = read_text(text, "weak.yaml")
    loaded = localised(below(), file)
    assert check_for_walk(loaded, PATHWAY, TODAY) == []
    proof = prove(loaded.library, PATHWAY)
    broken = [each.rule.id for each in proof.verdicts if isinstance(each, Violated)]
    assert broken
    blamed = broken_by(below(), file, proof)
    line = text.count("\n")
    for rule in broken:
        spans = [file.tree.span(each.said) for each in blamed[rule]]
        assert [span.line for span in spans if span] == [line]


def expected_at(text: str) -> str:
    """Return the digest that the sheet asks for, as its own problem tells it."""
    file = read_text(text.replace("DIGEST", "0000-0000-0000"), "weak.yaml")
    told = [each for each in problems(file) if each.code == "stale-expectation"]
    return told[0].advice.rsplit(" ", 1)[1].strip("`.") if told else ""


def test_what_the_sheet_brings_about_below_is_told_at_its_line() -> None:
    text = (
        HEAD
        + "changes:\n  - {change: steps / fill / go to, expects: suture, to: tell, because: X.}\n"
    )
    file = read_text(text, "short.yaml")
    unreached = [each for each in problems(file) if each.code == "unreachable-step"]
    assert unreached
    for each in unreached:
        assert each.span is not None
        assert (each.file, each.span.line) == ("short.yaml", text.count("\n"))
        assert [note.file for note in each.notes] == [below().file_of[PATHWAY]]


def test_what_the_sheet_added_is_told_at_its_line_in_the_sheet() -> None:
    text = HEAD + (
        "changes:\n"
        "  - {change: steps / tell / go to, expects: closed, to: extra, because: X.}\n"
        "  - add: steps / extra\n"
        "    as:\n"
        "      phase: close\n"
        "      do: [{who: nobody, does: Check the wound.}]\n"
        "      go to: closed\n"
        "    because: X.\n"
    )
    told = {
        (each.file, each.span.line, each.code)
        for each in problems(read_text(text, "more.yaml"))
        if each.span
    }
    first = HEAD.count("\n") + 1
    assert ("more.yaml", first + 5, "not-defined") in told
    assert ("more.yaml", first + 2, "no-source") in told


def test_a_changed_base_fails_loudly_and_says_what_stands_there_now() -> None:
    file = edited("everything", (base_digest(below().library, PATHWAY), "ZE6X-PR7Y-B0Q0"))
    (problem,) = problems(file)
    assert problem.code == "base-changed"
    assert base_digest(below().library, PATHWAY) in problem.message
    assert problem.span is not None
    assert problem.span.line == 3


def test_a_walk_under_a_sheet_is_told_from_one_without() -> None:
    assert digest(localised(below(), EMPTY), PATHWAY) != digest(below(), PATHWAY)


def test_a_rule_switched_off_binds_no_longer_and_is_kept_by_name() -> None:
    library = localised(below(), sheet("switched-off")).library
    assert "patient-is-told" not in {rule.id for rule in rules_for(library, PATHWAY)}
    rule, off = switched_off(library, PATHWAY)["patient-is-told"]
    assert (off.by, off.on.isoformat()) == ("Clinical lead, surgery", "2026-11-20")
    proof = prove(library, PATHWAY)
    assert not any(isinstance(each, Violated) for each in proof.verdicts)
    assert rule.id == "patient-is-told"


def test_every_text_of_the_library_can_be_reworded_where_it_stands() -> None:
    from chamberwise.engine.checks.texts import of_words, texts
    from chamberwise.engine.diagnostics.problem import pointer_text

    library = below().library
    own = [*texts(library.pathways[PATHWAY]), *of_words(library.shared)]
    lines = [
        f"  - {{at: '{pointer_text(each.pointer)}', expects: \"{each.words}\", "
        f'says: "{each.words} "}}\n'
        for each in own
        if each.words and each.pointer[0] != "rules"
    ]
    file = read_text(HEAD + "wording:\n" + "".join(lines), "words.yaml")
    stops = partial(filter, lambda each: each.severity == "error")
    assert list(stops(localised(below(), file).files["words.yaml"].problems)) == []
    assert len(lines) > 25


ODD = (
    *("", "~", "[]", "{}", "x", "0", "-1", "steps", "steps / tell", "steps / tell / do / 9 / does"),
    *("[[[1]]]", "{a: {b: c}}", "'", "rules", " / ", "steps / 1", "phases / 1 / 2", "title / x"),
    *("!tag x", "&a x", "*a", "2026-02-30", "30 s", "ZE6X-PR7Y-B0Q0", "\u202e", "\t", "a: b: c"),
)


@given(st.sampled_from(SHEETS), st.integers(0, 60), st.sampled_from(ODD), st.booleans())
def test_whatever_stands_in_a_sheet_there_is_a_verdict_and_never_a_traceback(
    path: Path, number: int, odd: str, after_the_colon: bool
) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    number %= len(lines)
    kept = lines[number].partition(": ")[0] + ": " if after_the_colon else ""
    lines[number] = f"{kept}{odd}"
    file = read_text("\n".join(lines) + "\n", path.name)
    if file.sheet is None and not file.problems:
        return
    loaded = localised(below(), file)
    assert loaded.library.shared.rules == below().library.shared.rules
    found = check_files(loaded, list(loaded.files), TODAY)
    assert all(each.message and each.advice for each in found)


@pytest.mark.parametrize(
    "place", ["steps / 3", "steps / fill / do / first", "title / x", "start / 1"]
)
def test_an_addition_where_nothing_can_hold_it_is_refused(place: str) -> None:
    text = f"{HEAD}changes:\n  - {{add: {place}, as: x, because: Made up.}}\n"
    codes = [each.code for each in problems(read_text(text, "odd.yaml"))]
    assert codes == ["no-such-place"]


def test_more_changes_than_any_unit_makes_are_refused() -> None:
    one = "  - {change: steps / tell / go to, expects: closed, to: fill, because: X.}\n"
    told = problems(read_text(f"{HEAD}changes:\n{one * 1001}", "many.yaml"))
    assert "too-large" in {each.code for each in told}


def test_a_list_goes_with_the_last_thing_taken_from_it() -> None:
    """What is left empty would be refused for its form, and its place says nothing of that."""
    change = "  - {remove: steps / fill / cautions / 1, expects: AAAA-AAAA-AAAA, because: Known.}"
    asked = read_text(HEAD + f"changes:\n{change}\n", "x.yaml")
    (stale,) = localised(below(), asked).files["x.yaml"].problems
    stands = stale.message.split("`")[3]
    file = read_text(HEAD + f"changes:\n{change}\n".replace("AAAA-AAAA-AAAA", stands), "x.yaml")
    loaded = localised(below(), file)
    assert loaded.library.pathways[PATHWAY].steps["fill"].cautions == ()
    assert [each.code for each in loaded.files["x.yaml"].problems] == ["leaves-out"]


def test_acts_that_change_places_or_are_named_less_often_are_told() -> None:
    fill = "{who: surgeon, does: Fill the chamber., act: fill-chamber}"
    lay = "{who: surgeon, does: Suture the main wound., act: suture-wound}"
    twice = read_text(_two_acts(f"{fill}, {lay}, {fill}"), "x.yaml")
    base = localised(below(), twice)
    assert base.library.local is not None
    for now, told in ((f"{lay}, {fill}, {fill}", "another order"), (f"{fill}, {lay}", "fewer")):
        before = base.library.pathways[PATHWAY].steps["suture"]
        after = localised(below(), read_text(_two_acts(now), "x.yaml"))
        step = after.library.pathways[PATHWAY].steps["suture"]
        assert any(told in each for each in what_is_gone(before, step))


def _two_acts(lines: str) -> str:
    stands = "steps / suture / do"
    text = HEAD + f"changes:\n  - {{change: {stands}, expects: X, to: [{lines}], because: Y.}}\n"
    (stale,) = localised(below(), read_text(text, "x.yaml")).files["x.yaml"].problems
    return text.replace("expects: X", f"expects: {stale.message.split('`')[3]}")
