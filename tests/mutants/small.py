"""A small pathway with one step of every kind, and what helps to look at its mutants."""

from __future__ import annotations

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    Action,
    Caution,
    Line,
    Outcome,
    SignalWord,
    Step,
)
from chamberwise.engine.mutants.all_mutants import Kind
from chamberwise.engine.mutants.mutant import Mutant

from tests.support.build import (
    act,
    ask,
    bounded,
    branch,
    changed,
    do,
    end,
    finding,
    hand_over,
    library,
    pathway,
    row,
)

DANGER = Caution(SignalWord.DANGER, "Pulling tears it.", "Cut it.", "cut")
NOTICE = Caution(SignalWord.NOTICE, "The light is dim.", "Turn it up.")

LOOK = ask("look", "gel", unclear="fill", none="hold", back="fill", front="clear")
FILL = changed(
    do("fill", "hold", acts="fill cover", known={"depth": "deep"}, stale="gel"),
    cautions=(DANGER, NOTICE),
)
HOLD = do("hold", "which", acts="hold")
WHICH = branch(
    "which",
    row("clear", gel="front", depth="deep"),
    row("closed", gel="none"),
    otherwise="again",
    not_known="again",
)
AGAIN = bounded(do("again", "look", acts="fill"), 2, "stopped")
CLEAR = hand_over("clear", "other", done="closed", failed="stopped")
CLOSED = changed(end("closed"), owed=(Line("surgeon", "Tell the patient.", act="tell"),))
STOPPED = end("stopped")


def small() -> Library:
    """Return a library of two pathways, the first with all kinds of steps."""
    one = pathway("one", LOOK, FILL, HOLD, WHICH, AGAIN, CLEAR, CLOSED, STOPPED)
    other = pathway("other", do("cut", "done", acts="cut"), end("done"), end("failed"))
    findings = [finding("gel", "none back front"), finding("depth", "deep flat")]
    acts = [act("fill", known={"depth": "deep"}), act("cover"), act("hold", stale="depth")]
    return library(
        one, other, findings=findings, acts=[*acts, act("cut", stale="gel"), act("tell")]
    )


def made(kind: Kind, name: str = "one") -> dict[str, Mutant]:
    """Return the mutants of one kind by what follows the kind in their ids."""
    whole = small()
    found = list(kind(whole.pathways[name], whole.shared))
    by_id = {each.id.partition("/")[2]: each for each in found}
    assert len(by_id) == len(found)
    return by_id


def edited(mutant: Mutant) -> Pathway:
    assert isinstance(mutant.edited, Pathway)
    return mutant.edited


def step_of(mutant: Mutant, name: str) -> Step:
    return edited(mutant).steps[name]


def lines_of(mutant: Mutant, name: str) -> list[str | None]:
    step = step_of(mutant, name)
    assert isinstance(step, Action | Outcome)
    return [line.act for line in (step.lines if isinstance(step, Action) else step.owed)]


def other_steps_are_untouched(mutant: Mutant, *names: str) -> bool:
    """Whether every step but those named is as it was."""
    before, after = small().pathways["one"].steps, edited(mutant).steps
    return all(after.get(name) == step for name, step in before.items() if name not in names)
