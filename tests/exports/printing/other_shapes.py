"""Twenty pathways of other shapes and fields: chains, fans, loops and combs, in other letters."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, Line, Question, Step

from tests.support.build import ask, bounded, end, finding, library
from tests.support.build import pathway as build

VALUES = "one two three four"


class Field(NamedTuple):
    """What a made-up field calls things."""

    title: str
    do: str
    ask: str
    who: str


FIELDS = {
    "plain": Field("Pump has stopped", "Close the valve", "Is the valve closed", "pump crew"),
    "long": Field(
        "Electroencephalographically inconspicuous counterirritation",
        "Recalibrate the thermoluminescence-spectrophotometer",
        "Is the deinstitutionalisation counterproductive",
        "otorhinolaryngologist",
    ),
    "short": Field("Go", "Go", "On", "a"),
    "Greek": Field("Διακοπή αντλίας", "Κλείστε τη βαλβίδα", "Είναι κλειστή η βαλβίδα", "χειριστής"),
    "Cyrillic": Field("Насос остановился", "Закройте клапан", "Закрыт ли клапан", "оператор"),
    "Hebrew": Field("המשאבה נעצרה", "סגרו את השסתום", "האם השסתום סגור", "מפעיל"),
}
SHAPES = ("chain", "fan", "loop", "comb")
COUNTS = {"chain": (5, 30, 120), "fan": (8, 40), "loop": (6, 60), "comb": (9, 45, 120)}
TWENTY = (
    *((shape, count, "plain") for shape in SHAPES for count in COUNTS[shape]),
    *((shape, 12, field) for shape in ("fan", "comb") for field in ("long", "Greek", "Cyrillic")),
    ("chain", 20, "long"),
    ("loop", 12, "short"),
    ("loop", 24, "Greek"),
    ("comb", 12, "Hebrew"),
)


def made(shape: str, count: int, field: str) -> Library:
    """Return a library of one pathway with so many steps and an end."""
    words = FIELDS[field]
    steps = [_step(shape, number, count, words) for number in range(count)]
    own = replace(build("other", *steps, end("end")), title=words.title)
    return library(own, findings=[finding("state", VALUES)])


def _step(shape: str, number: int, count: int, words: Field) -> Step:
    onward = [_name(number + ahead, count) for ahead in range(1, 5)]
    is_asked = shape == "fan" or (shape != "chain" and number % 2 == 1)
    if is_asked:
        return _asked(shape, number, onward, words)
    done = Action(
        id=_name(number, count),
        phase="only",
        short=f"{words.do} {number + 1}",
        lines=tuple(Line(words.who, f"{words.do} {part}.") for part in range(1, 4)),
        go_to=onward[0],
    )
    is_round = shape == "loop" and number % 4 == 2
    return bounded(done, 3, onward[1]) if is_round else done


def _asked(shape: str, number: int, onward: list[str], words: Field) -> Question:
    back = _name(max(0, number - 1), number)
    ways = {
        "fan": onward,
        "loop": [onward[0], back, onward[0], back] if number % 4 == 3 else [onward[0]] * 4,
        "comb": [onward[0], onward[1], "end", onward[0]],
    }[shape]
    asked = ask(f"s{number}", "state", **dict(zip(VALUES.split(), ways, strict=True)))
    return replace(asked, question=f"{words.ask} {number + 1}?")


def _name(number: int, count: int) -> str:
    return f"s{number}" if number < count else "end"
