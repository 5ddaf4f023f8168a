"""The texts that a unit's sheet brought and that nobody has translated yet."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.diagnostics.problem import Pointer
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.translation_file import TranslationFile
from chamberwise.engine.translating.applying import stands
from chamberwise.engine.translating.segments import VOCABULARY, originals
from chamberwise.engine.translating.standing import Standing


def own_texts(
    base: Loaded, loaded: Loaded, language: str, files: Iterable[TranslationFile]
) -> list[tuple[str, Pointer, str]]:
    """Return the pathway, place and source of each; no pathway where the sheet need name none."""
    local = loaded.library.local
    assert local is not None
    below, stood = originals(base.library), stands(loaded, language, files)
    found = []
    for name, segments in originals(loaded.library).items():
        within = "" if name in (local.over, VOCABULARY) else name
        for at, source in segments.items():
            is_own = below.get(name, {}).get(at) != source
            if is_own and stood[name][at].standing is not Standing.TRANSLATED:
                found.append((within, at, source))
    return found
