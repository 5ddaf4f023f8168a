"""Explanations as text."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.explaining.content import Explained
from chamberwise.exports.proof.paragraph import Paragraph, wrapped


def explained_text(found: Explained) -> str:
    """Return one explanation; examples are kept line by line."""
    return "\n".join(_lines(found))


def _lines(found: Explained) -> Iterator[str]:
    yield from wrapped([Paragraph("", f"{found.code} ({found.of}; {found.severity})")])
    yield from wrapped([Paragraph("", f"{found.title}."), Paragraph("", found.why)])
    for lead, example in ((_("wrong:"), found.wrong), (_("right:"), found.right)):
        yield ""
        yield lead
        yield from (f"  | {line}".rstrip() for line in example.splitlines())
    if found.source:
        yield ""
        yield from wrapped([Paragraph(_("Source: "), found.source)])


def rows(found: Iterable[Explained]) -> list[tuple[str, ...]]:
    """Return a row for each explanation."""
    return [(each.code, each.severity, each.of, each.title) for each in found]


HEADS = (N_("code"), N_("severity"), N_("of"), N_("what it is"))
