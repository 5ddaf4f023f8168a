"""The form of a calculation, and the list of calculations, as paragraphs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import STANDING, Calculation, Input
from chamberwise.engine.working.refusal import Refusal
from chamberwise.engine.working.working import Working
from chamberwise.exports.working.described import takes
from chamberwise.exports.working.text import text
from chamberwise.tui.present.parts import GAP, Part, Tone

MARKED, PLAIN = "> ", "  "
NOT_SAID = N_("not said")


def calculations_page(calculations: Sequence[Calculation], chosen: int) -> list[Part]:
    """Return every calculation with what it is for, the chosen one marked."""
    parts = []
    for place, each in enumerate(calculations):
        lead = MARKED if place == chosen else PLAIN
        tone = Tone.STRONG if place == chosen else Tone.PLAIN
        parts.append(Part(_(each.title), lead, tone, Tone.KEY, each.name))
        parts.append(Part(_(each.purpose), "    ", Tone.CALM, answer=each.name))
    return [*parts, GAP, Part(" ".join(_(each) for each in STANDING), "", Tone.CALM)]


def form_page(of: Calculation, typed: Mapping[str, str], chosen: int) -> list[Part]:
    """Return the inputs with what was typed, the chosen one marked and explained."""
    return [
        part
        for place, each in enumerate(of.inputs)
        for part in _input(each, typed, is_chosen=place == chosen)
    ]


def _input(of: Input, typed: Mapping[str, str], *, is_chosen: bool) -> Iterator[Part]:
    name = f"{of.name}, {of.symbol}" if of.symbol else of.name
    unsaid = _("{given} (assumed)").format(given=of.given) if of.given else _(NOT_SAID)
    value = typed.get(of.name, unsaid)
    if of.required and of.name not in typed:
        value = _("{value} (needed)").format(value=value)
    lead = MARKED if is_chosen else PLAIN
    tone = Tone.STRONG if is_chosen else Tone.PLAIN
    yield Part(f"{name}: {value}", lead, tone, Tone.KEY, of.name)
    if is_chosen:
        meaning = _(of.meaning)
        yield Part(f"{meaning[:1].upper()}{meaning[1:]}.", "    ")
        yield Part(takes(of), "    ", Tone.CALM)


def working_page(working: Working) -> list[Part]:
    """Return a working as it is printed; where there is less room, lines go on indented."""
    return [_line(each) for each in text(working).split("\n")]


def _line(line: str) -> Part:
    words = line.lstrip(" ")
    indent = len(line) - len(words)
    return Part(words, " " * indent, hang=indent + 2)


def refused_page(refusals: Sequence[Refusal]) -> list[Part]:
    """Return why nothing is worked."""
    parts = [Part(_("No figure is given:"), "", Tone.STRONG), GAP]
    for each in refusals:
        parts += [Part(str(each), "- ", Tone.PLAIN, Tone.KEY), GAP]
    return parts
