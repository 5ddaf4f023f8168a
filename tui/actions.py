"""Every key of the screen program, once: bindings, footer and help all derive from these tables."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from chamberwise.tui.present.parts import Part, Tone


@dataclass(frozen=True, slots=True)
class KeyAction:
    """One thing a key does: its name, its keys, how the key is shown, a word, a line of help."""

    name: str
    keys: tuple[str, ...]
    shown: str
    word: str
    help: str
    in_footer: bool = True
    spare: int = 0
    """Where the footer is short of room, the highest of these leaves it first; help keeps it."""
    brief: str = ""
    """A shorter word for a footer that is short of room."""


QUIT = KeyAction("leave", ("q",), "q", "quit", "leave the program; what was done is kept")
STOP = KeyAction(
    "interrupt", ("ctrl+c",), "Ctrl+C", "stop", "leave at once; what was done is kept", False
)
OF_THE_PROGRAM = (QUIT, STOP)
HELP = KeyAction("help", ("question_mark",), "?", "help", "this page")
CLOSE = KeyAction("close", ("escape", "enter"), "Esc", "back", "back to where you were")

ANSWER = KeyAction(
    "answer", tuple("123456789"), "1-9", "answer", "give the answer with that number"
)
DONE = KeyAction(
    "done",
    ("enter", "space"),
    "Enter",
    "done",
    "turn the page while there is more below; then the action is done; at the end, the record",
)

WALK = (
    ANSWER,
    DONE,
    KeyAction("undo", ("u", "b"), "u", "undo", "take the last step back; b does it too"),
    KeyAction(
        "redo", ("y", "f", "ctrl+r"), "y", "redo", "make the step taken back again; f too", False
    ),
    KeyAction("why", ("w",), "w", "why", "why this step, and its sources"),
    KeyAction("known", ("k",), "k", "known", "every finding: known, stale or unknown", spare=1),
    KeyAction("note", ("n",), "n", "note", "write a note; never patient identity"),
    KeyAction("map", ("m",), "m", "map", "the steps around this one", spare=2),
    KeyAction("record", ("c",), "c", "record", "the record so far, and saving it", brief="save"),
    HELP,
    KeyAction("library", ("escape",), "Esc", "library", "back to the library", False),
    QUIT,
    STOP,
)

LIBRARY = (
    KeyAction("up", ("up",), "Up", "up", "the pathway above", False),
    KeyAction("down", ("down",), "Down", "down", "the pathway below", False),
    KeyAction("open", ("enter",), "Enter", "open", "walk the pathway marked with >"),
    KeyAction("drill", ("d",), "d", "drill", "rehearse it against the clock, in your own words"),
    KeyAction("prove", ("p",), "p", "check and prove", "its problems, and its rules on every walk"),
    KeyAction("sheets", ("o",), "o", "on paper", "print a sheet of it into this folder"),
    KeyAction(
        "calculations", ("w",), "w", "work", "lens, dose, risk and dates, line by line", spare=1
    ),
    KeyAction("write", ("e",), "e", "write", "beside your editor, its state at every save", False),
    HELP,
    QUIT,
    STOP,
)

DRILL = (
    KeyAction("say", ("enter",), "Enter", "say it", "say what is typed"),
    KeyAction("ladder", ("f1",), "F1", "help me", "a nudge, then a menu, then the answer; ? too"),
    KeyAction("back", ("f2",), "F2", "back", "rehearsals only: take the last thing back", spare=1),
    KeyAction("mark", ("f4",), "F4", "how sure", "mark the line: sure, likely, a guess", spare=1),
    KeyAction("page_up", ("pageup",), "PgUp", "read back", "what was said before", spare=2),
    KeyAction("page_down", ("pagedown",), "PgDn", "read on", "down to the newest", False),
    KeyAction("keys", ("f3",), "F3", "keys", "this page"),
    KeyAction("close", ("escape",), "Esc", "leave", "leave; --resume goes on"),
    STOP,
)

TEAM = (
    KeyAction("say", ("enter",), "Enter", "words", "type what the surgeon says, and say it"),
    KeyAction("team_key", (), "a-z", "event", "the task with that letter happens"),
    KeyAction("read_on", ("greater_than_sign",), ">", "reader", "the reader's next line", spare=1),
    KeyAction("tasks", ("full_stop",), ".", "tasks", "every task, whose it is, how far it is"),
    *(each for each in DRILL if each.name not in ("say", "page_up")),
    KeyAction("page_up", ("pageup",), "PgUp", "read back", "what was said before", spare=4),
)

CHECKER = (
    KeyAction("up", ("up",), "Up/Down", "choose", "the row above or below"),
    KeyAction("down", ("down",), "Down", "down", "the row below", False),
    KeyAction("replay", ("enter",), "Enter", "replay", "go through the walk that breaks the rule"),
    KeyAction("page_down", ("pagedown", "space"), "PgDn", "read on", "more of it", spare=1),
    KeyAction("page_up", ("pageup",), "PgUp", "read back", "the part before", False),
    KeyAction("close", ("escape",), "Esc", "back", "back to the library"),
    HELP,
    QUIT,
    STOP,
)

CALCULATIONS = (
    KeyAction("up", ("up",), "Up/Down", "choose", "the calculation above or below"),
    KeyAction("down", ("down",), "Down", "down", "the calculation below", False),
    KeyAction("open", ("enter",), "Enter", "open", "the form of the calculation marked with >"),
    KeyAction("close", ("escape",), "Esc", "back", "back to the library"),
    QUIT,
    STOP,
)

DRAFT = (
    KeyAction("view", tuple("1234"), "1-4", "view", "1 problems, 2 steps, 3 rules, 4 the chart"),
    KeyAction("next_view", ("tab",), "Tab", "next view", "the view after this one", spare=2),
    KeyAction("up", ("up",), "Up/Down", "choose", "the row above or below"),
    KeyAction("down", ("down",), "Down", "down", "the row below", False),
    KeyAction("page_down", ("pagedown", "space"), "PgDn", "read on", "more of it", spare=1),
    KeyAction("page_up", ("pageup",), "PgUp", "read back", "the part before", False),
    KeyAction("close", ("escape",), "Esc", "back", "back to where you were"),
    HELP,
    QUIT,
    STOP,
)

FORM = (
    KeyAction(
        "take",
        ("enter",),
        "Enter",
        "next",
        "keep what was typed and go on; after the last, work it",
    ),
    KeyAction("up", ("up",), "Up/Down", "choose", "the input above or below"),
    KeyAction("down", ("down",), "Down", "down", "the input below", False),
    KeyAction("work", ("ctrl+g",), "Ctrl+G", "work it", "work it from what was typed so far"),
    KeyAction("close", ("escape",), "Esc", "back", "back to the calculations"),
    STOP,
)

SHEETS = (
    KeyAction("choose", tuple("12345678"), "1-8", "choose", "take what stands beside that number"),
    KeyAction("close", ("escape",), "Esc", "back", "back to the library"),
    QUIT,
    STOP,
)

OFFER = (
    KeyAction("choose", tuple("123"), "1-3", "choose", "do what stands beside that number"),
    KeyAction("close", ("escape",), "Esc", "back", "back to the library"),
    QUIT,
    STOP,
)

PANEL = (CLOSE, QUIT, STOP)

NOTE = (
    KeyAction("keep", ("enter",), "Enter", "keep", "keep the note"),
    KeyAction("close", ("escape",), "Esc", "no note", "back without a note"),
    STOP,
)

NAME = (
    KeyAction("keep", ("enter",), "Enter", "save", "save the record under that name"),
    KeyAction("close", ("escape",), "Esc", "back", "back without saving"),
    STOP,
)

MAP = (
    KeyAction("earlier", ("left",), "Left", "phase before", "look at the phase before"),
    KeyAction("later", ("right",), "Right", "phase after", "look at the phase after"),
    KeyAction("here", ("h", "home"), "h", "here", "back to where this walk is"),
    CLOSE,
    QUIT,
    STOP,
)

RECORD = (
    KeyAction("save", ("s",), "s", "save", "save the record as a file"),
    CLOSE,
    QUIT,
    STOP,
)


def footer(
    actions: Iterable[KeyAction], shown: Mapping[str, str] | None = None, width: int = 78
) -> str:
    """Return the footer of a screen: keys and words. `shown` replaces a key, empty leaves it out.

    >>> footer((HELP, QUIT, STOP))
    '? help  q quit'
    """
    keys = shown or {}
    told = [each for each in actions if each.in_footer and keys.get(each.name, each.shown)]
    spared = sorted((each for each in told if each.spare), key=lambda each: -each.spare)
    for count in range(len(spared) + 1):
        left = [each for each in told if each not in spared[:count]]
        for brief in (False, True):
            line = _footer(left, keys, brief=brief)
            if len(line) <= width:
                return line
    return line


def _footer(told: Iterable[KeyAction], keys: Mapping[str, str], *, brief: bool) -> str:
    return "  ".join(
        f"{keys.get(each.name, each.shown)} {(brief and each.brief) or each.word}" for each in told
    )


def help_parts(actions: Iterable[KeyAction]) -> list[Part]:
    """Return one paragraph for each action: its key and its line of help."""
    actions = tuple(actions)
    width = max(len(action.shown) for action in actions)
    return [Part(each.help, f"  {each.shown:<{width}}  ", lead_tone=Tone.KEY) for each in actions]
