"""How doings, departures, harms and times are told in a debrief."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from chamberwise.engine.drill.aligning.align import Departure, How
from chamberwise.engine.drill.aligning.pathway_net import Doing
from chamberwise.engine.drill.debriefing.timeline import Said
from chamberwise.engine.drill.entries import (
    Asked,
    Did,
    Level,
    Looked,
    Milliseconds,
    ReadBack,
    Recognised,
    Wondered,
)
from chamberwise.engine.drill.measures.harm import Broken, Harmful
from chamberwise.engine.drill.run import Event
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Line, PathwayId, Question
from chamberwise.engine.model.words import About, FindingId, SourceId
from chamberwise.exports.language.joining import inside
from chamberwise.exports.record.cited import cited
from chamberwise.exports.record.naming import act_title, finding_title, line_voice, sentence

HELP = {
    Level.NUDGED: N_("after a nudge"),
    Level.MENU: N_("from a menu"),
    Level.TOLD: N_("once told"),
}


def clock(at: Milliseconds) -> str:
    """Return a time since the drill began as minutes and seconds.

    >>> clock(82_400)
    '1:22'
    """
    minutes, seconds = divmod(at // 1000, 60)
    return f"{minutes}:{seconds:02}"


def lowered(text: str) -> str:
    """Return text to stand within a sentence.

    >>> lowered("Withdraw the tip"), lowered("OVD first")
    ('withdraw the tip', 'OVD first')
    """
    return inside(text)


@dataclass(frozen=True, slots=True)
class Wording:
    """Words for what happened in a drill of one pathway."""

    library: Library
    pathway: PathwayId
    signs: Mapping[Looked, str] = field(default_factory=dict)
    """By look, how what was seen showed itself."""

    def act(self, act: str) -> str:
        """Return the title of an act."""
        return act_title(self.library.words(self.pathway), act)

    def finding(self, finding: FindingId) -> str:
        """Return the title of a finding."""
        return finding_title(self.library.words(self.pathway), finding)

    def look(self, looked: Looked) -> str:
        """Return a look with the sign that was seen; its label says what that means, afterwards."""
        known = self.library.words(self.pathway).findings.get(looked.finding)
        value = known.value(looked.saw or "") if known else None
        shown = lowered(value.label) if value else _("it could not be told")
        if sign := self.signs.get(looked, "").rstrip("."):
            shown = _("“{text}”").format(text=sign)
        return _("Look: {finding} ({shown})").format(
            finding=lowered(self.finding(looked.finding)), shown=shown
        )

    def event(self, event: Event) -> str:
        """Return what an event was."""
        entry = event.entry
        if isinstance(entry, Looked):
            return self.look(entry)
        return self.act(entry.act)

    def said(self, said: Said) -> str:
        """Return what somebody did or said, with the help there was."""
        match said:
            case Did():
                told = self.act(said.act)
            case Looked():
                told = self.look(said)
            case Recognised():
                told = (
                    _("Said aloud: “{typed}”").format(typed=said.typed)
                    if said.typed
                    else _("Said what it is")
                )
            case Wondered():
                told = _("Asked, not said: “{typed}”").format(typed=said.typed)
            case Asked():
                told = _("Asked {duty}: {request}").format(
                    duty=self.duty(said.of), request=said.request
                )
            case ReadBack():
                told = _("Read back: {request}").format(request=said.request)
            case _:
                told = _("Reported done: {request}").format(request=said.request)
        help_given = HELP.get(getattr(said, "level", Level.RECALLED))
        return f"{told} ({_(help_given)})" if help_given else told

    def duty(self, who: str) -> str:
        """Return the title of a duty."""
        duties = self.library.words(self.pathway).duties
        return duties[who].title if who in duties else who

    def doing(self, doing: Doing) -> str:
        """Return what the pathway has somebody do."""
        if doing.act is not None:
            return self.act(doing.act)
        return _("look: {finding}").format(finding=lowered(self.finding(doing.looks_at or "")))

    def line(self, doing: Doing) -> str:
        """Return the pathway's own line of a doing, with whose it is."""
        step = self.library.step(doing.place)
        if isinstance(step, Question):
            return _("Reader asks: {question}").format(question=step.question)
        line = self._line(doing)
        if line is None:
            return self.doing(doing)
        return f"{self.duty(line.who)} {line_voice(line)}: {line.text}"

    def _line(self, doing: Doing) -> Line | None:
        step = self.library.step(doing.place)
        lines: tuple[Line, ...] = getattr(step, "lines", ()) or getattr(step, "owed", ())
        return None if doing.line is None else lines[doing.line]

    def why(self, doing: Doing) -> str:
        """Return why the step of a doing is there."""
        return self.library.step(doing.place).why

    def sources_of(self, doing: Doing) -> tuple[str, ...]:
        """Return the sources of a doing's line, else of its step."""
        line, step = self._line(doing), self.library.step(doing.place)
        return self.sources((line.sources if line else ()) or step.sources)

    def sources(self, names: tuple[SourceId, ...]) -> tuple[str, ...]:
        """Return sources with how far each was followed."""
        found = cited(self.library.words(self.pathway), names)
        return tuple(f"{each.cite} [{each.mark_words}]" for each in found)

    def departure(self, departure: Departure) -> str:
        """Return a departure in a few words, with its time."""
        when = departure.event or departure.then
        at = f"{clock(when.entry.at)} " if when else ""
        return f"{at}{self.departed(departure)}: {self.how(departure)}"

    def departed(self, departure: Departure) -> str:
        """Return what was done, or left out."""
        if departure.event:
            return self.event(departure.event)
        return self.doing(departure.doing) if departure.doing else ""

    def how(self, departure: Departure) -> str:
        """Return in which way it departed, and where it belongs."""
        then, after = departure.then, departure.after
        before = _(", before “{event}”").format(event=lowered(self.event(then))) if then else ""
        behind = (
            _("it belongs after “{event}”").format(event=lowered(self.event(after)))
            if after
            else _("it belongs later")
        )
        if departure.lacked:
            acts = "; ".join(lowered(self.act(each)) for each in departure.lacked)
            behind = _("before it belongs: {acts}").format(acts=acts)
        elif departure.broke:
            behind = _("not kept: “{title}”").format(title=sentence(departure.broke[0].title))
        elif departure.ahead:
            behind = _("the pathway first has “{doing}”").format(
                doing=lowered(self.doing(departure.ahead))
            )
        match departure.how:
            case How.LEFT_OUT if departure.elsewhere:
                return _("left out here{before}; done at {clock}").format(
                    before=before, clock=clock(departure.elsewhere.entry.at)
                )
            case How.LEFT_OUT:
                return _("left out{before}").format(before=before)
            case How.TOO_EARLY:
                return _("too early; {behind}").format(behind=behind)
            case How.TOO_LATE:
                return _("too late; it belongs earlier{before}").format(before=before)
            case How.AGAIN:
                return _("done once more than the pathway has it")
            case How.BESIDES:
                return _("not in the pathway here")

    def harm(self, harmful: Harmful) -> str:
        """Return a harmful act with its time, the worst it may lead to, and the right way."""
        first, *others = harmful.broken
        more = [] if first.is_never_right else [each for each in others if not each.was_lucky]
        luck = _("; it was safe by luck, nobody had looked") if harmful.was_lucky else ""
        named = [_("“{text}”").format(text=sentence(each.rule.title)) for each in more]
        also = _(" Not kept either: {titles}.").format(titles="; ".join(named)) if named else ""
        rule = first.rule
        return _("{clock} {event}{not_kept}{luck}. {harm} Instead: {instead}{also}").format(
            clock=clock(harmful.event.entry.at),
            event=self.event(harmful.event),
            not_kept=self.not_kept(harmful),
            luck=luck,
            harm=rule.harm,
            instead=rule.instead,
            also=also,
        )

    def not_kept(self, harmful: Harmful) -> str:
        """Return which rule was not kept; nothing where the act itself says it."""
        broken = harmful.broken[0]
        if broken.is_never_right:
            return ""
        told = _(", and by then not kept: “{title}”")
        if self._does_something(harmful.event):
            told = _(", and not kept: “{title}”")
        return told.format(title=sentence(broken.rule.title))

    def _does_something(self, event: Event) -> bool:
        """Whether an event does something to the eye; words and looks only mark the time."""
        entry = event.entry
        act = self.library.words(self.pathway).acts.get(getattr(entry, "act", ""))
        if not isinstance(entry, Did) or act is None:
            return isinstance(entry, Did)
        touched = (*act.effects.stale, *(finding for finding, _values in act.effects.known))
        return any(self._is_of_the_eye(finding) for finding in touched)

    def _is_of_the_eye(self, finding: FindingId) -> bool:
        known = self.library.words(self.pathway).findings.get(finding)
        return known is not None and known.about is About.EYE

    def broken(self, harmful: Harmful) -> Iterator[str]:
        """Yield every rule that was broken with its sources."""
        for each in harmful.broken:
            yield self._rule(each)

    def _rule(self, broken: Broken) -> str:
        sources = "; ".join(self.sources(broken.rule.sources))
        return f"{sentence(broken.rule.title)} [{sources}]"
