"""The words of the engine that files and programs know in English, as a reader is told them.

The values themselves stay what they are; only where one is shown it is told.
"""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

TOLD = (
    # Signal words of ISO 3864, and how bad a harm is.
    N_("danger"),
    N_("warning"),
    N_("caution"),
    N_("notice"),
    N_("catastrophic"),
    N_("critical"),
    N_("serious"),
    N_("minor"),
    N_("negligible"),
    # Problems and findings of the audit.
    N_("error"),
    N_("note"),
    # What a pathway is marked.
    N_("draft"),
    N_("clinical review"),
    N_("approved"),
    N_("superseded"),
    N_("withdrawn"),
    # Verdicts.
    N_("broken"),
    N_("unproven"),
    N_("does not arise"),
    N_("no rule"),
    N_("holds"),
    # What a stamp is worth.
    N_("current"),
    N_("unknown"),
    # How far a source was followed.
    N_("read"),
    N_("memory"),
    N_("common practice"),
    N_("derived"),
    N_("local"),
    # Shapes and paper.
    N_("process"),
    N_("decision"),
    N_("predefined process"),
    N_("terminator"),
    N_("connector"),
    N_("panel"),
    N_("line"),
    N_("box"),
    N_("diamond"),
    N_("arrow head"),
    N_("round edge"),
    N_("round symbol"),
    N_("portrait"),
    N_("landscape"),
    N_("bright"),
    N_("dim"),
    N_("symbol"),
    N_("arrow"),
    N_("text"),
    N_("glance"),
    N_("act"),
    N_("refer"),
    # A drill: how it is run, and what came of it.
    N_("run"),
    N_("rehearse"),
    N_("met in this run"),
    N_("met"),
    N_("done, late"),
    N_("late"),
    N_("not yet"),
    # Colours.
    N_("red"),
    N_("yellow"),
    N_("green"),
    N_("blue"),
    # Changes between two versions.
    N_("pathway"),
    N_("standing"),
    N_("title"),
    N_("summary"),
    N_("entry"),
    N_("phase"),
    N_("step"),
    N_("name in the file"),
    N_("name used anew"),
    N_("calculation"),
    N_("order"),
    N_("question"),
    N_("finding asked"),
    N_("answer"),
    N_("way on"),
    N_("row of a branch"),
    N_("instruction"),
    N_("spoken words"),
    N_("duty"),
    N_("effect"),
    N_("bound"),
    N_("owed task"),
    N_("time"),
    N_("handover"),
    N_("kit"),
    N_("choice"),
    N_("time target"),
    N_("reason"),
    N_("short wording"),
    N_("sources"),
    N_("plan"),
    N_("finding"),
    N_("value"),
    N_("rule"),
    N_("table of cases"),
    N_("wall chart"),
    N_("accepted problem"),
    N_("unit"),
    N_("phone"),
    N_("local product"),
    N_("shelf and stock"),
    N_("local place"),
    N_("machine page"),
    N_("safety"),
    N_("procedural"),
    N_("editorial"),
)


def told(value: str) -> str:
    """Return a value as it is told; what is not known here stays as it is."""
    return _(str(value))


def paper_told(sized: object) -> str:
    """Return a paper and how it is turned, such as `A3 portrait`."""
    return " ".join(told(word) for word in str(sized).split())
