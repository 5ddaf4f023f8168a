"""The same order gives the same bytes, whatever machine, language, clock or seed it is made with.

`frozen/` holds a tiny pathway that stays as it is. The hash of what is printed of it changes only
when a room changes what it prints: then look at the sheets, and keep the hash anew.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from hashlib import sha256
from io import BytesIO
from pathlib import Path

from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.printing import Form, printed, sheet_of
from pypdf import PdfReader

from tests.exports.printing import printing_alone
from tests.exports.printing.printing_alone import MADE, laid
from tests.tui.golden import assert_as_kept

HERE = Path(__file__).parent
FROZEN = HERE / "frozen"
NAME = "dim-lamp"
ALONE = [printing_alone.__file__, str(FROZEN), NAME]
TYPED = ["-m", "chamberwise.tui.command.main", "print", NAME, "--library", str(FROZEN)]
TYPED += ["--date", str(MADE), "--no-register"]
KEPT = (Kind.WALL_CHART, Kind.FULL)


def bare(home: Path) -> dict[str, str]:
    """No home, no programs, no fonts of the system, no language."""
    fonts = home / "fonts.conf"
    fonts.write_text("<fontconfig></fontconfig>", encoding="utf-8")
    return {
        "PYTHONHASHSEED": "1",
        "HOME": str(home),
        "XDG_CACHE_HOME": str(home),
        "XDG_DATA_DIRS": str(home),
        "FONTCONFIG_FILE": str(fonts),
        "PATH": "",
        "TZ": "Pacific/Kiritimati",
        "LC_ALL": "C",
    }


def usual() -> dict[str, str]:
    """As at somebody's desk, on the other side of the date line."""
    return {**os.environ, "PYTHONHASHSEED": "2", "TZ": "Pacific/Pago_Pago", "LC_ALL": "tr_TR.UTF-8"}


def made(folder: Path, words: Sequence[str], environment: Mapping[str, str]) -> dict[str, bytes]:
    """Return the files that a fresh process writes, by name."""
    folder.mkdir()
    done = subprocess.run(
        [sys.executable, *words],
        cwd=folder,
        env=dict(environment),
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return {each.name: each.read_bytes() for each in sorted(folder.iterdir())}


def made_twice(folder: Path, words: Sequence[str]) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """Return the files made with nothing around, and as usual."""
    home = folder / "home"
    home.mkdir()
    return made(folder / "bare", words, bare(home)), made(folder / "usual", words, usual())


def fonts(pdf: bytes) -> Iterator[tuple[str, bool]]:
    """Yield the family of each font of a file, and whether it is embedded."""
    for page in PdfReader(BytesIO(pdf)).pages:
        for font in page["/Resources"]["/Font"].values():
            for descendant in font["/DescendantFonts"]:
                described = descendant.get_object()["/FontDescriptor"]
                name = str(descendant.get_object()["/BaseFont"])
                is_embedded = bool({"/FontFile", "/FontFile2", "/FontFile3"} & set(described))
                yield name.partition("+")[2].partition("-")[0], is_embedded


def test_the_same_order_gives_the_same_bytes_in_every_form(tmp_path: Path) -> None:
    one, two = made_twice(tmp_path, ALONE)
    forms = Counter(Path(each).suffix for each in one)
    assert forms[".pdf"] == 1
    assert forms[".svg"] == forms[".png"] > len(Kind)
    assert [each for each in {**one, **two} if one.get(each) != two.get(each)] == []


def test_what_is_typed_prints_the_same_with_our_font_alone(tmp_path: Path) -> None:
    one, two = made_twice(tmp_path, TYPED)
    assert one == two
    (pdf,) = one.values()
    assert set(fonts(pdf)) == {("Inter", True)}


def test_the_frozen_pathway_prints_as_it_always_did() -> None:
    every = {each.kind: each for each in laid(FROZEN, NAME)}
    files = {kind: printed(sheet_of([every[kind]]), Form.PDF)[0] for kind in KEPT}
    told = "".join(f"{sha256(file).hexdigest()}  {kind}.pdf\n" for kind, file in files.items())
    assert_as_kept(HERE / "frozen.sha256", told)
