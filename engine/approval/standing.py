"""Whether the approvals of a library still stand: each was given to one content."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from chamberwise.engine.approval.people import is_one_of
from chamberwise.engine.approval.sealing import changed_since, seal_of
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Status
from chamberwise.engine.model.step import PathwayId

NEVER_SEALED = "approval"
"""Said where an approval names no content at all."""


def settled(library: Library) -> tuple[Library, Mapping[PathwayId, tuple[str, ...]]]:
    """Return the library with every approval that fell taken back, and what changed under each.

    Nothing is named where nothing changed: then somebody approved what they wrote themselves.
    """
    fallen: dict[PathwayId, tuple[str, ...]] = {}
    for name, pathway in library.pathways.items():
        if pathway.status is Status.APPROVED and pathway.approved_by:
            if is_one_of(pathway.approved_by, pathway.authors):
                fallen[name] = ()
                continue
            if pathway.seal is None:
                fallen[name] = (NEVER_SEALED,)
                continue
            now = seal_of(library, name)
            if now.content != pathway.seal.content:
                fallen[name] = changed_since(pathway.seal, now) or (NEVER_SEALED,)
    if not fallen:
        return library, fallen
    pathways = {
        name: replace(each, status=Status.DRAFT) if name in fallen else each
        for name, each in library.pathways.items()
    }
    return Library(library.shared, pathways, library.local), fallen
