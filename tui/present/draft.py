"""What is shown of a file while it is written: problems, steps, rules, and the chart in words."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import Enum, StrEnum, auto
from functools import partial

from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.diagnostics.text import how_many, problem_text
from chamberwise.engine.graph.targets import Target, all_targets, targets
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Place
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import Action, Outcome, Step
from chamberwise.exports.record.naming import duty_title, line_voice, step_name
from chamberwise.exports.wall.extract import wall_chart
from chamberwise.exports.wall.text import text as wall_text
from chamberwise.tui.drafting import Draft
from chamberwise.tui.examining import Examined
from chamberwise.tui.present.checker import CheckerRow, checker_rows, in_short
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.present.words import signal_word

NOTHING_WRONG = N_("No problem found so far.")
NOT_LAID = N_("The sheet cannot be laid over its pathway yet; its problems say why.")
NO_CHART = N_("There is no chart to show: the file has no `wall chart:`, or is not whole yet.")
_TONES = {Severity.ERROR: Tone.DANGER, Severity.WARNING: Tone.WARNING}


class View(StrEnum):
    """What the rows are."""

    PROBLEMS = N_("problems")
    STEPS = N_("steps")
    RULES = N_("rules")
    CHART = N_("chart")


class Stage(Enum):
    """How far the last save has been looked at."""

    READ = auto()
    SEEN = auto()
    """As far as can be seen without looking at walks."""
    CHECKED = auto()


@dataclass(frozen=True, slots=True)
class DraftRow:
    """One row; `name` outlives a save, so that the choice stays."""

    name: str
    word: str
    text: str
    tell: Callable[[], Iterable[Part]]
    """What is told of it, put together only where it is asked for."""
    tone: Tone = Tone.PLAIN

    @property
    def told(self) -> tuple[Part, ...]:
        """What is told of it."""
        return tuple(self.tell())


def rows_of(view: View, draft: Draft, found: Examined) -> tuple[DraftRow, ...]:
    """Return the rows of a view."""
    match view:
        case View.PROBLEMS:
            return tuple(_problems(draft, found)) or (_nothing(_(NOTHING_WRONG)),)
        case View.STEPS:
            told = NOT_LAID if _is_not_laid(draft) else N_("No step could be read.")
            return tuple(_steps(draft, found)) or (_nothing(_(told)),)
        case View.RULES:
            rows = checker_rows(found, draft.loaded.texts)[1:]
            return tuple(map(_of_the_proof, rows)) or (_nothing(_("No rule binds it.")),)
        case View.CHART:
            return (
                DraftRow("chart", _("chart"), _("the wall chart in words"), partial(_chart, draft)),
            )


def _is_not_laid(draft: Draft) -> bool:
    return draft.base is not None and draft.pathway is None


def _nothing(text: str) -> DraftRow:
    return DraftRow("", "", text, tuple)


def _of_the_proof(row: CheckerRow) -> DraftRow:
    return DraftRow(row.text, row.word, row.text, lambda: row.told, row.tone)


def _problems(draft: Draft, found: Examined) -> Iterator[DraftRow]:
    for problem in found.problems:
        line = f"{problem.span.line}" if problem.span else "-"
        name = f"{problem.code} {problem.pointer}"
        tone = _TONES.get(problem.severity, Tone.PLAIN)
        text = f"{problem.severity.in_words}: {problem.message}"
        yield DraftRow(name, line, text, partial(_of_problem, draft, problem), tone)


def _of_problem(draft: Draft, problem: Problem) -> list[Part]:
    return [*_told(problem, draft), GAP, *around(draft, _step_of(problem))]


def _told(problem: Problem, draft: Draft) -> Iterator[Part]:
    for line in problem_text(problem, draft.loaded.texts).split("\n"):
        indent = len(line) - len(line.lstrip())
        yield Part(line[indent:], line[:indent])


def _step_of(problem: Problem) -> str:
    pointer = problem.pointer
    return str(pointer[1]) if len(pointer) > 1 and pointer[0] == "steps" else ""


def _steps(draft: Draft, found: Examined) -> Iterator[DraftRow]:
    pathway = draft.pathway
    for step in pathway.steps.values() if pathway else ():
        own = [each for each in found.problems if _step_of(each) == step.id]
        tone = min((_TONES.get(each.severity, Tone.PLAIN) for each in own), default=Tone.PLAIN)
        text = step.id
        if own:
            text = _("{step} ({count} to look at)").format(step=step.id, count=len(own))
        yield DraftRow(
            step.id, _line_of(draft, step), text, partial(_of_step, draft, step, own), tone
        )


def _of_step(draft: Draft, step: Step, problems: Iterable[Problem]) -> list[Part]:
    told = [*around(draft, step.id), GAP, *_said(draft, step)]
    for problem in problems:
        told += [GAP, *_told(problem, draft)]
    return told


def _line_of(draft: Draft, step: Step) -> str:
    """Return the line of a step in the file being written, or of what a sheet changes in it."""
    tree, at = (draft.source or draft.file).tree, ("steps", step.id)
    if draft.base is None or tree.source(at).file == draft.shown_as:
        span = tree.span(at, at_key=True)
    else:
        changed = next((each for each in tree.grafts if each[:2] == at), None)
        span = tree.span(changed) if changed else None
    return str(span.line) if span else "-"


def around(draft: Draft, name: str) -> list[Part]:
    """Return what leads to a step, the step, and where it leads."""
    pathway = draft.pathway
    if pathway is None or name not in pathway.steps:
        return []
    into = [(step, target) for step, target in all_targets(pathway) if target.step == name]
    parts = [Part(_("Around this step"), "", Tone.MARK)]
    if pathway.start == name:
        parts.append(Part(_("walks begin here"), "  "))
    for step, target in into:
        parts.append(Part(f"{step.id}{_on(target)} ->", "  ", hang=4))
    parts.append(Part(_named(draft, pathway, name), "> ", Tone.STRONG, hang=4))
    for target in targets(pathway.steps[name]):
        known = target.step in pathway.steps
        shown = (
            _named(draft, pathway, target.step)
            if known
            else _("{step} (not there)").format(step=target.step)
        )
        label = f"[{target.label}] " if target.label else ""
        parts.append(Part(shown, f"    {label}-> ", hang=8))
    return parts


def _on(target: Target) -> str:
    return f" [{target.label}]" if target.label else ""


def _named(draft: Draft, pathway: Pathway, name: str) -> str:
    try:
        return f"{name}: {step_name(draft.loaded.library, Place(pathway.id, name))}"
    except KeyError:  # a word it speaks of is not defined yet
        return name


def _said(draft: Draft, step: Step) -> Iterator[Part]:
    words = draft.pathway.words.over(draft.loaded.library.shared) if draft.pathway else None
    lines = step.lines if isinstance(step, Action) else ()
    lines = step.owed if isinstance(step, Outcome) else lines
    for caution in step.cautions:
        yield Part(f"{caution.harm} {caution.instead}", f"{signal_word(caution.signal)}: ", hang=2)
    for line in lines:
        who = duty_title(words, line.who) if words else line.who
        yield Part(line.text, f"{who} {line_voice(line)}: ", hang=2)
    if step.why:
        yield Part(step.why, _("Why:") + " ", hang=2)


def _chart(draft: Draft) -> Iterator[Part]:
    pathway, source = draft.pathway, draft.source
    if pathway is None or pathway.wall_chart is None or source is None or not source.is_whole:
        yield Part(_(NOT_LAID if _is_not_laid(draft) else NO_CHART))
        return
    try:
        chart = wall_text(wall_chart(draft.loaded.library, pathway.id))
    except KeyError as error:  # a name that nothing bears; the problems say which
        yield Part(_("The chart speaks of {error}, which is not there.").format(error=error))
        return
    for line in chart.splitlines():
        indent = len(line) - len(line.lstrip())
        yield Part(line[indent:], line[:indent])


def page(rows: tuple[DraftRow, ...], chosen: int) -> list[Part]:
    """Return rows as paragraphs, the chosen one marked."""
    widest = max((len(row.word) for row in rows), default=0)
    parts = []
    for at, row in enumerate(rows):
        lead = f"{'>' if at == chosen else ' '} {row.word:>{widest}}  "
        tone = Tone.STRONG if at == chosen else Tone.PLAIN
        parts.append(Part(row.text, lead, tone, row.tone, answer=str(at), hang=len(lead)))
    return parts


def state_of(found: Examined, stage: Stage) -> str:
    """Return how it stands, in a few words: problems, then the proof."""
    counts = [(sum(p.severity is kind for p in found.problems), kind) for kind in Severity]
    told = [how_many(count, kind) for count, kind in counts if count]
    if stage is Stage.CHECKED:
        problems = ", ".join(told) or _("clean")
        return f"{problems}; " + _("proof: {state}").format(state=in_short(found))
    problems = ", ".join(told) or _("no error yet")
    rest = _("walks, proof to come") if stage is Stage.SEEN else _("checking")
    return f"{problems}; {rest}"
