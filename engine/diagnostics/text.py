"""Problems as text for people: place, what is wrong, the line itself, why, and what to do next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from chamberwise.engine.diagnostics.problem import Note, Problem, Severity, Span, pointer_text
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _

WIDEST_LINE = 96
TAB = "    "
NOTHING_FOUND = N_(
    "no problem found. Form, wording and ways are checked here; "
    "whether it is right only a clinician can tell."
)


def place(file: str, span: Span | None) -> str:
    """Return `file:line:column`, or the file alone when no place in it is known."""
    return f"{file}:{span.line}:{span.column}" if span else file


def snippet(text: str, span: Span) -> list[str]:
    """Return the line a span begins on, with a caret row under it; long lines are cut to fit."""
    lines = _lines(text)
    if not 1 <= span.line <= len(lines):
        return []
    line = lines[span.line - 1]
    start = span.column - 1
    end = span.end_column - 1 if span.end_line == span.line else len(line)
    end = max(start + 1, min(end, len(line)))
    cut = max(0, start - WIDEST_LINE // 2) if len(line) > WIDEST_LINE else 0
    shown = line[cut : cut + WIDEST_LINE].replace("\t", " ")
    carets = "^" * max(1, min(end - cut, WIDEST_LINE) - (start - cut))
    gutter = f"{span.line:>5} | "
    return [gutter + shown, " " * (len(gutter) - 2) + "| " + " " * (start - cut) + carets]


@lru_cache(maxsize=4)
def _lines(text: str) -> list[str]:
    return text.splitlines()


def problem_text(problem: Problem, texts: Mapping[str, str]) -> str:
    """Return one problem as several lines; `texts` holds the files' texts by path."""
    head = f"{place(problem.file, problem.span)}: {problem.severity.in_words}: {problem.message}"
    lines = [f"{head} [{problem.code}]"]
    if problem.span and problem.file in texts:
        lines += snippet(texts[problem.file], problem.span)
    lines += [_note(note) for note in problem.notes]
    if problem.pointer:
        lines.append(TAB + _("at:   {place}").format(place=pointer_text(problem.pointer)))
    lines.append(TAB + _("why:  {reason}").format(reason=problem.why))
    lines.append(TAB + _("next: {advice}").format(advice=problem.advice))
    return "\n".join(lines)


def _note(note: Note) -> str:
    told = _("note: {message} ({place})")
    return TAB + told.format(message=note.message, place=place(note.file, note.span))


def summary(problems: Sequence[Problem], files: int) -> str:
    """Return one closing line, e.g. `4 files: 1 error, 2 warnings.`"""
    counts = [
        (sum(problem.severity is severity for problem in problems), severity)
        for severity in Severity
    ]
    said = ", ".join(how_many(count, severity) for count, severity in counts if count)
    return ngettext("{files} file: {said}", "{files} files: {said}", files).format(
        files=files, said=f"{said}." if said else _(NOTHING_FOUND)
    )


def how_many(count: int, severity: Severity) -> str:
    """Return how many problems matter so much, e.g. `2 errors`."""
    match severity:
        case Severity.ERROR:
            told = ngettext("{count} error", "{count} errors", count)
        case Severity.WARNING:
            told = ngettext("{count} warning", "{count} warnings", count)
        case Severity.NOTICE:
            told = ngettext("{count} notice", "{count} notices", count)
    return told.format(count=count)
