"""The register on disk: nothing lost between writers, a broken file told and left alone."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from chamberwise.engine.stamp.copies import Copy, KeptStep, Register, Snapshot
from chamberwise.engine.store import register_file
from chamberwise.engine.store.register_codec import UnreadableRegisterError, decode, encode
from chamberwise.engine.store.register_file import RegisterError, add, hang, read, take_down
from filelock import FileLock
from hypothesis import given
from hypothesis import strategies as st

STEP = KeptStep("Hold still", (("it", "p/next"),), ("Surgeon: Hold.",), ("DANGER: It tears.",), "a")
CONTENT = Snapshot("1", "draft", {"p/hold": STEP})
COPY = Copy("0000-016J-D", "p", "A p", "1", "full", "A4 portrait", date(2026, 11, 25), "digest")
PLACE = "Theatre 2, circulating side"

texts = st.text(max_size=12)
steps = st.builds(
    KeptStep,
    texts,
    st.lists(st.tuples(texts, texts), max_size=2).map(tuple),
    st.lists(texts, max_size=2).map(tuple),
    st.lists(texts, max_size=2).map(tuple),
    texts,
)
contents = st.builds(Snapshot, texts, texts, st.dictionaries(texts, steps, max_size=2))


@given(st.lists(st.builds(Copy, *[texts] * 6, st.dates(), texts, texts, texts)), contents)
def test_a_register_reads_back(copies: list[Copy], content: Snapshot) -> None:
    register = Register(tuple(copies), {copy.content: content for copy in copies})
    assert decode(encode(register)) == register


def test_no_file_is_an_empty_register_and_reading_makes_none(tmp_path: Path) -> None:
    path = tmp_path / "home" / "register.json"
    assert read(path) == Register()
    assert not path.parent.exists()


def test_what_is_added_is_kept_once(tmp_path: Path) -> None:
    path = tmp_path / "register.json"
    add(path, [COPY], CONTENT)
    add(path, [COPY, replace(COPY, sheet="script")], CONTENT)
    found = read(path)
    assert [copy.sheet for copy in found.copies] == ["full", "script"]
    assert found.contents == {"digest": CONTENT}


def test_a_copy_without_a_place_is_hung_first_and_then_one_more(tmp_path: Path) -> None:
    path = tmp_path / "register.json"
    add(path, [COPY], CONTENT)
    assert hang(path, COPY.code, PLACE, None, COPY) == replace(COPY, hangs=PLACE)
    assert hang(path, COPY.code, PLACE, None, COPY) is None
    hang(path, COPY.code, "Theatre 3", CONTENT, COPY)
    assert [copy.hangs for copy in read(path).copies] == [PLACE, "Theatre 3"]


def test_copies_taken_down_are_gone_and_their_content_with_them(tmp_path: Path) -> None:
    path = tmp_path / "register.json"
    other = replace(COPY, code="other", content="another")
    add(path, [COPY], CONTENT)
    add(path, [other], CONTENT)
    assert take_down(path, COPY.code) == 1
    assert read(path) == Register((other,), {"another": CONTENT})
    assert take_down(path, COPY.code) == 0


WHOLE = encode(Register((COPY,), {"digest": CONTENT}))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "{}",
        "null",
        WHOLE[:-9],
        WHOLE.replace('"format": 1', '"format": 2'),
        WHOLE.replace('"2026-11-25"', '"yesterday"'),
        WHOLE.replace('"edition":"1"', '"edition":1'),
        WHOLE.replace('"sheet":"full",', ""),
        WHOLE.replace('"sheet":"full"', '"sheet":"full","nurse":"x"'),
        WHOLE.replace('"ways":[["it","p/next"]]', '"ways":[["it"]]'),
        '{"format": 1, "copies": [[]], "contents": {}}',
        "[" * 100_000,
    ],
)
def test_a_broken_register_is_told_and_never_written_over(text: str, tmp_path: Path) -> None:
    with pytest.raises(UnreadableRegisterError):
        decode(text)
    path = tmp_path / "register.json"
    path.write_text(text)
    for use in (
        lambda: read(path),
        lambda: add(path, [COPY], CONTENT),
        lambda: hang(path, COPY.code, PLACE, None, COPY),
        lambda: take_down(path, COPY.code),
    ):
        with pytest.raises(RegisterError, match="left as it is"):
            use()
    assert path.read_text() == text


def test_bytes_that_are_no_text_are_told(tmp_path: Path) -> None:
    path = tmp_path / "register.json"
    path.write_bytes(b"\xff\xfe")
    with pytest.raises(RegisterError, match="no UTF-8"):
        read(path)


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("")
    with pytest.raises(RegisterError, match="cannot be written"):
        add(blocked / "register.json", [COPY], CONTENT)


def test_a_writer_waits_no_longer_than_it_may(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(register_file, "PATIENCE", 0.05)
    path = tmp_path / "register.json"
    held = FileLock(path.with_suffix(".lock"), thread_local=False)
    with held, pytest.raises(RegisterError, match="held by another program"):
        add(path, [COPY], CONTENT)
    add(path, [COPY], CONTENT)
    assert len(read(path).copies) == 1


PROGRAM = """
import sys
from datetime import date
from pathlib import Path
from chamberwise.engine.stamp.copies import Copy, Snapshot
from chamberwise.engine.store.register_file import add
for number in range(10):
    code = f"{sys.argv[2]}-{number}"
    copy = Copy(code, "p", "A p", "1", "full", "A4", date(2026, 11, 25), code)
    add(Path(sys.argv[1]), [copy], Snapshot("1", "draft", {}))
"""


def test_writers_at_once_lose_nothing(tmp_path: Path) -> None:
    path = tmp_path / "register.json"
    command = [sys.executable, "-c", PROGRAM, str(path)]
    writers = [subprocess.Popen([*command, str(name)]) for name in range(4)]
    assert [writer.wait(60) for writer in writers] == [0, 0, 0, 0]
    found = read(path)
    assert sorted(copy.code for copy in found.copies) == sorted(
        f"{name}-{number}" for name in range(4) for number in range(10)
    )
    assert set(found.contents) == {copy.code for copy in found.copies}
