"""No file, however made, takes much memory or long: read in a process of its own under limits."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from chamberwise.engine.reading.source_text import LARGEST

MEMORY = 500 * 2**20
SECONDS = 60
"""A guard against a hang, far above what is needed."""

READER = f"""
import resource, sys
resource.setrlimit(resource.RLIMIT_AS, ({MEMORY}, {MEMORY}))
from pathlib import Path
from chamberwise.engine.reading.library import read_file
for name in sys.argv[1:]:
    problems = read_file(Path(name)).problems
    assert problems
    print(Path(name).stem, problems[0].code)
"""
MOST = LARGEST // 8


def _filled(unit: bytes, head: bytes = b"") -> bytes:
    return (head + unit * (MOST // len(unit)))[:MOST]


def _many(line: bytes, number: int) -> Iterator[bytes]:
    return (line % place for place in range(number))


LARGE = {
    "forty-megabytes": b"a" * (40 * 2**20),
    "junk": bytes(range(1, 255)) * 132_104,
    "lists-in-a-list": (b"a: [" + b"[]," * LARGEST)[:LARGEST],
    "brackets": _filled(b"["),
    "mappings": _filled(b"{a: "),
    "dashes": _filled(b"- "),
    "question-marks": _filled(b"? "),
    "quotes": _filled(b'"'),
    "one-open-quote": _filled(b"a", b'"'),
    "one-line": _filled(b"a b ", b"title: "),
    "one-key": _filled(b"k") + b": v",
    "colons": _filled(b":"),
    "anchors": _filled(b"a: &b c\n"),
    "aliases": _filled(b"*b,", b"a: &b [x, "),
    "exclamation-marks": _filled(b"!"),
    "directives": _filled(b"%A b\n"),
    "ends-of-lines": _filled(b"\n"),
    "comments": _filled(b"#\n"),
    "folded": _filled(b"  a\n", b"title: >\n"),
    "unknown-keys": b"pathway: p\n" + b"".join(_many(b"titel%d: x\n", 90_000)),
    "equal-keys": b"pathway: p\n" * 90_000,
    "wrong-steps": b"pathway: p\nsteps:\n" + b"".join(_many(b"  S_%d: {aks: f, wy: Q}\n", 30_000)),
}


@pytest.fixture(scope="module")
def read_all(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    folder = tmp_path_factory.mktemp("large")
    for name, data in LARGE.items():
        (folder / f"{name}.yaml").write_bytes(data)
    paths = [str(folder / f"{name}.yaml") for name in LARGE]
    done = subprocess.run(
        [sys.executable, "-c", READER, *paths],
        capture_output=True,
        text=True,
        timeout=SECONDS,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return dict(line.split() for line in done.stdout.splitlines())


@pytest.mark.parametrize("name", LARGE)
def test_it_is_read_or_refused_within_the_limits(name: str, read_all: dict[str, str]) -> None:
    assert name in read_all


def test_nothing_of_the_size_of_a_machine_is_read(read_all: dict[str, str]) -> None:
    assert {read_all["forty-megabytes"], read_all["junk"]} == {"too-large"}


def test_shipped_files_stay_far_below_the_limits() -> None:
    folder = Path(__file__).parents[3] / "protocols"
    assert all(path.stat().st_size < LARGEST / 4 for path in folder.glob("**/*.yaml"))
