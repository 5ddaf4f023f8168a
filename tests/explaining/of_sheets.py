"""A wrong and a right example of what is said of local sheets, of drill files and of lists."""

from __future__ import annotations

OF_A_SHEET: dict[str, tuple[str, str]] = {
    "no-base": (
        "over: {pathway: leaking-wund, edition: 2, digest: 9DK9-DQ9Y-5J14}",
        "over: {pathway: leaking-wound, edition: 2, digest: 9DK9-DQ9Y-5J14}",
    ),
    "base-changed": (
        "over: {pathway: leaking-wound, edition: 1, digest: ZE6X-PR7Y-B0Q0}",
        "over: {pathway: leaking-wound, edition: 2, digest: 9DK9-DQ9Y-5J14}",
    ),
    "stale-expectation": (
        "wording:\n"
        "  - {at: steps / fill / short, expects: Fill the eye, says: Make the chamber deep}",
        "wording:\n"
        "  - {at: steps / fill / short, expects: Fill the chamber, says: Make the chamber deep}",
    ),
    "no-such-place": (
        "wording:\n  - {at: steps / fil / short, expects: Fill the chamber, says: Make it deep}",
        "wording:\n  - {at: steps / fill / short, expects: Fill the chamber, says: Make it deep}",
    ),
    "changed-twice": (
        "wording:\n"
        "  - {at: steps / fill / short, expects: Fill the chamber, says: Make it deep}\n"
        "  - {at: steps / fill / short, expects: Fill the chamber, says: Deepen it}",
        "wording:\n  - {at: steps / fill / short, expects: Fill the chamber, says: Make it deep}",
    ),
    "not-for-a-sheet": (
        "wording:\n  - {at: steps / tell / go to, expects: closed, says: fill}",
        "changes:\n"
        "  - {change: steps / tell / go to, expects: closed, to: fill, because: A last look.}",
    ),
    "more-than-wording": (
        "wording:\n  - {at: steps / fill / short, expects: Fill the chamber, says: Empty it}",
        "wording:\n  - {at: steps / fill / short, expects: Fill the chamber, says: Deepen it}",
    ),
    "names-nothing": (
        "phones:\n  call-for-hlp: {number: extension X101, hours: at any hour}",
        "phones:\n  call-for-help: {number: extension X101, hours: at any hour}",
    ),
    "leaves-out": (
        "changes:\n"
        "  - {change: steps / tell / do / 1 / act, expects: tell-patient, to: fill-chamber,\n"
        "     because: The ward tells the patient.}",
        "changes:\n"
        "  - {change: steps / tell / do / 1 / who, expects: surgeon,\n"
        "     to: circulating-practitioner, because: The ward tells the patient.}",
    ),
    "decided-ahead": (
        "switched off:\n"
        "  patient-is-told: {by: 'Clinical lead, surgery', because: The ward does it.,\n"
        "                    on: 2099-11-20}",
        "switched off:\n"
        "  patient-is-told: {by: 'Clinical lead, surgery', because: The ward does it.,\n"
        "                    on: 2026-11-20}",
    ),
}
"""What a sheet says below its head, or in place of what its head says it lies over."""

OF_A_DRILL_FILE: dict[str, tuple[str, str]] = {
    "drill-name": ("since: [no-such-act]", "since: [withdraw-cutter]"),
    "drill-tells": ("The capsule has gone.", "A bubble drifts across the pupil."),
    "drill-no-consequence": (
        "in truth:\n  press-on-the-eye: {}",
        "in truth:\n"
        "  press-on-the-eye:\n"
        "    turns:\n"
        "      - becomes: {vitreous: in-chamber}\n"
        "        shows: Vitreous comes forward through the pupil.\n"
        "        lesson: Pressure on the eye squeezes vitreous out.",
    ),
    "drill-no-end": ("begins at: prepared", "begins at: to-vitrectomy"),
}
"""What stands in `drills/`; that these are faults is tested with the files that come along."""

OF_A_LIST: dict[str, tuple[str, str]] = {
    "identity-in-a-list": (
        "case,eye,axial length (mm),date of birth\nA,right,23.5,1950-02-01",
        "case,eye,axial length (mm)\nA,right,23.5",
    ),
    "unknown-column": (
        "case,eye,axial lenght (mm)\nA,right,23.5",
        "case,eye,axial length (mm)\nA,right,23.5",
    ),
    "row-not-understood": ("case,eye\nA,right,23.5", "case,eye\nA,right"),
    "figure-refused": (
        "powers: [{power: a lot, count: 1}]",
        "powers: [{power: 21, count: 1}]",
    ),
}
