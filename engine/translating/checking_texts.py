"""What is wrong with single translated texts, in a file of their own or in a local sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypeAlias

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Note, Pointer, Problem, pointer_text
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.translation_file import TranslatedText
from chamberwise.engine.reading.tree import Tree
from chamberwise.engine.translating import codes
from chamberwise.engine.translating.doubts import Kind
from chamberwise.engine.translating.segments import VOCABULARY, Segments, text_digest
from chamberwise.engine.translating.standing import open_doubts

Placed: TypeAlias = tuple[TranslatedText, str, Segments]
"""A text, the pathway it belongs to (or the shared words), and the texts of that."""

_OF_DOUBT = {
    Kind.QUANTITY: codes.QUANTITY,
    Kind.FIGURE: codes.FIGURE,
    Kind.NEGATION: codes.NEGATION,
    Kind.LEFT_OVER: codes.LEFT_OVER,
}


def text_problems(
    loaded: Loaded, tree: Tree, texts: Iterable[Placed], language: str
) -> Iterator[Problem]:
    """Yield what is wrong with each text, in the order of the file."""
    met: dict[tuple[str, Pointer], TranslatedText] = {}
    for text, of, segments in texts:
        first = met.setdefault((of, text.at), text)
        if text.at not in segments:
            yield _nowhere(tree, text, segments)
        elif first is not text:
            yield _twice(tree, text, first)
        elif text.says and text.of != text_digest(segments[text.at]):
            yield _stale(loaded, tree, text, of, segments[text.at])
        elif text.says:
            yield from _doubtful(tree, text, segments[text.at], language)


def _nowhere(tree: Tree, text: TranslatedText, segments: Segments) -> Problem:
    at = (*text.stands, "at")
    message = _("there is no text at `{place}`").format(place=pointer_text(text.at))
    known = [pointer_text(each) for each in segments]
    otherwise = _("Delete it, or let `chamberwise translate` put it aside.")
    advice = did_you_mean(pointer_text(text.at), known, otherwise)
    return codes.NO_SUCH_TEXT.at(tree.file, at, tree.span(at), message, advice)


def _twice(tree: Tree, text: TranslatedText, first: TranslatedText) -> Problem:
    at = (*text.stands, "at")
    message = _("`{place}` is translated above already").format(place=pointer_text(text.at))
    note = Note(_("the first one"), tree.file, tree.span((*first.stands, "at")))
    advice = _("Keep one of the two.")
    return codes.TWICE.at(tree.file, at, tree.span(at), message, advice, [note])


def _stale(loaded: Loaded, tree: Tree, text: TranslatedText, of: str, source: str) -> Problem:
    at = (*text.stands, "of")
    message = _("it was made of another text than `{source}`, which stands there now").format(
        source=" ".join(source.split())
    )
    advice = _("Translate what stands there now, and write `of: {digest}`.").format(
        digest=text_digest(source)
    )
    notes = []
    if file := _source_file(loaded, of, text.at):
        said = _("what stands there now")
        notes = [Note(said, file.shown_as, file.tree.span(text.at, at_key=True))]
    return codes.STALE.at(tree.file, at, tree.span(at), message, advice, notes)


def _source_file(loaded: Loaded, of: str, at: Pointer) -> File | None:
    """Return the file in which the source of a text stands."""
    if of != VOCABULARY:
        return loaded.source(of) if of in loaded.file_of else None
    defined = loaded.defined.get((str(at[0]), str(at[1])))
    return loaded.files[defined[0]] if defined else None


def _doubtful(tree: Tree, text: TranslatedText, source: str, language: str) -> Iterator[Problem]:
    if text.source and text_digest(text.source) != text.of:
        at = (*text.stands, "source")
        message = _("`source` is not the text that `of` names")
        advice = _("Write the text that stands in the pathway, or delete `source:`.")
        yield codes.NOT_ITS_SOURCE.at(tree.file, at, tree.span(at), message, advice)
    at = (*text.stands, "says")
    for doubt in open_doubts(source, text, language):
        advice = _("Put the translation right.")
        if doubt.can_be_accepted:
            advice = _("Put it right; if it is right as it stands, say why under `accepted:`.")
        code = _OF_DOUBT[doubt.kind]
        yield code.at(tree.file, at, tree.span(at), doubt.message, advice)
