"""What the YAML parser says, as a problem that an author can act on."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

import yaml
from chamberwise.engine.diagnostics.problem import Problem, Span
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading import codes

_LOOK = N_("Check indentation, colons, brackets and quotes on this line and the one above.")
_OUT_OF_LINE = "did not find expected key"
_HEAD_IN_A_REMARK = re.compile(r"\s*#\s?([\w -]+:)\s*")
_INDENT = N_("Line it up with its neighbours, with spaces only.")


@dataclass(frozen=True, slots=True)
class _Told:
    """How one of the parser's sentences is told; `at_opening` where the fault began earlier."""

    said: str
    message: str
    advice: str
    at_opening: bool = False


_TOLD = (
    _Told(
        "mapping values are not allowed",
        N_("a colon in plain text"),
        N_("Put the whole text in quotes, or check the indentation of this line."),
    ),
    _Told(
        "could not find expected ':'",
        N_("this line is no key with a colon and a space"),
        N_("Put a space after the colon, or line the text up with the text it belongs to."),
        at_opening=True,
    ),
    _Told(
        "unexpected end of stream",
        N_("a quote is opened here and never closed"),
        N_("Close it, or put the whole text in the other kind of quotes."),
        at_opening=True,
    ),
    _Told(
        "expected ',' or",
        N_("a bracket is opened here and not closed"),
        N_("Close it, put a comma between what stands in it, or quote a text that holds a colon."),
        at_opening=True,
    ),
    _Told(
        "cannot start any token",
        N_("no text may begin with this"),
        N_("Put the whole text in quotes."),
    ),
    _Told(
        _OUT_OF_LINE,
        N_("this does not follow on from what stands before it"),
        N_("Line it up with its neighbours, or double a quote that stands inside quotes."),
    ),
    _Told("expected '-' indicator", N_("only `- ` can stand here"), _INDENT),
    _Told("expected <document start>", N_("this line stands further out than the first"), _INDENT),
    _Told(
        "block sequence entries are not allowed",
        N_("no list can begin here"),
        N_("Begin the list on a line of its own."),
    ),
    _Told(
        "escape c",
        N_("a backslash in double quotes that stands for nothing"),
        N_("Write the text in single quotes."),
    ),
    _Told(
        "incompatible YAML document",
        N_("the first line asks for another YAML"),
        N_("Delete the line that begins with %."),
    ),
)
_TAB = _Told("", N_("a tab stands where spaces are due"), N_("Indent with spaces only."))


def told(error: yaml.MarkedYAMLError, text: str, file: str) -> Problem:
    """Return the problem that the parser's error stands for."""
    said = str(error.problem or error.context or N_("cannot be read as YAML"))
    span = _span(error.problem_mark or error.context_mark)
    if "exceeded max" in said:
        advice = _("Close the brackets, or lift the text out a level.")
        return codes.TOO_DEEP.at(file, (), span, _("nested far too deep"), advice)
    found = next((each for each in _TOLD if each.said in said), _Told("", said, _LOOK))
    if "tab" in said.split() or ("any token" in said and _character(text, span) == "\t"):
        found = _TAB
    if found.at_opening and error.context_mark:
        span = _span(error.context_mark)
    advice = _(found.advice)
    if found.said == _OUT_OF_LINE and (head := _head_in_a_remark(text, span)):
        advice = _("Take away the `#` before `{head}`, under which this line belongs.").format(
            head=head
        )
    return codes.SYNTAX.at(file, (), span, _(found.message), advice)


def _head_in_a_remark(text: str, span: Span | None) -> str:
    """Return the key that stands in the remark just above an indented line, if one does."""
    lines = text.splitlines()
    above = lines[span.line - 2] if span is not None and 2 <= span.line <= len(lines) + 1 else ""
    found = _HEAD_IN_A_REMARK.fullmatch(above)
    return found[1] if found else ""


def _span(mark: Any) -> Span | None:
    if mark is None:
        return None
    return Span(mark.line + 1, mark.column + 1, mark.line + 1, mark.column + 2)


def _character(text: str, span: Span | None) -> str:
    lines = text.splitlines()
    if span is None or span.line > len(lines):
        return ""
    return lines[span.line - 1][span.column - 1 : span.column]
