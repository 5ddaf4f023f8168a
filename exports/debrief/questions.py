"""Two open questions: what was seen and why it worried, then what it looked like to them.

Advocacy, then inquiry (a debriefing practice); the wording is this program's own.
"""

from __future__ import annotations

from chamberwise.engine.drill.aligning.align import How
from chamberwise.engine.drill.debriefing.debrief import Debrief
from chamberwise.engine.drill.measures.times import Timed
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.debrief.wording import Wording, clock, lowered
from chamberwise.exports.record.naming import sentence

QUIET = N_("Which moment were you least sure of, and what would have made it plainer?")
ASKING = N_("What was on your mind there?")
_WAYS = {
    How.LEFT_OUT: N_("it was left out"),
    How.TOO_EARLY: N_("it came early"),
    How.TOO_LATE: N_("it came late"),
    How.AGAIN: N_("it was done once more"),
    How.BESIDES: N_("it was done here"),
}
LEFT_OUT_HERE = N_("it was left out at that place")
KEEP = N_("What did you rely on that another team could take over?")


def questions(of: Debrief, words: Wording) -> tuple[str, str]:
    """Return both questions: about the first thing to talk about, and about what held it up."""
    both = [_of_harm(of, words), _of_departure(of, words)]
    found = [each for each in (both if of.talking.harm_leads else both[::-1]) if each]
    found += [each for each in (_of_time(of, words), _of_silence(of)) if each]
    first, second = [*found, _(QUIET), _(KEEP)][:2]
    return first, second


def _of_harm(of: Debrief, words: Wording) -> str:
    harm = of.talking.harm
    if harm is None:
        return ""
    return _(
        "At {clock} I saw “{event}”{not_kept}. It worried me: {harm} What did you see just "
        "then, and what would have told you?"
    ).format(
        clock=clock(harm.event.entry.at),
        event=lowered(words.event(harm.event)),
        not_kept=words.not_kept(harm),
        harm=lowered(harm.broken[0].rule.harm),
    )


def _of_departure(of: Debrief, words: Wording) -> str:
    departure = of.talking.departure
    if departure is None:
        return ""
    when = departure.event or departure.then
    at = _(" at {clock}").format(clock=clock(when.entry.at)) if when else ""
    why = words.why(departure.doing) if departure.doing else ""
    because = _(" The step is there for a reason: {why}").format(why=lowered(why)) if why else ""
    what = sentence(lowered(words.departed(departure)))
    how = LEFT_OUT_HERE if departure.elsewhere else _WAYS[departure.how]
    return _("I noticed{at}, about “{what}”: {how}.{because} {asking}").format(
        at=at, what=what, how=_(how), because=because, asking=_(ASKING)
    )


def _of_time(of: Debrief, words: Wording) -> str:
    late = next(iter(of.measured.gates.late), None)
    if late is None or late.done is None:
        return ""
    return _(
        "“{act}” came at {clock}, later than the local target of {limit}. What was in its way?"
    ).format(act=words.act(late.critical.act), clock=clock(late.done.at), limit=_limit(late))


def _of_silence(of: Debrief) -> str:
    if not of.silences:
        return ""
    longest = max(of.silences, key=lambda each: each.until - each.since)
    return _(
        "From {since} to {until} nobody spoke or did anything that was written down. What "
        "was going on?"
    ).format(since=clock(longest.since), until=clock(longest.until))


def _limit(timed: Timed) -> str:
    return f"{timed.critical.hard} s"
