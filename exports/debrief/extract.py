"""From a debrief to its content. Only this room's extracting files know the engine."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.drill.debriefing.debrief import Debrief
from chamberwise.engine.drill.debriefing.timeline import Said
from chamberwise.engine.drill.entries import Ending, Looked, Mode
from chamberwise.engine.drill.generate import DRAWN
from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.loops import Loop
from chamberwise.engine.drill.run import Run
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.exports.control.content import day
from chamberwise.exports.debrief.content import (
    FIRST_LESSER,
    FIRST_THAT_MATTERS,
    DebriefContent,
    FirstDeparture,
    LoopRow,
    RoleRow,
)
from chamberwise.exports.debrief.figures import figures, seconds
from chamberwise.exports.debrief.gates import gates
from chamberwise.exports.debrief.questions import questions
from chamberwise.exports.debrief.wording import Wording, clock, lowered
from chamberwise.exports.language.values import told
from chamberwise.exports.record.standing import marks

SHORT_DIGEST = 12
REHEARSED = N_("a rehearsal, which does not count")
ENDED = {
    Ending.OUTCOME: N_("the pathway is at its end"),
    Ending.STOP_RULE: N_("this part was settled"),
    Ending.TIME_OUT: N_("time was out"),
    Ending.GIVEN_UP: N_("by hand"),
    Ending.INTERRUPTED: N_("interrupted"),
}
NOT_OVER = N_("cut off before its end")
CUT_SHORT = N_("interrupted, so it does not count")


def debrief_content(library: Library, of: Debrief) -> DebriefContent:
    """Return the content of a debrief."""
    run, measured = of.measured.run, of.measured
    words = Wording(library, run.began.pathway, _signs(run))
    first = of.first_departure
    later = [each for each in measured.departures if not each.is_harmless and each is not first]
    return DebriefContent(
        title=library.pathways[run.began.pathway].title,
        head=tuple(_head(library, of, words)),
        result=_result(of),
        gates=gates(measured, words),
        talking=tuple(_talking(of, words)),
        sure_and_wrong=tuple(
            f"{clock(each.entry.at)} {words.event(each)}" for each in measured.confident_errors
        ),
        rows=tuple(
            RoleRow(words.duty(row.role), tuple(_timed(each, words) for each in row.said))
            for row in of.rows
        ),
        silences=tuple(
            _("{since} to {until}").format(since=clock(each.since), until=clock(each.until))
            for each in of.silences
        ),
        first_departure=_first(of, words),
        first_title=_(FIRST_THAT_MATTERS) if first and first.matters else _(FIRST_LESSER),
        departures=tuple(words.departure(each) for each in later if each.matters),
        lesser=tuple(words.departure(each) for each in later if not each.matters),
        chain=tuple(_chain(of, words)),
        loops=tuple(_loop(each, words) for each in measured.loops),
        figures=tuple(figures(measured, words)),
        questions=questions(of, words),
        system=tuple(_system(of)),
        take_away=_take_away(of, words),
        next_due=day(of.next_due) if of.next_due else "",
    )


def _signs(run: Run) -> dict[Looked, str]:
    """Return how what was seen showed itself, look by look."""
    return {e.entry: e.sign for e in run.events if isinstance(e.entry, Looked) and e.sign}


def _head(library: Library, of: Debrief, words: Wording) -> Iterator[tuple[str, str]]:
    began = of.measured.run.began
    status = marks(library.pathways[began.pathway], began.on.date())
    if status:
        yield (
            _("Status"),
            _("{status}: not approved for clinical use").format(status=", ".join(status)),
        )
    name = _("drawn") if began.scenario == DRAWN else began.scenario
    yield _("Drill"), _("{scenario}, seed {seed}").format(scenario=name, seed=began.seed)
    yield _("Mode"), told(began.mode.value)
    ended = of.measured.run.ended
    yield _("Ended"), _(ENDED[ended.how]) if ended else _(NOT_OVER)
    yield _("On"), day(began.on.date())
    yield (
        _("Pathway"),
        _("{pathway}, edition {edition}").format(pathway=began.pathway, edition=began.edition),
    )
    yield _("Content"), _("code {digest}").format(digest=began.digest[:SHORT_DIGEST])
    if began.roles:
        yield _("Roles"), ", ".join(words.duty(each) for each in began.roles)


def _result(of: Debrief) -> str:
    run = of.measured.run
    result = told(of.measured.gates.result.value)
    if run.counts:
        return result
    why = _(REHEARSED) if run.began.mode is Mode.REHEARSE else _(CUT_SHORT)
    return f"{result} ({why})"


def _timed(said: Said, words: Wording) -> str:
    return f"{clock(said.at)} {words.said(said)}"


def _talking(of: Debrief, words: Wording) -> Iterator[str]:
    talking = of.talking
    if talking.harm and talking.harm_leads:
        yield words.harm(talking.harm)
    if talking.departure:
        yield words.departure(talking.departure)
    if talking.harm and not talking.harm_leads:
        yield words.harm(talking.harm)
    if talking.best and talking.best.done:
        took = f", {seconds(talking.best.duration)}" if talking.best.duration else ""
        yield _("Well done: {act}, unaided{took}").format(
            act=lowered(words.act(talking.best.critical.act)), took=took
        )


def _first(of: Debrief, words: Wording) -> FirstDeparture | None:
    departure = of.first_departure
    if departure is None:
        return None
    event, doing = departure.event or departure.then, departure.doing
    if doing is not None:
        line, why, sources = words.line(doing), words.why(doing), words.sources_of(doing)
    else:
        line, why, sources = _("The pathway has nothing of the kind here."), "", ()
    return FirstDeparture(
        at=clock(event.entry.at) if event else _("at the end"),
        shown=of.shown.text if of.shown else "",
        done=words.departure(departure),
        line=line,
        why=why,
        sources=sources,
    )


def _chain(of: Debrief, words: Wording) -> Iterator[str]:
    for each in of.measured.run.consequences:
        yield f"{words.act(each.act)} → {each.cue} {each.lesson}".strip()


def _loop(loop: Loop, words: Wording) -> LoopRow:
    def when(at: int | None) -> str:
        return _("not") if at is None else clock(at)

    asked = loop.asked
    return LoopRow(
        asked.request, words.duty(asked.of), clock(asked.at), when(loop.read_back), when(loop.done)
    )


def _system(of: Debrief) -> Iterator[str]:
    titles = of.measured.run.injects
    for each in of.injected:
        yield f"{clock(each.at)} {titles.get(each.inject, each.inject)}"
    for words in of.not_understood:
        yield _("{clock} not understood by this program: “{typed}”").format(
            clock=clock(words.at), typed=words.typed
        )


def _take_away(of: Debrief, words: Wording) -> str:
    talking, gates_found = of.talking, of.measured.gates
    if talking.harm and talking.harm_leads:
        return talking.harm.broken[0].rule.instead
    if gates_found.left_out:
        left = gates_found.left_out[0].critical
        return f"{words.act(left.act)}. {left.why}".strip()
    if talking.departure and talking.departure.doing:
        return words.line(talking.departure.doing)
    if gates_found.late:
        return _("{act}, sooner.").format(act=words.act(gates_found.late[0].critical.act))
    if talking.best and of.measured.gates.result is Result.MET:
        return _("Keep it so: {act}.").format(act=lowered(words.act(talking.best.critical.act)))
    return _("Try it once more with another seed.")
