"""Every source that is named exists and says how far it was followed."""

from __future__ import annotations

from chamberwise.engine.model.words import Mark

from tests.conformance.driver import library
from tests.conformance.told_texts import texts

WHY_NO_ADDRESS = ("address is left out because",)


def named() -> set[str]:
    return {source for text in texts() for source in text.sources}


def test_every_source_named_is_defined_with_a_mark_and_used() -> None:
    defined = library().shared.sources
    assert named() <= set(defined)
    assert set(defined) <= named(), "a source that nothing names"
    assert all(isinstance(source.mark, Mark) for source in defined.values())


def test_what_was_read_has_an_address_or_says_why_not() -> None:
    for source in library().shared.sources.values():
        if source.mark is Mark.READ and not source.where:
            assert any(why in source.note for why in WHY_NO_ADDRESS), source.id


def test_what_is_from_memory_is_not_passed_off_as_read() -> None:
    memory = {s.id for s in library().shared.sources.values() if s.mark is Mark.MEMORY}
    assert memory == {
        "osher-parameters",
        "chamber-lens-texts",
        "nice-2017",
        "pars-plana-teaching",
        "burk-2003",
        "capture-power-2013",
    }
    assert "from memory" in library().shared.sources["nice-2017"].note


def test_our_own_inference_and_common_practice_carry_no_address() -> None:
    for source in library().shared.sources.values():
        if source.mark in {Mark.DERIVED, Mark.COMMON_PRACTICE, Mark.LOCAL}:
            assert not source.where


def test_every_instruction_with_an_act_stands_beside_a_source() -> None:
    bare = [text for text in texts() if text.key == "act" and not text.sources]
    assert bare == []


def test_every_caution_names_its_own_sources() -> None:
    for text in texts():
        if text.key in {"danger", "warning", "caution", "notice"}:
            assert text.sources, text.place
