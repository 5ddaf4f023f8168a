"""The pathways of a library as rows to choose from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from chamberwise.engine.graph.handovers import reading_order
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.local import Local
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.translating.applying import THE_TRANSLATION
from chamberwise.exports.record.standing import marks
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.present.words import status_word
from chamberwise.tui.unfinished import Unfinished, newest_unfinished


@dataclass(frozen=True, slots=True)
class PathwayRow:
    """One pathway: what it is for, how far it is approved, and a walk to go on with."""

    id: str
    title: str
    summary: str
    standing: str
    unfinished: Unfinished | None

    @property
    def kept(self) -> str:
        """The walk to go on with, as a sentence; nothing where there is none."""
        if self.unfinished is None:
            return ""
        steps = self.unfinished.steps
        return ngettext(
            "Not finished: {count} step, begun {began}",
            "Not finished: {count} steps, begun {began}",
            steps,
        ).format(count=steps, began=f"{self.unfinished.began:%Y-%m-%d %H:%M}")


def library_title(loaded: Loaded) -> tuple[str, str]:
    """Return whose pathways are shown, and by which sheet."""
    local = loaded.library.local
    if local is None:
        return _("Chamberwise: pathways"), ""
    return _("Pathways of {unit}").format(unit=local.unit), Path(loaded.sheet).name


def pathway_rows(loaded: Loaded, today: date, folder: Path) -> tuple[PathwayRow, ...]:
    """Return the pathways as they lead into each other; under a unit's sheet, those it covers."""
    local = loaded.library.local
    names = reading_order(loaded.library)
    covered = [name for name in names if local is None or name in local.covers]
    pathways = (loaded.library.pathways[name] for name in covered)
    return tuple(
        PathwayRow(
            pathway.id,
            pathway.title,
            pathway.summary,
            _standing(pathway, loaded, today),
            newest_unfinished(loaded, pathway.id, folder),
        )
        for pathway in pathways
    )


def _standing(pathway: Pathway, loaded: Loaded, today: date) -> str:
    local, fallen = loaded.library.local_to(pathway.id), loaded.fallen.get(pathway.id, ())
    approval = status_word(pathway.status)
    if pathway.status == "draft":  # which the mark has said
        approval = _("approved by nobody")
    if THE_TRANSLATION in fallen:
        approval = _("translation not reviewed")
    elif fallen:
        approval = _("edited since approval")
    if pathway.is_approved:
        approval = _("approved by {name}").format(name=pathway.approved_by)
    told = [
        _edition(pathway, local),
        approval,
        _("review by {day}").format(day=pathway.review_by),
    ]
    return ", ".join([*marks(pathway, today), *told])


def _edition(pathway: Pathway, local: Local | None) -> str:
    if local is None:
        return _("edition {edition}").format(edition=pathway.edition)
    over = _("edition {edition} over edition {base}")
    return over.format(edition=pathway.edition, base=local.base_edition)


def library_page(rows: tuple[PathwayRow, ...], chosen: int) -> list[Part]:
    """Return the rows as paragraphs, the chosen one marked."""
    parts: list[Part] = []
    for place, row in enumerate(rows):
        lead = "> " if place == chosen else "  "
        answer = row.id
        parts.append(Part(row.title, lead, Tone.STRONG, Tone.KEY, answer))
        parts.append(Part(row.standing, "    ", answer=answer))
        if row.summary and place == chosen:
            parts.append(Part(row.summary, "    ", Tone.CALM, answer=answer))
        if row.kept:
            parts.append(Part(row.kept, "    ", Tone.MARK, answer=answer))
        parts.append(GAP)
    return parts or [Part(_("There is no pathway in this library."))]


def unreadable(loaded: Loaded) -> list[Part]:
    """Return a line for each file of the library that holds nothing that can be read."""
    files = [
        file.shown_as
        for file in loaded.files.values()
        if file.pathway is None and file.words is None and file.sheet is None
    ]
    return [
        Part(
            _("{file} cannot be read. `chamberwise check {file}` says why.").format(file=name), "  "
        )
        for name in files
    ]
