"""What was measured is forgotten between sheets, and measured again it is the same."""

from __future__ import annotations

import subprocess
import sys

import pytest
from chamberwise.exports.paper.sheet import Run, Style
from chamberwise.exports.typesetting.forgetting import forget
from chamberwise.exports.typesetting.measuring import Ruler, Setting

SETTING = Setting((Run("Keep the chamber full."),), Style(11.0), 20.0)
MEASURING = """
import sys
from chamberwise.exports.paper.sheet import Run, Style
from chamberwise.exports.typesetting.forgetting import forget
from chamberwise.exports.typesetting.measuring import Ruler, Setting

def held():
    with open("/proc/self/status") as lines:
        return next(int(line.split()[1]) for line in lines if line.startswith("VmRSS"))

def measure(number):
    words = " ".join(f"w{number}x{place}" for place in range(12))
    texts = [(Run(f"{words} {place}"),) for place in range(200)]
    Ruler().measure(Setting(each, Style(10.0), 60.0) for each in texts)

measure(0)
before = held()
for number in range(1, 5):
    measure(number)
    if sys.argv[1] == "forget":
        forget()
print(held() - before)
"""


def grown(how: str) -> int:
    """Return by how many kilobytes a fresh process grows that measures sheet after sheet."""
    command = [sys.executable, "-c", MEASURING, how]
    return int(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


@pytest.mark.skipif(sys.platform != "linux", reason="the system tells of memory elsewhere")
def test_memory_is_given_back_for_the_next_sheet() -> None:
    assert grown("forget") < grown("keep") / 2


def test_what_was_forgotten_is_measured_again_as_before() -> None:
    before = Ruler()(SETTING)
    forget()
    assert Ruler()(SETTING) == before
