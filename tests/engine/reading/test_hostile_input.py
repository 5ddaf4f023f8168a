"""Files that are damaged, strange or made to do harm: the right name, the right place, no fall."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.reading.library import read_file, read_text
from chamberwise.engine.reading.source_text import LARGEST
from chamberwise.engine.reading.tree import DEEPEST

BOMB = b"a: &a [x, x]\nb: &b [*a, *a, *a]\nc: &c [*b, *b, *b]\nd: [*c, *c, *c]\n"
STEP = b"pathway: p\nsteps:\n  first:\n"

FIRST = [
    ("alias bomb", BOMB, "alias-refused", (1, 4)),
    ("alias", b"a: b\nc: *a\n", "alias-refused", (2, 4)),
    ("anchor", b"a: b\nc: &a d\n", "alias-refused", (2, 4)),
    ("anchor of a list", b"a: b\nc: &a [d]\n", "alias-refused", (2, 4)),
    ("tag", b"a: b\nc: !!python/object:os.system d\n", "alias-refused", (2, 4)),
    ("bare exclamation mark", b"a: b\nc: ! d\n", "alias-refused", (2, 4)),
    ("escape sequence in a tag", b"a: !%1Bx b\n", "alias-refused", (1, 4)),
    ("binary tag", b"a: !!binary aGk=\n", "alias-refused", (1, 4)),
    ("merge key", b"<<: {a: b}\n", "unknown-key", (1, 1)),
    ("deep flow", b"a: " + b"[" * 40 + b"]" * 40, "too-deep", (1, 3 + DEEPEST)),
    ("very deep flow", b"[" * 100_000, "too-deep", (1, 1001)),
    ("very deep flow mapping", b"{" * 100_000, "too-deep", (1, 1001)),
    ("deep block", b"".join(b" " * i + b"a:\n" for i in range(99)), "too-deep", (33, 33)),
    ("deep list", b"- " * 50_000, "too-deep", (1, 65)),
    ("40 MB", b"a" * (40 * 2**20), "too-large", None),
    ("one byte too many", b"#" * (LARGEST + 1), "too-large", None),
    ("32 MB of junk", bytes(range(1, 255)) * 132_104, "too-large", None),
    ("junk", bytes(range(1, 255)) * 2000, "not-text", (3, 115)),
    ("too many problems", b"a: b\n" * 2000, "too-many-problems", (1001, 1)),
    (
        "too many unknown keys",
        b"".join(b"k%d: b\n" % i for i in range(2000)),
        "too-many-problems",
        (1000, 1),
    ),
    ("NUL", b"a: b\nc: d\x00\n", "hidden-character", (2, 5)),
    ("bell", b"a: b\n\nc: \xf0\x9f\x91\x81\x07\n", "hidden-character", (3, 5)),
    ("escape sequence", b"a: \x1b[2J\n", "hidden-character", (1, 4)),
    ("written NUL", b'a: b\nc: "\\0"\n', "hidden-character", (2, 4)),
    ("written escape sequence", b'"\\e[2J": b\n', "hidden-character", (1, 1)),
    ("written return", b'a: "5 mg\\r10 mg"\n', "hidden-character", (1, 4)),
    ("written half of a pair", b'a: "\\ud83d"\n', "yaml-syntax", (1, 7)),
    ("turned direction", "a: \u202egm 01\n".encode(), "hidden-character", (1, 4)),
    ("line separator", "a: b\u2028c: d\n".encode(), "hidden-character", (1, 5)),
    ("paragraph separator", "a: b\n c\u2029d\n".encode(), "hidden-character", (2, 3)),
    ("next line", "a: b\u0085c\n".encode(), "hidden-character", (1, 5)),
    ("byte order mark inside", "a: b\ufeff\n".encode(), "hidden-character", (1, 5)),
    ("two byte order marks", "\ufeff\ufeffa: b\n".encode(), "hidden-character", (1, 1)),
    ("UTF-16", "a: b\n".encode("utf-16"), "not-text", None),
    ("UTF-16 big end first", b"\xfe\xff" + "a: b\n".encode("utf-16-be"), "not-text", None),
    ("UTF-16 without mark", "a: b\n".encode("utf-16-le"), "not-text", None),
    ("UTF-16-BE without mark", "a: b\n".encode("utf-16-be"), "not-text", None),
    ("UTF-32", "a: b\n".encode("utf-32"), "not-text", None),
    ("UTF-32 big end first", b"\0\0\xfe\xff" + "a: b\n".encode("utf-32-be"), "not-text", None),
    ("latin-1", "a: b\nc: größe\n".encode("latin-1"), "not-text", (2, 6)),
    ("latin-1 after a mark", b"\xef\xbb\xbfa: b\nc: \xe9\n", "not-text", (2, 4)),
    ("half a character", b"a: \xe2\x82", "not-text", (1, 4)),
    ("gzip", b"\x1f\x8b\x08\x00abc", "not-text", None),
    ("PDF", b"%PDF-1.7\n", "not-text", None),
    ("a document", b"PK\x03\x04abc", "not-text", None),
    ("conflict", b"a: b\n<<<<<<< HEAD\nc: d\n", "merge-conflict", (2, 1)),
    ("conflict, CRLF", b"a: b\r\n<<<<<<< HEAD\r\nc: d\r\n", "merge-conflict", (2, 1)),
    ("conflict's end", b"a: |\n  x\n>>>>>>> theirs\n", "merge-conflict", (3, 1)),
    ("conflict's base", b"a: b\n||||||| base\n", "merge-conflict", (2, 1)),
    ("conflict's middle alone", b"a: b\n=======\nc: d\n", "merge-conflict", (2, 1)),
    ("conflict's middle alone, CRLF", b"a: b\r\n=======\r\n", "merge-conflict", (2, 1)),
    ("hard space after a colon", "a: b\nc:\u00a0d\n".encode(), "hidden-character", (2, 3)),
    ("hard space for indenting", "a:\n\u00a0 b: c\n".encode(), "hidden-character", (2, 1)),
    ("nothing wide in a dose", "a: 1\u200b0 mg\n".encode(), "hidden-character", (1, 5)),
    ("soft hyphen", "a: cap\u00adsule\n".encode(), "hidden-character", (1, 7)),
    ("tab before a key", b"pathway: p\n\ttitle: t\n", "yaml-syntax", (2, 1)),
    ("tab before a list", b"pathway:\n\t- p\n", "yaml-syntax", (2, 1)),
    ("tab in a step", STEP + b"\t  phase: x\n", "yaml-syntax", (4, 1)),
    ("empty", b"", "empty-file", None),
    ("byte order mark only", b"\xef\xbb\xbf", "empty-file", None),
    ("blank", b" \n\n \n", "empty-file", None),
    ("comments", b"# one\n# two\n", "empty-file", None),
    ("document marks only", b"---\n...\n", "empty-file", None),
    ("two documents", b"---\na: b\n---\nc: d\n", "several-documents", (3, 1)),
    ("two empty documents", b"---\n---\n", "several-documents", (2, 1)),
    ("list at the top", b"# x\n- a\n- b\n", "wrong-kind", (2, 1)),
    ("text at the top", b"only words\n", "wrong-kind", (1, 1)),
    ("nothing said aloud", b"~\n", "wrong-kind", (1, 1)),
    ("list as a key", b"a: b\n[c, d]: e\n", "yaml-syntax", (2, 1)),
    ("mapping as a key", b"a: b\n? {c: d}\n: e\n", "yaml-syntax", (2, 3)),
    ("line of a megabyte", b"title: " + b"word " * 200_000, "missing-key", (1, 1)),
    ("key of a megabyte", b"k" * 1_000_000 + b": v\n", "yaml-syntax", (1, 1_000_001)),
    ("long key, marked", b"? " + b"k" * 1_000_000 + b"\n: v\n", "missing-key", (1, 3)),
    ("key twice", b"pathway: p\npathway: q\n", "duplicate-key", (2, 1)),
    ("open quote", b'a: b\nc: "d\ne: f\n', "yaml-syntax", (2, 4)),
    ("open bracket", b"a: b\nc: [d\ne: f\n", "yaml-syntax", (2, 4)),
    ("colon in a text", b"a: b: c\n", "yaml-syntax", (1, 5)),
    ("no space after the colon", b"a: b\nc:d\ne: f\n", "yaml-syntax", (2, 1)),
    ("at sign", b"a: b\nc: @d\n", "yaml-syntax", (2, 4)),
    ("another YAML", b"%YAML 2.0\n---\na: b\n", "yaml-syntax", (1, 1)),
]


def _problems(path: Path, data: bytes) -> list[Problem]:
    path.write_bytes(data)
    return read_file(path).problems


def _place(problem: Problem) -> tuple[int, int] | None:
    return (problem.span.line, problem.span.column) if problem.span else None


@pytest.mark.parametrize(
    ("data", "slug", "place"), [each[1:] for each in FIRST], ids=[each[0] for each in FIRST]
)
def test_what_stops_or_spoils_a_file_is_named(
    tmp_path: Path, data: bytes, slug: str, place: tuple[int, int] | None
) -> None:
    problems = _problems(tmp_path / "strange.yaml", data)
    assert (slug, place) in [(each.code, _place(each)) for each in problems]
    assert all(len(each.message) < 500 and len(each.advice) < 500 for each in problems)
    assert all(each.message.isprintable() and each.advice.isprintable() for each in problems)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"], ids=["LF", "CRLF", "CR"])
def test_places_do_not_hang_on_the_ends_of_lines(tmp_path: Path, end: str) -> None:
    text = "# eye \U0001f441\npathway: p\n\ntitle: one \U0001f441\nwy: x\n"
    problems = _problems(tmp_path / "p.yaml", text.replace("\n", end).encode())
    assert ("unknown-key", (5, 1)) in [(each.code, _place(each)) for each in problems]


def test_too_many_entries(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("chamberwise.engine.reading.tree.MOST_NODES", 10)
    [problem] = read_text("a: [" + "x," * 9 + "]", "p.yaml").problems
    assert (problem.code, _place(problem)) == ("too-large", (1, 19))


def test_columns_count_characters(tmp_path: Path) -> None:
    data = "pathway: {\U0001f441é: 1, wy: 2}\n".encode()
    spans = [each.span for each in _problems(tmp_path / "p.yaml", data)]
    assert any(span and span.column == 10 for span in spans)


@pytest.mark.parametrize("text", ["title: \U0001f441 \U0001f468\u200d\U0001f469\u200d\U0001f467\n"])
def test_emoji_are_text(text: str) -> None:
    assert all(each.code == "missing-key" for each in read_text(text, "p.yaml").problems)


@pytest.mark.parametrize(
    "text",
    [
        "\u0636\u063a\u0637 \u0627\u0644\u062c\u0641\u0648\u0646",
        "\u05e2\u05e4\u05e2\u05e4\u05d9\u05d9\u05dd 10 mg\u200e",
        "\u201cPressing\u201d lids, said with curly quotes",
        "\u2018single\u2019",
        "a \u2013 b",
        "10\u00a0mg",
        "\u0915\u094d\u200d\u0937",
        "hidden\ttab",
        "word " * 4_000,
    ],
)
def test_other_scripts_quotes_and_long_texts_are_kept_as_they_are(text: str) -> None:
    read = read_text(f"pathway: p\ntitle: {text}\n", "p.yaml")
    assert not {"hidden-character", "yaml-syntax"} & {each.code for each in read.problems}
    assert str(read.tree.root.entries["title"].value.text) == text.strip()  # type: ignore[union-attr]


def test_a_byte_order_mark_is_no_part_of_the_first_key(tmp_path: Path) -> None:
    found = _problems(tmp_path / "p.yaml", b"\xef\xbb\xbfpathway: p\ntitle: t\nwy: x\n")
    assert ("unknown-key", (3, 1)) in [(each.code, _place(each)) for each in found]
    assert not any("`pathway`" in each.message and each.code == "missing-key" for each in found)


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    assert [each.code for each in read_file(tmp_path).problems] == ["unreadable-file"]


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.yaml")
    found = read_file(tmp_path / "pipe.yaml").problems
    assert [each.code for each in found] == ["unreadable-file"]


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    found = read_file(tmp_path / "nowhere.yaml").problems
    assert [each.message for each in found] == ["cannot be opened: no such file or directory"]


def test_links_that_go_round(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").symlink_to(tmp_path / "b.yaml")
    (tmp_path / "b.yaml").symlink_to(tmp_path / "a.yaml")
    found = read_file(tmp_path / "a.yaml").problems
    assert [each.code for each in found] == ["unreadable-file"]


def test_a_name_that_no_file_can_have() -> None:
    found = read_file(Path("nothing\0.yaml")).problems
    assert [each.code for each in found] == ["unreadable-file"]


@pytest.mark.skipif(os.geteuid() == 0, reason="root reads everything")
def test_a_file_nobody_may_read(tmp_path: Path) -> None:
    (tmp_path / "shut.yaml").write_text("pathway: shut\n")
    (tmp_path / "shut.yaml").chmod(0)
    found = read_file(tmp_path / "shut.yaml").problems
    assert [each.message for each in found] == ["cannot be opened: permission denied"]


def test_a_file_nobody_may_read_seen_from_inside(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    found = read_file(Path(__file__)).problems
    assert [each.message for each in found] == ["cannot be opened: permission denied"]


@pytest.mark.parametrize("text", ["\ud800: x", "a: \udfff", "\0", "a: b\x00", "\ufeffa: b"])
def test_text_from_elsewhere_is_looked_at_too(text: str) -> None:
    [problem] = read_text(text, "p.yaml").problems
    assert problem.code in {"hidden-character", "not-text"}


def test_what_is_shown_of_a_damaged_file_can_be_printed(tmp_path: Path) -> None:
    path = tmp_path / "p.yaml"
    path.write_bytes(b'pathway: p\n"\\e[2J": x\ntitle: "\\x9b"\n')
    file = read_file(path)
    shown = "".join(problem_text(each, {file.shown_as: file.text}) for each in file.problems)
    assert shown.replace("\n", "").isprintable()


def test_every_problem_of_form_comes_in_one_run(tmp_path: Path) -> None:
    data = STEP + b"    ask: wound\n    answers: []\n    at most: many\n    wy: x\n"
    found = {each.code for each in _problems(tmp_path / "p.yaml", data)}
    assert found == {"missing-key", "wrong-kind", "wrong-value", "unknown-key"}
