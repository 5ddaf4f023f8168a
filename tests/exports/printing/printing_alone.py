"""Prints every kind of sheet of a pathway in every form, into the folder it is started in."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path

from chamberwise.engine.reading.library import load_library
from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.kinds import usual
from chamberwise.exports.printing.printing import (
    Form,
    Job,
    Laid,
    laid_out,
    ordered,
    printed,
    sheet_of,
)

MADE = date(2026, 11, 25)


def laid(library: Path, name: str) -> tuple[Laid, ...]:
    """Return every kind of sheet on its usual paper."""
    job = Job(load_library(library).library, name, MADE, unit="Eye unit")
    return laid_out(ordered(job, [(kind, usual(kind)) for kind in Kind]))


if __name__ == "__main__":
    every = sheet_of(laid(Path(sys.argv[1]), sys.argv[2]))
    for form in (Form.PDF, Form.SVG, Form.PNG):
        for number, content in enumerate(printed(every, form)):
            Path(f"{number}{form.ending}").write_bytes(content)
