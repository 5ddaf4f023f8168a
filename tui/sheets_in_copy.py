"""What a copy of the process does for the sheets; `sheets_beside` asks for it.

What cannot be read on its paper is handed back, not raised: nothing has failed.
"""

from __future__ import annotations

import gc
import pickle
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Words
from chamberwise.exports.printing.kinds import maker
from chamberwise.exports.printing.order import Kind, Made, Order
from chamberwise.exports.printing.printing import UnfitSheetsError
from chamberwise.exports.printing.unfit import UnfitError
from chamberwise.exports.typesetting.compiling import fonts
from chamberwise.exports.typesetting.forgetting import forget
from chamberwise.exports.typesetting.measuring import Ruler
from chamberwise.tui.preparing import Prepared, orders_of, prepared
from chamberwise.tui.reading_beside import reader
from chamberwise.tui.wanted import Wanted

if TYPE_CHECKING:
    from chamberwise.exports.audit.report import Report
    from chamberwise.exports.printing.auditing import Judge, Part

NO_LIBRARY = Library(Words(), {})
"""Stands in what is handed back: who asked has the library."""


def ready(kinds: tuple[Kind, ...]) -> None:
    """Load what is needed in any case; one kind alone is audited as well.

    A copy lives for a few seconds and leaves hardly any garbage: none is looked for.
    """
    gc.disable()
    fonts()
    for kind in kinds:
        maker(kind)
    if len(kinds) == 1:
        import chamberwise.exports.printing.auditing  # noqa: F401


def whole(handed: bytes, wanted: Wanted) -> Prepared | UnfitSheetsError:
    """Return all that was asked for, but for the library and what was measured."""
    try:
        found = prepared(_library(handed), wanted, None, _judged)
    except UnfitSheetsError as error:
        return error
    orders = ((kind, _bare(order)) for kind, order in found.orders)
    return found._replace(orders=tuple(orders))


def _judged(judged: Judge, parts: Iterable[Part]) -> Iterator[Report]:
    """Yield the audit of each part; of the first, the first process may read along."""
    from chamberwise.tui import sheets_beside

    for number, part in enumerate(parts):
        may_ask = sheets_beside.ASKS and not number
        yield judged(part, reader(sheets_beside.ASKS[0])) if may_ask else judged(part)


def lay(handed: bytes, wanted: Wanted, kind: Kind) -> Made | UnfitError:
    """Return the pages of one kind of several."""
    try:
        return maker(kind)(_orders(handed, wanted)[kind])
    except UnfitError as error:
        return error
    finally:
        forget()


def audit(part: Part) -> Report:
    """Return the audit of some pages of a finished file."""
    from chamberwise.exports.printing.auditing import judged

    return judged(part)


def _bare(order: Order) -> Order:
    return replace(order, library=NO_LIBRARY, ruler=Ruler())


@lru_cache(maxsize=1)
def _library(handed: bytes) -> Library:
    library: Library = pickle.loads(handed)
    return library


@lru_cache(maxsize=1)
def _orders(handed: bytes, wanted: Wanted) -> dict[Kind, Order]:
    return dict(orders_of(_library(handed), wanted))
