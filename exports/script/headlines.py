"""A step in a few words, and where a way out of it leads."""

from __future__ import annotations

from chamberwise.engine.chart.fork import fork_words
from chamberwise.engine.chart.numbers import step_numbers
from chamberwise.engine.chart.ways import Ends, Way
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Line,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)

GO_ON = N_("go on")


def headline(library: Library, step: Step, pathway: PathwayId | None = None) -> str:
    """Return the short wording of a step; of a question its text.

    Of a branch it is what decides, where the pathway it belongs to is told.
    """
    match step:
        case Question():
            return step.question
        case Action():
            return step.short or (step.lines[0].text.rstrip(".") if step.lines else step.id)
        case Handover():
            return step.short or _("Change to: {title}").format(title=chart_title(library, step.to))
        case Outcome():
            return step.title
        case Branch():
            if step.short or pathway is None:
                return step.short or _("Decide by what is known")
            return fork_words(library, pathway, step)


def spoken(line: Line) -> str:
    """Return the words of a line; what is said aloud in quotation marks."""
    return f"“{line.text}”" if line.said_aloud else line.text


def chart_title(library: Library, pathway: PathwayId) -> str:
    """Return the title of a pathway that is handed over to."""
    return library.pathways[pathway].title if pathway in library.pathways else pathway


def way_end(
    library: Library, pathway: Pathway, line: tuple[StepId, ...], here: StepId, way: Way
) -> str:
    """Return where a way ends; with the number to go on at where only the full pathway has it."""
    step = pathway.steps[way.step]
    number = step_numbers(pathway)[way.step]
    place = line.index(way.step) if way.step in line else -1
    if place == line.index(here) + 1:
        is_asked = isinstance(step, Question)
        return (
            _(GO_ON)
            if is_asked
            else _("{headline} (see\u00a0{number})").format(
                headline=headline(library, step, pathway.id), number=number
            )
        )
    if isinstance(step, Branch):
        return _("{headline} (see\u00a0{number})").format(
            headline=headline(library, step, pathway.id), number=number
        )
    if way.ends is Ends.AT_ROW:
        turn = _("on to “{step}”") if place > line.index(here) else _("back to “{step}”")
        return turn.format(step=headline(library, step))
    name = headline(library, step)
    if way.ends is Ends.OFF_CHART:
        told = f"“{name}”" if isinstance(step, Question) else name
        return _("{headline} (see\u00a0{number})").format(headline=told, number=number)
    return name


def way_words(
    library: Library, pathway: Pathway, line: tuple[StepId, ...], here: StepId, way: Way
) -> str:
    """Return a way out in words: what is done first, then where it ends."""
    done = [headline(library, pathway.steps[name]) for name in way.done]
    end = way_end(library, pathway, line, here, way)
    return _("; then ").join([*done, end])
