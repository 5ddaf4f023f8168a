"""Where printed sheets go: names, what is never written over, and writing."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.place import in_the_way, no_folder
from chamberwise.engine.store.whole_file import write_bytes_whole
from chamberwise.exports.printing.marking import is_ours
from chamberwise.exports.printing.printing import Form


class NotWrittenError(Exception):
    """The files cannot be written there; `args[0]` says why and what to do, as sentences."""


def destination(out: Path | None, name: str, form: Form, *, is_folder: bool = False) -> Path:
    """Return the file to write: `out` itself, or `name` in the folder that `out` is or will be.

    Raises `NotWrittenError` where nothing can be written there, or the ending is another form's.
    """
    if out is None:
        return Path(name + form.ending)
    if is_folder or out.is_dir():
        if why := no_folder(out if out.exists() else out.parent):
            raise NotWrittenError(why)
        return out / (name + form.ending)
    if out.suffix.lower() != form.ending:
        raise NotWrittenError(
            _("{out} does not end in {ending}. Name it so, or a folder.").format(
                out=out, ending=form.ending
            )
        )
    if why := in_the_way(out):
        raise NotWrittenError(why)
    return out


def paged(path: Path, pages: int) -> tuple[Path, ...]:
    """Return a path for each page, numbered where there are several.

    >>> [str(each) for each in paged(Path("chart.svg"), 2)]
    ['chart-1.svg', 'chart-2.svg']
    """
    if pages == 1:
        return (path,)
    return tuple(path.with_stem(f"{path.stem}-{number}") for number in range(1, pages + 1))


def refuse_strangers(path: Path) -> None:
    """Raise `NotWrittenError` where a file is there that we did not make."""
    try:
        stranger = (path.exists() or path.is_symlink()) and not is_ours(path)
    except OSError as error:
        raise NotWrittenError(
            _("{path} cannot be looked at: {reason}.").format(path=path, reason=_reason(error))
        ) from error
    if stranger:
        raise NotWrittenError(
            _(
                "{path} is there already and is none of our sheets. Name another file with --out, "
                "or add --overwrite."
            ).format(path=path)
        )


def write(files: Mapping[Path, bytes]) -> None:
    """Write each file whole; where one fails, those that were new are gone again.

    Raises `NotWrittenError`.
    """
    new: list[Path] = []
    for path, content in files.items():
        is_new = not path.exists()
        try:
            write_bytes_whole(path, content)
        except OSError as error:
            for each in new:
                each.unlink(missing_ok=True)
            raise NotWrittenError(
                _("{path} cannot be written: {reason}.").format(path=path, reason=_reason(error))
            ) from error
        if is_new:
            new.append(path)


def _reason(error: OSError) -> str:
    return error.strerror or type(error).__name__
