"""The verbs that begin an instruction in an eye theatre, and where one stands in a text.

`PLAIN_VERBS` are hardly ever anything but verbs. `VERBS_OR_NOUNS` ("suture", "lower") are taken
for a verb at the start of an instruction, and elsewhere only in front of what they act on.
"""

from __future__ import annotations

import re
from collections.abc import Set

_PLAIN_VERBS = """
    abandon ablate abort accept accompany acknowledge activate add adjust administer admit
    advance agree alert allow amputate anaesthetise announce apologise apply arrange ask
    aspirate assemble assess assign assist attach avoid await begin bend bleep bring calculate
    carry cauterise cease choose clarify coagulate collect compare confirm connect consider
    constrict continue convert convey create deactivate debride decant decide declare
    decompress deepen defer deflate deflect delegate deliver depress depressurise describe
    detach detect determine diagnose dilate dilute discard disclose disconnect discuss
    disengage dislodge dismiss dispense dispose dissect dissolve do draw elevate emulsify
    engage enlarge ensure enter escalate establish evacuate evaluate evert examine excise
    exclude expand expel explain explant explore expose extend extubate fasten feed fetch fill
    find fixate flatten follow freeze gather get give go grasp halt hear hold hydrate
    hydrodelineate hydrodissect identify ignore illuminate immobilise incise include indent
    inflate inform inject insert inspect install instil instruct interpret interrupt introduce
    intubate invert invite involve irrigate join keep kneel leave lengthen let levitate ligate
    listen loosen maintain make manipulate marsupialise minimise mix moisten move multiply
    notify observe obtain occlude offer opt oversew oxygenate palpate pause peel perform
    phacoemulsify pick pierce postpone pour pre-fill prefill prepare prescribe press
    pressurise prevent proceed protect prove pull push put quantify raise reach read readjust
    reapply reassess reassure recall recentre recheck recognise recommence reconfirm reconnect
    reconstitute redirect reduce refer refill refocus reform refract refrain regain reinflate
    reinject reinsert remain remember remind remove reopen replace reposition reseal resect
    reset resite resolve restain restart resterilise restock restore resume resuture retain
    retest retract retrieve retry reuse rotate say schedule scrape see seek select send settle
    sew shake shorten shrink silence sit skip slacken snip speak squeeze stabilise standardise
    stay sterilise stop strengthen submit substitute subtract summon supervise suspend swap
    take talk teach tease tell thank think throw tidy tighten titrate transect transilluminate
    treat try tuck unclamp unclip uncover understand undo undrape unfasten unfold unload
    unlock unplug unscrew unwrap upload ventilate verify viscodissect viscoexpress visualise
    wait warn wash weaken wean weigh widen withdraw withhold write
"""

_VERBS_OR_NOUNS = """
    aim angle answer approach back bag balance bandage bin block blot book brace brake break
    bridge brief brush bury bypass call calm cancel cap capture care centre change charge
    chart check chop circulate clamp clean clear clip close clot coat code come complete
    compress consent contact contain control cool copy core correct count cover crack cross
    crush cut dab damp date debrief decrease delay demonstrate dial dim direct discharge
    display divide dock document dose double drain drape dress drive drop dry ease empty
    enable end estimate exchange exit expect express extract face feel figure file filter
    finish fit fix flag flip float flush focus fold force form forward free gauge grade grip
    groove group guard guide hand handle head heal heat help hook implant increase insulate
    interview issue joint judge label lay lead lean level lie lift light limit line list load
    local lock log look loop lower map mark massage match measure meet mention milk mind
    monitor mount name needle nick nominate note number nurse open order outline overlap pack
    pad page pass patch perfuse phone photograph pin place plan play plot plug pocket point
    polish position post practise present preserve preset prick prime print process programme
    prolapse promise propose puncture query quote ramp rate record recover refresh rehearse
    relax relay release relieve rely repair repeat rephrase report request rescue reserve
    respect rest return review ring rinse roll round rub rule run salvage save scan score
    screen scrub seal search secure sedate separate service set shape share shield shift show
    sign slide slow smooth soak soften sort space split sponge spot spray spread stain stand
    staple start state steady steer step stitch store straighten strap stream stretch strip
    study suck suction supply support surround suspect suture swab sweep swing switch swivel
    tamponade tap tape tear test thread tie tilt time top touch tour trace track transfer trap
    tread trephine trial trigger trim trust tunnel turn twist underline update use vent view
    visit voice wake walk want warm warrant watch wear wedge welcome wet wheel wind wipe work
    wrap yield zero zoom
"""

