"""`chamberwise list`: the pathways there are, with edition, approval and review."""

from __future__ import annotations

from argparse import Namespace, _SubParsersAction
from collections.abc import Mapping
from datetime import date, timedelta
from pathlib import Path
from textwrap import shorten
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    Asked,
    UnusableError,
    add_library,
    add_local,
    asked,
    shipped,
)
from chamberwise.tui.command.output import product, product_json, table, talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.command.typed import add_on
from chamberwise.tui.present.words import harm_word, mark_word, status_word

if TYPE_CHECKING:
    from chamberwise.engine.model.rule import Rule
    from chamberwise.engine.model.words import Act, Duty, KitItem, Words

TABLES = (
    N_("findings"),
    N_("choices"),
    N_("acts"),
    N_("duties"),
    N_("kit"),
    N_("sources"),
    N_("rules"),
)

LONGEST = 40
"""Signs of a unit's name in a table."""

EXAMPLE = N_("""example:
  chamberwise list
  chamberwise list --local our-unit.yaml
  chamberwise list --sheets
  chamberwise list --words duties
  chamberwise list --format json
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser(
        "list", help=_("pathways, editions, review dates"), epilog=_(EXAMPLE)
    )
    add_library(parser)
    add_local(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text")
    add_on(parser)
    parser.add_argument(
        "--words",
        nargs="?",
        const="all",
        choices=("all", *TABLES),
        metavar=_("KIND"),
        help=_("the shared words instead: {kinds}; left out, all of them").format(
            kinds=", ".join(TABLES)
        ),
    )
    parser.add_argument(
        "--sheets",
        nargs="?",
        type=Path,
        const=Path(),
        metavar=_("DIR"),
        help=_("the local sheets of a folder instead; without DIR, of the one here"),
    )
    parser.set_defaults(run=run)


def run(arguments: Namespace) -> int:
    """Show the library."""
    from chamberwise.engine.checks.evidence.review_soon import AHEAD
    from chamberwise.engine.graph.handovers import reading_order
    from chamberwise.engine.translating.applying import THE_TRANSLATION
    from chamberwise.exports.record.standing import STANDING
    from chamberwise.tui.in_language import in_language

    if arguments.sheets is not None:
        return _sheets(arguments)
    found = asked((), arguments.library, arguments.local)
    _refuse_not_carried_out(found)
    loaded, library = found.loaded, found.loaded.library
    shown = in_language(loaded, arguments.library or shipped())
    told = shown.library
    if arguments.words:
        return _words(told.shared, arguments)
    today = arguments.on or date.today()
    pathways = [told.pathways[name] for name in reading_order(library)]
    rows = [
        {
            "pathway": each.id,
            "title": each.title,
            "edition": each.edition,
            "status": str(each.status),
            "approved": each.is_approved,
            "review by": each.review_by.isoformat(),
            "expired": each.review_by < today,
            "review soon": timedelta() <= each.review_by - today <= AHEAD,
            "changed since approval": list(loaded.fallen.get(each.id, ())),
            "translation not reviewed": THE_TRANSLATION in shown.fallen.get(each.id, ()),
            "file": loaded.file_of[each.id],
        }
        for each in pathways
    ]
    if arguments.format == "json":
        product_json(rows)
        return Status.CLEAN
    heads = _("pathway"), _("edition"), _("approval"), _("review by"), _("title")
    product(table([_row(row) for row in rows], heads))
    talk(_(STANDING))
    return Status.CLEAN


def _refuse_not_carried_out(found: Asked) -> None:
    """Raise where there is a sheet that is not carried out: the pathways are not the unit's."""
    from chamberwise.tui.walkable import problems_in_the_way

    if found.under is not None and found.loaded.library.local is None:
        raise UnusableError(problems_in_the_way(found.loaded, found.under.sheet.shown_as))


def _sheets(arguments: Namespace) -> int:
    """Show the units' sheets of a folder."""
    from chamberwise.tui.units import units_in

    if not arguments.sheets.is_dir():
        message = _("{folder} is not a folder. Name one that holds local sheets.")
        raise UnusableError(message.format(folder=arguments.sheets))
    rows = [
        {
            "file": each.file.shown_as,
            "unit": each.unit,
            "over": each.over,
            "edition": each.edition,
            "status": each.status,
        }
        for each in units_in([arguments.sheets], asked((), arguments.library).loaded)
    ]
    if arguments.format == "json":
        product_json(rows)
        return Status.CLEAN
    heads = _("sheet"), _("unit"), _("over"), _("edition"), _("status")
    shown = [
        (
            row["file"],
            shorten(row["unit"], LONGEST, placeholder=" ..."),
            row["over"],
            row["edition"],
            status_word(row["status"]) if row["status"] else _("see `check`"),
        )
        for row in rows
    ]
    product(table(shown, heads))
    talk(_("`chamberwise list --local SHEET` shows the pathways as a unit has them."))
    return Status.CLEAN


def _words(shared: Words, arguments: Namespace) -> int:
    tables = TABLES if arguments.words == "all" else (arguments.words,)
    found = {table: _named(shared, table) for table in tables}
    if arguments.format == "json":
        product_json(found)
        return Status.CLEAN
    blocks = [
        table([(name, title) for name, title in named.items()], (_(kind), _("what it is called")))
        for kind, named in found.items()
    ]
    product("\n\n".join(blocks))
    return Status.CLEAN


def _named(shared: Words, kind: str) -> dict[str, str]:
    if kind in ("findings", "choices"):
        wants_choice = kind == "choices"
        findings = shared.findings.values()
        return {
            each.id: each.title for each in findings if (each.choice is not None) is wants_choice
        }
    if kind == "sources":
        return {
            each.id: f"{each.cite} ({mark_word(each.mark)})" for each in shared.sources.values()
        }
    if kind == "rules":
        return {each.id: _rule(each, shared) for each in shared.rules.values()}
    tables: dict[str, Mapping[str, Act | Duty | KitItem]] = {
        "acts": shared.acts,
        "duties": shared.duties,
        "kit": shared.kit,
    }
    return {name: each.title for name, each in tables[kind].items()}


def _rule(rule: Rule, shared: Words) -> str:
    """Return what a rule says, how bad its harm is, and how its sources are marked."""
    named = (shared.sources.get(name) for name in rule.sources)
    marks = dict.fromkeys(mark_word(source.mark) for source in named if source)
    told = ", ".join(marks) or _("no source")
    return f"{rule.title} ({harm_word(rule.severity)}; {told})"


def _row(row: dict[str, Any]) -> tuple[str, ...]:
    why = status_word(row["status"])
    if row["changed since approval"]:
        why = _("edited since approval")
    elif row["translation not reviewed"]:
        why = _("translation not reviewed")
    is_plain = not row["changed since approval"] and row["status"] == "draft"
    draft = _("DRAFT") if is_plain else _("DRAFT ({why})").format(why=why)
    approval = _("approved") if row["approved"] else draft
    review = row["review by"]
    if row["expired"]:
        review = _("{day} EXPIRED").format(day=review)
    elif row["review soon"]:
        review = _("{day} SOON").format(day=review)
    return row["pathway"], row["edition"], approval, review, row["title"]
