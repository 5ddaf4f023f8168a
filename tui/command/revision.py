"""Files as they stood at a revision of a git checkout: read through git, nothing ever written."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING, NamedTuple

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import UnusableError

if TYPE_CHECKING:
    from chamberwise.engine.reading.library import File

SECONDS = 30


class Revision(NamedTuple):
    """A revision as typed, and a path in it from the top of the checkout."""

    name: str
    path: str

    def __str__(self) -> str:
        """Return both as they are typed and shown."""
        return f"{self.name}:{self.path}"


def as_revision(typed: str) -> Revision | None:
    """Return what was typed as a revision and a path, or `None` where it is a path or a name."""
    name, colon, path = typed.partition(":")
    is_drive = len(name) == 1 and path[:1] in ("\\", "/")
    if not colon or not name or is_drive or Path(typed).exists():
        return None
    return Revision(name, path)


def is_folder(asked: Revision) -> bool:
    """Return whether the path is a folder there. Raises `UnusableError` for no such path."""
    return _git("cat-file", "-t", _spec(asked)).strip() == b"tree"


def file_at(asked: Revision) -> File:
    """Read one file as it stood."""
    from chamberwise.engine.reading.library import read_text
    from chamberwise.engine.reading.source_text import decode

    text, problems = decode(_git("cat-file", "blob", _spec(asked)), str(asked))
    return read_text(text, str(asked), problems)


def library_at(asked: Revision) -> list[File]:
    """Read a folder's vocabulary and pathways as they stood, in the order of a library."""
    words = _listed(Revision(asked.name, _join(asked.path, "vocabulary")))
    return [file_at(each) for each in (*words, *_listed(asked))]


def folder_of(asked: Revision) -> Revision:
    """Return the folder that a file lies in."""
    parent = PurePosixPath(asked.path).parent
    return Revision(asked.name, "" if str(parent) == "." else str(parent))


def has_vocabulary(asked: Revision) -> bool:
    """Return whether a folder has shared words beside its pathways."""
    return bool(_listed(Revision(asked.name, _join(asked.path, "vocabulary"))))


def texts_below(asked: Revision, folder: str) -> Iterator[tuple[str, str]]:
    """Yield the texts of the YAML files in a folder there and in those below it, by path in it."""
    top = _spec(Revision(asked.name, _join(asked.path, folder)))
    try:
        listed = _git("ls-tree", "-r", "--name-only", "-z", "--full-tree", top)
    except UnusableError:
        return
    for path in sorted(listed.decode("utf-8", "replace").split("\0")):
        if path.endswith(".yaml"):
            text = _git("cat-file", "blob", f"{top}/{path}").decode("utf-8", "replace")
            yield f"{folder}/{path}", text


def _join(folder: str, name: str) -> str:
    return str(PurePosixPath(folder) / name) if folder.strip("/") else name


def _listed(folder: Revision) -> list[Revision]:
    """Return the YAML files of a folder, none where there is no such folder."""
    try:
        listed = _git("ls-tree", "--name-only", "-z", "--full-tree", _spec(folder)).decode(
            "utf-8", "replace"
        )
    except UnusableError:
        return []
    names = sorted(name for name in listed.split("\0") if name.endswith(".yaml"))
    return [Revision(folder.name, _join(folder.path, name)) for name in names]


def _spec(asked: Revision) -> str:
    if asked.name.startswith("-"):
        raise UnusableError(
            _("`{name}` is no revision. Type one such as HEAD~1 or a tag.").format(name=asked.name)
        )
    return f"{asked.name}:{asked.path.rstrip('/')}"


def _git(*words: str) -> bytes:
    program = shutil.which("git")
    if program is None:
        raise UnusableError(
            _(
                "To read a revision, git must be on the path, and it is not. Save the older "
                "version to a file and compare that."
            )
        )
    try:
        made = subprocess.run(
            [program, "--no-optional-locks", *words],
            capture_output=True,
            timeout=SECONDS,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired) as error:
        raise UnusableError(
            _("git cannot be asked: {error}.").format(error=type(error).__name__)
        ) from error
    if made.returncode:
        raise UnusableError("\n".join(_why(made.stderr, words[-1])))
    return made.stdout


def _why(said: bytes, asked: str) -> Iterator[str]:
    lines = said.decode("utf-8", "replace").strip().splitlines()
    reason = lines[0] if lines else _("it does not say why")
    yield _("git has no {asked}: {reason}.").format(asked=asked, reason=reason)
    yield _(
        "Type REVISION:PATH, the path from the top of the checkout, e.g. HEAD~1:my-pathway.yaml"
    )
