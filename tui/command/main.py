"""The one command. Each subcommand is a module of its own, imported when it is asked for."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    from chamberwise.tui.command.parser import Parser

COMMANDS = (
    "list",
    "check",
    "prove",
    "explain",
    "walk",
    "drill",
    "progress",
    "cases",
    "work",
    "brief",
    "print",
    "stamp",
    "new",
    "steps",
    "write",
    "translate",
    "compare",
    "approve",
)

LONGEST = 60
"""Of a path too long for the system, so much is shown that it is known again."""
OF_THE_LIBRARY = ("--local", "--sheets")
"""Options that may stand where no command does."""

DESCRIPTION = N_("""\
Surgical complication pathways that can be checked, rehearsed, printed and
adapted locally. Without a command, the terminal program opens at the library;
with --local SHEET as a unit has it, with --sheets DIR to choose a unit from
there.

For rehearsal, teaching and the preparing of local charts, never live care.
Follow local protocol.
""")

EPILOG = N_("""example:
  chamberwise walk posterior-capsule-rupture

language:
  --language de with any command, or CHAMBERWISE_LANGUAGE=de: in German, a
  translation that no clinician has reviewed

exit status:
  0 clean, 1 findings, 2 unusable input or usage, 3 unproven,
  130 interrupted
""")


def run(typed: Sequence[str] | None = None) -> int:
    """Run the command typed and return its exit status."""
    words = list(sys.argv[1:] if typed is None else typed)
    if words in (["--version"], ["-V"]):
        from chamberwise.engine.version import VERSION

        sys.stdout.write(f"chamberwise {VERSION}\n")
        return 0
    return _dispatch(words)


def _dispatch(words: list[str]) -> int:
    from chamberwise.tui.command.finding_files import UnusableError
    from chamberwise.tui.command.output import talk
    from chamberwise.tui.command.status import Status

    try:
        words = _in_the_language_asked_for(words)
        if not words or words[0].partition("=")[0] in OF_THE_LIBRARY:
            from chamberwise.tui.command import program

            return program.run(_of_the_library().parse_args(words))
        arguments, left = _parser().parse_known_args(words)
        if left:
            talk(_not_known(left, words))
            return Status.UNUSABLE
        _collect_seldom()
        status: int = arguments.run(arguments)
        return status
    except UnusableError as error:
        talk(str(error))
        return Status.UNUSABLE
    except KeyboardInterrupt:
        talk(_("interrupted"))
        return Status.INTERRUPTED
    except BrokenPipeError:
        sys.stderr.close()
        return Status.CLEAN
    except OSError as error:
        talk(_not_usable(error))
        return Status.UNUSABLE


def _not_known(left: Sequence[str], words: Sequence[str]) -> str:
    command = next((each for each in words if each in COMMANDS), "")
    return _("Not known here: {left}. `chamberwise {command} --help` shows what is.").format(
        left=" ".join(left), command=command
    )


def _not_usable(error: OSError) -> str:
    """Return what is said of a place that the system does not let us look at or write to."""
    reason = error.strerror or type(error).__name__
    if not error.filename:
        return _("What is to be said cannot be written out: {reason}.").format(reason=reason)
    named = str(error.filename)
    path = named if len(named) <= LONGEST else f"{named[:LONGEST]}..."
    return _("{path} cannot be used: {reason}. Name another.").format(path=path, reason=reason)


def _in_the_language_asked_for(words: list[str]) -> list[str]:
    import os

    from chamberwise.engine.language.speaking import spoken
    from chamberwise.tui.command.language import speak_as_asked, unreviewed
    from chamberwise.tui.command.output import talk

    rest = speak_as_asked(words, os.environ)
    if remark := unreviewed(spoken()):
        talk(remark)
    return rest


def _collect_seldom() -> None:
    """Reading makes many objects and no garbage; looking for it costs a third of the time.

    Nor is it looked for once more at the very end, when all is given back anyway.
    """
    import atexit
    import gc

    gc.set_threshold(200_000, 20, 20)
    atexit.register(gc.freeze)


def _of_the_library() -> Parser:
    """Return what reads the words that are typed where no command is."""
    from chamberwise.tui.command.parser import Parser
    from chamberwise.tui.command.program import add_program

    parser = Parser(prog="chamberwise", description=_(DESCRIPTION))
    add_program(parser)
    return parser


def _parser() -> Parser:
    from importlib import import_module

    from chamberwise.tui.command.parser import Parser

    parser = Parser(prog="chamberwise", description=_(DESCRIPTION), epilog=_(EPILOG))
    parser.add_argument("-V", "--version", action="store_true", help=_("show the version"))
    commands = parser.add_subparsers(metavar=_("command"), required=True)
    for name in COMMANDS:
        import_module(f"chamberwise.tui.command.{name}").add_parser(commands)
    return parser


if __name__ == "__main__":
    sys.exit(run())
