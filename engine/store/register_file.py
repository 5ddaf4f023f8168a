"""The register of printed copies on disk: one file, read at any time, written by one at a time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.stamp.copies import Copy, Register, Snapshot
from chamberwise.engine.store.register_codec import UnreadableRegisterError, decode, encode
from chamberwise.engine.store.whole_file import write_whole
from filelock import FileLock, Timeout

PATIENCE = 10.0
"""Seconds to wait for another writer."""


class RegisterError(RuntimeError):
    """The register cannot be used; `args[0]` says why and what to do, as sentences."""


def read(path: Path) -> Register:
    """Return the register; an empty one where there is no file. Raises `RegisterError`."""
    try:
        return decode(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return Register()
    except (UnreadableRegisterError, UnicodeDecodeError) as error:
        what = error.args[0] if isinstance(error, UnreadableRegisterError) else _("it is no UTF-8")
        raise RegisterError(
            _(
                "The register of printed copies {path} cannot be read: {what}. It is left as "
                "it is. Put it right from a backup, or move it away to begin a new one."
            ).format(path=path, what=what)
        ) from error
    except OSError as error:
        raise _unusable(_NOT_READ, path, error) from error


def add(path: Path, copies: Iterable[Copy], content: Snapshot) -> None:
    """Register copies of one content; one that is known already is not counted twice.

    Raises `RegisterError`.
    """
    with _changing(path) as changed:
        register = changed[0]
        more = tuple(copy for copy in copies if copy not in register.copies)
        contents = {copy.content: content for copy in more}
        changed[0] = Register((*register.copies, *more), {**register.contents, **contents})


def hang(
    path: Path, code: str, where: str, content: Snapshot | None, otherwise: Copy
) -> Copy | None:
    """Say where a copy hangs and return it; `None` where one is known to hang there already.

    A copy of that stamp that hangs nowhere yet is taken; where there is none, one more was
    printed, as `otherwise` says. Raises `RegisterError`.
    """
    with _changing(path) as changed:
        register = changed[0]
        copies = list(register.copies)
        if any(each.code == code and each.hangs == where for each in copies):
            return None
        free = [at for at, each in enumerate(copies) if each.code == code and not each.hangs]
        if free:
            hung = copies[free[0]] = replace(copies[free[0]], hangs=where)
        else:
            hung = replace(otherwise, hangs=where)
            copies.append(hung)
        more = {hung.content: content} if content else {}
        changed[0] = Register(tuple(copies), {**register.contents, **more})
        return hung


def take_down(path: Path, code: str) -> int:
    """Forget every copy of a stamp, as they hang nowhere any more, and return how many there were.

    Raises `RegisterError`.
    """
    with _changing(path) as changed:
        left = tuple(each for each in changed[0].copies if each.code != code)
        gone = len(changed[0].copies) - len(left)
        changed[0] = Register(left, changed[0].contents)
        return gone


@contextmanager
def _changing(path: Path) -> Iterator[list[Register]]:
    """Hold the register for one writer; what stands in the list at the end is written whole."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        with FileLock(path.with_suffix(".lock"), timeout=PATIENCE):
            before = read(path)
            holder = [before]
            yield holder
            if holder[0] != before:
                write_whole(path, encode(holder[0]))
    except Timeout as error:
        raise RegisterError(
            _("The register {path} is held by another program. Try again once it is done.").format(
                path=path
            )
        ) from error
    except OSError as error:
        raise _unusable(_NOT_WRITTEN, path, error) from error


_NOT_READ = N_("The register of printed copies {path} cannot be read: {reason}.")
_NOT_WRITTEN = N_("The register of printed copies {path} cannot be written: {reason}.")


def _unusable(what: str, path: Path, error: OSError) -> RegisterError:
    reason = error.strerror or type(error).__name__
    return RegisterError(_(what).format(path=path, reason=reason))
