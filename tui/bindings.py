"""Textual bindings from the tables of keys."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.tui.actions import OF_THE_PROGRAM, STOP, KeyAction
from textual.binding import Binding, BindingType


def bindings(actions: Iterable[KeyAction]) -> list[BindingType]:
    """Return one binding for each key; a number key hands its number to the action."""
    return [
        Binding(key, _call(action, key), action.word, show=False, priority=action is STOP)
        for action in actions
        for key in action.keys
    ]


def _call(action: KeyAction, key: str) -> str:
    if action in OF_THE_PROGRAM:
        return f"app.{action.name}"
    return f"{action.name}({key})" if key.isdigit() else action.name
