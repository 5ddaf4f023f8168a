"""How much hangs on another wording of one text.

Numbers, units, negations and the words on which an instruction turns are never a matter of
spelling. What is to be done or said is rated stricter than a reason, a caution strictest.
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from typing import NamedTuple

from chamberwise.engine.checks.wording.negation import negators
from chamberwise.engine.checks.wording.quantity import (
    NUMBER,
    NUMBER_START,
    QUANTITY,
    plainly,
    value_of,
)
from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Rating
from chamberwise.engine.comparing.same_said import (
    ARTICLES,
    are_the_same_amounts,
    in_figures,
    say_the_same,
    with_ordinals_in_words,
)
from chamberwise.engine.comparing.spelling import spelt_alike
from chamberwise.engine.comparing.turning import TURNING, is_handled, is_medicine, relates, turns
from chamberwise.engine.language.texts import gettext as _

CAUTIONS = frozenset({TextKind.CAUTION, TextKind.INSTEAD, TextKind.REMEDY})
ASIDE = frozenset({TextKind.REASON, TextKind.TITLE})
"""Texts that nobody acts on word by word."""
ACTED_ON = frozenset({TextKind.INSTRUCTION, TextKind.SPOKEN, TextKind.QUESTION, TextKind.SIGN})
"""Texts of which every word counts: what is named no more is not done, said or looked for."""

_SMALL_WORDS = """
    a an the this that these those of to for at by as it its their your his her is are be been
    being was were has have had please then now also just so here there which who whom
    carefully simply kindly
