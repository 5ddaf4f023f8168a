"""Requirements that no finding can carry: why not, and where they are taught instead."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Taught:
    """`at` are acts; every action that does one of them teaches it, or a step says so first."""

    number: int
    says: str
    sources: str
    why_not: str
    at: tuple[str, ...]
    words: tuple[str, ...]
    """Any of these in a caution, its remedy, or a choice of the step, or of one that leads to it
    in the same pathway."""


TAUGHT = (
    Taught(
        16,
        "No strand is pulled or swept.",
        "S23, S49; common practice",
        "A pull is a way of doing an act, and no act pulls; nobody can be asked after each touch.",
        ("free-wound-of-vitreous", "cut-vitreous"),
        ("pulled or swept", "pulls on the retina"),
    ),
    Taught(
        17,
        "The port is in view while it cuts.",
        "S49",
        "What the surgeon sees within a second is not a finding that a team can be asked.",
        ("cut-vitreous",),
        ("port out of view",),
    ),
    Taught(
        19,
        "No preserved, unwashed stain in the eye.",
        "S39, S42; one source dissents",
        "Which product is in the syringe is settled before surgery, by a choice of the unit.",
        ("stain-with-triamcinolone",),
        ("Preserved triamcinolone",),
    ),
    Taught(
        34,
        "Carbachol at most 0.5 mL.",
        "S72",
        "A volume is no finding; the limit stands beside the act, and the dose is read aloud.",
        ("inject-miotic",),
        ("at most 0.5 mL", "by local protocol"),
    ),
    Taught(
        43,
        "Only lidocaine made for the eye in the chamber.",
        "S87",
        "No pathway injects lidocaine into the chamber; the warning stands where a block is given.",
        ("top-up-block",),
        ("preservative-free product made for it",),
    ),
)
