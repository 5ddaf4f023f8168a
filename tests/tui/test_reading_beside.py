"""The second reader reads the same wherever it is; a copy never waits in vain for it."""

from __future__ import annotations

import threading
import time
from collections.abc import Iterator
from datetime import date
from functools import cache

import pytest
from chamberwise.exports.audit.printed.read import UnreadableError, read
from chamberwise.exports.audit.printed.second import second
from chamberwise.exports.paper.sheet import Page, Role, Run, Sheet, Style, Text
from chamberwise.exports.paper.sizes import Format
from chamberwise.exports.typesetting.compiling import to_pdf
from chamberwise.tui import reading_beside
from chamberwise.tui.reading_beside import READY, Ends, line, reader, serve


@cache
def pdf() -> bytes:
    """Return a file of two pages."""
    pages = tuple(
        Page(Format(100.0, 60.0), (Text(10, 10, 80, 5, (Run(said),), Style(11.0), Role.LINE),))
        for said in ("Keep still.", "Call for help.")
    )
    return to_pdf(Sheet("Two pages", "test", "en", date(2026, 11, 25), pages))


@pytest.fixture
def ends() -> Iterator[Ends]:
    both = line()
    yield both
    for each in both:
        each.close()


def serving(ends: Ends) -> tuple[threading.Thread, threading.Event]:
    """Return a thread that serves, once it has said that it is ready, and what ends it."""
    done = threading.Event()
    first = threading.Thread(target=serve, args=(ends.first, done.is_set))
    first.start()
    end = time.monotonic() + 30
    while not ends.copy.poll() and time.monotonic() < end:
        time.sleep(0.005)
    return first, done


def test_the_first_process_reads_for_the_copy(ends: Ends, monkeypatch: pytest.MonkeyPatch) -> None:
    expected = read(pdf(), range(1, 2))
    first, done = serving(ends)
    monkeypatch.setattr("chamberwise.tui.reading_beside.AT_MOST", 30.0)
    asked = reader(ends.copy)(pdf(), range(1, 2))
    with monkeypatch.context() as alone:
        alone.setattr("chamberwise.exports.audit.printed.read.second", None)
        found = read(pdf(), range(1, 2), lambda *_: asked)
    done.set()
    first.join(timeout=30)
    assert (found, first.is_alive()) == (expected, False)
    assert found.seconds[0].text.split() == ["Call", "for", "help."]


def test_a_copy_whose_first_process_has_no_time_reads_for_itself(ends: Ends) -> None:
    assert reader(ends.copy)(pdf(), None)() == second(pdf())
    assert not ends.first.poll()


def test_a_copy_that_gets_no_answer_reads_for_itself(
    ends: Ends, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reading_beside, "AT_MOST", 0.05)
    ends.first.send(READY)
    assert reader(ends.copy)(pdf(), None)() == second(pdf())
    ends.first.send(READY)
    ends.first.send("nonsense")
    assert reader(ends.copy)(pdf(), None)() == second(pdf())


def test_a_copy_whose_first_process_has_gone_reads_for_itself(ends: Ends) -> None:
    ends.first.send(READY)
    ends.first.close()
    assert reader(ends.copy)(pdf(), None)() == second(pdf())


def test_what_is_no_pdf_is_refused_as_ever(ends: Ends) -> None:
    first, done = serving(ends)
    with pytest.raises(UnreadableError):
        read(b"%PDF-nothing", None, reader(ends.copy))
    done.set()
    first.join(timeout=30)
    assert not first.is_alive()


def test_a_copy_that_has_gone_keeps_nobody_waiting(ends: Ends) -> None:
    ends.copy.close()
    serve(ends.first, lambda: False)
