"""Two open questions: what was seen and why it worried, then what it looked like to them.

Advocacy, then inquiry (a debriefing practice); the wording is this program's own.
"""

from __future__ import annotations

from chamberwise.engine.drill.aligning.align import How
from chamberwise.engine.drill.debriefing.debrief import Debrief
from chamberwise.engine.drill.measures.times import Timed
from chamberwise.exports.debrief.wording import Wording, clock, lowered
from chamberwise.exports.record.naming import sentence

QUIET = "Which moment were you least sure of, and what would have made it plainer?"
ASKING = "What was on your mind there?"
_WAYS = {
    How.LEFT_OUT: "it was left out",
    How.TOO_EARLY: "it came early",
    How.TOO_LATE: "it came late",
    How.AGAIN: "it was done once more",
    How.BESIDES: "it was done here",
}
KEEP = "What did you rely on that another team could take over?"


def questions(of: Debrief, words: Wording) -> tuple[str, str]:
    """Return both questions: about the first thing to talk about, and about what held it up."""
    both = [_of_harm(of, words), _of_departure(of, words)]
    found = [each for each in (both if of.talking.harm_leads else both[::-1]) if each]
    found += [each for each in (_of_time(of, words), _of_silence(of)) if each]
    first, second = [*found, QUIET, KEEP][:2]
    return first, second


def _of_harm(of: Debrief, words: Wording) -> str:
    harm = of.talking.harm
    if harm is None:
        return ""
    return (
        f"At {clock(harm.event.entry.at)} I saw “{lowered(words.event(harm.event))}”"
        f"{words.not_kept(harm.broken[0])}. It worried me: {lowered(harm.broken[0].rule.harm)} "
        "What did you see just then, and what would have told you?"
    )


def _of_departure(of: Debrief, words: Wording) -> str:
    departure = of.talking.departure
    if departure is None:
        return ""
    when = departure.event or departure.then
    at = f" at {clock(when.entry.at)}" if when else ""
    why = words.why(departure.doing) if departure.doing else ""
    because = f" The pathway has a reason for it: {lowered(why)}" if why else ""
    what = sentence(lowered(words.departed(departure)))
    return f"I noticed{at}, about “{what}”: {_WAYS[departure.how]}.{because} {ASKING}"


def _of_time(of: Debrief, words: Wording) -> str:
    late = next(iter(of.measured.gates.late), None)
    if late is None or late.done is None:
        return ""
    return (
        f"“{words.act(late.critical.act)}” came at {clock(late.done.at)}, later than the local "
        f"target of {_limit(late)}. What was in its way?"
    )


def _of_silence(of: Debrief) -> str:
    if not of.silences:
        return ""
    longest = max(of.silences, key=lambda each: each.until - each.since)
    return (
        f"From {clock(longest.since)} to {clock(longest.until)} nobody spoke or did anything that "
        "was written down. What was going on?"
    )


def _limit(timed: Timed) -> str:
    return f"{timed.critical.hard} s"
