"""What a drill shows before it begins and once it is over, in line mode and on the screen."""

from __future__ import annotations

from chamberwise.engine.drill.entries import (
    Did,
    Ending,
    Level,
    Milliseconds,
    Mode,
    NotUnderstood,
    Recognised,
)
from chamberwise.engine.drill.fold import Drill, as_run
from chamberwise.engine.drill.judging import broken_rules
from chamberwise.engine.drill.run import Run
from chamberwise.tui.present.parts import GAP, Part, Tone

WHAT_FOR = (
    "Rehearses recall, sequence, the timing of decisions and team roles; never operative skill."
)
LOCAL = "Times are local targets: placeholders, no published benchmark."
HOW_TO = "Say what you do in your own words. ? helps, ?? lists what else may be typed."
MODES = {
    Mode.REHEARSE: "Rehearsal: you may go back, and nothing counts.",
    Mode.RUN: "Run: there is no way back, and it counts.",
}
ENDINGS = {
    Ending.OUTCOME: "The pathway is at its end.",
    Ending.STOP_RULE: "The drill ends here: this part is settled.",
    Ending.TIME_OUT: "Time is out.",
    Ending.GIVEN_UP: "The drill was ended.",
    Ending.INTERRUPTED: "The drill was interrupted.",
}


def opening(drill: Drill, mode: Mode) -> list[Part]:
    """Return the brief: what the team knows before anything happens."""
    scenario = drill.scenario
    title = f": {scenario.title}" if scenario.title else ""
    return [
        Part(f"Drill{title}. Seed {scenario.seed}.", tone=Tone.HEADING),
        Part(f"{WHAT_FOR} {MODES[mode]}", tone=Tone.CALM),
        GAP,
        Part("Brief", tone=Tone.HEADING),
        *(Part(text, "  ") for text in scenario.brief),
        Part(scenario.so_far, "  "),
        GAP,
        Part(HOW_TO, tone=Tone.CALM),
    ]


def ending(drill: Drill) -> list[Part]:
    """Return what a drill came to, act by act: the harm first, never a mark."""
    run = as_run(drill)
    how = ENDINGS[run.ended.how] if run.ended else "The drill is not over."
    return [
        Part(how, tone=Tone.HEADING),
        *_recognised(run),
        *_listed("What it led to", _led_to(drill, run)),
        *_listed("Safety rules broken", _broken(drill)),
        *_listed("Left out", _left_out(drill, run)),
        *_listed("Done with help", _with_help(drill, run)),
        *_listed("Not understood, kept for the list of phrases", _not_understood(run)),
        GAP,
        Part(f"{WHAT_FOR} {LOCAL}", tone=Tone.CALM),
        Part(
            f"Seed {drill.scenario.seed}, scenario {drill.scenario.name}, "
            f"{run.began.pathway} edition {run.began.edition}, {run.began.mode}.",
            tone=Tone.CALM,
        ),
    ]


def _recognised(run: Run) -> list[Part]:
    if run.first_cue is None:
        return []
    if run.recognised is None:
        return [Part("Nobody said what it was.")]
    seconds = (run.recognised.at - run.first_cue) / 1000
    return [Part(f"Said what it was {seconds:.0f} s after the first cue.")]


def _listed(title: str, texts: list[str]) -> list[Part]:
    return (
        [Part(title, tone=Tone.HEADING), *(Part(text, "  - ") for text in texts)] if texts else []
    )


def _led_to(drill: Drill, run: Run) -> list[str]:
    scenario = drill.scenario
    texts = []
    for each in run.consequences:
        harm = scenario.harms.get(each.act)
        instead = f" Instead: {harm.instead}" if harm else ""
        texts.append(f"{scenario.title_of(each.act)}. {each.cue} {each.lesson}{instead}")
    return texts


def _broken(drill: Drill) -> list[str]:
    scenario = drill.scenario
    return [
        f"{each.rule.title}"
        + (f" (at: {scenario.title_of(each.act)})" if each.act else "")
        + f". {each.rule.harm} {each.rule.instead}"
        for each in broken_rules(scenario, drill.standing)
    ]


def _left_out(drill: Drill, run: Run) -> list[str]:
    done = {event.entry.act for event in run.events if isinstance(event.entry, Did)}
    return [
        f"{drill.scenario.title_of(each.act)}. {each.why}"
        for each in run.critical
        if each.act not in done
    ]


def _with_help(drill: Drill, run: Run) -> list[str]:
    words = {Level.NUDGED: "after a nudge", Level.MENU: "from the menu", Level.TOLD: "told"}
    texts = [
        f"{drill.scenario.title_of(event.entry.act)}: {words[event.entry.level]}"
        for event in run.events
        if isinstance(event.entry, Did) and event.entry.level in words
    ]
    said = [each for each in run.entries if isinstance(each, Recognised) and each.level in words]
    return [*(f"Saying what it is: {words[each.level]}" for each in said), *texts]


def _not_understood(run: Run) -> list[str]:
    return [f"“{each.typed}”" for each in run.entries if isinstance(each, NotUnderstood)]


def clock_text(at: Milliseconds) -> str:
    """Return a time as minutes and seconds.

    >>> clock_text(75_400)
    '1:15'
    """
    minutes, seconds = divmod(at // 1000, 60)
    return f"{minutes}:{seconds:02}"
