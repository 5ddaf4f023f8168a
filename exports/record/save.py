"""Writing a record to a file; the file's ending chooses the form."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.whole_file import write_whole
from chamberwise.exports.record.content import RecordContent
from chamberwise.exports.record.machine import record_json
from chamberwise.exports.record.text import record_text

RENDERERS: dict[str, Callable[[RecordContent], str]] = {".txt": record_text, ".json": record_json}


class NotSavedError(RuntimeError):
    """The record could not be written; `args[0]` says why, for people."""


def renderer_for(path: Path) -> Callable[[RecordContent], str]:
    """Return the renderer a file's ending asks for. Raises `NotSavedError`."""
    try:
        return RENDERERS[path.suffix.lower()]
    except KeyError:
        known = _(" or ").join(RENDERERS)
        raise NotSavedError(
            _("A record is written as {known}, so name the file so.").format(known=known)
        ) from None


def save_record(record: RecordContent, path: Path) -> None:
    """Write a record whole or not at all. Raises `NotSavedError`."""
    text = renderer_for(path)(record)
    try:
        write_whole(path, text)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise NotSavedError(
            _("The record could not be written to {path}: {reason}.").format(
                path=path, reason=reason
            )
        ) from error
