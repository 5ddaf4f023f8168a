"""Every key of the screen program, once: bindings, footer and help all derive from these tables."""

from __future__ import annotations

from dataclasses import dataclass

from chamberwise.engine.language.texts import N_


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


QUIT = KeyAction("leave", ("q",), "q", N_("quit"), N_("leave the program; what was done is kept"))
STOP = KeyAction(
    "interrupt",
    ("ctrl+c",),
    N_("Ctrl+C"),
    N_("stop"),
    N_("leave at once; what was done is kept"),
    False,
)
OF_THE_PROGRAM = (QUIT, STOP)
HELP = KeyAction("help", ("question_mark",), "?", N_("help"), N_("this page"))
CLOSE = KeyAction("close", ("escape", "enter"), N_("Esc"), N_("back"), N_("back to where you were"))

ANSWER = KeyAction(
    "answer", tuple("123456789"), "1-9", N_("answer"), N_("give the answer with that number")
)
DONE = KeyAction(
    "done",
    ("enter", "space"),
    N_("Enter"),
    N_("done"),
    N_("turn the page while there is more below; then the action is done; at the end, the record"),
)

WALK = (
    ANSWER,
    DONE,
    KeyAction("undo", ("u", "b"), "u", N_("undo"), N_("take the last step back; b does it too")),
    KeyAction(
        "redo",
        ("y", "f", "ctrl+r"),
        "y",
        N_("redo"),
        N_("make the step taken back again; f too"),
        False,
    ),
    KeyAction("why", ("w",), "w", N_("why"), N_("why this step, and its sources")),
    KeyAction(
        "known", ("k",), "k", N_("known"), N_("every finding: known, stale or unknown"), spare=1
    ),
    KeyAction("note", ("n",), "n", "note", N_("write a note; never patient identity")),
    KeyAction("map", ("m",), "m", N_("map"), N_("the steps around this one"), spare=2),
    KeyAction(
        "record",
        ("c",),
        "c",
        N_("record"),
        N_("the record so far, and saving it"),
        brief=N_("save"),
    ),
    HELP,
    KeyAction("library", ("escape",), N_("Esc"), N_("library"), N_("back to the library"), False),
    QUIT,
    STOP,
)

LIBRARY = (
    KeyAction("up", ("up",), N_("Up"), N_("up"), N_("the pathway above"), False),
    KeyAction("down", ("down",), N_("Down"), N_("down"), N_("the pathway below"), False),
    KeyAction("open", ("enter",), N_("Enter"), "open", N_("walk the pathway marked with >")),
    KeyAction(
        "drill", ("d",), "d", N_("drill"), N_("rehearse it against the clock, in your own words")
    ),
    KeyAction(
        "prove",
        ("p",),
        "p",
        N_("check and prove"),
        N_("its problems, and its rules on every walk"),
        brief=N_("prove"),
    ),
    KeyAction("sheets", ("o",), "o", N_("on paper"), N_("print a sheet of it into this folder")),
    KeyAction(
        "calculations",
        ("w",),
        "w",
        N_("work"),
        N_("lens, dose, risk and dates, line by line"),
        spare=1,
    ),
    KeyAction(
        "units", ("u",), "u", N_("unit"), N_("the pathways as a unit has them, by its local sheet")
    ),
    KeyAction(
        "write", ("e",), "e", N_("write"), N_("beside your editor, its state at every save"), False
    ),
    HELP,
    QUIT,
    STOP,
)

DRILL = (
    KeyAction("say", ("enter",), N_("Enter"), N_("say it"), N_("say what is typed")),
    KeyAction(
        "ladder", ("f1",), "F1", N_("help me"), N_("a nudge, then a menu, then the answer; ? too")
    ),
    KeyAction(
        "back", ("f2",), "F2", N_("back"), N_("rehearsals only: take the last thing back"), spare=1
    ),
    KeyAction(
        "mark", ("f4",), "F4", N_("how sure"), N_("mark the line: sure, likely, a guess"), spare=1
    ),
    KeyAction(
        "page_up", ("pageup",), N_("PgUp"), N_("read back"), N_("what was said before"), spare=2
    ),
    KeyAction(
        "page_down", ("pagedown",), N_("PgDn"), N_("read on"), N_("down to the newest"), False
    ),
    KeyAction("keys", ("f3",), "F3", N_("keys"), N_("this page")),
    KeyAction("close", ("escape",), N_("Esc"), N_("leave"), N_("leave; --resume goes on")),
    STOP,
)

DRILL_OVER = (
    KeyAction("page_down", ("pagedown",), N_("PgDn"), N_("read on"), N_("more of the debrief")),
    KeyAction("page_up", ("pageup",), N_("PgUp"), N_("read back"), N_("the part before")),
    KeyAction("close", ("escape",), N_("Esc"), N_("leave"), N_("leave; the drill is kept")),
)
"""What is left to do once a drill is over, for its footer."""