PLAIN_VERBS = frozenset(_PLAIN_VERBS.split())
VERBS_OR_NOUNS = frozenset(_VERBS_OR_NOUNS.split())
VERBS = PLAIN_VERBS | VERBS_OR_NOUNS

_SPEECH_VERBS = "ask tell instruct remind invite request warn advise let help"
SPEECH_VERBS = frozenset(_SPEECH_VERBS.split())
"""What follows "to" after one of these is the other person's doing: one instruction."""

_VERBS_WITH_FOR = frozenset(
    {"aim", "call", "feel", "look", "page", "phone", "reach", "ring", "search", "test", "watch"}
)
_VERBS_WITH_TO = frozenset({"change", "switch", "return", "report"})
_ADVERBS_WRITTEN = """
    again aloud also always at first finally just last meanwhile next now once only please still
    then together twice
"""
_ADVERBS = frozenset(_ADVERBS_WRITTEN.split())
_WORD = re.compile(r"[A-Za-z]++(?:[-'’][A-Za-z]++)*+")
_GAP = re.compile(r"[\s,]{0,3}+")
_NOT = re.compile(r"\s{1,3}(?:not|n't)\b", re.IGNORECASE)
_PREFIX = re.compile(r"(?:(?:re|pre|double|un)-|re(?=[a-z]{4}))")
_OBJECT = re.compile(
    r"\s{1,3}(?:the|an?|this|that|these|those|it|them|him|her|its|their|his|your|our|any|all|each"
    r"|every|both|either|another|whether|how|what|who|which|if|one|two|three)\b",
    re.IGNORECASE,
)
_FOR = re.compile(r"\s{1,3}for\b", re.IGNORECASE)
_TO = re.compile(r"\s{1,3}to\b", re.IGNORECASE)


def is_verb(word: str, among: Set[str] = VERBS) -> bool:
    """Return whether the word, in any case and with or without "re-", is a verb of the lexicon."""
    plain = word.lower()
    return plain in among or _PREFIX.sub("", plain, count=1) in among


def verb_at(text: str, at: int) -> re.Match[str] | None:
    """Return the imperative verb that stands at a place, perhaps behind an adverb or two.

    >>> verb_at("then slowly withdraw the tip", 0).group()
    'withdraw'
    """
    for _ in range(4):
        gap = _GAP.match(text, at)
        word = _WORD.match(text, gap.end() if gap else at)
        if word is None:
            return None
        if is_verb(word.group()):
            return None if _is_auxiliary(text, word) else word
        if word.group().lower() not in _ADVERBS and not word.group().lower().endswith("ly"):
            return None
        at = word.end()
    return None


def _is_auxiliary(text: str, word: re.Match[str]) -> bool:
    return word.group().lower() == "do" and _NOT.match(text, word.end()) is not None


def acts_on_something(text: str, verb: re.Match[str]) -> bool:
    """Return whether what follows the verb shows that it is one: "suture the wound", "look for"."""
    if _OBJECT.match(text, verb.end()):
        return True
    if _FOR.match(text, verb.end()):
        return is_verb(verb.group(), _VERBS_WITH_FOR)
    return _TO.match(text, verb.end()) is not None and is_verb(verb.group(), _VERBS_WITH_TO)


def base_form(word: str) -> str | None:
    """Return the verb that "Fills" or "Filling" is made from, where the lexicon has it."""
    plain = word.lower()
    stems = [plain[: -len(ending)] for ending in ("ing", "s", "es", "ed") if plain.endswith(ending)]
    doubled = [stem[:-1] for stem in stems if len(stem) > 2 and stem[-1] == stem[-2]]
    for stem in (*stems, *(stem + "e" for stem in stems), *doubled):
        if stem in VERBS:
            return stem
    return None
