"""What calculations of doses take."""

from __future__ import annotations

from dataclasses import replace

from chamberwise.engine.language.texts import N_
from chamberwise.engine.working.form import Input, Kind, between

AMOUNT = Input(
    name="amount",
    symbol="m",
    meaning=N_("amount of the drug"),
    example="1 mg",
    unit="mg",
    also=("ug", "g"),
    bare=False,
    hard=between("0.001", "100000"),
    required=False,
)
VOLUME = Input(
    name="volume",
    symbol="v",
    meaning=N_("volume of it"),
    example="0.1 mL",
    unit="mL",
    also=("uL",),
    bare=False,
    hard=between("0.005", "2000"),
    required=False,
)
STRENGTH = Input(
    name="strength",
    symbol="c",
    meaning=N_("strength on the label"),
    example="10 mg/mL",
    unit="mg/mL",
    also=("%", "g/mL"),
    bare=False,
    hard=between("0.0001", "1000"),
    required=False,
)
WEIGHT = Input(
    name="weight",
    symbol="w",
    meaning=N_("weight of the patient"),
    example="70 kg",
    unit="kg",
    also=("lb", "st"),
    bare=False,
    hard=between("30", "250"),
    soft=between("40", "150"),
    outside=N_("Doses by weight are worked for grown patients only."),
)
MADE_UP_TO = replace(VOLUME, name="made-up-to", symbol="v2", meaning=N_("volume after making up"))
ALREADY = Input(
    name="already",
    symbol="g",
    meaning=N_(
        "what was already given, every route, blanks between amounts; 0 mg where nothing was"
    ),
    example="0 mg",
    kind=Kind.SEVERAL,
    unit="mg",
    also=("ug", "g"),
    bare=False,
    hard=between("0", "5000"),
)
