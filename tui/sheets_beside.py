"""Sheets made beside this process, while it reads the library and sees whether they may go out.

The copies are made before anything is read: meanwhile they load what prints and what audits. What
is begun here is asked for only once the pathway may be printed; else it is thrown away.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterable
from contextlib import AbstractContextManager
from dataclasses import replace
from importlib import import_module
from typing import TYPE_CHECKING, Any, TypeVar

from chamberwise.engine.stamp.content import content_digest
from chamberwise.exports.printing.kind import Kind
from chamberwise.tui.copies import Copies, Promise
from chamberwise.tui.reading_beside import Line, line, serve

if TYPE_CHECKING:
    from chamberwise.engine.model.library import Library
    from chamberwise.exports.audit.report import Report
    from chamberwise.exports.printing.auditing import Judge, Part
    from chamberwise.exports.printing.order import Made, Order
    from chamberwise.tui.preparing import Prepared
    from chamberwise.tui.wanted import Wanted

LONGEST_FIRST = (Kind.CASE_TABLE, Kind.FULL)
"""What takes longest is begun first; the rest fills what time the others leave."""
IN_COPY = "chamberwise.tui.sheets_in_copy"
ASKS: list[Line] = []
"""In a copy that works alone: its end of the line to the first process."""
Done = TypeVar("Done")


class SheetsBeside(AbstractContextManager["SheetsBeside"]):
    """Copies that print some kinds: each of several is laid out there, one alone finished."""

    def __init__(self, kinds: tuple[Kind, ...]) -> None:
        self._kinds = kinds
        self._copies = Copies(len(kinds))
        self._whole: Promise[Any] | None = None
        self._laid: dict[Kind, Promise[Any]] = {}
        self._line = line() if self._copies.count == 1 else None
        ASKS[:] = [self._line.copy] if self._line else []
        for _copy in range(self._copies.count):
            self._copies.begin(in_copy, "ready", kinds)
        while ASKS:
            ASKS.pop().close()  # it is the copy's now

    def __exit__(self, *_error: object) -> None:
        """End the copies, whatever they are at."""
        self._copies.__exit__()

    def begin(self, library: Library, wanted: Wanted) -> None:
        """Begin with the sheets; what is wrong with them is said when they are asked for."""
        handed = pickle.dumps(library)
        if len(self._kinds) == 1:
            self._whole = self._copies.begin(in_copy, "whole", handed, wanted)
            return
        first = [kind for kind in LONGEST_FIRST if kind in self._kinds]
        for kind in dict.fromkeys((*first, *self._kinds)):
            self._laid[kind] = self._copies.begin(in_copy, "lay", handed, wanted, kind)

    def prepared(self, library: Library, wanted: Wanted) -> Prepared:
        """Return the sheets, as `preparing.prepared` does."""
        from chamberwise.tui.preparing import prepared

        if not (self._whole or self._laid):
            self.begin(library, wanted)
        whole = self._whole
        if not whole:
            return prepared(library, wanted, self._made, self._each)
        content_digest(library, wanted.pathway)  # the register will ask; now there is time
        if self._line:
            serve(self._line.first, lambda: whole.is_done)
        found: Prepared = _or_raised(whole.result())
        orders = ((kind, replace(order, library=library)) for kind, order in found.orders)
        return found._replace(orders=tuple(orders))

    def _made(self, kind: Kind, _order: Order) -> Made:
        made: Made = _or_raised(self._laid[kind].result())
        return made

    def _each(self, judged: Judge, parts: Iterable[Part]) -> Iterable[Report]:
        several = tuple(parts)
        if len(several) < 2:
            return map(judged, several)
        promises = [self._copies.begin(in_copy, "audit", part) for part in several]
        return [promise.result() for promise in promises]


def in_copy(work: str, *given: Any) -> Any:
    """Do some work of `sheets_in_copy`, which is loaded there alone."""
    return getattr(import_module(IN_COPY), work)(*given)


def _or_raised(found: Done | Exception) -> Done:
    if isinstance(found, Exception):
        raise found
    return found
