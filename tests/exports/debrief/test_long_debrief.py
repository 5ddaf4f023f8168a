"""A run in which nearly everything goes wrong and little is understood still has its page.

That the debrief is one side of A4 is from the evidence notes of the drill; the lines are derived.
"""

from __future__ import annotations

from chamberwise.engine.drill.debriefing.debrief import debrief
from chamberwise.engine.drill.entries import Ended, Ending, NotUnderstood
from chamberwise.engine.drill.fold import add, as_run
from chamberwise.exports.debrief.extract import debrief_content
from chamberwise.exports.debrief.sheet import debrief_paper
from chamberwise.exports.debrief.text import WIDTH, debrief_text

from tests.engine.drill.stage import ON, scenario, typed

LINES = (
    "take one more piece",
    "pull the tip out",
    "pcr",
    "turn the nucleus",
    "press on the eye",
    "where is the vitreous",
    "mop the vitreous up with a sponge",
    "stain with triamcinolone",
    "insert the vitrector",
    "cut the vitreous",
    "take the vitrector out",
    "who operates",
    "box please",
)


def test_it_has_one_page_and_its_text_has_all() -> None:
    drill = typed(scenario(None, 1), LINES)
    for number in range(12):
        at = drill.journal[-1].at + 1000
        drill = add(drill, NotUnderstood(at, f"something {number} that nobody made out"))
    drill = add(drill, Ended(drill.journal[-1].at + 20_000, Ending.GIVEN_UP))
    content = debrief_content(
        drill.scenario.library, debrief(drill.scenario.library, as_run(drill))
    )
    assert debrief_paper(content, ON.date()).pdf.startswith(b"%PDF")
    text = debrief_text(content)
    assert all(f"something {number} that" in text for number in range(12))
    assert max(map(len, text.splitlines())) <= WIDTH <= 76
