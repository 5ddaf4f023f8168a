"""`chamberwise new`: a pathway to start from, one that already checks."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from datetime import date
from pathlib import Path
from typing import Any

from chamberwise.tui.command.finding_files import UnusableError, add_library, asked, shipped
from chamberwise.tui.command.output import product, talk
from chamberwise.tui.command.status import Status

EXAMPLE = """example:
  chamberwise new wound-burn --title "Wound burn"
  chamberwise new our-unit --over posterior-capsule-rupture --unit "Our unit"
"""


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("new", help="a pathway to start from", epilog=EXAMPLE)
    parser.add_argument("name", metavar="ID", help="small letters, figures and hyphens")
    parser.add_argument("--title", help="what it is called; left out, made from the ID")
    parser.add_argument(
        "--over", metavar="PATHWAY", help="a unit's local sheet over that pathway instead"
    )
    parser.add_argument("--unit", metavar="NAME", help="with --over: whose sheet it is")
    parser.add_argument("--out", type=Path, metavar="DIR", default=Path(), help="where to write it")
    add_library(parser)
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Write the file and say what to do next."""
    from chamberwise.engine.store.whole_file import write_whole
    from chamberwise.exports.scaffold.render import new_pathway

    name = _name(arguments.name)
    if arguments.over is not None:
        from chamberwise.tui.command.new_local import new_local

        return new_local(arguments, name)
    path = arguments.out / f"{name}.yaml"
    if path.exists() or path.is_symlink():
        raise UnusableError(f"{path} is there already. Choose another name, or move it away.")
    library = asked((), arguments.library).loaded.library
    if name in library.pathways:
        raise UnusableError(f"The library already has a pathway `{name}`. Choose another name.")
    words = library.shared
    own_words = "surgeon" not in words.duties or "common-practice" not in words.sources
    title = arguments.title or name.replace("-", " ").capitalize()
    schema = (arguments.library or shipped()) / "schema" / "pathway.schema.json"
    text = new_pathway(name, title, date.today(), schema.resolve().as_uri(), own_words=own_words)
    _refuse_unreadable(text, path)
    try:
        write_whole(path, text)
    except OSError as error:
        raise UnusableError(f"{path} cannot be written: {error.strerror}.") from error
    product(str(path))
    talk(f"Next: chamberwise check {path}, then chamberwise walk {path}")
    return Status.CLEAN


def _refuse_unreadable(text: str, path: Path) -> None:
    from chamberwise.engine.reading.library import read_text

    for problem in read_text(text, path.name).problems:
        raise UnusableError(f"This title cannot stand in a pathway: {problem.message}.")


def _name(typed: str) -> str:
    from chamberwise.engine.reading.scalars import UntypedError
    from chamberwise.engine.reading.scalars import typed as read
    from chamberwise.engine.reading.shapes import NAME

    try:
        return str(read(typed, NAME))
    except UntypedError as error:
        raise UnusableError(f"`{typed}` is not {error.expected}. {error.advice}") from error
