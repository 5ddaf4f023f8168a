"""What somebody asked to have printed, and what came of it."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.exports.control.content import Control
from chamberwise.exports.paper.sheet import Page
from chamberwise.exports.paper.sizes import Sized
from chamberwise.exports.printing.kind import Kind as Kind
from chamberwise.exports.printing.unfit import UnfitError as UnfitError
from chamberwise.exports.typesetting.measuring import Ruler


@dataclass(frozen=True, slots=True)
class Order:
    """One sheet to make. `distance` in metres is from where it has to be read, if that was said."""

    library: Library
    pathway: PathwayId
    sized: Sized
    control: Control
    made: date
    distance: float | None = None
    ruler: Ruler = field(default_factory=Ruler, compare=False)


@dataclass(frozen=True, slots=True)
class Made:
    """The pages of a sheet, and what the person who ordered it should know."""

    pages: tuple[Page, ...]
    told: tuple[str, ...] = ()
