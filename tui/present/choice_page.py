"""A choice left to the unit as paragraphs."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.record.content import Cited
from chamberwise.tui.present.choices import NOT_SET, ChoiceView, PositionView
from chamberwise.tui.present.parts import Part, Tone


def choice_parts(choice: ChoiceView, *, asked: bool = False, brief: bool = False) -> list[Part]:
    """Return what the unit has chosen or, until then, every position.

    Where the choice is `asked`, its answers say already what each position is. Where there is room
    for a `brief` telling only, the sources stand on the page of reasons.
    """
    if choice.chosen is not None:
        return list(_chosen(choice, choice.chosen))
    parts = [Part(choice.title, f"{NOT_SET}: ", Tone.STRONG, Tone.MARK, hang=2)]
    if not (asked and brief):
        parts += [_position(each, asked=asked, brief=brief) for each in choice.positions]
    if choice.suggested:
        because = f", because: {choice.because}" if choice.because and not brief else ""
        parts.append(Part(f"{choice.suggested}{because}", "  Suggested: ", hang=4))
    if brief:
        parts.append(Part("press w", "  Sources of each: "))
    return parts


def _chosen(choice: ChoiceView, chosen: PositionView) -> Iterator[Part]:
    by = "set by this unit" if choice.by_the_unit else "chosen in this walk"
    yield Part(f"{chosen.label} ({by})", f"{choice.title}: ", Tone.STRONG, hang=2)
    if chosen.says:
        yield Part(chosen.says, "  ")


def _position(position: PositionView, *, asked: bool, brief: bool) -> Part:
    says = "" if asked or not position.says else f" {position.says}"
    sources = "; ".join(f"{each.cite} [{each.mark}]" for each in position.sources)
    told = "" if brief else f" ({sources or 'no source'})"
    return Part(f"{position.label}:{says}{told}", "  - ")


def cited_parts(sources: tuple[Cited, ...]) -> Iterator[Part]:
    """Yield each source with its mark in words, and where it is to be read."""
    for source in sources:
        yield Part(f"{source.cite} [{source.mark_words}]", "  - ")
        if source.where:
            yield Part(source.where, "    ")
