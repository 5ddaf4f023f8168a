"""A translation file written anew: what stands is kept, what is missing has its place.

No translation is ever lost: one whose text is gone is put aside, one whose text has changed stays
with the old text beside the new.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from chamberwise.engine.diagnostics.problem import Pointer, pointer_text
from chamberwise.engine.reading.form_translation import APPROVED, UNREVIEWED
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.translating.segments import Segments, text_digest

SCHEMA = "# yaml-language-server: $schema=../../schema/translation.schema.json"
HEAD = f"""\
{SCHEMA}
# While its status is `unreviewed` nobody who did not translate it has read it against its source:
# it binds nobody and shows as a draft. `chamberwise approve` writes down who has. `of` is the
# digest of the text it was made of: once that text changes, it is shown in English again.
"""
_BARE = re.compile(r"(?!(?:~|null)$)[^\W_(][^\n]*(?<![\s:])", re.IGNORECASE)
_COMMENTED_OUT = re.compile(r"^[ \t]*#[ \t]*says:[ \t]*\S", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Renewed:
    """A file as it is to be written, and which of its texts were taken over or put aside."""

    text: str
    taken_over: int
    put_aside: int


def line_commented_out(text: str) -> int | None:
    """Return the line of a translation that was written in a remark and would be lost."""
    found = _COMMENTED_OUT.search(text)
    return text.count("\n", 0, found.end()) + 1 if found else None


def renewed(
    of: str, language: str, segments: Segments, file: TranslationFile | None, head: str = ""
) -> Renewed:
    """Return the translation file of a pathway, or of the shared words, for the texts of today.

    `head` are the remarks at the top of the file as it was.
    """
    file = file or TranslationFile(of, language, ())
    placed = {text.at: text for text in reversed(file.texts) if text.says}
    memory = {text.of: text for text in (*file.aside, *file.texts) if text.says}
    lines: list[str] = []
    taken_over = 0
    for at, source in segments.items():
        text = placed.get(at)
        found = None if text else memory.get(text_digest(source))
        taken_over += found is not None
        lines += _entry(at, source, text or found)
    kept = [text for text in file.texts if text.says and placed.get(text.at) is not text]
    kept += [text for text in placed.values() if text.at not in segments]
    aside = [*file.aside, *(text for text in kept if text not in file.aside)]
    whole = [head or HEAD.rstrip("\n"), *_top(of, language, file), "", "texts:", *lines]
    if aside:
        whole += ["", "aside:", *(line for text in aside for line in _put_aside(text))]
    return Renewed("\n".join(whole) + "\n", taken_over, len(kept))


def sheet_block(language: str, texts: Iterable[tuple[str, Pointer, str]]) -> str:
    """Return what a sheet has to say of texts that are its own: pathway, place and source."""
    lines = ["translations:", f"  {language}:"]
    for within, at, source in texts:
        place, *rest = _entry(at, source, None)
        lines += [f"  {place}", *([f"      in: {within}"] if within else ())]
        lines += [f"  {each}" for each in rest[:-1]] + ["      says: ''"]
    return "\n".join(lines)


def scalar(text: str) -> str:
    """Return a text as YAML holds it on one line.

    >>> scalar("Spitze stillhalten: nicht ziehen.")
    "'Spitze stillhalten: nicht ziehen.'"
    """
    said = " ".join(text.split())
    if _BARE.fullmatch(said) and ": " not in said and " #" not in said:
        return said
    return "'" + said.replace("'", "''") + "'"


def _top(of: str, language: str, file: TranslationFile) -> Iterator[str]:
    yield f"translation of: {of}"
    yield f"language: {language}"
    yield f"status: {APPROVED if file.is_called_approved else UNREVIEWED}"
    if file.approved_by:
        yield f"approved by: {scalar(file.approved_by)}"
    if file.approved_on:
        yield f"approved on: {file.approved_on.isoformat()}"
    if file.seal:
        yield f"approved content: {file.seal.content}"
        yield "approved parts:"
        yield from (f"  {name}: {digest}" for name, digest in file.seal.parts.items())
    if file.translators:
        yield f"translated by: [{', '.join(map(_in_a_list, file.translators))}]"


def _in_a_list(text: str) -> str:
    said = scalar(text)
    is_bare = not any(sign in said for sign in ",[]{}")
    return said if is_bare or said.startswith("'") else "'" + said.replace("'", "''") + "'"


def _entry(at: Pointer, source: str, text: TranslatedText | None) -> Iterator[str]:
    digest = text_digest(source)
    yield f"  - at: {scalar(pointer_text(at))}"
    if text is None:
        yield f"    of: {digest}"
        yield f"    source: {scalar(source)}"
        yield "    # says:"
        return
    is_stale = text.of != digest
    if text.at != at:
        yield f"    # taken over from: {pointer_text(text.at)}"
    yield f"    of: {text.of}"
    was = text.source if is_stale else source
    if was:
        yield f"    source: {scalar(was)}"
    if is_stale:
        yield f"    # now: {' '.join(source.split())}"
        yield f"    # of it: {digest}"
    yield from _said(text)


def _put_aside(text: TranslatedText) -> Iterator[str]:
    yield f"  - at: {scalar(pointer_text(text.at))}"
    yield f"    of: {text.of}"
    if text.source:
        yield f"    source: {scalar(text.source)}"
    yield from _said(text)


def _said(text: TranslatedText) -> Iterator[str]:
    yield f"    says: {scalar(text.says)}"
    if text.accepted:
        yield f"    accepted: {scalar(text.accepted)}"
