"""From a pathway to what its wall chart says."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.chart.fork import fork_words
from chamberwise.engine.chart.labels import either
from chamberwise.engine.chart.main_line import wall_chart as chart_of
from chamberwise.engine.chart.numbers import step_numbers
from chamberwise.engine.chart.ways import Ends, Way, ways
from chamberwise.engine.graph.targets import targets
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway, WallChart
from chamberwise.engine.model.step import (
    Action,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    SignalWord,
    Step,
    StepId,
)
from chamberwise.engine.proof.rules import comes_back_by
from chamberwise.exports.control.content import NOT_SET
from chamberwise.exports.control.extract import phone_told
from chamberwise.exports.script.duties import tasks_by_duty, whom_to_call
from chamberwise.exports.wall.content import Down, First, Note, Row, Side, Sign, Stop, Task, Wall
from chamberwise.exports.wall.lying import places

MOST_NOTES = 4


def wall_chart(library: Library, pathway: PathwayId) -> Wall:
    """Return what the wall chart of a pathway says."""
    own = library.pathways[pathway]
    chart = chart_of(own)
    notes = tuple(_notes(own, (*chart.first, *chart.spine)))[:MOST_NOTES]
    others = {*_notes(own, tuple(own.steps))} - {*notes}
    calls, local = whom_to_call(library, own), library.local_to(pathway)
    return Wall(
        pathway=pathway,
        title=own.title,
        use_when=chart.use_when,
        first=tuple(_first(library, own, name) for name in chart.first),
        rows=tuple(_rows(library, own, chart.spine)),
        opening=_opening(library, own, chart),
        calls=tuple(act.title for act in calls),
        notes=notes,
        more_notes=len(others),
        steps=len(own.steps),
        numbers=tuple(phone_told(local, act.id) for act in calls),
        unit=local.unit if local else "",
        places=tuple(places(library, own, chart)),
    )


def headline(library: Library, pathway: Pathway, step: Step) -> str:
    """Return what a step is called on the chart."""
    match step:
        case Question():
            return step.short or step.question
        case Action():
            return step.short or step.lines[0].text
        case Handover():
            return step.says
        case Outcome():
            back = step.id in comes_back_by(library, pathway.id)
            return (
                _("Back to the chart you came from: {title}").format(title=step.title)
                if back
                else step.title
            )
    assert isinstance(step, Branch)
    return step.short or fork_words(library, pathway.id, step)


def _first(library: Library, pathway: Pathway, name: StepId) -> First:
    step = pathway.steps[name]
    assert isinstance(step, Action)
    tasks = (Task(*each) for each in tasks_by_duty(library, pathway, step))
    choices = tuple(_choice(library, pathway, each) for each in step.choices)
    return First(name, step.short or step.lines[0].text, tuple(tasks), choices)


def _choice(library: Library, pathway: Pathway, name: str) -> str:
    finding = library.words(pathway.id).findings[name]
    chosen = finding.value(finding.choice.chosen or "") if finding.choice else None
    return f"{finding.title}: {chosen.label if chosen else _(NOT_SET)}"


def _opening(library: Library, pathway: Pathway, chart: WallChart) -> Down | None:
    if not chart.first or not chart.spine:
        return None
    rows = frozenset(chart.spine)
    found = ways(library, pathway.id, chart.first[-1], rows)
    if any(way.ends is Ends.AT_ROW and not way.done for way in found):
        return None
    start = pathway.steps[chart.first[-1]]
    assert isinstance(start, Action)
    return Down("", step_numbers(pathway)[start.go_to])


def _rows(library: Library, pathway: Pathway, spine: tuple[StepId, ...]) -> Iterator[Row]:
    rows = {name: number for number, name in enumerate(spine, 1)}
    before = ""
    for name, number in rows.items():
        step = pathway.steps[name]
        following = spine[number] if number < len(spine) else None
        found = ways(library, pathway.id, name, frozenset(rows))
        down = _down(pathway, found, following, frozenset(rows))
        sides = tuple(_side(library, pathway, name, way, rows) for way in found if way is not down)
        onward = None if down is None else _onward(pathway, down)
        phase = pathway.phases.get(step.phase, step.phase)
        text = headline(library, pathway, step)
        opens, before = step.phase != before, step.phase
        yield Row(number, name, _sign(step), text, phase, sides, onward, opens)


def _down(
    pathway: Pathway, found: list[Way], following: StepId | None, rows: frozenset[StepId]
) -> Way | None:
    """Return the way that goes on down: to the next row at once, or over steps left out."""
    if following is None:
        return None
    for way in found:
        if way.ends is Ends.AT_ROW and not way.done and way.step == following:
            return way
    for way in found:
        is_off = way.ends is Ends.OFF_CHART and not way.done
        if is_off and following in _first_rows(pathway, way.step, rows):
            return way
    return None


def _first_rows(pathway: Pathway, start: StepId, rows: frozenset[StepId]) -> set[StepId]:
    """Return the rows that steps left out lead to."""
    met, waiting, found = {start}, [start], set[StepId]()
    while waiting:
        for target in targets(pathway.steps[waiting.pop()]):
            if target.step in rows:
                found.add(target.step)
            elif target.step not in met:
                met.add(target.step)
                waiting.append(target.step)
    return found


def _onward(pathway: Pathway, way: Way) -> Down:
    via = 0 if way.ends is Ends.AT_ROW else step_numbers(pathway)[way.step]
    return Down(either(way.labels), via)


def _side(
    library: Library, pathway: Pathway, name: StepId, way: Way, rows: dict[StepId, int]
) -> Side:
    done = tuple(headline(library, pathway, pathway.steps[each]) for each in way.done)
    stop = _stop(library, pathway, way, rows)
    return Side(either(way.labels), done, stop, f"{pathway.id}/{name}/{'|'.join(way.labels)}")


def _stop(library: Library, pathway: Pathway, way: Way, rows: dict[StepId, int]) -> Stop:
    step, number = pathway.steps[way.step], step_numbers(pathway)[way.step]
    if way.ends is Ends.AT_ROW:
        return Stop(None, "", row=rows[way.step])
    if isinstance(step, Handover):
        title = _("{title} chart").format(title=library.pathways[step.to].title)
        said = step.says.rstrip(".")
        text = title if "chart" in said else f"{said}: {title}"
        return Stop(Sign.CHART, text, full=number if step.on_return else 0)
    return Stop(_sign(step), headline(library, pathway, step), full=_unless_end(step, number))


def _unless_end(step: Step, number: int) -> int:
    return 0 if isinstance(step, Outcome) else number


def _sign(step: Step) -> Sign:
    match step:
        case Question() | Branch():
            return Sign.DECISION
        case Handover():
            return Sign.CHART
        case Outcome():
            return Sign.END
    return Sign.ACTION


def _notes(pathway: Pathway, names: tuple[StepId, ...]) -> Iterator[Note]:
    met: set[str] = set()
    for name in names:
        for caution in pathway.steps[name].cautions:
            if caution.signal is SignalWord.DANGER and caution.harm not in met:
                met.add(caution.harm)
                yield Note(caution.signal.value, caution.harm, caution.instead)
