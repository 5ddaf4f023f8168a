"""Every number with a dose unit that the pathways print, with the source it comes from.

Lengths of pars plana entry and dioptres are listed too. What is not printed here is not printed:
stain, block, acetazolamide, miotic by local protocol, and machine settings are left to the unit.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

NUMBER = r"(?<![\w.])[0-9]+(?:\.[0-9]+)?"
UNIT = (
    r"(?:mg per mL|mg per kg|micrograms?|mcg|mg|kg|g|mL|ml|microlitres?|litres?|IU|units?|mmol|"
    r"mmHg|cm|mm|D|%|cuts|drops?|tablets?)"
)
QUANTITY = re.compile(rf"{NUMBER}\s?{UNIT}(?![\w])")


@dataclass(frozen=True)
class Printed:
    """The quantities of one text, the source each comes from, and what that source was."""

    file: str
    text: str
    quantities: tuple[str, ...]
    source: str
    from_where: str


CEFUROXIME = "label, read: 50 mg vial in 5 mL is 10 mg per mL; 0.1 mL of it is 1 mg"
ACETYLCHOLINE = "label, read: 20 mg in 2 mL is 10 mg per mL; 0.5 mL to 2 mL is used"
CARBACHOL = "label, read: 0.1 mg per mL; no more than 0.5 mL"
FLAT, BY_WEIGHT = "label, read: 200 mg in total", "label, read: 4.5 mg per kg, ceiling 200 mg"
HIGHER = "label, read: 4.5 mg per kg, ceiling 300 mg"
TAUGHT = "common practice, a stricter limit often taught"
CLOSING, RUPTURE = "closing-and-after-care", "posterior-capsule-rupture"

PRINTED = (
    Printed(
        CLOSING,
        "Acetylcholine 1 % (10 mg per mL)",
        ("1 %", "10 mg per mL"),
        "acetylcholine-label",
        ACETYLCHOLINE,
    ),
    Printed(
        CLOSING,
        "Inject 0.5 mL to 2 mL, freshly made, after the lens is in.",
        ("0.5 mL", "2 mL"),
        "acetylcholine-label",
        ACETYLCHOLINE,
    ),
    Printed(
        CLOSING,
        "Carbachol 0.01 % (0.1 mg per mL)",
        ("0.01 %", "0.1 mg per mL"),
        "carbachol-label",
        CARBACHOL,
    ),
    Printed(CLOSING, "Inject at most 0.5 mL.", ("0.5 mL",), "carbachol-label", CARBACHOL),
    Printed(CLOSING, "Inject at most 0.5 mL in total.", ("0.5 mL",), "carbachol-label", CARBACHOL),
    Printed(
        CLOSING,
        "Read aloud: cefuroxime 1 mg in 0.1 mL of 10 mg per mL.",
        ("1 mg", "0.1 mL", "10 mg per mL"),
        "cefuroxime-label",
        CEFUROXIME,
    ),
    Printed(
        CLOSING,
        "Inject 0.1 mL into the chamber once.",
        ("0.1 mL",),
        "cefuroxime-label",
        CEFUROXIME,
    ),
    Printed(
        "kit",
        "Cefuroxime 10 mg per mL made up for the eye",
        ("10 mg per mL",),
        "cefuroxime-label",
        CEFUROXIME,
    ),
    Printed("kit", "0.1 mL", ("0.1 mL",), "cefuroxime-label", CEFUROXIME),
    Printed(
        "kit",
        "Sub-Tenon's set with lidocaine 2 % (20 mg per mL)",
        ("2 %", "20 mg per mL"),
        "lidocaine-uk-label",
        "label, read: 2 % is 20 mg per mL",
    ),
    Printed(RUPTURE, "200 mg in total", ("200 mg",), "lidocaine-uk-label", FLAT),
    Printed(
        RUPTURE,
        "Count every dose of the day against 200 mg in total.",
        ("200 mg",),
        "lidocaine-uk-label",
        FLAT,
    ),
    Printed(
        RUPTURE,
        "4.5 mg per kg to 200 mg",
        ("4.5 mg per kg", "200 mg"),
        "lidocaine-irish-label",
        BY_WEIGHT,
    ),
    Printed(
        RUPTURE,
        "Count against 4.5 mg per kg and never more than 200 mg.",
        ("4.5 mg per kg", "200 mg"),
        "lidocaine-irish-label",
        BY_WEIGHT,
    ),
    Printed(
        RUPTURE,
        "4.5 mg per kg to 300 mg",
        ("4.5 mg per kg", "300 mg"),
        "lidocaine-us-label",
        HIGHER,
    ),
    Printed(
        RUPTURE,
        "Count against 4.5 mg per kg and never more than 300 mg.",
        ("4.5 mg per kg", "300 mg"),
        "lidocaine-us-label",
        HIGHER,
    ),
    Printed(RUPTURE, "3 mg per kg", ("3 mg per kg",), "common-practice", TAUGHT),
    Printed(RUPTURE, "Count against 3 mg per kg.", ("3 mg per kg",), "common-practice", TAUGHT),
    Printed("choices", "3 mm", ("3 mm",), "trocar-image", "image of a technique, read"),
    Printed(
        "choices",
        "Enter 3 mm behind the limbus.",
        ("3 mm",),
        "trocar-image",
        "image of a technique, read",
    ),
    Printed("choices", "3.5 mm", ("3.5 mm",), "pars-plana-teaching", "memory: usual teaching"),
    Printed(
        "choices",
        "Enter 3.5 mm behind the limbus in an eye without its lens.",
        ("3.5 mm",),
        "pars-plana-teaching",
        "memory: usual teaching",
    ),
    Printed("choices", "Up to 0.5 D less", ("0.5 D",), "common-practice", "some surgeons' habit"),
    Printed("choices", "Take off at most 0.5 D.", ("0.5 D",), "common-practice", "as above"),
)
