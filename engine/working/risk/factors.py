"""What is asked about a patient, an eye and a surgeon before the risk is worked."""

from __future__ import annotations

from chamberwise.engine.language.texts import N_
from chamberwise.engine.working.form import UNKNOWN, Input, Kind, between
from chamberwise.engine.working.optics.inputs import AXIAL_LENGTH

YES, NO = "yes", "no"


def asked(name: str, meaning: str) -> Input:
    """Return a question answered by yes, no or unknown; unasked, it is unknown."""
    return Input(
        name=name,
        meaning=meaning,
        example=NO,
        kind=Kind.WORD,
        words=(YES, NO, UNKNOWN),
        required=False,
        given=UNKNOWN,
    )


def chosen(name: str, meaning: str, *words: str) -> Input:
    """Return a question answered by one of some words; unasked, it is unknown."""
    return Input(
        name=name,
        meaning=meaning,
        example=words[0],
        kind=Kind.WORD,
        words=(*words, UNKNOWN),
        required=False,
        given=UNKNOWN,
    )


AGE = Input(
    name="age",
    meaning=N_("age in years"),
    example="75",
    hard=between("18", "115"),
    soft=between("45", "100"),
    outside=N_("The models are of adults."),
    required=False,
)
SEX = chosen("sex", N_("as the model counts it"), "female", "male")
LENGTH = Input(
    name=AXIAL_LENGTH.name,
    symbol=AXIAL_LENGTH.symbol,
    meaning=AXIAL_LENGTH.meaning,
    example=AXIAL_LENGTH.example,
    unit="mm",
    also=AXIAL_LENGTH.also,
    hard=AXIAL_LENGTH.hard,
    soft=AXIAL_LENGTH.soft,
    required=False,
)
PUPIL = chosen("pupil", N_("size after dilation"), "large", "medium", "small")
NUCLEUS = chosen(
    "nucleus",
    N_("density of the lens; the last is brunescent, white or mature"),
    "clear",
    "grade-1",
    "grade-2",
    "grade-3",
    "brunescent-or-white",
)
SURGEON = chosen(
    "surgeon",
    N_("grade of the surgeon, as the model counts it"),
    "consultant",
    "associate-specialist",
    "staff-grade",
    "fellow",
    "registrar",
    "senior-house-officer",
)

GLAUCOMA = asked("glaucoma", N_("glaucoma"))
RETINOPATHY = asked("diabetic-retinopathy", N_("diabetic retinopathy"))
NO_VIEW = asked("no-fundal-view", N_("no view of the fundus, or vitreous opacity"))
PSEUDOEXFOLIATION = asked("pseudoexfoliation", N_("pseudoexfoliation"))
PHACODONESIS = asked("phacodonesis", N_("the lens trembles"))
ALPHA_BLOCKER = asked("alpha-blocker", N_("doxazosin; often widened to any alpha-blocker"))
CANNOT_LIE_FLAT = asked("cannot-lie-flat", N_("cannot lie flat"))

PREVIOUS_VITRECTOMY = asked("previous-vitrectomy", N_("vitrectomy before"))
CORNEAL_SCAR = asked("corneal-scar", N_("corneal scarring"))
TINY_PUPIL = asked("pupil-below-3mm", N_("pupil below 3 mm"))
SHALLOW = asked("shallow-chamber", N_("anterior chamber below 2.5 mm"))
AMETROPIA = asked("ametropia-above-6", N_("ametropia above 6 D"))
PLAQUE = asked("capsule-plaque", N_("posterior capsule plaque"))
POLAR = asked("posterior-polar", N_("posterior polar cataract"))
OTHER_RISK = asked("other-risk", N_("another risk in the surgeon's judgement"))
ANXIETY = asked("severe-anxiety", N_("severe anxiety"))
TREMOR = asked("head-tremor", N_("head tremor"))
CLOSURE = asked("previous-angle-closure", N_("angle closure before"))
FELLOW = asked("fellow-eye-complication", N_("complication in the fellow eye"))

OF_ODDS = (
    AGE,
    SEX,
    GLAUCOMA,
    RETINOPATHY,
    NUCLEUS,
    NO_VIEW,
    PSEUDOEXFOLIATION,
    PHACODONESIS,
    PUPIL,
    LENGTH,
    ALPHA_BLOCKER,
    CANNOT_LIE_FLAT,
    SURGEON,
)
OF_POINTS = (
    PREVIOUS_VITRECTOMY,
    CORNEAL_SCAR,
    TINY_PUPIL,
    SHALLOW,
    AMETROPIA,
    PLAQUE,
    POLAR,
    OTHER_RISK,
    ANXIETY,
    TREMOR,
    CLOSURE,
    FELLOW,
)
