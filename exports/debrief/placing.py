"""A debrief on one side of A4, in two columns; what is first to be read stands first.

A long timeline is cut role by role until the page holds it, and says how much it leaves out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.debrief.content import (
    FOLLOW,
    MARKED,
    PLACEHOLDER,
    STANDING,
    DebriefContent,
    FirstDeparture,
    Gate,
    RoleRow,
)
from chamberwise.exports.flow.block import Block, Group, Panel, plain
from chamberwise.exports.flow.two_columns import GAP, two_columns
from chamberwise.exports.language.unreviewed import unreviewed_notice
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Page, Role, Run, Style, Weight
from chamberwise.exports.printing.unfit import UnfitError
from chamberwise.exports.typesetting.measuring import Ruler

TITLE = Style(15, Weight.BOLD, pitch=1.2)
HEAD = Style(10.5, Weight.BOLD, pitch=1.25)
BODY = Style(9.7)
REMARK = Style(9.2, ink=Ink.GREY, pitch=1.25)
RESULT = N_("Result")


class Most(NamedTuple):
    """How much is told: doings of a role, departures, reasons under a gate. The text has all."""

    said: int
    departures: int
    reasons: int


CUTS = tuple(
    Most(said, departures, reasons)
    for reasons, departures, every in (
        (6, 1000, (1000,)),
        (6, 6, (24, 16, 10, 6)),
        (4, 3, (10, 6, 4)),
        (3, 2, (6, 4, 2)),
        (2, 1, (4, 2, 1)),
        (1, 1, (1,)),
    )
    for said in every
)
"""The cuts that are tried, the fullest first."""

Section = tuple[str, Sequence[Block]]


def debrief_page(of: DebriefContent, ruler: Ruler) -> Page:
    """Return the page. Raises `UnfitError` where even the shortest timeline leaves no room."""
    for most in CUTS[:-1]:
        try:
            return _page(of, ruler, most)
        except UnfitError:
            continue
    return _page(of, ruler, CUTS[-1])


def _page(of: DebriefContent, ruler: Ruler, most: Most) -> Page:
    groups = [
        *(group for section in _first(of, most) for group in _groups(section)),
        *(group for section in _then(of, most) for group in _groups(section, may_part=True)),
        *(group for section in _last(of, most) for group in _groups(section)),
    ]
    return two_columns(ruler, _head(of), groups, _foot())


def _groups(section: Section, *, may_part: bool = False) -> Iterator[Group]:
    """Yield what stands together: a section, or where a column may part it, each of its items."""
    title, blocks = section
    heading = Block(plain(title), HEAD, Role.HEADING)
    if not may_part or len(blocks) < 2:
        yield Group((heading, *blocks), GAP, panel=Panel() if title == _(RESULT) else None)
        return
    afters = [*(block.before for block in blocks[1:]), GAP]
    yield Group((heading, blocks[0]), afters[0])
    for block, after in zip(blocks[1:], afters[1:], strict=True):
        yield Group((block,), after)


def _first(of: DebriefContent, most: Most) -> Iterator[Section]:
    result = Block(plain(of.result, Weight.BOLD), HEAD, before=0.8)
    gates = (block for gate in of.gates for block in _gate(gate, most.reasons))
    yield _(RESULT), [result, *gates, *_note()]
    if of.sure_and_wrong:
        yield _("Sure, and not so: first"), _listed(of.sure_and_wrong)
    if of.talking:
        yield (
            _("To talk about"),
            [_item(each, f"{number}.") for number, each in enumerate(of.talking, 1)],
        )
    if of.first_departure:
        yield of.first_title, list(_departure(of.first_departure))


def _then(of: DebriefContent, most: Most) -> Iterator[Section]:
    if of.chain:
        yield _("What came of it"), _some(of.chain, most.departures)
    if of.departures:
        yield _("Further departures that matter"), _some(of.departures, most.departures)
    if of.lesser:
        yield _("Lesser departures"), _some(of.lesser, most.departures)
    yield _("Timeline, by role"), [*(_row(each, most.said) for each in of.rows), *_silent(of)]
    if of.loops:
        told = [
            _("{request}: asked {asked}, read back {read_back}, done {done}").format(
                request=each.request, asked=each.asked, read_back=each.read_back, done=each.done
            )
            for each in of.loops
        ]
        yield _("Requests"), _listed(told)
    if of.figures:
        yield _("Figures of this one run"), _listed(f"{f.what}: {f.told}" for f in of.figures)


def _last(of: DebriefContent, most: Most) -> Iterator[Section]:
    yield (
        _("Two open questions"),
        [_item(each, f"{number}.") for number, each in enumerate(of.questions, 1)],
    )
    yield _("The system, not people"), [*_system(of, most)]
    yield _("One thing to take away"), [Block(plain(of.take_away, Weight.MEDIUM), BODY, before=0.6)]
    due = of.next_due or _("see chamberwise progress")
    yield _("Next due"), [Block(plain(due), BODY, before=0.6)]


def _system(of: DebriefContent, most: Most) -> Iterator[Block]:
    """Yield what was found about the system, each with room for who sees to it and by when."""
    for each in of.system[: most.departures] or (_("Found:"),):
        yield _item(each, "•", to_write=not of.system)
        yield _owner()
    left = len(of.system) - most.departures
    if left > 0:
        yield _item(_("and {left} more").format(left=left), "•")


def _head(of: DebriefContent) -> Group:
    told = "  ·  ".join(f"{label}: {said}" for label, said in of.head)
    title = Block(plain(_("Debrief: {title}").format(title=of.title)), TITLE, Role.TITLE)
    return Group((title, Block(plain(told), REMARK, Role.NOTE, before=0.6)), GAP)


def _foot() -> Group:
    runs = (
        Run(f"{_(STANDING)} ", Weight.BOLD),
        Run(f"{_(FOLLOW)} {_(MARKED)}"),
        *((Run(f" {foreign}", Weight.BOLD),) if (foreign := unreviewed_notice()) else ()),
        Run(" " + _("Page {page} of {pages}").format(page=1, pages=1)),
    )
    return Group((Block(runs, REMARK, Role.FOOTER),), 0.0)


def _gate(gate: Gate, most: int) -> Iterator[Block]:
    runs = (Run(f"{gate.asks}: "), Run(gate.stands, Weight.BOLD))
    yield Block(runs, BODY, indent=5.0, before=0.8, lead=gate.letter)
    left = len(gate.because) - most
    more = (_("and {left} more").format(left=left),) if left > 0 else ()
    for each in (*gate.because[:most], *more):
        yield Block(plain(each), BODY, indent=5.0, before=0.4)


def _note() -> list[Block]:
    return [Block(plain(_(PLACEHOLDER)), REMARK, Role.NOTE, before=0.8)]


def _departure(of: FirstDeparture) -> Iterator[Block]:
    said = (
        (_("Shown"), of.shown),
        (_("Done"), of.done),
        (_("Pathway"), of.line),
        (_("Why this step"), of.why),
    )
    for label, text in said:
        if text:
            yield Block((Run(f"{label}: ", Weight.MEDIUM), Run(text)), BODY, before=0.6)
    if of.sources:
        yield Block(plain("; ".join(of.sources)), REMARK, Role.NOTE, before=0.6)


def _row(row: RoleRow, most: int) -> Block:
    said = "; ".join(row.said[:most]) or _("nothing written down")
    left = len(row.said) - most
    more = _("; and {left} more").format(left=left) if left > 0 else ""
    return Block((Run(f"{row.role}: ", Weight.MEDIUM), Run(said + more)), BODY, before=0.6)


def _silent(of: DebriefContent) -> list[Block]:
    if not of.silences:
        return []
    runs = (Run(_("Silent for over 8 s: "), Weight.MEDIUM), Run(", ".join(of.silences)))
    return [Block(runs, BODY, before=0.6)]


def _listed(said: Iterator[str] | Sequence[str]) -> list[Block]:
    return [_item(each, "•") for each in said]


def _some(said: Sequence[str], most: int) -> list[Block]:
    left = len(said) - most
    return _listed((*said[:most], *((_("and {left} more").format(left=left),) if left > 0 else ())))


def _item(text: str, lead: str, *, to_write: bool = False) -> Block:
    return Block(plain(text), BODY, indent=4.0, before=0.6, lead=lead, to_write=to_write)


def _owner() -> Block:
    return Block(plain(_("Owner, by when:")), REMARK, Role.NOTE, indent=4.0, to_write=True)
