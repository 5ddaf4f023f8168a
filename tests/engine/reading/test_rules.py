"""Rules as they are read: every pattern, scope and key, and every way of writing one amiss."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.rule import Extent, Happening, HarmSeverity, Pattern, Rule, Scope
from chamberwise.engine.reading.form_rules import HAPPENING, ROLES, SCOPED
from chamberwise.engine.reading.library import File, assemble, read_text

HEAD = "vocabulary: Rules\nrules:\n  one:\n    title: One\n"
TAIL = "    harm: A harm.\n    severity: minor\n    instead: Stop.\n    sources: [a, b]\n"
FILL, CUT = (Happening(acts=("fill",)),), (Happening(acts=("cut",)),)


def read(pattern: str, tail: str = TAIL) -> File:
    body = "".join(f"    {line}\n" for line in pattern.splitlines())
    return read_text(HEAD + body + tail, "rules.yaml")


def rules(file: File) -> Mapping[str, Rule]:
    assert file.words
    return file.words.rules


def the_rule(pattern: str) -> Rule:
    file = read(pattern)
    assert [each.message for each in file.problems] == []
    return rules(file)["one"]


@pytest.mark.parametrize("pattern", Pattern)
def test_every_pattern_is_read_with_its_roles(pattern: Pattern) -> None:
    of, by = ROLES[pattern]
    keys = [f"{of}: fill", *([f"{by}: {{act: cut}}"] if by else [])]
    keys += ["at most: 3"] if pattern is Pattern.BOUNDED_EXISTENCE else []
    one = the_rule(f"{pattern}: {{{', '.join(keys)}}}")
    assert (one.pattern, one.of, one.by) == (pattern, FILL, CUT if by else ())
    assert one.times == (3 if pattern is Pattern.BOUNDED_EXISTENCE else 0)
    assert (one.title, one.harm, one.instead) == ("One", "A harm.", "Stop.")
    assert (one.severity, one.sources) == (HarmSeverity.MINOR, ("a", "b"))


@pytest.mark.parametrize(
    ("written", "scope"),
    [
        ("before: cut", Scope(Extent.BEFORE, (), CUT)),
        ("after: cut", Scope(Extent.AFTER, CUT)),
        ("after each: cut", Scope(Extent.AFTER_UNTIL, CUT)),
        ("after each: cut, until: fill", Scope(Extent.AFTER_UNTIL, CUT, FILL)),
        ("between: cut, and: fill", Scope(Extent.BETWEEN, CUT, FILL)),
    ],
)
def test_every_scope_is_read(written: str, scope: Scope) -> None:
    assert the_rule(f"absence: {{never: fill}}\nscope: {{{written}}}").scope == scope


def test_without_a_scope_it_holds_globally() -> None:
    assert the_rule("absence: {never: fill}").scope == Scope(Extent.GLOBALLY)


@pytest.mark.parametrize("key", HAPPENING.keys)
def test_every_key_of_a_happening_is_read_into_a_place_of_its_own(key: str) -> None:
    is_condition = key in ("surely", "possibly", "unless surely", "unless possibly")
    said = "{a: x, b: [y, z]}" if is_condition else "[a, b]"
    value = Condition((("a", ("x",)), ("b", ("y", "z")))) if is_condition else ("a", "b")
    field = {"act": "acts", "outcome": "outcomes"}.get(key, key.replace(" ", "_"))
    (happening,) = the_rule(f"absence: {{never: {{{key}: {said}}}}}").of
    assert happening == Happening(**{field: value})  # type: ignore[arg-type]


@pytest.mark.parametrize("name", ["act: a", "act: [a]"])
def test_one_name_is_as_good_as_a_list_of_one(name: str) -> None:
    assert the_rule(f"absence: {{never: {{{name}}}}}").of == (Happening(acts=("a",)),)


def test_of_a_list_of_happenings_one_suffices() -> None:
    one = the_rule("absence:\n  never:\n    - {act: fill, by: surgeon}\n    - asks: depth")
    assert one.of == (Happening(acts=("fill",), by=("surgeon",)), Happening(asks=("depth",)))


@pytest.mark.parametrize(
    ("written", "slug", "part"),
    [
        ("", "missing-key", "a rule has no `absence` or"),
        ("absence:", "wrong-kind", "takes the keys of an absence rule"),
        ("absence: fill", "wrong-kind", "takes the keys of an absence rule"),
        ("absence: [fill]", "wrong-kind", "takes the keys of an absence rule"),
        ("absence: {}", "missing-key", "an absence rule has no `never`"),
        ("absence: {never: }", "wrong-value", "a name"),
        ("absence: {never: Fill It}", "wrong-value", "a name"),
        ("absence: {never: {}}", "wrong-value", "nothing stands in `never`"),
        ("absence: {never: []}", "wrong-value", "nothing stands in `never`"),
        ("absence: {never: [{}]}", "wrong-value", "nothing stands in this place"),
        ("absence: {never: [fill]}", "wrong-kind", "this place takes the keys of a happening"),
        ("absence: {never: [{act: fill}, {act: [a, ]}, 3]}", "wrong-kind", "takes the keys of"),
        ("absence: {never: {act: []}}", "wrong-value", "nothing stands in `act`"),
        ("absence: {never: {surely: {}}}", "wrong-value", "nothing stands in `surely`"),
        ("absence: {never: {acts: fill}}", "unknown-key", "`acts` is no key of a happening"),
        ("absence: {always: fill}", "unknown-key", "`always` is no key of an absence rule"),
        ("absense: {never: fill}", "unknown-key", "`absense` is no key of a rule"),
        ("absence: {never: fill, comes: cut}", "unknown-key", "`comes` is no key"),
        ("precedence: {before: fill}", "missing-key", "a precedence rule has no `comes`"),
        ("response: {comes: fill}", "missing-key", "a response rule has no `after`"),
        ("bounded existence: {of: fill}", "missing-key", "has no `at most`"),
        ("bounded existence: {of: fill, at most: 0}", "wrong-value", "takes a"),
        ("bounded existence: {of: fill, at most: many}", "wrong-value", "takes a"),
        ("absence: {never: fill, at most: 2}", "unknown-key", "`at most` is no key"),
        ("absence: {never: fill}\nexistence: {some time: cut}", "unknown-key", "in one place"),
        ("absence: {never: fill}\nabsence: {never: cut}", "duplicate-key", "`absence`"),
    ],
)
def test_a_rule_whose_pattern_cannot_be_read_is_left_out_and_told(
    written: str, slug: str, part: str
) -> None:
    file = read(written)
    assert (slug, True) in [(each.code, part in each.message) for each in file.problems]
    assert rules(file) == {}


def test_a_list_of_bare_acts_is_told_how_to_write_it() -> None:
    found = read("absence: {never: [fill, cut]}").problems
    assert [each.advice for each in found] == ["Write `{act: fill}`.", "Write `{act: cut}`."]


@pytest.mark.parametrize(
    ("scope", "slug", "part"),
    [
        ("fill", "wrong-kind", "takes the keys of a scope"),
        ("{}", "missing-key", "a scope has no `before` or"),
        ("{until: fill}", "missing-key", "a scope has no `before` or"),
        ("{and: fill}", "missing-key", "`and` without `between`"),
        ("{between: fill}", "missing-key", "`between` without `and`"),
        ("{after: fill, until: cut}", "missing-key", "`until` without `after each`"),
        ("{before: fill, after: cut}", "unknown-key", "in one place"),
        ("{before: {}}", "wrong-value", "nothing stands in `before`"),
        ("{globally: yes}", "unknown-key", "`globally` is no key of a scope"),
    ],
)
def test_a_scope_that_cannot_be_read_is_told(scope: str, slug: str, part: str) -> None:
    file = read(f"absence: {{never: fill}}\nscope: {scope}")
    assert (slug, True) in [(each.code, part in each.message) for each in file.problems]
    assert rules(file) == {}


@pytest.mark.parametrize("pattern", [each for each in Pattern if each not in SCOPED])
def test_a_pattern_of_the_whole_walk_takes_no_scope(pattern: Pattern) -> None:
    of, by = ROLES[pattern]
    file = read(f"{pattern}: {{{of}: fill, {by}: cut}}\nscope: {{after: cut}}")
    assert [each.code for each in file.problems] == ["unknown-key"]
    assert "`scope` stands only beside `absence`" in file.problems[0].message
    assert rules(file) == {}


@pytest.mark.parametrize("key", ["title", "harm", "severity", "instead"])
def test_a_rule_says_what_it_is_and_what_it_stands_against(key: str) -> None:
    lines = (HEAD + "    absence: {never: fill}\n" + TAIL).splitlines(keepends=True)
    file = read_text("".join(line for line in lines if f"    {key}:" not in line), "rules.yaml")
    (problem,) = file.problems
    assert rules(file) == {}
    assert (problem.code, problem.message) == ("missing-key", f"a rule has no `{key}`")


def test_a_severity_is_one_of_five() -> None:
    file = read("absence: {never: fill}", TAIL.replace("minor", "awful"))
    assert [each.code for each in file.problems] == ["wrong-value"]
    assert all(level in file.problems[0].advice for level in HarmSeverity)


def test_a_rule_is_defined_once_among_vocabulary_files() -> None:
    text = HEAD + "    absence: {never: fill}\n" + TAIL
    loaded = assemble([read_text(text, "one.yaml"), read_text(text, "two.yaml")])
    assert [each.code for each in loaded.files["two.yaml"].problems] == ["duplicate-key"]
    assert list(loaded.library.shared.rules) == ["one"]
