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
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Words
from chamberwise.exports.control.content import day
from chamberwise.exports.language.joining import begun
from chamberwise.exports.language.values import told
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
        yield ngettext(
            "edition {edition}: {number} run", "edition {edition}: {number} runs", runs
        ).format(edition=edition, number=runs)


def _current(of: Progress, words: Words) -> Iterator[str]:
    found = of.current
    if found is None:
        return
    lacks = "; ".join(_(each) for each in found.lacks)
    yield _("Not current: {lacks}.").format(lacks=lacks) if lacks else _("Current.")
    if found.latest is not None:
        yield _("Latest run that counts: {day}.").format(day=day(found.latest.date()))
    if found.weakest is not None:
        yield _("Most likely forgotten: {act}, recall about {likely}.").format(
            act=_named(found.weakest, words), likely=_of_ten(found.weakest, of.asked_on)
        )
    yield _("It says what to rehearse, never what anybody can do.")


def _met(library: Library, of: Progress) -> Iterator[str]:
    if of.pathway in library.pathways:
        every = guide(library, of.pathway).answers.keys()
        yield _("{met} of {every} answers of the pathway were met in drills.").format(
            met=len(of.met & every), every=len(every)
        )
        yield _("`chamberwise drill {pathway} --plan` shows drills that would show others.").format(
            pathway=of.pathway
        )


def _counted(of: Progress) -> Iterator[str]:
    for result in ORDER:
        count = sum(each is result for each in of.results)
        yield f"{told(result.value)}: {share(Share(count, len(of.results)))}"


def share(of: Share) -> str:
    """Return a share with its limits, or that it says nothing yet.

    >>> share(Share(0, 0)), share(Share(1, 3))
    ('none', '1 of 3: cannot tell yet; about 18 more')
    """
    if not of.of:
        return _("none")
    said = _("{count} of {of}").format(count=of.count, of=of.of)
    if of.of < FEWEST or not of.tells:
        return _("{told}: {cannot_tell}; about {more} more").format(
            told=said, cannot_tell=_(CANNOT_TELL), more=max(of.more_needed, FEWEST - of.of)
        )
    limits = of.exact
    return _("{told} (95 % limits: {low} to {high} of 100)").format(
        told=said, low=round(limits.low * 100), high=round(limits.high * 100)
    )


def _months(of: Progress) -> Iterator[Month]:
    found: dict[str, dict[Result, int]] = {}
    for month, result, many in of.by_month:
        found.setdefault(month, {})[result] = many
    for month, counts in found.items():
        yield Month(month, tuple(counts.get(result, 0) for result in ORDER))


def _due(of: Progress, words: Words) -> Iterator[str]:
    due = of.due
    if due.warm_up:
        yield _("Over {number} weeks without a drill: begin with a short warm-up.").format(
            number=BREAK.days // 7
        )
    for each in due.now:
        yield _("{act}: chance of recall now about {of_ten}").format(
            act=_named(each, words), of_ten=_of_ten(each, of.asked_on)
        )
    if due.more:
        yield _("{more} more can wait until these are done.").format(more=due.more)
    if not due.now:
        yield _("Nothing is due.")
    if due.next_on:
        yield _("Next: {date}.").format(date=day(due.next_on.date()))
    yield _(
        "By FSRS 6: retention {retention}, {most_days} days at most; advice, never a duty."
    ).format(retention=decimal(str(RETENTION)), most_days=MOST_DAYS)


def _named(memory: Memory, words: Words) -> str:
    where = f" ({memory.context})" if memory.context else ""
    return f"{act_title(words, memory.act)}{where}"


def _of_ten(memory: Memory, now: datetime) -> str:
    return _("{number} in 10").format(number=round(recall(memory, now) * 10))


def _act(of: ActProgress, words: Words) -> ActRow:
    return ActRow(act_title(words, of.act), share(of.left_out), share(of.helped), _median(of.times))


def _median(times: Sequence[Duration]) -> str:
    if len(times) < FEWEST:
        return _(CANNOT_TELL)
    found = median(times)
    return _("not done in half of them") if found is None else f"{found:.0f} s"


def _courses(of: Course) -> Iterator[CoursePlot]:
    until = of.until
    if of.has_signalled:
        said = _("Signalled at run {count}: failures are rarer than {unacceptable}.").format(
            count=len(of.towards), unacceptable=decimal(f"{until.unacceptable:.0%}")
        )
    else:
        said = _("{cannot_tell}; about {more_needed} more runs met in a row.").format(
            cannot_tell=begun(_(CANNOT_TELL)), more_needed=of.more_needed
        )
    yield CoursePlot(
        _("LC-CUSUM: towards a signal"),
        _(
            "acceptable {acceptable}, unacceptable {unacceptable}, signal at {signal}; a run "
            "fails that was not met"
        ).format(
            acceptable=decimal(f"{until.acceptable:.0%}"),
            unacceptable=decimal(f"{until.unacceptable:.0%}"),
            signal=decimal(str(until.signal)),
        ),
        said,
        of.towards,
        ((until.signal, _("signal")),),
    )
    if of.has_signalled:
        yield _since(of)


def _since(of: Course) -> CoursePlot:
    then = of.then
    said = (
        _("It went up through its limit: look again at what is forgotten.")
        if of.fell_back
        else (_("No sign of falling back."))
    )
    return CoursePlot(
        _("CUSUM: watched since"),
        _(
            "acceptable {acceptable}, unacceptable {unacceptable}, errors {first_kind} and "
            "{second_kind}, step {step}"
        ).format(
            acceptable=decimal(f"{then.acceptable:.0%}"),
            unacceptable=decimal(f"{then.unacceptable:.0%}"),
            first_kind=decimal(f"{then.first_kind:.0%}"),
            second_kind=decimal(f"{then.second_kind:.0%}"),
            step=decimal(f"{then.step:.3f}"),
        ),
        said,
        of.since,
        ((then.shown_unacceptable, _("unacceptable")), (then.shown_acceptable, _("acceptable"))),
    )
