"""`chamberwise list`: the pathways there are, with edition, approval and review."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from datetime import date
from typing import Any

from chamberwise.tui.command.finding_files import add_library, asked
from chamberwise.tui.command.output import product, product_json, table, talk
from chamberwise.tui.command.status import Status

EXAMPLE = """example:
  chamberwise list
  chamberwise list --format json
"""


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("list", help="pathways, editions, review dates", epilog=EXAMPLE)
    add_library(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.add_argument("--on", type=date.fromisoformat, metavar="DATE", help="as if it were DATE")
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Show the library."""
    from chamberwise.engine.graph.handovers import reading_order

    library = asked((), arguments.library).loaded.library
    today = arguments.on or date.today()
    pathways = [library.pathways[name] for name in reading_order(library)]
    rows = [
        {
            "pathway": each.id,
            "title": each.title,
            "edition": each.edition,
            "status": str(each.status),
            "approved": each.is_approved,
            "review by": each.review_by.isoformat(),
            "expired": each.review_by < today,
        }
        for each in pathways
    ]
    if arguments.format == "json":
        product_json(rows)
        return Status.CLEAN
    heads = ("pathway", "edition", "approval", "review by", "title")
    product(table([_row(row) for row in rows], heads))
    talk("Rehearsal and teaching only, never live care. Follow local protocol.")
    return Status.CLEAN


def _row(row: dict[str, Any]) -> tuple[str, ...]:
    approval = "approved" if row["approved"] else f"DRAFT ({row['status']})"
    review = f"{row['review by']} EXPIRED" if row["expired"] else row["review by"]
    return row["pathway"], row["edition"], approval, review, row["title"]
