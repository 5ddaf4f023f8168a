"""`python -m tests`: format, lint, types, import contracts, then every test; stops at a fault.

`python -m tests fast` leaves the static checks out; words after that go to pytest.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

TOP = Path(__file__).resolve().parent.parent
PYTHON = sys.executable

STATIC = (
    ("format", [PYTHON, "-m", "ruff", "format", "--check", "--quiet", "."]),
    ("lint", [PYTHON, "-m", "ruff", "check", "--quiet", "."]),
    ("types", [PYTHON, "-m", "mypy"]),
    ("imports", [PYTHON, "-c", "from importlinter.cli import lint_imports_command as c; c()"]),
)


def main(words: list[str]) -> int:
    """Run everything and return the exit status of the first step that failed."""
    environment = {**os.environ, "PYTHONPATH": str(TOP / ".types")}
    steps = [] if words[:1] == ["fast"] else list(STATIC)
    more = words[1:] if words[:1] == ["fast"] else words
    for name, command in steps:
        print(f"{name}: {' '.join(command[2:])}", flush=True)
        status = subprocess.run(command, cwd=TOP, env=environment, check=False).returncode
        if status:
            print(f"{name} failed", flush=True)
            return status
    tests = [PYTHON, "-m", "pytest", "-n", "auto", *more]
    return subprocess.run(tests, cwd=TOP, check=False).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
