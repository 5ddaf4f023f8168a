"""`chamberwise brief`: a list for the day becomes what a team reads in two minutes."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.tui.command.finding_files import UnusableError, shipped
from chamberwise.tui.command.output import product, product_json, talk
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.brief.brief import Brief
    from chamberwise.engine.brief.case import CaseList, Stock
    from chamberwise.engine.diagnostics.problem import Problem

EXAMPLE = """example:
  chamberwise brief
  chamberwise brief tuesday.csv --stock shelf.yaml --stop-word "Stop, hold"
  chamberwise brief tuesday.csv --stock shelf.yaml --format json

A list names its cases by a label for the day (A, 1, A1), never a patient:
columns that look like identity are refused. For rehearsal and preparation,
never live care. Check by hand against the unit's own biometry and
formulary. Follow local protocol.
"""
DEMONSTRATION = "demonstration"


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("brief", help="the brief before a list", epilog=EXAMPLE)
    parser.add_argument(
        "list",
        nargs="?",
        type=Path,
        metavar="LIST",
        help="CSV or YAML, one case a row; without it: the invented list that comes along",
    )
    parser.add_argument("--stock", type=Path, metavar="FILE", help="the unit's shelf, as YAML")
    parser.add_argument("--reader", metavar="WHO", help="who reads aloud, by role")
    parser.add_argument("--takes-over", metavar="WHO", help="who takes over, by role")
    parser.add_argument("--stop-word", metavar="WORD", help="the word that stops everything")
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Show the brief; findings where there is something to do before the list."""
    from chamberwise.exports.brief.extract import brief_content

    found = worked_brief(arguments)
    content = brief_content(found)
    if arguments.format == "json":
        from chamberwise.exports.brief.machine import values

        product_json(values(found, content))
    else:
        from chamberwise.exports.brief.text import text

        product(text(content))
    if content.to_do:
        talk(f"{len(content.to_do)} things to do before the list starts.")
    return Status.FINDINGS if content.to_do else Status.CLEAN


def worked_brief(arguments: Namespace) -> Brief:
    """Return the brief of what was typed. Raises `UnusableError` for files that cannot be used."""
    from chamberwise.engine.brief.work import brief

    path, stock_path = arguments.list, arguments.stock
    if path is None:
        folder = shipped() / DEMONSTRATION
        path, stock_path = folder / "list.csv", stock_path or folder / "stock.yaml"
        talk("No list was named: this is the invented one of the Harbour Eye Unit.")
    return brief(_listed(path, arguments), _stock(stock_path))


def _listed(path: Path, arguments: Namespace) -> CaseList:
    from chamberwise.engine.brief.listing import read_list

    found = read_list(path)
    if found.listed is None:
        raise _unusable(found.problems, found.texts, "The list cannot be used so.")
    head = replace(
        found.listed.head,
        reader=arguments.reader or found.listed.head.reader,
        takes_over=arguments.takes_over or found.listed.head.takes_over,
        stop_word=arguments.stop_word or found.listed.head.stop_word,
    )
    return replace(found.listed, head=head)


def _stock(path: Path | None) -> Stock:
    from chamberwise.engine.brief.case import Head, Stock
    from chamberwise.engine.brief.stock import read_stock

    if path is None:
        return Stock("", "", (), Head())
    found = read_stock(path)
    if found.stock is None:
        raise _unusable(found.problems, found.texts, "The file of stock cannot be used so.")
    return found.stock


def _unusable(problems: Sequence[Problem], texts: Mapping[str, str], said: str) -> UnusableError:
    from chamberwise.engine.diagnostics.text import problem_text

    return UnusableError("\n".join([*(problem_text(each, texts) for each in problems), said]))
