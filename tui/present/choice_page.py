"""A choice left to the unit as paragraphs."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.content import Cited
from chamberwise.tui.present.choices import NOT_SET, ChoiceView, PositionView
from chamberwise.tui.present.parts import Part, Tone
from chamberwise.tui.present.words import mark_word


def choice_parts(choice: ChoiceView, *, asked: bool = False, brief: bool = False) -> list[Part]:
    """Return what the unit has chosen or, until then, every position.

    Where the choice is `asked`, its answers say already what each position is. Where there is room
    for a `brief` telling only, the sources stand on the page of reasons.
    """
    if choice.chosen is not None:
        return list(_chosen(choice, choice.chosen))
    parts = [Part(choice.title, f"{_(NOT_SET)}: ", Tone.STRONG, Tone.MARK, hang=2)]
    if not (asked and brief):
        parts += [_position(each, asked=asked, brief=brief) for each in choice.positions]
    if choice.suggested:
        told = choice.suggested
        if choice.because and not brief:
            told = _("{suggested}, because: {because}").format(
                suggested=told, because=choice.because
            )
        parts.append(Part(told, "  " + _("Suggested:") + " ", hang=4))
    if brief:
        parts.append(Part(_("press w"), "  " + _("Sources of each:") + " "))
    return parts


def _chosen(choice: ChoiceView, chosen: PositionView) -> Iterator[Part]:
    by = _("set by this unit") if choice.by_the_unit else _("chosen in this walk")
    yield Part(f"{chosen.label} ({by})", f"{choice.title}: ", Tone.STRONG, hang=2)
    if chosen.says:
        yield Part(chosen.says, "  ")


def _position(position: PositionView, *, asked: bool, brief: bool) -> Part:
    says = "" if asked or not position.says else f" {position.says}"
    sources = "; ".join(f"{each.cite} [{mark_word(each.mark)}]" for each in position.sources)
    sources = sources or _("no source")
    told = "" if brief else f" ({sources})"
    return Part(f"{position.label}:{says}{told}", "  - ")


def cited_parts(sources: tuple[Cited, ...]) -> Iterator[Part]:
    """Yield each source with its mark in words, and where it is to be read."""
    for source in sources:
        yield Part(f"{source.cite} [{source.mark_words}]", "  - ")
        if source.where:
            yield Part(source.where, "    ")
