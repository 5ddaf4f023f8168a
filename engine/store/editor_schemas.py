"""Writing the editors' schemas: `python -m chamberwise.engine.store.editor_schemas FOLDER`."""

from __future__ import annotations

import sys
from pathlib import Path

from chamberwise.engine.reading.json_schema import schema_files
from chamberwise.engine.store.whole_file import write_whole


def write_editor_schemas(folder: Path) -> list[Path]:
    """Write every schema file into a folder and return their paths. Raises `OSError`."""
    written = []
    for name, text in schema_files().items():
        write_whole(folder / name, text)
        written.append(folder / name)
    return written


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: python -m chamberwise.engine.store.editor_schemas FOLDER")
    write_editor_schemas(Path(sys.argv[1]))
