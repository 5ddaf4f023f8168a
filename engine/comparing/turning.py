"""Words on which an instruction turns: exchange one, and another thing is done.

Made for this list from the language of the theatre (common practice); the stems by which a medicine
is told follow those of the World Health Organization's list of international non-proprietary names
(from memory). It is deliberately wide: a word too many asks for a look, one too few hides a change.
"""

from __future__ import annotations

import re

_SIDES = """
    left right both either inside outside inner outer upper lower superior inferior nasal temporal
    anterior posterior peripheral central limbal corneal scleral clockwise anticlockwise
    counterclockwise horizontal vertical above below beneath behind front back forward forwards
    backward backwards towards away up down in into out off onto over under through across from
    between
"""
_PARTS = """
    bag sulcus iris angle plana capsule chamber vitreous cornea sclera limbus zonule retina
    wound wounds port ports incision pupil optic haptic haptics nucleus cortex eye eyes lens
    lenses piece pieces fragment fragments crumb strand strands knot tear rim rims defect
    opening edge edges macula iridectomy lid lids speculum drape pedal scissors sponge forceps
    glide vectis scaffold vitrector box stain dye gel clot flow pressure rate power volume dose
"""
_AMOUNTS = """
    more less fewer most least high higher low lower raised increase increased increasing decrease
    decreased decreasing reduce reduced raise lift full half double twice once thrice again all
    none any some every each only first last next maximum minimum large larger small smaller slow
    slowly fast quickly gentle gently firm firmly long longer short shorter deep shallow wide narrow
    one two three four five six seven eight nine ten eleven twelve quarter third
"""
_TIMES = """
    before after until while during when once unless if then immediately at-once now later early
    late always never sometimes continue keep stop start pause wait resume repeat second seconds
    and or with without minute minutes hour hours day days week weeks month months year years
    daily hourly
"""
_STATES = """
    lost kept back gone left present absent missing found intact torn whole broken ready safe unsafe
    known unknown possible impossible allowed forbidden positive negative clear
    cloudy soft hard loose tight sealed leaking steady sinking falling fallen visible hidden wet dry
    working alone together same other another still even red round oval thin thick dark dilated
    pressed aloud silently quietly untouched
"""
_DUTIES = """
    must may should can shall surgeon assistant anaesthetist anaesthetic scrub circulating
    practitioner senior junior consultant trainee nurse companion patient
"""
_THINGS = """
    dispersive cohesive viscoelastic saline balanced solution water air gas steroid antibiotic
    anaesthetic dilating constricting hydrophilic hydrophobic acrylic silicone single-piece
    three-piece foldable rigid sterile preservative-free preserved diluted undiluted neat topical
    intracameral intravitreal subconjunctival sub-tenon oral intravenous intramuscular drops
    tablet tablets bottle pump irrigation aspiration infusion vacuum cutter cutting cannula needle
    hydrodissection hydrodelineation capsulorhexis vitrectomy capsulotomy iridotomy emulsification
    levitation capture fixation block sedation biometry scan suction
    tip probe sleeve suture sutures phaco ultrasound bimanual coaxial
"""
_DOINGS = """
    inject aspirate irrigate cut remove withdraw insert advance fill drain empty open close suture
    push pull press rotate convert call tell ask give implant explant place leave lift lower
    enlarge extend stain wash dilate constrict freeze dry hold release fix cover uncover tie clear
    avoid look inspect check count measure record write discharge refer admit reassure prolapse
    hydrodissect emulsify engage grasp depress flush swab connect disconnect switch turn abandon
    postpone proceed exchange extract express retract clamp reposition reform pressurise rinse
    refill replace strip seal hydrate bury secure float nick scan prescribe treat bring lay enter
    follow
"""

TURNING = frozenset(
    f"{_SIDES}{_PARTS}{_AMOUNTS}{_TIMES}{_STATES}{_DUTIES}{_THINGS}{_DOINGS}".split()
)
_HANDLED = frozenset(f"{_PARTS}{_THINGS}".split()) - {"box"}
_RELATING = frozenset(f"{_SIDES}{_TIMES}".split()) | {"not", "no", "never", "but", "than", "of"}
_ENDINGS = ("s", "es", "d", "ed", "ing")


def turns(word: str) -> bool:
    """Return whether a meaning turns on a word, in whatever form it stands.

    >>> turns("withdraw"), turns("withdraws"), turns("sealing"), turns("thank")
    (True, True, True, False)
    """
    stems = (word.removesuffix(each) for each in _ENDINGS if word.endswith(each))
    return word in TURNING or any(stem in TURNING for stem in stems)


def relates(word: str) -> bool:
    """Return whether a word ties others together, so that their order matters."""
    return word in _RELATING


def is_handled(word: str) -> bool:
    """Return whether a word names a part of the eye, or what is put to it."""
    return word in _HANDLED


_MEDICINE = re.compile(
    r"(?:cef\w{3,}|sulfa\w{3,}|\w{2,}(?:caine|cillin|floxacin|mycin|micin|cycline|vancomycin|azole"
    r"|oxime|zolamide|prost|tidine|nidine|olol|sone|solone|olone|fenac|orolac|epam|azolam"
    r"|phrine|tropine|pentolate|amide|choline|carpine|parin|mab|platin|idone|iodine|hexidine"
    r"|cizumab|acyclovir|ciclovir|statin|xaban|setron|fentanil|orphine))$"
)
_OTHER_MEDICINES = """
    adrenaline noradrenaline mannitol heparin warfarin aspirin oxygen propofol alteplase
    triamcinolone trypan hyaluronidase hyaluronate chondroitin methylcellulose
"""
_WITHOUT_STEM = frozenset(_OTHER_MEDICINES.split())


def is_medicine(word: str) -> bool:
    """Return whether a word looks like the generic name of a medicine.

    >>> is_medicine("cefuroxime"), is_medicine("lidocaine"), is_medicine("instrument")
    (True, True, False)
    """
    return word in _WITHOUT_STEM or _MEDICINE.match(word) is not None
