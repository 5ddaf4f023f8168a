"""What bears another name everywhere is the same thing; a name that means another thing is not."""

from __future__ import annotations

import random
from itertools import combinations

import pytest
from chamberwise.engine.comparing.change import Change, Kind, Rating

from tests.engine.comparing.shipped import changes_between, shipped, text_of, with_text
from tests.support.renaming import Id, every_id, renamed
from tests.support.thorough import cases

EVERY = tuple(every_id(shipped()))
VIT = "anterior-vitrectomy.yaml"


def one_of_each_table() -> list[Id]:
    """Return a name of each table, and one inside another, drawn by a seed that stays."""
    drawn = random.Random(7)
    tables = {(each.at[0], len(each.at), each.at[2:3]) for each in EVERY}
    return [
        drawn.choice([each for each in EVERY if (each.at[0], len(each.at), each.at[2:3]) == table])
        for table in sorted(tables)
    ]


def some_pairs() -> list[tuple[Id, Id]]:
    drawn = random.Random(8)
    by_table = {each.at[0]: each for each in reversed(EVERY)}
    found = []
    for each in by_table.values():
        like = [other for other in EVERY if (other.sort, other.file) == (each.sort, each.file)]
        one, other = drawn.sample(like, 2)
        found.append((one, other))
    return found


def every_pair() -> list[tuple[Id, Id]]:
    """Return pairs of each sort, a hundred at most of one."""
    drawn = random.Random(9)
    found = []
    for sort, file in dict.fromkeys((each.sort, each.file) for each in EVERY):
        like = [each for each in EVERY if (each.sort, each.file) == (sort, file)]
        pairs = [*combinations(like, 2)]
        found += drawn.sample(pairs, min(100, len(pairs)))
    return found


def named(each: Id) -> str:
    return "/".join(map(str, each.at))


@pytest.mark.parametrize("each", cases(one_of_each_table(), EVERY), ids=named)
def test_one_name_exchanged_everywhere_is_one_editorial_change(each: Id) -> None:
    now = f"{each.name}-anew"
    (found,) = changes_between(shipped(), renamed(shipped(), {each: now}))
    assert (found.kind, found.rating) == (Kind.RENAMED, Rating.EDITORIAL)
    assert (found.was, found.now) == (each.name, now)


@pytest.mark.parametrize("pair", cases(some_pairs(), every_pair()), ids=lambda p: named(p[0]))
def test_two_names_exchanged_are_never_a_matter_of_names(pair: tuple[Id, Id]) -> None:
    one, other = pair
    new = renamed(shipped(), {one: other.name, other: one.name})
    found = changes_between(shipped(), new)
    assert found[0].rating is Rating.SAFETY
    reused = [each for each in found if each.kind is Kind.REUSED]
    assert reused
    assert not any(each.kind is Kind.RENAMED for each in found)


def test_a_name_that_something_elsewhere_bore_is_no_other_name() -> None:
    """A shared choice and one of a pathway's own change names: two files, each alone harmless."""
    shared, own = (
        next(each for each in EVERY if each.name == name)
        for name in ("sulcus-power-table", "stain-timing")
    )
    new = renamed(shipped(), {shared: own.name, own: shared.name})
    found = changes_between(shipped(), new)
    assert found[0].rating is Rating.SAFETY
    assert not any(each.kind is Kind.RENAMED for each in found)


def test_several_names_exchanged_at_once_are_each_told() -> None:
    ids = one_of_each_table()
    found = changes_between(shipped(), renamed(shipped(), {each: f"x-{each.name}" for each in ids}))
    assert {each.kind for each in found} == {Kind.RENAMED}
    assert sorted(each.was for each in found) == sorted(each.name for each in ids)


def edited(*exchanged: tuple[str, str]) -> tuple[Change, ...]:
    """Return the changes of a pathway with an act of its own, put in the place of a shared one."""
    text = text_of(VIT)
    for was, now in exchanged:
        assert was in text
        text = text.replace(was, now)
    return changes_between(shipped(), with_text(VIT, text))


def test_a_step_renamed_and_reworded_is_both() -> None:
    names = ("  hold-vitreous-back:\n", "  keep-it-back:\n")
    arrows = ("at-tear: hold-vitreous-back\n", "at-tear: keep-it-back\n")
    dose = (
        "Lay dispersive viscoelastic over the tear., act: hold-vitreous-back}\n      - {who: scrub",
        "Lay 2 mL of viscoelastic over the tear., act: hold-vitreous-back}\n      - {who: scrub",
    )
    found = edited(names, arrows, dose)
    assert {each.kind for each in found} == {Kind.LINE, Kind.RENAMED}
    assert found[0].rating is Rating.SAFETY


def test_what_is_used_in_the_place_of_another_thing_is_not_that_thing() -> None:
    """Every use of an act goes over to a new one: it is gone, and the new one is no other name."""
    acts = text_of("acts.yaml")
    said = "  set-pedal:\n    title: Set the foot pedal\n"
    assert said in acts
    acts = acts.replace(said, "  press-pedal:\n    title: Press the foot pedal down\n")
    found = changes_between(shipped(), with_text("acts.yaml", acts))
    assert not any(each.kind is Kind.RENAMED for each in found)
    assert [each.rating for each in found[:2]] == [Rating.SAFETY] * 2


def test_a_name_passed_on_is_told_as_the_danger_it_is() -> None:
    """One act takes the name of another, which gets a new one: the old name now withdraws."""
    by_name = {each.name: each for each in EVERY if each.at[0] == "acts"}
    passed_on = {by_name["set-pedal"]: "turn-pedal", by_name["withdraw-tip"]: "set-pedal"}
    found = changes_between(shipped(), renamed(shipped(), passed_on))
    (reused,) = [each for each in found if each.kind is Kind.REUSED]
    assert (reused.at.name, reused.rating) == ("set-pedal", Rating.SAFETY)
    assert "withdraw-tip" in reused.why
