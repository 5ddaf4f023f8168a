"""Synthetic pathways of any length, shaped like real ones: phases, bounded loops, branches."""

from __future__ import annotations

STEPS_A_PHASE = 10

HEAD = """pathway: synthetic
title: Synthetic pathway
summary: Made for measuring, without clinical meaning.
edition: 0.1
status: draft
authors: [Bench]
reviewed: 2026-11-25
review by: 2027-11-25
start: p0-see
phases:
  work: Work
duties:
  surgeon: {title: Surgeon}
sources:
  bench: {cite: Made for measuring, mark: local}
"""


def synthetic(steps: int) -> str:
    """Return the text of a pathway of about `steps` steps, ten a phase, three findings a phase."""
    phases = max(1, steps // STEPS_A_PHASE)
    findings = "".join(_findings(phase) for phase in range(phases))
    acts = "".join(_acts(phase) for phase in range(phases))
    body = "".join(_steps(phase, phase + 1 == phases) for phase in range(phases))
    return f"{HEAD}findings:\n{findings}acts:\n{acts}steps:\n{body}"


def _findings(phase: int) -> str:
    return "".join(
        f"  p{phase}-{name}:\n"
        f"    title: Finding {name} of phase {phase}\n"
        "    about: eye\n"
        "    values:\n"
        "      clear: {label: Clear, sign: Nothing seen}\n"
        "      partial: {label: Partial, sign: Something seen}\n"
        "      full: {label: Full, sign: Everything seen}\n"
        "    sources: [bench]\n"
        for name in ("field", "edge", "room")
    )


def _acts(phase: int) -> str:
    help_line = ", calls for help: yes" if phase == 0 else ""
    return (
        f"  p{phase}-clean: {{title: Clean, makes stale: [p{phase}-field]{help_line}}}\n"
        f"  p{phase}-widen: {{title: Widen, makes stale: [p{phase}-room]{help_line}}}\n"
    )


def _steps(phase: int, last: bool) -> str:
    p = f"p{phase}"
    onward = f"{p}-end" if last else f"p{phase + 1}-see"
    act = "    phase: work\n    sources: [bench]\n    do:\n      - {who: surgeon, does: "
    return (
        f"  {p}-see:\n    phase: work\n    ask: {p}-field\n    question: Is the field clear?\n"
        f"    answers: {{clear: {p}-edge-seen, partial: {p}-clean, full: {p}-clean, "
        f"cannot tell: {p}-clean}}\n"
        f"  {p}-clean:\n{act}Clean the field., act: {p}-clean}}\n"
        f"    at most: 3\n    after that: {p}-edge-seen\n    go to: {p}-see\n"
        f"  {p}-edge-seen:\n    phase: work\n    ask: {p}-edge\n    question: Is the edge clear?\n"
        f"    answers: {{clear: {p}-room-seen, partial: {p}-room-seen, full: {p}-hold, "
        f"cannot tell: {p}-hold}}\n"
        f"  {p}-hold:\n{act}Hold the edge.}}\n    go to: {p}-room-seen\n"
        f"  {p}-room-seen:\n    phase: work\n    ask: {p}-room\n    question: Is the room clear?\n"
        f"    answers: {{clear: {p}-choose, partial: {p}-choose, full: {p}-widen, "
        f"cannot tell: {p}-widen}}\n"
        f"  {p}-widen:\n{act}Widen the room., act: {p}-widen}}\n    go to: {p}-choose\n"
        f"  {p}-choose:\n    phase: work\n    branch:\n"
        f"      - {{when: {{{p}-edge: clear}}, go to: {p}-light}}\n"
        f"      - {{when: {{{p}-edge: [partial, full]}}, go to: {p}-firm}}\n"
        f"    not known: {p}-firm\n"
        f"  {p}-light:\n{act}Press lightly.}}\n    go to: {p}-done\n"
        f"  {p}-firm:\n{act}Press with the palm.}}\n    go to: {p}-done\n"
        f"  {p}-done:\n{act}Write down the time.}}\n    go to: {onward}\n"
        + (f"  {p}-end:\n    phase: work\n    outcome: Finished\n" if last else "")
    )
