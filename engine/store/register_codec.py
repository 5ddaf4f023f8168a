"""The register of printed copies as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import asdict
from datetime import date
from typing import Any

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.stamp.copies import Copy, KeptStep, Register, Snapshot

FORMAT = 1


class UnreadableRegisterError(ValueError):
    """The text is no register of this format; `args[0]` says what is wrong."""


def encode(register: Register) -> str:
    """Return the register's file: a line for each copy, and one for each content in use."""
    copies = [_copy_values(copy) for copy in register.copies]
    used = dict.fromkeys(copy.content for copy in register.copies)
    contents = [
        f"{json.dumps(digest)}: {_line(_snapshot_values(register.contents[digest]))}"
        for digest in used
        if digest in register.contents
    ]
    return (
        f'{{"format": {FORMAT},\n"copies": [\n{_lines(map(_line, copies))}],\n'
        f'"contents": {{\n{_lines(contents)}}}}}\n'
    )


def _copy_values(copy: Copy) -> dict[str, str]:
    return asdict(copy) | {"printed": copy.printed.isoformat()}


def _snapshot_values(snapshot: Snapshot) -> dict[str, Any]:
    values = asdict(snapshot)
    return values if values["unit"] else {name: values[name] for name in values if name != "unit"}


def _line(values: Any) -> str:
    return json.dumps(values, ensure_ascii=False, separators=(",", ":"))


def _lines(lines: Iterable[str]) -> str:
    return ",\n".join(lines) + "\n"


def decode(text: str) -> Register:
    """Return the register that a file holds. Raises `UnreadableRegisterError`."""
    try:
        values = json.loads(text)
        if values["format"] != FORMAT:
            raise UnreadableRegisterError(_not_this_format(values["format"]))
        copies = tuple(_copy(each) for each in values["copies"])
        contents = {str(name): _snapshot(each) for name, each in values["contents"].items()}
    except UnreadableRegisterError:
        raise
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise UnreadableRegisterError(_what(error)) from error
    return Register(copies, contents)


def _not_this_format(found: object) -> str:
    return _("its format is {found!r}, not {known}").format(found=found, known=FORMAT)


def _what(error: Exception) -> str:
    if isinstance(error, json.JSONDecodeError):
        return _("line {lineno} is no JSON").format(lineno=error.lineno)
    if isinstance(error, KeyError):
        return _("`{reason}` is missing").format(reason=error.args[0])
    return _("it does not have the form of a register")


def _copy(values: dict[str, Any]) -> Copy:
    texts = {name: _text(each) for name, each in values.items()}
    return Copy(**{**texts, "printed": date.fromisoformat(texts["printed"])})  # type: ignore[arg-type]


def _snapshot(values: dict[str, Any]) -> Snapshot:
    steps = {str(name): _step(each) for name, each in values["steps"].items()}
    edition, approval = _text(values["edition"]), _text(values["approval"])
    unit = {str(name): _text(each) for name, each in values.get("unit", {}).items()}
    return Snapshot(edition, approval, steps, _text(values.get("source", "")), unit)


def _step(values: dict[str, Any]) -> KeptStep:
    return KeptStep(
        _text(values["says"]),
        tuple((_text(how), _text(to)) for how, to in values["ways"]),
        tuple(map(_text, values["lines"])),
        tuple(map(_text, values["cautions"])),
        _text(values["rest"]),
    )


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError
    return value
