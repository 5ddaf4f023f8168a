"""The approval of a translation: given by somebody who did not translate it, to what it says.

Each text counts with the digest of its source. A source that changes leaves its text stale, and a
text put right is another content: either way nobody stands for it any more.
"""

from __future__ import annotations

from chamberwise.engine.approval.people import is_one_of
from chamberwise.engine.approval.sealing import changed_since
from chamberwise.engine.approval.standing import NEVER_SEALED
from chamberwise.engine.diagnostics.problem import pointer_text
from chamberwise.engine.keys.digest import short_digest
from chamberwise.engine.model.pathway import Seal
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile


def seal_of_translation(file: TranslationFile) -> Seal:
    """Return the digests of a translation: of its head, and of its texts by where they stand."""
    parts = {"head": short_digest([file.of, file.language, list(file.translators)])}
    tables: dict[str, list[list[str]]] = {}
    for text in sorted(file.texts, key=lambda each: pointer_text(each.at)):
        tables.setdefault(_part(text), []).append(_plain(text))
    parts |= {name: short_digest(texts) for name, texts in tables.items()}
    return Seal(short_digest(list(map(list, parts.items()))), parts)


def fallen_parts(file: TranslationFile) -> tuple[str, ...]:
    """Return what changed since a translation was approved; nothing where its approval stands."""
    if file.seal is None:
        return (NEVER_SEALED,)
    now = seal_of_translation(file)
    if now.content == file.seal.content:
        return ()
    return changed_since(file.seal, now) or (NEVER_SEALED,)


def stands(file: TranslationFile) -> bool:
    """Whether somebody who did not translate it stands for what it says now."""
    return (
        file.is_called_approved
        and bool(file.approved_by and file.approved_on and file.translators)
        and not is_one_of(file.approved_by, file.translators)
        and not fallen_parts(file)
    )


def _part(text: TranslatedText) -> str:
    return str(text.at[0]).replace(" ", "-")


def _plain(text: TranslatedText) -> list[str]:
    said = (" ".join(each.split()) for each in (text.says, text.accepted))
    return [pointer_text(text.at), text.of, *said]
