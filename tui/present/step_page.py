"""The step as paragraphs: the head that is always in view, and the body under it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import IntEnum

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.flow.holding import held
from chamberwise.exports.record.content import Owed
from chamberwise.tui.present.answers import AnswerView
from chamberwise.tui.present.cautions import CautionView
from chamberwise.tui.present.choice_page import choice_parts
from chamberwise.tui.present.figures import FiguresView
from chamberwise.tui.present.lines import DutyView
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.present.step_view import StepKind, StepView
from chamberwise.tui.present.words import signal_word

LEADS = {
    StepKind.QUESTION: N_("ASK"),
    StepKind.ACTION: N_("DO"),
    StepKind.HANDOVER: N_("HAND OVER"),
    StepKind.OUTCOME: N_("END"),
    StepKind.STUCK: N_("STOP"),
}
SIGNALS = {
    "danger": Tone.DANGER,
    "warning": Tone.WARNING,
    "caution": Tone.CAUTION,
    "notice": Tone.NOTICE,
}


def passed(view: StepView) -> list[Part]:
    """Return what was passed silently on the way, a calm line each."""
    return [Part(text, _("Before this:") + " ", Tone.CALM, hang=2) for text in view.passed]


def warnings(view: StepView) -> list[Part]:
    """Return the cautions; they are read before the step itself."""
    return [part for caution in view.cautions for part in _caution(caution)]


def head(view: StepView) -> list[Part]:
    """Return the question, the instruction or the headline, and why it is asked again."""
    lead = _("SAY") if _only_said(view) else _(LEADS[view.kind])
    parts = [Part(_headline(view), f"{lead}  ", Tone.STRONG, Tone.HEADING)]
    if view.asked_again:
        parts.append(Part(view.asked_again, "", Tone.CALM, hang=2))
    return parts


def _headline(view: StepView) -> str:
    count = sum(len(duty.instructions) for duty in view.duties)
    things = _("{count} things, in this order").format(count=count)
    if view.text:
        return f"{view.text}: {things}" if count > 1 else view.text
    single = _single(view)
    if single is None:
        return things if len(view.duties) > 1 else f"{view.duties[0].who}: {things}"
    text = single.instructions[0].text
    return f"{single.who}: “{text}”" if _only_said(view) else f"{single.who}: {text}"


def _single(view: StepView) -> DutyView | None:
    """Return the one instruction there is, where it can stand as the headline itself."""
    if view.text or len(view.duties) != 1 or len(view.duties[0].instructions) != 1:
        return None
    return view.duties[0]


def _only_said(view: StepView) -> bool:
    single = _single(view)
    return single is not None and single.instructions[0].said_aloud


class Density(IntEnum):
    """How much air the answers have."""

    ROOMY = 0
    USUAL = 1
    DENSE = 2


def body(view: StepView, density: Density = Density.USUAL) -> list[Part]:
    """Return what follows the head: the answers or the lines, what is owed, the details."""
    duties = () if _single(view) else view.duties
    brief = density is Density.DENSE
    blocks = [
        [part for answer in view.answers for part in _answer(answer, density)],
        [part for duty in duties for part in _duty(duty, brief=brief)],
        list(_owed(view.owed)),
        list(_details(view)),
        *(choice_parts(choice, asked=bool(view.answers), brief=brief) for choice in view.choices),
    ]
    return stacked(blocks)


def stacked(blocks: Iterable[list[Part]]) -> list[Part]:
    """Return blocks one under another with a gap between them; empty ones leave none."""
    parts: list[Part] = []
    for block in blocks:
        if block:
            parts += [GAP, *block] if parts else block
    return without_last_gap(parts)


def without_last_gap(parts: list[Part]) -> list[Part]:
    """Return parts up to the last one that says something."""
    while parts and parts[-1] == GAP:
        parts = parts[:-1]
    return parts


def _caution(caution: CautionView) -> Iterator[Part]:
    tone = SIGNALS[caution.signal]
    harm = caution.harm
    if caution.before:
        harm = _("Before “{act}”: {harm}").format(act=caution.before, harm=harm)
    yield Part(harm, f"{signal_word(caution.signal)}: ", Tone.PLAIN, tone, hang=2)
    yield Part(caution.instead, "  " + _("Instead:") + " ", Tone.PLAIN, Tone.STRONG)


def _answer(answer: AnswerView, density: Density) -> Iterator[Part]:
    if density is Density.DENSE and answer.sign:
        lead = f" {answer.key}  {answer.label}: "
        yield Part(answer.sign, lead, Tone.PLAIN, Tone.STRONG, answer.id, 4)
        return
    yield Part(answer.label, f" {answer.key}  ", Tone.STRONG, Tone.KEY, answer.id)
    if answer.sign:
        yield Part(answer.sign, "    ", Tone.PLAIN, answer=answer.id)
    if density is Density.ROOMY:
        yield GAP


def _duty(duty: DutyView, *, brief: bool) -> Iterator[Part]:
    if not brief:
        yield Part(duty.who, "", Tone.MARK)
    for instruction in duty.instructions:
        if instruction.said_aloud:
            said = _("{who} says:").format(who=duty.who) if brief else "  " + _("says aloud:")
            yield Part(f"“{instruction.text}”", f"{said} ", Tone.STRONG, hang=4)
        else:
            lead = f"{duty.who}: " if brief else "  " + _("does:") + " "
            yield Part(instruction.text, lead, Tone.STRONG, hang=4)


def _owed(items: tuple[Owed, ...]) -> Iterator[Part]:
    if items:
        yield Part(_("Owed now"), "", Tone.MARK)
    for item in items:
        by_when = f" ({item.by_when})" if item.by_when else ""
        yield Part(f"{item.who}: {item.what}{by_when}", "  [ ] ")


def _figures(figures: FiguresView) -> Iterator[Part]:
    yield Part(f"{figures.title} ({figures.command})", _("Work:") + " ")
    if figures.of:
        told = held("; ".join(figures.figures))
        yield Part(
            _("{figures}. Check by hand; never live care.").format(figures=told),
            f"  {figures.of}: ",
            hang=4,
        )


def _details(view: StepView) -> Iterator[Part]:
    for each in view.figures:
        yield from _figures(each)
    if view.kit:
        yield Part("; ".join(view.kit), _("To hand:") + " ")
    if view.time_target is not None:
        yield Part(
            _("Local target {seconds} s, not a published benchmark.").format(
                seconds=view.time_target
            )
        )
    if view.round is not None:
        times, most = view.round
        told = _("Round {times} of {most}.")
        if times == most:
            told = _("Round {times} of {most}; after this the pathway goes another way.")
        yield Part(told.format(times=times, most=most))
    if view.kind is StepKind.HANDOVER:
        yield Part(_("The walk goes on in that pathway."), "", Tone.CALM)