TEAM = (
    KeyAction(
        "say", ("enter",), N_("Enter"), N_("words"), N_("type what the surgeon says, and say it")
    ),
    KeyAction("team_key", (), "a-z", N_("event"), N_("the task with that letter happens")),
    KeyAction(
        "read_on", ("greater_than_sign",), ">", N_("reader"), N_("the reader's next line"), spare=1
    ),
    KeyAction(
        "tasks", ("full_stop",), ".", N_("tasks"), N_("every task, whose it is, how far it is")
    ),
    *(each for each in DRILL if each.name not in ("say", "page_up")),
    KeyAction(
        "page_up", ("pageup",), N_("PgUp"), N_("read back"), N_("what was said before"), spare=4
    ),
)

CHECKER = (
    KeyAction("up", ("up",), N_("Up/Down"), N_("choose"), N_("the row above or below")),
    KeyAction("down", ("down",), N_("Down"), N_("down"), N_("the row below"), False),
    KeyAction(
        "replay",
        ("enter",),
        N_("Enter"),
        N_("replay"),
        N_("go through the walk that breaks the rule"),
    ),
    KeyAction(
        "page_down", ("pagedown", "space"), N_("PgDn"), N_("read on"), N_("more of it"), spare=1
    ),
    KeyAction("page_up", ("pageup",), N_("PgUp"), N_("read back"), N_("the part before"), False),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to the library")),
    HELP,
    QUIT,
    STOP,
)

CALCULATIONS = (
    KeyAction("up", ("up",), N_("Up/Down"), N_("choose"), N_("the calculation above or below")),
    KeyAction("down", ("down",), N_("Down"), N_("down"), N_("the calculation below"), False),
    KeyAction(
        "open", ("enter",), N_("Enter"), "open", N_("the form of the calculation marked with >")
    ),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to the library")),
    QUIT,
    STOP,
)

DRAFT = (
    KeyAction(
        "view", tuple("1234"), "1-4", N_("view"), N_("1 problems, 2 steps, 3 rules, 4 the chart")
    ),
    KeyAction(
        "next_view", ("tab",), N_("Tab"), N_("next view"), N_("the view after this one"), spare=2
    ),
    KeyAction("up", ("up",), N_("Up/Down"), N_("choose"), N_("the row above or below")),
    KeyAction("down", ("down",), N_("Down"), N_("down"), N_("the row below"), False),
    KeyAction(
        "page_down", ("pagedown", "space"), N_("PgDn"), N_("read on"), N_("more of it"), spare=1
    ),
    KeyAction("page_up", ("pageup",), N_("PgUp"), N_("read back"), N_("the part before"), False),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to where you were")),
    HELP,
    QUIT,
    STOP,
)

FORM = (
    KeyAction(
        "take",
        ("enter",),
        N_("Enter"),
        N_("next"),
        N_("keep what was typed and go on; after the last, work it"),
    ),
    KeyAction("up", ("up",), N_("Up/Down"), N_("choose"), N_("the input above or below")),
    KeyAction("down", ("down",), N_("Down"), N_("down"), N_("the input below"), False),
    KeyAction(
        "work", ("ctrl+g",), N_("Ctrl+G"), N_("work it"), N_("work it from what was typed so far")
    ),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to the calculations")),
    STOP,
)

SHEETS = (
    KeyAction(
        "choose", tuple("12345678"), "1-8", N_("choose"), N_("take what stands beside that number")
    ),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to the library")),
    QUIT,
    STOP,
)

UNITS = (
    KeyAction("up", ("up",), N_("Up"), N_("up"), N_("the sheet above"), False),
    KeyAction("down", ("down",), N_("Down"), N_("down"), N_("the sheet below"), False),
    KeyAction("open", ("enter",), N_("Enter"), N_("choose"), N_("take the sheet marked with >")),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to the library")),
    QUIT,
    STOP,
)

OFFER = (
    KeyAction("choose", tuple("123"), "1-3", N_("choose"), N_("do what stands beside that number")),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back to the library")),
    QUIT,
    STOP,
)

PANEL = (CLOSE, QUIT, STOP)

NOTE = (
    KeyAction("keep", ("enter",), N_("Enter"), N_("keep"), N_("keep the note")),
    KeyAction("close", ("escape",), N_("Esc"), N_("no note"), N_("back without a note")),
    STOP,
)

NAME = (
    KeyAction("keep", ("enter",), N_("Enter"), N_("save"), N_("save the record under that name")),
    KeyAction("close", ("escape",), N_("Esc"), N_("back"), N_("back without saving")),
    STOP,
)

MAP = (
    KeyAction("earlier", ("left",), N_("Left"), N_("phase before"), N_("look at the phase before")),
    KeyAction("later", ("right",), N_("Right"), N_("phase after"), N_("look at the phase after")),
    KeyAction("here", ("h", "home"), "h", N_("here"), N_("back to where this walk is")),
    CLOSE,
    QUIT,
    STOP,
)

RECORD = (
    KeyAction("save", ("s",), "s", N_("save"), N_("save the record as a file")),
    CLOSE,
    QUIT,
    STOP,
)
