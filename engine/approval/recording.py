"""Writing an approval into the text of a file, and nothing else of it."""

from __future__ import annotations

import re
from datetime import date

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.pathway import Seal
from chamberwise.engine.reading.nodes import node_at
from chamberwise.engine.reading.tree import Listing, Node, Scalar, Table, Tree

KEYS = ("approved by", "approved on", "approved content", "approved parts")
_LINE = re.compile(r"[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+")
_PLAIN = re.compile(r"[A-Za-z](?:[\w .,()/'-]*[\w.)])?")
_KEPT_AS_TEXT = ("yes", "no", "true", "false", "on", "off", "null")


class UnwritableError(Exception):
    """The approval cannot be written there; `args[0]` says why and what to do."""


def with_approval(text: str, tree: Tree, by: str, on: date, seal: Seal) -> str:
    """Return a file's text with an approval in it. Raises `UnwritableError`.

    Every other line stays as it was written, remarks and line ends included.
    """
    status = tree.span(("status",), at_key=True)
    value = node_at(tree.root, ("status",))
    if status is None or status.column != 1 or not isinstance(value, Scalar):
        raise UnwritableError(_("Write `status: draft` on a line of its own, at its beginning."))
    lines = _LINE.findall(text)
    line = lines[value.span.line - 1]
    end = line[len(line.rstrip("\r\n")) :] or "\n"
    before, after = line[: value.span.column - 1], line[value.span.end_column - 1 :]
    lines[value.span.line - 1] = f"{before}approved{after.rstrip(chr(13) + chr(10))}{end}"
    lines[value.span.line - 1] += "".join(f"{each}{end}" for each in _said(by, on, seal))
    for key in KEYS:
        node, span = node_at(tree.root, (key,)), tree.span((key,), at_key=True)
        if node is not None and span is not None:
            if span.column != 1:
                raise UnwritableError(
                    _("Write `{key}:` at the beginning of a line.").format(key=key)
                )
            lines[span.line - 1 : _last_line(node)] = [""] * (_last_line(node) - span.line + 1)
    return "".join(lines)


def _said(by: str, on: date, seal: Seal) -> list[str]:
    return [
        f"approved by: {_quoted(by)}",
        f"approved on: {on.isoformat()}",
        f"approved content: {seal.content}",
        "approved parts:",
        *(f"  {name}: {digest}" for name, digest in seal.parts.items()),
    ]


def _quoted(text: str) -> str:
    if _PLAIN.fullmatch(text) and text.casefold() not in _KEPT_AS_TEXT:
        return text
    return "'" + text.replace("'", "''") + "'"


def _last_line(node: Node) -> int:
    match node:
        case Scalar():
            return node.span.end_line
        case Listing():
            return max([node.span.line, *map(_last_line, node.items)])
        case Table():
            inside = [_last_line(each.value) for each in node.entries.values()]
            return max([node.span.line, *inside])
