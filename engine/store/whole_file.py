"""Writing a file whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def write_whole(path: Path, text: str) -> None:
    """Write UTF-8 text so that readers see the old file or the new one. Raises `OSError`."""
    write_bytes_whole(path, text.encode())


def write_bytes_whole(path: Path, content: bytes) -> None:
    """Write bytes so that readers see the old file or the new one. Raises `OSError`."""
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        os.chmod(temporary, path.stat().st_mode & 0o777 if path.exists() else 0o644)
        os.replace(temporary, path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
