"""The round trip: whether a finished file says all that the pathway says, and nothing else.

The file is read back by two independent readers. Within a step the order of the parts is free,
for it depends on the width of the paper; a label, its sign and the number it leads to are one part.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from io import BytesIO

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import DRAFT, EXPIRED, TEMPLATE, UNREVIEWED
from chamberwise.exports.control.lines import rule_of_use
from chamberwise.exports.full.content import FullPathway
from chamberwise.exports.full.expected import Stretch, Wanted, squashed, stretches_in_order

SHOWN = 60
"""Letters of a text that is out of place."""


def differences(content: FullPathway, pdf: bytes) -> tuple[str, ...]:
    """Return each difference between the pathway and the file, by place; none is the aim."""
    found = []
    for reader, pages in (("pypdf", _by_pypdf(pdf)), ("pypdfium2", _by_pypdfium2(pdf))):
        found += [
            _("{each} (read by {reader})").format(each=each, reader=reader)
            for each in text_differences(content, pages)
        ]
    return tuple(found)


def text_differences(content: FullPathway, pages: list[str]) -> tuple[str, ...]:
    """Return the differences between the pathway and the texts of the pages."""
    reading = _Reading(*_joined(pages))
    for stretch, following in stretches_in_order(content):
        reading.read(stretch, following)
    reading.finish()
    return tuple(reading.found)


def _by_pypdf(pdf: bytes) -> list[str]:
    from pypdf import PdfReader

    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def _by_pypdfium2(pdf: bytes) -> list[str]:
    import pypdfium2  # type: ignore[import-untyped]

    document = pypdfium2.PdfDocument(pdf)
    try:
        return [str(page.get_textpage().get_text_range()) for page in document]
    finally:
        document.close()


def _joined(pages: list[str]) -> tuple[str, list[int]]:
    """Return what stands between head and foot of all pages, and where each page ends."""
    text, ends = "", []
    foot = squashed("".join(run.text for run in rule_of_use()))
    for page in pages:
        # PDFium writes a hyphen at the end of a line as a mark of its own.
        words = squashed(page.replace("\ufffe", "-").replace("\u0002", "-"))
        for mark in (_(EXPIRED), _(DRAFT), _(UNREVIEWED), _(TEMPLATE)):
            words = words.removeprefix(squashed(mark))
        cut = words.rfind(foot)
        words = words[:cut] if cut >= 0 else words
        glue = "|" if text[-1:].isdigit() and words[:1].isdigit() else ""
        text += glue + words
        ends.append(len(text))
    return text, ends


@dataclass
class _Reading:
    """Goes through the text once, from the front."""

    text: str
    ends: list[int]
    at: int = 0
    found: list[str] = field(default_factory=list)
    pages: dict[int, int] = field(default_factory=dict)
    cited: list[tuple[str, int, int]] = field(default_factory=list)

    def read(self, stretch: Stretch, following: Stretch | None) -> None:
        left = self._begin(stretch, list(stretch.holds))
        while self.at < len(self.text):
            if self._take(stretch, left):
                continue
            if following and following.begins.pattern.match(self.text, self.at):
                break
            if not self._skip(stretch, left, following):
                break
        for each in left:
            if not each.is_optional:
                self.found.append(
                    _("{where}: {what} is not found.").format(where=stretch.where, what=each.what)
                )

    def finish(self) -> None:
        """Tell what is left over, and each page number that is wrong."""
        if self.text[self.at :].strip("|"):
            self._stray(_("the end"), self.at, len(self.text))
        for where, page, to in self.cited:
            if self.pages.get(to, page) != page:
                self.found.append(
                    _("{where}: step {to} is said to be on page {page}, but is on {pages}.").format(
                        where=where, to=to, page=page, pages=self.pages[to]
                    )
                )

    def _begin(self, stretch: Stretch, left: list[Wanted]) -> list[Wanted]:
        match = stretch.begins.pattern.match(self.text, self.at)
        if not match:
            match = stretch.begins.pattern.search(self.text, self.at, self.at + 4000)
            if not match:
                self.found.append(
                    _("{where}: {what}: not found.").format(
                        where=stretch.where, what=stretch.begins.what
                    )
                )
                return left
            self._stray(stretch.where, self.at, match.start())
        self.at = match.end()
        self.pages[stretch.number] = self._page(self.at - 1)
        return left

    def _take(self, stretch: Stretch, left: list[Wanted]) -> bool:
        """Take the longest thing wanted that stands here."""
        for pattern in stretch.furniture:
            if match := pattern.match(self.text, self.at):
                self.at = match.end()
                return True
        matches = [(each.pattern.match(self.text, self.at), each) for each in left]
        standing = [(match.end(), match, each) for match, each in matches if match]
        if not standing:
            return False
        end, match, wanted = max(standing, key=lambda each: each[0])
        left.remove(wanted)
        self.at = end
        if wanted.to and match.groupdict().get("page"):
            self.cited.append((stretch.where, int(match["page"]), wanted.to))
        return True

    def _skip(self, stretch: Stretch, left: list[Wanted], following: Stretch | None) -> bool:
        """Go over what is not wanted to the next thing that is; false when there is none."""
        patterns = [each.pattern for each in left] + (
            [following.begins.pattern] if following else []
        )
        starts = [match.start() for match in self._search(patterns)]
        if not starts:
            return False
        self._stray(stretch.where, self.at, min(starts))
        self.at = min(starts)
        return True

    def _search(self, patterns: list[re.Pattern[str]]) -> Iterator[re.Match[str]]:
        for pattern in patterns:
            if match := pattern.search(self.text, self.at + 1, self.at + 4000):
                yield match

    def _stray(self, where: str, start: int, end: int) -> None:
        words = self.text[start:end].strip("|")
        if words:
            self.found.append(
                _("{where}: “{words}” is not of the pathway there.").format(
                    where=where, words=words[:SHOWN]
                )
            )

    def _page(self, at: int) -> int:
        return next(number for number, end in enumerate(self.ends, start=1) if at < end)
