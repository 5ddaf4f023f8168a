"""`python -m tests.language.catalogues`: bring every catalogue up to the texts of the program.

New texts stand at the end of a look for `msgstr ""`; texts that are gone leave. With files named,
what those say is taken over first, for two people who wrote in the same catalogue.
"""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_file
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po
from chamberwise.engine.language.languages import CATALOGUES, DOMAIN, ENGLISH, LANGUAGES

TOP = Path(__file__).resolve().parents[2]
ROOMS = ("engine", "exports", "tui")
KEYWORDS = {"_": None, "N_": None, "ngettext": (1, 2), "pgettext": ((1, "c"), 2)}
METHODS = {".py": "python", ".j2": "jinja2.ext:babel_extract"}
"""How the texts of a file are found, by its ending."""
OTHERS = tuple(code for code in LANGUAGES if code != ENGLISH.code)


def path_of(code: str, ending: str) -> Path:
    """Return where the catalogue of a language is kept."""
    return CATALOGUES / code / "LC_MESSAGES" / f"{DOMAIN}.{ending}"


def extracted() -> Catalog:
    """Return every text the program marks."""
    catalogue = Catalog(fuzzy=False)
    for room in ROOMS:
        for path in sorted((TOP / room).rglob("*.*")):
            if method := METHODS.get(path.suffix):
                for _line, text, remarks, context in extract_from_file(
                    method, path, KEYWORDS, comment_tags=("Translators:",)
                ):
                    catalogue.add(text, None, auto_comments=remarks, context=context)
    return catalogue


def read(path: Path, code: str) -> Catalog:
    """Return a catalogue as it is kept, empty where there is none yet."""
    if not path.exists():
        return Catalog(locale=code, fuzzy=False)
    with path.open("rb") as file:
        return read_po(file, locale=code)


def renewed(code: str, said: Iterable[Catalog]) -> Catalog:
    """Return the catalogue of a language with the texts of today and what was said of them."""
    renewed = Catalog(locale=code, project=DOMAIN, fuzzy=False, header_comment="")
    kept = [*said]
    for message in extracted():
        if message.id:
            string = next(_said_of(message.id, message.context, kept), None)
            renewed.add(
                message.id,
                string,
                auto_comments=message.auto_comments,
                context=message.context,
            )
    return renewed


def _said_of(text: object, context: str | None, kept: Iterable[Catalog]) -> Iterator[object]:
    for catalogue in kept:
        message = catalogue.get(text, context)
        if message is not None and any(
            [message.string] if isinstance(message.string, str) else message.string
        ):
            yield message.string


def as_po(catalogue: Catalog) -> bytes:
    """Return a catalogue as it is kept: by text, without the day or the place of anything."""
    out = BytesIO()
    write_po(out, catalogue, width=100, no_location=True, sort_output=True, omit_header=True)
    head = f'msgid ""\nmsgstr ""\n"Language: {catalogue.locale}\\n"\n'
    head += '"Content-Type: text/plain; charset=utf-8\\n"\n'
    head += f'"Plural-Forms: {catalogue.plural_forms}\\n"\n\n'
    return head.encode() + out.getvalue()


def as_mo(catalogue: Catalog) -> bytes:
    """Return a catalogue as gettext reads it."""
    out = BytesIO()
    write_mo(out, catalogue)
    return out.getvalue()


class _Bare(Catalog):
    """A catalogue whose head says what gettext needs, and nothing of days, people or tools."""

    @property
    def mime_headers(self) -> list[tuple[str, str]]:  # type: ignore[override]
        return [
            ("Content-Type", "text/plain; charset=utf-8"),
            ("Plural-Forms", self.plural_forms),
        ]


def compiled(code: str) -> bytes:
    """Return what gettext should read, made of the catalogue that is kept."""
    bare = _Bare(locale=code, fuzzy=False)
    for message in read(path_of(code, "po"), code):
        if message.id:
            bare.add(message.id, message.string, context=message.context)
    return as_mo(bare)


def main(words: list[str]) -> int:
    """Renew and compile every catalogue; say how many texts are not translated."""
    for code in OTHERS:
        kept = path_of(code, "po")
        kept.parent.mkdir(parents=True, exist_ok=True)
        said = [read(Path(word), code) for word in words]
        catalogue = renewed(code, [*said, read(kept, code)])
        kept.write_bytes(as_po(catalogue))
        path_of(code, "mo").write_bytes(compiled(code))
        open_ones = [each for each in catalogue if each.id and not _is_said(each.string)]
        print(f"{code}: {len(catalogue)} texts, {len(open_ones)} not translated")
    return 0


def _is_said(string: object) -> bool:
    return bool(string) if isinstance(string, str) else isinstance(string, tuple) and all(string)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
