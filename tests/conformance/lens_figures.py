"""Published figures of lens power, each with where it was read.

`SET`: an open test set of formula rows whose author compared with independent calculators (read).
It has 43 numbers; 42 agree, one is rejected. `ARTICLE`: a web article that prints one decimal
(read; fair). `LOG`: a test log (read; shaky).
"""

from __future__ import annotations

from typing import NamedTuple

from tests.conformance.working_out import radius

SET = "open test set of formula rows, read"
ARTICLE = "web article with an example grid, read; one decimal"


class Row(NamedTuple):
    """Formula, length, cornea, the constant by its symbol, the power expected, and its source."""

    formula: str
    length: str
    cornea: str
    symbol: str
    constant: str
    expected: str
    source: str = SET


HOFFER = (
    Row("hoffer-q", "23.5", "43.5", "pACD", "4.5", "19.27599"),
    Row("hoffer-q", "22", "46", "pACD", "3.5", "19.35878"),
    Row("hoffer-q", "26", "42", "pACD", "5.5", "15.18708"),
    *(
        Row("hoffer-q", length, cornea, "pACD", constant, expected)
        for length, cornea, first, second in (
            ("23.5", radius("7.7"), "19.67", "20.88"),
            ("23.5", radius("5"), "-36.48", "-40.83"),
            ("18.5", radius("8"), "42.66", "45.59"),
            ("28", radius("7"), "-0.85", "-0.91"),
            ("32", "48.21", "-11.03", "-11.67"),
        )
        for constant, expected in (("4.96", first), ("5.59", second))
    ),
    *(
        Row("hoffer-q", length, cornea, "pACD", "4.97", expected)
        for length, cornea, expected in (
            ("12", "40", "114.73"),
            ("24", "40", "23.04"),
            ("36", "40", "-4.36"),
            ("12", "45", "113.60"),
            ("24", "45", "16.47"),
            ("36", "45", "-12.54"),
            ("24", "55", "1.21"),
        )
    ),
)
HOLLADAY = tuple(
    Row("holladay-1", length, cornea, "A", "118", expected)
    for length, cornea, expected in (
        ("24", "40", "22.67"),
        ("24", "45", "16.84"),
        ("24", "55", "1.55"),
        ("12", "40", "93.97"),
        ("12", "45", "89.25"),
        ("12", "55", "77.92"),
        ("36", "40", "-3.58"),
        ("36", "45", "-11.30"),
        ("36", "55", "-29.99"),
    )
)
SRK_T = tuple(
    Row("srk-t", length, cornea, "A", "118", expected)
    for length, cornea, expected in (
        ("24", "40", "22.24"),
        ("24", "45", "17.07"),
        ("24", "55", "2.17"),
        ("36", "40", "-3.30"),
        ("36", "45", "-13.88"),
        ("36", "55", "-31.83"),
        ("12", "40", "87.38"),
        ("12", "55", "76.82"),
    )
)
SOLID = (*HOFFER, *HOLLADAY, *SRK_T)

HOFFER_POSITIONS = (
    ("23.5", "43.5", "4.5", "4.40887"),
    ("22", "46", "3.5", "3.14482"),
    ("26", "42", "5.5", "6.06225"),
)
"""Length, cornea, constant and the depth C of the same set."""

FAIR = tuple(
    Row("holladay-1", "24.5", cornea, "A", "118.9", expected, ARTICLE)
    for cornea, expected in (("39", "23.3"), ("36", "26.6"), ("32", "30.9"))
)
"""The page cuts decimals off: 26.68 stands there as 26.6."""

REJECTED = Row("srk-t", "12", "45", "A", "118", "113.60")
"""A slip of the set: it repeats the cell of Hoffer Q for the same eye, which really is 113.60.
By the formula, and between its neighbours 87.38 and 76.82, it is 83.53."""

LOG = Row("srk-t", "23.73", "42.34", "A", "119", "21.95", "test log, read; shaky, within 0.5")

SHORT_EYES = (
    ("20", "46", "5.4", "32.16", "31.24"),
    ("21", "45", "5.4", "28.68", "28.37"),
    ("22", "44", "5.4", "25.80", "25.73"),
)
"""Length, cornea, pACD; the power, and what the sign of M reversed would give (computed)."""

SIDE_BY_SIDE = (
    ("21", "45", "27.96", "28.25", "28.60"),
    ("22", "44", "25.31", "25.54", "25.73"),
    ("23.5", "43.5", "20.92", "20.93", "20.90"),
    ("24.5", "43", "18.40", "18.40", "18.24"),
    ("26", "42.5", "14.43", "14.33", "14.29"),
    ("28", "43", "8.33", "7.72", "7.82"),
)
"""Length, cornea, then SRK/T, Holladay 1 and Hoffer Q with A 118.7 converted (computed)."""

LEFT = {
    "srk-t": {"20": "0.630", "20.5": "0.291", "21": "-0.053", "21.5": "-0.400", "22": "-0.751"},
    "holladay-1": {"20": "0.633", "21": "-0.045", "22": "-0.739"},
    "hoffer-q": {"20": "0.607", "21": "-0.069", "22": "-0.762"},
}
"""Refraction left in the eye 23.5 mm, 43.5 D by lenses of A 118.7 (computed)."""
LEFT_THIN = {"20": "0.438", "21": "-0.250", "22": "-0.954"}
"""The same with the lens at 5.2 mm by vergence alone (computed)."""

CHART = {
    "30": "28.55",
    "29.5": "28.09",
    "29": "27.61",
    "28.5": "27.14",
    "28": "26.67",
    "27.5": "26.20",
    "27": "25.73",
    "26.5": "25.26",
    "26": "24.79",
    "25.5": "24.31",
    "25": "23.84",
    "24.5": "23.36",
    "24": "22.89",
    "23.5": "22.42",
    "23": "21.94",
    "22.5": "21.47",
    "22": "21.00",
    "21.5": "20.53",
    "21": "20.05",
    "20.5": "19.58",
    "20": "19.11",
    "19.5": "18.63",
    "19": "18.16",
    "18.5": "17.69",
    "18": "17.21",
    "17.5": "16.73",
    "17": "16.26",
    "16.5": "15.78",
    "16": "15.31",
    "15.5": "14.83",
}
"""Power in the bag and in the sulcus: the published chart, its 30 rows that could be read whole.

doctor-hill.com/iol-power-calculations/bag-vs-sulcus (read): lens at 5.20 and 4.70 mm, "normal"
cornea; it goes on to 5 D below."""
CHART_STEPS = {"30": "-1.5", "28.5": "-1.5", "28": "-1", "17.5": "-1", "17": "-0.5", "15.5": "-0.5"}
"""What the chart takes off in whole steps, at the ends of its bands (read)."""
