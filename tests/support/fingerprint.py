"""Everything the engine makes of some random libraries and of those shipped, as one number.

Run as a program, so that the same can be made under another hash seed.
"""

from __future__ import annotations

from collections.abc import Iterator
from hashlib import sha256
from importlib.resources import files
from pathlib import Path
from random import Random

from chamberwise.engine.checks.registry import KNOWLEDGE, SHAPE
from chamberwise.engine.checks.run import check_files
from chamberwise.engine.exploration.explore import explore
from chamberwise.engine.reading.library import load_library

from tests.support.build import TODAY
from tests.support.strategies import BYTES, library_of
from tests.support.subjects import subject
from tests.support.walking import passages

LIBRARIES = 60


def fingerprint() -> str:
    content = sha256()
    for line in (*_random(), *_shipped()):
        content.update(f"{line}\n".encode())
    return content.hexdigest()


def _random() -> Iterator[object]:
    for number in range(LIBRARIES):
        random = Random(number)
        library = library_of(random.randbytes(BYTES), tame=number % 2 == 0)
        yield library
        yield from passages(library, "p0", random.choices(range(12), k=30))
        found = explore(library, "p0", 3000)
        yield found.nodes, found.bits, found.parents, found.leads_to
        about = subject(library, "p0")
        for check in (*SHAPE, *KNOWLEDGE):
            yield list(check(about))


def _shipped() -> Iterator[object]:
    folder = Path(str(files("chamberwise.protocols")))
    loaded = load_library(folder)
    yield from check_files(loaded, list(loaded.files), TODAY)


if __name__ == "__main__":
    print(fingerprint())
