"""From what is known of somebody's runs to what is told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from chamberwise.engine.drill.coverage.guide import guide
from chamberwise.engine.drill.learning.course import Course
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.proportion import Share
from chamberwise.engine.drill.measures.surviving import Duration, median
from chamberwise.engine.drill.remembering.progress import ActProgress, Progress
from chamberwise.engine.drill.spacing.scheduling import BREAK, MOST_DAYS, RETENTION, Memory, recall
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Words
from chamberwise.exports.control.content import day
from chamberwise.exports.progress.content import (
    CANNOT_TELL,
    ActRow,
    CoursePlot,
    Month,
    ProgressContent,
)
from chamberwise.exports.record.naming import act_title
from chamberwise.exports.record.standing import marks

STRIP = 60
FEWEST = 5
"""Of fewer runs no figure is told."""
ORDER = (Result.MET, Result.LATE, Result.NOT_YET)


def progress_content(library: Library, of: Progress, signs: Sequence[str]) -> ProgressContent:
    """Return what is told; `signs` stand for met, late, and not yet."""
    sign = dict(zip(ORDER, signs, strict=True))
    pathway = library.pathways.get(of.pathway)
    words = library.words(of.pathway) if pathway else Words()
    return ProgressContent(
        title=pathway.title if pathway else of.pathway,
        pathway=of.pathway,
        asked_on=day(of.asked_on.date()),
        status=", ".join(marks(pathway, of.asked_on.date())) if pathway else "",
        runs=len(of.results),
        counted=tuple(_counted(of)),
        strip="".join(sign[each] for each in of.results[-STRIP:]),
        months=tuple(_months(of)),
        due=tuple(_due(of, words)),
        acts=tuple(_act(each, words) for each in of.acts),
        latest=len(of.latest),
        courses=tuple(_courses(of.course)) if of.results else (),
        current=tuple(_current(of, words)) if of.results else (),
        editions=tuple(_editions(of)),
        not_met=tuple(_met(library, of)),
    )


def _editions(of: Progress) -> Iterator[str]:
    for edition, runs in of.editions:
        yield f"edition {edition}: {runs} run{'s' * (runs != 1)}"


def _current(of: Progress, words: Words) -> Iterator[str]:
    found = of.current
    if found is None:
        return
    yield f"Not current: {'; '.join(found.lacks)}." if found.lacks else "Current."
    if found.latest is not None:
        yield f"Latest run that counts: {day(found.latest.date())}."
    if found.weakest is not None:
        likely = _of_ten(found.weakest, of.asked_on)
        yield f"Most likely forgotten: {_named(found.weakest, words)}, recall about {likely}."
    yield "It says what to rehearse, never what anybody can do."


def _met(library: Library, of: Progress) -> Iterator[str]:
    if of.pathway in library.pathways:
        every = guide(library, of.pathway).answers.keys()
        yield f"{len(of.met & every)} of {len(every)} answers of the pathway were met in drills."
        yield "`chamberwise drill --plan` shows which drills would show the others."


def _counted(of: Progress) -> Iterator[str]:
    for result in ORDER:
        count = sum(each is result for each in of.results)
        yield f"{result.value}: {share(Share(count, len(of.results)))}"


def share(of: Share) -> str:
    """Return a share with its limits, or that it says nothing yet.

    >>> share(Share(0, 0)), share(Share(1, 3))
    ('none', '1 of 3: cannot tell yet; about 18 more')
    """
    if not of.of:
        return "none"
    told = f"{of.count} of {of.of}"
    if of.of < FEWEST or not of.tells:
        return f"{told}: {CANNOT_TELL}; about {max(of.more_needed, FEWEST - of.of)} more"
    limits = of.exact
    return f"{told} (95 % limits: {round(limits.low * 100)} to {round(limits.high * 100)} of 100)"


def _months(of: Progress) -> Iterator[Month]:
    found: dict[str, dict[Result, int]] = {}
    for month, result, many in of.by_month:
        found.setdefault(month, {})[result] = many
    for month, counts in found.items():
        yield Month(month, tuple(counts.get(result, 0) for result in ORDER))


def _due(of: Progress, words: Words) -> Iterator[str]:
    due = of.due
    if due.warm_up:
        yield f"Over {BREAK.days // 7} weeks without a drill: begin with a short warm-up."
    for each in due.now:
        yield f"{_named(each, words)}: chance of recall now about {_of_ten(each, of.asked_on)}"
    if due.more:
        yield f"{due.more} more can wait until these are done."
    if not due.now:
        yield "Nothing is due."
    if due.next_on:
        yield f"Next: {day(due.next_on.date())}."
    yield f"By FSRS 6: retention {RETENTION}, {MOST_DAYS} days at most; advice, never a duty."


def _named(memory: Memory, words: Words) -> str:
    where = f" ({memory.context})" if memory.context else ""
    return f"{act_title(words, memory.act)}{where}"


def _of_ten(memory: Memory, now: datetime) -> str:
    return f"{round(recall(memory, now) * 10)} in 10"


def _act(of: ActProgress, words: Words) -> ActRow:
    return ActRow(act_title(words, of.act), share(of.left_out), share(of.helped), _median(of.times))


def _median(times: Sequence[Duration]) -> str:
    if len(times) < FEWEST:
        return CANNOT_TELL
    found = median(times)
    return "not done in half of them" if found is None else f"{found:.0f} s"


def _courses(of: Course) -> Iterator[CoursePlot]:
    until = of.until
    if of.has_signalled:
        said = (
            f"Signalled at run {len(of.towards)}: failures are rarer than {until.unacceptable:.0%}."
        )
    else:
        said = f"{CANNOT_TELL.capitalize()}; about {of.more_needed} more runs met in a row."
    yield CoursePlot(
        "LC-CUSUM: towards a signal",
        f"acceptable {until.acceptable:.0%}, unacceptable {until.unacceptable:.0%}, "
        f"signal at {until.signal}; a run fails that was not met",
        said,
        of.towards,
        ((until.signal, "signal"),),
    )
    if of.has_signalled:
        yield _since(of)


def _since(of: Course) -> CoursePlot:
    then = of.then
    said = (
        "It went up through its limit: look again at what is forgotten."
        if of.fell_back
        else ("No sign of falling back.")
    )
    return CoursePlot(
        "CUSUM: watched since",
        f"acceptable {then.acceptable:.0%}, unacceptable {then.unacceptable:.0%}, "
        f"errors {then.first_kind:.0%} and {then.second_kind:.0%}, step {then.step:.3f}",
        said,
        of.since,
        ((then.shown_unacceptable, "unacceptable"), (then.shown_acceptable, "acceptable")),
    )
