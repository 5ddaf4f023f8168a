"""The typesetter remembers what it measured, about 100 MB a sheet; between sheets it may forget.

It forgets what ten documents in a row did without, and measuring counts as none.
"""

from __future__ import annotations

from chamberwise.exports.typesetting.compiling import compiler

DOCUMENTS = 11
NOTHING = b""


def forget() -> None:
    """Let the typesetter forget what was measured, by setting empty documents."""
    setter = compiler()
    for number in range(DOCUMENTS):
        setter.compile(input=NOTHING, format="svg", sys_inputs={"number": str(number)})