"""
_OWNS = "'s"
_NEUTRAL = frozenset(_SMALL_WORDS.split()) | {_OWNS}
_WORD = re.compile(
    rf"{NUMBER_START}{NUMBER}|(?<=\w){_OWNS}\b|[^\W\d_]+|[0-9]+|[%<>≤≥±=×/:+]|(?<=\s)[-−](?=[0-9])"
)
_NUMBER = re.compile(r"[0-9]")
_PLAIN_NUMBER = re.compile(NUMBER)
_BETWEEN_PARTS = re.compile(r"[,;:]")
_SHORT_NOT = re.compile(r"n't\b")
_SAME_UNIT = {
    "mcg": "microgram",
    "µg": "microgram",
    "μg": "microgram",
    "ug": "microgram",
    "micrograms": "microgram",
    "milligram": "mg",
    "milligrams": "mg",
    "millilitre": "ml",
    "millilitres": "ml",
    "cc": "ml",
    "µl": "microlitre",
    "μl": "microlitre",
    "microlitres": "microlitre",
    "gram": "g",
    "grams": "g",
    "units": "unit",
}
_QUOTES = str.maketrans("‘’“”–—\u00a0", "''\"\"-- ")


class Reworded(NamedTuple):
    """How a new wording is rated, and why, as a clause."""

    rating: Rating
    why: str


def reworded(was: str, now: str, kind: TextKind) -> Reworded:
    """Return how much hangs on a text that is worded otherwise.

    >>> reworded("Fill with 0.1 mL.", "Fill with 1 mL.", TextKind.INSTRUCTION).rating
    <Rating.SAFETY: 'safety'>
    >>> reworded("Colour the capsule.", "Color  the capsule", TextKind.INSTRUCTION).rating
    <Rating.EDITORIAL: 'editorial'>
    """
    before, after = _without_ands(was, now, *in_figures(_words(was), _words(now)))
    aside = Rating.PROCEDURAL if kind in ASIDE else Rating.SAFETY
    if _quantities(before) != _quantities(after):
        if are_the_same_amounts(before, after):
            return Reworded(Rating.PROCEDURAL, _("the same amount in another unit"))
        dosed = QUANTITY.search(was) or QUANTITY.search(now)
        return Reworded(Rating.SAFETY if dosed else aside, _("a number or a unit changed"))
    if _negations(was) != _negations(now):
        return Reworded(aside, _("a negation changed"))
    if before == after or "".join(before) == "".join(after):
        return Reworded(Rating.EDITORIAL, _("the words are the same"))
    if _are_spelt_alike(before, after):
        strict = Rating.PROCEDURAL if kind in CAUTIONS else Rating.EDITORIAL
        return Reworded(strict, _("the same words spelt otherwise"))
    if kind is TextKind.SIGN and _are_the_same_parts(was, now):
        return Reworded(Rating.PROCEDURAL, _("the same signs, named in another order"))
    return _by_words(before, after, kind, aside)


def named_otherwise(was: str, now: str) -> tuple[str, str] | None:
    """Return the medicines and units that one wording names and another does not, if there are any.

    >>> named_otherwise("Read the dose in mg.", "Read the dose in grams.")
    ('mg', 'g')
    >>> named_otherwise("Read the dose.", "Say the dose.")
    """
    before, after = Counter(_words(was)), Counter(_words(now))
    gone, come = (
        " ".join(sorted(word for word in side if is_medicine(word) or _is_dosed(word)))
        for side in (before - after, after - before)
    )
    return (gone, come) if gone or come else None


def weighs(text: str) -> str:
    """Return, as a clause, what makes a text that came or went a matter of safety, if it is one."""
    words = _words(text)
    if _quantities(words):
        return _("it gives a number")
    if _negations(text):
        return _("it forbids or denies something")
    return _("it names a medicine") if any(map(is_medicine, words)) else ""


def is_of_the_eye(text: str) -> bool:
    """Return whether an instruction names a part of the eye, or what is put to it."""
    return any(map(is_handled, _words(text)))


def _by_words(before: list[str], after: list[str], kind: TextKind, aside: Rating) -> Reworded:
    gone, come = Counter(before) - Counter(after), Counter(after) - Counter(before)
    touched = _without_spellings(gone, come)
    if touched and say_the_same(before, after):
        return _by_small_words(touched, kind)
    if heavy := _heavy(touched, kind):
        return Reworded(aside, heavy)
    if kind in CAUTIONS:
        return Reworded(Rating.SAFETY, _("a caution says something else"))
    if kind in ASIDE:
        return Reworded(
            Rating.EDITORIAL, _("an explanation or a title, without number or negation")
        )
    if _is_turned_round(before, after, touched, kind) and any(map(turns, before)):
        return Reworded(Rating.SAFETY, _("the order of words on which the meaning turns changed"))
    if kind in ACTED_ON and _is_more_or_less(gone, come, touched):
        return Reworded(Rating.SAFETY, _("something was left out, or put in"))
    if touched and touched <= _NEUTRAL:
        return Reworded(Rating.EDITORIAL, _("only small words changed"))
    if touched and any(_NUMBER.match(word) for word in before):
        return Reworded(Rating.SAFETY, _("a text that gives a quantity speaks of something else"))
    return Reworded(Rating.PROCEDURAL, _("other words for what is done or said"))


def _heavy(touched: set[str], kind: TextKind) -> str:
    """Return, as a clause, what makes words that came or went weigh, if anything does."""
    if any(map(is_medicine, touched)):
        return _("a medicine changed")
    if any(map(_is_dosed, touched)):
        return _("a number or a unit changed")
    turn = TURNING.__contains__ if kind in ASIDE else turns
    return _("a word changed on which the meaning turns") if any(map(turn, touched)) else ""


def _words(text: str) -> list[str]:
    """Return the words, numbers and signs of a text in small letters; units in one spelling."""
    plain = unicodedata.normalize("NFKC", text).translate(_QUOTES).lower()
    plain = with_ordinals_in_words(plain).replace("&", " and ")
    plain = _SHORT_NOT.sub(" not", plain).replace("can not", "cannot").replace("ca not", "cannot")
    found = (_plain_number(word) for word in _WORD.findall(plain))
    words = [_SAME_UNIT.get(word, word) for word in found]
    return ["per" if _is_ratio(words, place) else word for place, word in enumerate(words)]


def _is_ratio(words: list[str], place: int) -> bool:
    """Whether a stroke stands between two units: `mg/mL` is `mg per mL`."""
    around = words[max(place - 1, 0) : place + 2]
    return words[place] == "/" and len(around) == 3 and all(map(_is_unit, around[::2]))


def _plain_number(word: str) -> str:
    return plainly(value_of(word)) if _PLAIN_NUMBER.fullmatch(word) else word


def _quantities(words: list[str]) -> list[object]:
    """Return each number with the unit or sign after it and any sign before it."""
    return [
        (word, _beside(words, place - 1), _beside(words, place + 1))
        for place, word in enumerate(words)
        if _NUMBER.match(word)
    ]


def _is_dosed(word: str) -> bool:
    """Whether a word is a unit of measure; the unit of a hospital is none."""
    return word != "unit" and _is_unit(word)


def _is_unit(word: str) -> bool:
    return QUANTITY.fullmatch(f"1 {_as_written(word)}") is not None


def _beside(words: list[str], place: int) -> str:
    """Return a sign or a unit beside a number; other words are judged as words."""
    word = words[place] if 0 <= place < len(words) else ""
    return word if (word and _is_unit(word)) or (word and not word.isalnum()) else ""


def _as_written(unit: str) -> str:
    return {"ml": "mL", "l": "L", "mmhg": "mmHg"}.get(unit, unit)


def _negations(text: str) -> list[str]:
    found = (each.group().lower() for each in negators(text, adjectives=True))
    return ["not" if each.endswith("t") and each[-2] in "'’" else each for each in found]


def _are_spelt_alike(before: list[str], after: list[str]) -> bool:
    return len(before) == len(after) and all(map(spelt_alike, before, after))


def _without_spellings(gone: Counter[str], come: Counter[str]) -> set[str]:
    """Return the words that came or went, but for those that are merely spelt otherwise."""
    fresh = set(come)
    left = set()
    for word in sorted(gone):
        twin = next((each for each in sorted(fresh) if spelt_alike(word, each)), None)
        if twin is None:
            left.add(word)
        else:
            fresh.discard(twin)
    return left | fresh


def _is_more_or_less(gone: Counter[str], come: Counter[str], touched: set[str]) -> bool:
    """Whether words of weight went and none came for them, or the other way."""
    left_out, put_in = (touched & set(side) - _NEUTRAL for side in (gone, come))
    return bool(left_out) != bool(put_in)


def _without_ands(
    was: str, now: str, before: list[str], after: list[str]
) -> tuple[list[str], list[str]]:
    """Return the words without `and`, where one text has a comma in its place."""
    ands = before.count("and"), after.count("and")
    if ands[0] == ands[1] or was.count(",") + ands[0] != now.count(",") + ands[1]:
        return before, after
    without = ([word for word in side if word != "and"] for side in (before, after))
    return next(without), next(without)


def _is_turned_round(
    before: list[str], after: list[str], touched: set[str], kind: TextKind
) -> bool:
    """Whether words that both texts have stand in another order, and small words alone changed."""
    if not touched <= _NEUTRAL or {"of", _OWNS} <= touched:
        return False
    kept = [[word for word in side if word not in _NEUTRAL] for side in (before, after)]
    if kind not in ACTED_ON and "of" in touched and not any(map(relates, kept[0])):
        return False
    return not _are_spelt_alike(*kept)


def _are_the_same_parts(was: str, now: str) -> bool:
    """Whether two lists of signs have the same parts, and only words that relate nothing moved."""
    before, after = (Counter(_parts(text)) for text in (was, now))
    moved = (word for part in (before - after) + (after - before) for word in part)
    plain = [Counter(tuple(sorted(part)) for part in side.elements()) for side in (before, after)]
    return plain[0] == plain[1] and not any(map(relates, moved))


def _parts(text: str) -> list[tuple[str, ...]]:
    return [tuple(_words(part)) for part in _BETWEEN_PARTS.split(text)]


def _by_small_words(touched: set[str], kind: TextKind) -> Reworded:
    """Return how much hangs on articles and on words that a team uses one for another."""
    if not touched <= ARTICLES:
        return Reworded(Rating.PROCEDURAL, _("other words that say the same"))
    strict = Rating.PROCEDURAL if kind in CAUTIONS else Rating.EDITORIAL
    return Reworded(strict, _("only small words changed"))
