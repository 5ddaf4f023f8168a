"""A wrong and a right example of each check, cut out of the files of cases."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import TypedDict

from chamberwise.engine.checks.wording import RULES

from tests.explaining.of_sheets import OF_A_DRILL_FILE, OF_A_LIST, OF_A_SHEET
from tests.support.case_files import CASES, expected_in, put_right

LEFT_OUT = "(left out)"
KEPT = Path(__file__).resolve().parents[2] / "protocols" / "explained" / "examples.json"


class Example(TypedDict):
    """A piece of a file as it is wrong, and as it is right."""

    wrong: str
    right: str


OF_A_WHOLE_FILE: dict[str, Example] = {
    "unreadable-file": {"wrong": "a path at which no file lies", "right": "a path of a file"},
    "too-large": {"wrong": "a file of more than 8 MiB", "right": "one file a pathway"},
    "not-text": {"wrong": "a file saved as UTF-16, or by a word processor",
                 "right": "a file saved as plain text in UTF-8"},
    "hidden-character": {"wrong": "title: Case<U+202E> file", "right": "title: Case file"},
    "merge-conflict": {"wrong": "<<<<<<< ours\ntitle: One\n=======\ntitle: Two\n>>>>>>> theirs",
                       "right": "title: Two"},
    "too-many-problems": {"wrong": "a thousand lines of one fault", "right": "the cause put right"},
    "empty-file": {"wrong": "# nothing but a remark", "right": "pathway: wound-burn"},
    "too-many-states": {"wrong": "a pathway that asks a dozen findings and goes by all at last",
                        "right": "a pathway that goes by each finding soon after it was asked"},
}  # fmt: skip
"""What is wrong here is of the file as a whole and has no line."""


def examples() -> dict[str, Example]:
    """Return an example of each slug, by slug: one without other faults if there is one, and short.

    What is put right in another place of the file is shown with that place.
    """
    found: dict[str, tuple[int, int, Example]] = {}
    for path in sorted(CASES.glob("*.yaml")):
        blocks = list(_blocks(path.read_text(encoding="utf-8")))
        changed = [block for block in blocks if _wrong(block) != _right(block)]
        for block in blocks:
            slugs = dict.fromkeys(each.code for each in expected_in(block))
            shown = [block] if block in changed else [block, *changed]
            example: Example = {
                "wrong": "\n".join(map(_wrong, shown)),
                "right": "\n".join(map(_right, shown)) or LEFT_OUT,
            }
            for slug in slugs:
                rank = len(slugs) + len(shown), len(example["wrong"])
                if slug not in found or rank < found[slug][:2]:
                    found[slug] = (*rank, example)
    worded = {rule.slug for rule in RULES}
    by_slug = {slug: example for slug, (_, _, example) in found.items() if slug not in worded}
    of_others: dict[str, Example] = {
        slug: {"wrong": wrong, "right": right}
        for slug, (wrong, right) in (OF_A_SHEET | OF_A_DRILL_FILE | OF_A_LIST).items()
    }
    return dict(sorted((by_slug | OF_A_WHOLE_FILE | of_others).items()))


def _wrong(block: str) -> str:
    lines = (line for line in block.splitlines() if not line.lstrip().startswith("#"))
    return "\n".join(lines).strip("\n")


def _right(block: str) -> str:
    return put_right(block).strip("\n")


def _blocks(text: str) -> Iterator[str]:
    """Yield the steps, words and keys at the top of a file, each with the remarks before it."""
    block: list[str] = []
    begun = False
    for line in text.splitlines():
        is_remark = line.lstrip().startswith("#")
        begins = bool(line.strip()) and len(line) - len(line.lstrip()) <= 2
        if begun and begins and (not is_remark or line.lstrip().startswith("#!")):
            yield "\n".join(block)
            block, begun = [], False
        block.append(line)
        begun = begun or (begins and not is_remark)
    yield "\n".join(block)


def as_kept() -> str:
    """Return the file that comes along."""
    return json.dumps(examples(), ensure_ascii=False, indent=1) + "\n"


if __name__ == "__main__":
    KEPT.write_text(as_kept(), encoding="utf-8")
