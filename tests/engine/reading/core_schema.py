"""What an editor sees of a tree: scalars typed by the YAML 1.2 core schema, or all as strings."""

from __future__ import annotations

import re
from typing import Any

from chamberwise.engine.reading.tree import Listing, Node, Scalar

_NULL = re.compile(r"null|Null|NULL|~|")
_BOOL = re.compile(r"true|True|TRUE|false|False|FALSE")
_INTEGER = re.compile(r"[-+]?[0-9]+")
_OCTAL = re.compile(r"0o[0-7]+")
_HEXADECIMAL = re.compile(r"0x[0-9a-fA-F]+")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?")
_INFINITE = re.compile(r"[-+]?(?:\.inf|\.Inf|\.INF)")
_NO_NUMBER = re.compile(r"\.nan|\.NaN|\.NAN")


def as_strings(node: Node) -> Any:
    """Return plain values, every scalar a string."""
    return _plain(node, lambda scalar: scalar.text)


def as_core(node: Node) -> Any:
    """Return plain values, scalars that are not quoted typed by the core schema."""
    return _plain(node, core_value)


def _plain(node: Node, value: Any) -> Any:
    if isinstance(node, Scalar):
        return value(node)
    if isinstance(node, Listing):
        return [_plain(item, value) for item in node.items]
    return {name: _plain(entry.value, value) for name, entry in node.entries.items()}


def core_value(scalar: Scalar) -> str | int | float | bool | None:
    """Return what the core schema makes of one scalar."""
    text = scalar.text
    if scalar.quoted:
        return text
    if _NULL.fullmatch(text):
        return None
    if _BOOL.fullmatch(text):
        return text.lower() == "true"
    return _number(text)


def _number(text: str) -> str | int | float:
    if _INTEGER.fullmatch(text):
        return int(text)
    if _OCTAL.fullmatch(text):
        return int(text[2:], 8)
    if _HEXADECIMAL.fullmatch(text):
        return int(text[2:], 16)
    if _FLOAT.fullmatch(text):
        return float(text)
    if _INFINITE.fullmatch(text) or _NO_NUMBER.fullmatch(text):
        return float(text.replace(".", ""))
    return text
