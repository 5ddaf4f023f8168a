"""A proof as text: what is broken first, each with its story; nothing wider than 78 columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.exports.proof.content import ProofShown, RuleShown, VerdictWord
from chamberwise.exports.proof.paragraph import GAP, Paragraph, wrapped
from chamberwise.exports.proof.story_text import told
from chamberwise.exports.record.standing import STANDING

MEANS = (
    "A rule that holds, holds on every walk of the pathway as it is written. The proof says "
    "nothing of what the pathway leaves out, nor whether the pathway or the rule is right: that "
    "only a clinician can tell."
)
_HEADS = {
    VerdictWord.BROKEN: "BROKEN",
    VerdictWord.UNPROVEN: "UNPROVEN",
    VerdictWord.DOES_NOT_ARISE: "DOES NOT ARISE",
    VerdictWord.HOLDS: "HOLDS",
}
_COUNTED = {
    VerdictWord.BROKEN: ("is broken", "are broken"),
    VerdictWord.UNPROVEN: ("is unproven", "are unproven"),
    VerdictWord.DOES_NOT_ARISE: ("does not arise", "do not arise"),
    VerdictWord.HOLDS: ("holds", "hold"),
}
BREAKS = "A shortest walk that breaks it:"
NEVER_ARISES = "No walk comes to what this rule of the pathway is of, so it guards nothing."


def proof_text(proof: ProofShown, *, everything: bool = False) -> str:
    """Return the report of one pathway; with `everything`, each rule that holds by name too."""
    marks = "".join(f", {mark}" for mark in proof.marks)
    head = f"{proof.title} ({proof.pathway}, edition {proof.edition}{marks})"
    blocks = [wrapped([Paragraph("", head), Paragraph("", counted(proof))])]
    blocks += [wrapped([Paragraph("SWITCHED OFF: ", each)]) for each in proof.switched_off]
    for rule in proof.rules:
        if rule.verdict is VerdictWord.UNPROVEN or rule.is_finding:
            blocks.append(_block(rule))
    blocks.append(wrapped(_rest(proof, everything=everything)))
    return "\n\n".join("\n".join(block) for block in blocks if block)


def what_it_means() -> str:
    """Return what a proof says and what it does not, and what all this is for."""
    return "\n".join(wrapped([Paragraph("", MEANS), Paragraph("", STANDING)]))


def counted(proof: ProofShown) -> str:
    """Return how many states were seen and how many rules there are of each verdict.

    A verdict that no rule has is left out.
    """
    states = "1 state" if proof.states == 1 else f"{proof.states:,} states"
    if not proof.rules:
        return f"{states}. No rule binds it."
    rules = "1 rule" if len(proof.rules) == 1 else f"{len(proof.rules)} rules"
    told = ", ".join(_count(proof.of(each), each) for each in VerdictWord if proof.of(each))
    return f"{states}, {rules}: {told}."


def _count(rules: Sequence[RuleShown], verdict: VerdictWord) -> str:
    one, several = _COUNTED[verdict]
    return f"{len(rules)} {one if len(rules) == 1 else several}"


def _block(rule: RuleShown) -> list[str]:
    lines = wrapped([Paragraph(f"{_HEADS[rule.verdict]}: ", rule.title), *rule_told(rule)])
    if rule.story is not None:  # a command to be copied is one line, however long
        lines.append(f"  Replay:   {rule.story.replay}")
    return lines


def rule_told(rule: RuleShown) -> Iterator[Paragraph]:
    """Yield what a rule asks, how it fares, its story where it is broken, and what it rests on."""
    if rule.brought_by:
        yield Paragraph("  By:       ", f"the local sheet, {' with '.join(rule.brought_by)}")
    yield Paragraph("  Rule:     ", rule.meaning)
    if rule.story is not None:
        yield from (GAP, Paragraph("  ", BREAKS), GAP, *told(rule.story), GAP)
    elif rule.reason:
        yield Paragraph("  Why:      ", f"{rule.reason[:1].upper()}{rule.reason[1:]}.")
    elif rule.is_finding:
        yield Paragraph("  Why:      ", NEVER_ARISES)
    for acts in rule.lists:
        yield Paragraph("  The ", acts, hang=12)
    yield Paragraph("  Harm:     ", f"{rule.harm} ({rule.severity})")
    yield Paragraph("  Instead:  ", rule.instead)
    for source in rule.sources:
        where = f" {source.where}" if source.where else ""
        yield Paragraph("  Source:   ", f"{source.cite} [{source.mark_words}]{where}")
    yield Paragraph("  Written:  ", f"{rule.place}, `{rule.id}`, binds {rule.binds}")


def _rest(proof: ProofShown, *, everything: bool) -> Iterator[Paragraph]:
    holds = proof.of(VerdictWord.HOLDS)
    idle = tuple(each for each in proof.of(VerdictWord.DOES_NOT_ARISE) if not each.is_finding)
    if everything:
        for rule in (*holds, *idle):
            yield Paragraph(f"{_HEADS[rule.verdict]}: ", f"{rule.title} (`{rule.id}`)", hang=4)
    elif idle:
        one = len(idle) == 1
        noun = "house rule does" if one else "house rules do"
        yield Paragraph("", f"{len(idle)} {noun} not arise here; --all names {_them(one)}.")


def _them(one: bool) -> str:
    return "it" if one else "them"
