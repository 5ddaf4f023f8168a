"""What is wrong with a translation file: its head, each of its texts, and what it leaves out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import PurePath

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.diagnostics.problem import Pointer, Problem
from chamberwise.engine.language.languages import ENGLISH, LANGUAGES
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import codes as of_form
from chamberwise.engine.reading.library import File, Loaded
from chamberwise.engine.reading.translation_file import TranslationFile
from chamberwise.engine.translating import codes
from chamberwise.engine.translating.checking_approval import approval_problems
from chamberwise.engine.translating.checking_texts import text_problems
from chamberwise.engine.translating.segments import OF_A_DRILL, Segments, originals

OTHERS = tuple(code for code in LANGUAGES if code != ENGLISH.code)


def check_translation(
    loaded: Loaded, file: File, of_drills: Mapping[str, Segments] | None = None
) -> Iterator[Problem]:
    """Yield what is wrong with a translation; its form was told when it was read.

    `of_drills` are the texts of drills; without them nothing is said of a translation of drills.
    """
    translation, tree = file.translation, file.tree
    if translation is None:
        return
    every = {**originals(loaded.library), **(of_drills or {})}
    language, of = translation.language, translation.of
    yield from _of_the_head(file, translation)
    if of_drills is None and of.startswith(OF_A_DRILL) and of not in every:
        return
    if of and of not in every:
        at: Pointer = ("translation of",)
        message = _("there is no pathway `{name}`").format(name=of)
        advice = did_you_mean(of, every, _("`chamberwise list` shows those there are."))
        yield codes.OF_NOTHING.at(tree.file, at, tree.span(at), message, advice)
    if of not in every or language not in OTHERS:
        return
    texts = [(each, of, every[of]) for each in translation.texts]
    yield from text_problems(loaded, tree, texts, language)
    missing = len(every[of].keys() - {each.at for each in translation.texts if each.says})
    if missing:
        at = ("texts",)
        message = _("{missing} of {texts} texts have no translation").format(
            missing=missing, texts=len(every[of])
        )
        advice = _("`chamberwise translate {name} --language {language}` writes them in.").format(
            name=of, language=language
        )
        span = tree.span(at, at_key=True)
        yield codes.MISSING.at(tree.file, at, span, message, advice)


def no_such_language(code: str) -> tuple[str, str]:
    """Return what is wrong with a language that there is not, and what to write."""
    message = _("there is no language `{code}` to translate into").format(code=code)
    known = ", ".join(f"`{each}`" for each in OTHERS)
    return message, did_you_mean(code, OTHERS, _("There are {known}.").format(known=known))


def _of_the_head(file: File, translation: TranslationFile) -> Iterator[Problem]:
    tree, language, of = file.tree, translation.language, translation.of
    if language and language not in OTHERS:
        at: Pointer = ("language",)
        span = tree.span(at)
        yield codes.NO_SUCH_LANGUAGE.at(tree.file, at, span, *no_such_language(language))
    if translation.is_called_approved:
        yield from approval_problems(tree, translation)
    path = PurePath(tree.file)
    if of and language and path.parts[-2:-1] and path.parts[-2:] != (language, f"{of}.yaml"):
        at = ("translation of",)
        place = f"{language}/{of}.yaml"
        message = _("it is of `{name}` in `{language}` and lies under another name").format(
            name=of, language=language
        )
        advice = _("Call the file `{place}`.").format(place=place)
        yield of_form.FILE_NAME.at(tree.file, at, tree.span(at), message, advice)
