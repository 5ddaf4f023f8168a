"""Where line mode prints: wrapped, plain, and within what the stream's encoding can say."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TextIO

from chamberwise.tui.present.parts import Part, text_lines

_SPELT = str.maketrans(
    {
        "‘": "'",
        "’": "'",
        "“": '"',
        "”": '"',
        "–": "-",
        "—": "-",
        "−": "-",
        "…": "...",
        "×": "x",
        "≤": "<=",
        "≥": ">=",
        "µ": "u",
        "μ": "u",
        "°": " degrees",
        "→": "->",
        "½": "1/2",
    }
)


def in_ascii(text: str) -> str:
    """Return text in ASCII: signs spelt, accents dropped, what is left shown as `?`.

    >>> in_ascii("“1–2 µl”, naïve")
    '"1-2 ul", naive'
    """
    spelt = unicodedata.normalize("NFKD", text.translate(_SPELT))
    kept = "".join(letter for letter in spelt if not unicodedata.combining(letter))
    return kept.encode("ascii", "replace").decode("ascii")


@dataclass(frozen=True, slots=True)
class Paper:
    """A stream and the width lines may have on it."""

    stream: TextIO
    width: int

    def parts(self, parts: Iterable[Part]) -> None:
        """Print paragraphs."""
        for line in text_lines(parts, self.width):
            self._write(f"{line}\n")
        self.stream.flush()

    def say(self, text: str = "") -> None:
        """Print one paragraph."""
        self.parts([Part(text)])

    def verbatim(self, text: str) -> None:
        """Print one line as it is, however long: a command to be copied."""
        self._write(f"{text}\n")
        self.stream.flush()

    def prompt(self, text: str) -> None:
        """Print a prompt; it stays the last line until something is typed."""
        self._write(f"{text} ")
        self.stream.flush()

    def _write(self, text: str) -> None:
        encoding = (self.stream.encoding or "utf-8").lower().replace("-", "").replace("_", "")
        self.stream.write(text if encoding == "utf8" else in_ascii(text))
