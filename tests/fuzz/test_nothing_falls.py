"""Whatever stands in a file, checking it tells problems and never falls over."""

from __future__ import annotations

from functools import cache
from random import Random

from chamberwise.engine.reading.library import File, load_library
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fuzz.fuzz_files import OWN
from tests.fuzz.judging import judge, read_bytes
from tests.fuzz.mutating import PIECES, mutated

WORDS = (
    *("pathway", "steps", "vocabulary", "findings", "acts", "shallow-chamber", "go to", "answers"),
    *("rules", "precedence", "before", "comes", "surely", "harm", "severity", "instead"),
    *("a", "b", "cannot tell", "ask", "do", "outcome", "x y", " ", "\n", "\n  ", "\n    ", ": "),
)
randoms = st.integers(0, 2**32 - 1).map(Random)
yamlish = st.lists(st.sampled_from((*PIECES, *WORDS)), max_size=60).map("".join)


@cache
def _files() -> tuple[File, ...]:
    return tuple(load_library(OWN).files.values())


def _with(place: int, data: bytes) -> tuple[list[File], str]:
    files = list(_files())
    files[place] = read_bytes(data, files[place].shown_as)
    return files, files[place].shown_as


@given(data=st.binary(max_size=400), random=randoms)
def test_any_bytes(data: bytes, random: Random) -> None:
    for place in range(len(_files())):
        judge(*_with(place, data), random)


@settings(deadline=None)
@given(text=yamlish | st.text(max_size=200), random=randoms)
def test_any_text(text: str, random: Random) -> None:
    judge(*_with(-1, text.encode("utf-8", "surrogatepass")), random)


@settings(deadline=None, max_examples=200)
@given(random=randoms)
def test_damaged_files(random: Random) -> None:
    place = random.randrange(len(_files()))
    judge(*_with(place, mutated(_files()[place].text, random)), random)


@settings(deadline=None, max_examples=50)
@given(random=randoms)
def test_two_damaged_files(random: Random) -> None:
    files = [read_bytes(mutated(file.text, random), file.shown_as) for file in _files()]
    judge(files, files[random.randrange(len(files))].shown_as, random)
