"""A small pathway with a bit of everything that a hand-held sheet shows."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import CaseTable, Pathway
from chamberwise.engine.model.step import Action, Line
from chamberwise.engine.model.words import Choice, KitItem

from tests.support.build import act, ask, cautioned, choice, end, finding, hand_over, library
from tests.support.build import pathway as build


def action(name: str, go_to: str, *lines: Line, **rest: object) -> Action:
    return Action(id=name, phase="only", lines=lines, go_to=go_to, **rest)  # type: ignore[arg-type]


def small(*, timed: bool = True) -> Library:
    """Return a library of two pathways, the first of which hands over to the other."""
    return library(
        _first(timed),
        _with_kit(
            build(
                "other",
                action("cut", "clear", Line("nurse", "Cut."), needs=("cutter",)),
                end("clear"),
            )
        ),
        findings=[
            finding("wound", "dry leaking open"),
            replace(choice("drops", "cold warm"), choice=Choice("cold", "because", None)),
        ],
        acts=[act("shout", helps=True)],
    )


def _first(timed: bool) -> Pathway:
    seconds = (10, 20, 40) if timed else (10, None, 40)
    own = build(
        "small",
        cautioned(
            action(
                "stop",
                "shout",
                Line("surgeon", "Stop."),
                Line("nurse", "Bring the box."),
                short="Stop now",
                time_target=seconds[0],
                needs=("box",),
            ),
            "stop",
        ),
        action(
            "shout",
            "give",
            Line("surgeon", "Help please.", said_aloud=True, act="shout"),
            Line("nurse", "Ring the bell."),
            time_target=seconds[1],
        ),
        action(
            "give",
            "look",
            Line("surgeon", "Give 10 mg per mL in 2 mL by local protocol over the next 30 s."),
            time_target=seconds[2],
            choices=("drops",),
        ),
        ask("look", "wound", dry="done", leaking="stitch", open="over"),
        action("stitch", "look", Line("nurse", "Pass the suture."), needs=("box", "suture")),
        hand_over("over", "other", clear="look"),
        end("done"),
        cases=CaseTable(("wound",), asked_again=(("wound", "dry"),)),
    )
    return _with_kit(own)


def _with_kit(own: Pathway) -> Pathway:
    kit = {name: KitItem(name, name.title(), "1", "Why.") for name in ("box", "suture", "cutter")}
    return replace(own, words=replace(own.words, kit=kit))
