"""Words spelt wrongly, brought to the words of the book they are most like.

Compared are sounds first (`insision`, `fako`), then slips of the keys; a short word has to be
right.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from chamberwise.engine.drill.wording.stems import stem
from rapidfuzz.distance import OSA
from rapidfuzz.process import extract

SHORTEST = 4
_SLIPS = ((10, 3), (8, 2), (5, 1), (SHORTEST, 0))
"""By length of a sound at least, how many slips are forgiven."""
_SOUNDS = (
    (re.compile(r"ph"), "f"),
    (re.compile(r"^(?:ps|sc(?=[ei]))"), "s"),
    (re.compile(r"c(?=[eiy])"), "s"),
    (re.compile(r"ck|qu|[cq]"), "k"),
    (re.compile(r"z"), "s"),
    (re.compile(r"(?:ae|oe|ei|ie|ea|ee)"), "e"),
    (re.compile(r"y"), "i"),
    (re.compile(r"(?:ou|au)"), "o"),
    (re.compile(r"ough|gh"), "f"),
    (re.compile(r"(.)\1+"), r"\1"),
)
_EVERYDAY = frozenset(
    re.findall(
        r"\w+",
        """
    about above across after afterwards against ages almost along already although always
    among another anything around because become becomes been before begin being below beneath
    best better between both bring brings bringing case cases change check close come comes
    coming couple course different done down during each early easier easy either else enough
    even ever every everyone everything experienced extra final finally fine finish found from
    front full further gets getting give given gives giving goes gone good great half hand
    handle hands hang happen happens hard having head hear heard hence here high higher hold
    holding house however idea instead inside into keep keeping kind knew know known large
    larger last late later least leave leaves leaving left less lets life likely long longer
    look looks lose losing lots lower made makes making many matter maybe mean means meant
    might mine minute minutes more most move much myself nearly need needs never nobody none
    nothing nurse obvious often once only onto open order other others otherwise outside over
    past people perhaps person place plan please possible probably proper properly pull push
    quarter quick quite rather reach ready really reason right room round safe safely same
    save saying says second seconds seem seems seen several shall sharp should show side sides
    since slow small smaller some somebody someone something soon sort stand start state still
    stop straight such take taken takes taking talk tell than thank that their them then there
    these they thing things think third this those though thought three through time times
    today together tomorrow tonight took total touch towards trying turn under until upon used
    using usual very visible wait waiting want wants watch weather week well went were what
    when where whether which while whole whose will wish with without wonder word words work
    working works would wrong year years your radio coffee emails
        """,
    )
)
"""They are never taken for a slip of another."""


@dataclass(frozen=True, slots=True, eq=False)
class Spelling:
    """Words that are known, by their sounds, and what was found for others so far."""

    known: frozenset[str]
    """Stems, so that another ending is no slip."""
    by_sound: Mapping[str, str]
    found: dict[str, str] = field(default_factory=dict)

    def of(self, word: str) -> str:
        """Return the known word that a typed one is most like, or the typed one."""
        if stem(word) in self.known or len(word) < SHORTEST or not word.isalpha():
            return word
        if word not in self.found:
            self.found[word] = _closest(self.by_sound, word) or word
        return self.found[word]


def spelling_of(words: Iterable[str]) -> Spelling:
    """Return the spelling of some words, shorter ones first where two sound the same."""
    taught = sorted({word for word in words if word.isalpha()}, key=lambda word: (len(word), word))
    by_sound: dict[str, str] = {}
    for word in taught:
        if len(word) >= SHORTEST:
            by_sound.setdefault(sound(word), word)
    return Spelling(frozenset(map(stem, (*taught, *_EVERYDAY))), by_sound)


def sound(word: str) -> str:
    """Return a word written as it sounds, roughly.

    >>> sound("insision") == sound("incision"), sound("fako") == sound("phaco")
    (True, True)
    """
    for pattern, instead in _SOUNDS:
        word = pattern.sub(instead, word)
    return word


def _closest(by_sound: Mapping[str, str], word: str) -> str | None:
    said = sound(word)
    if said in by_sound:
        return by_sound[said]
    most = _forgiven(said)
    same_start = [known for known in by_sound if known[0] == said[0]]
    near = extract(said, same_start, scorer=OSA.distance, score_cutoff=max(most, 1), limit=None)
    for known, slips, _ in near:
        if slips <= min(most, _forgiven(known)) or sorted(said) == sorted(known):
            return by_sound[known]
    return None


def _forgiven(known: str) -> int:
    """Return how many slips of the keys are forgiven in a sound of this length."""
    return next((slips for length, slips in _SLIPS if len(known) >= length), 0)
