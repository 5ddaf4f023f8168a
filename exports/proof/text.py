"""A proof as text: what is broken first, each with its story; nothing wider than 78 columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.language.numbers import thousands
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.language.values import told as told_value
from chamberwise.exports.proof.content import ProofShown, RuleShown, VerdictWord
from chamberwise.exports.proof.paragraph import GAP, Paragraph, wrapped
from chamberwise.exports.proof.story_text import told
from chamberwise.exports.record.standing import STANDING

MEANS = N_(
    "A rule that holds, holds on every walk of the pathway as it is written. The proof says "
    "nothing of what the pathway leaves out, nor whether the pathway or the rule is right: that "
    "only a clinician can tell."
)
_HEADS = {
    VerdictWord.BROKEN: N_("BROKEN"),
    VerdictWord.UNPROVEN: N_("UNPROVEN"),
    VerdictWord.BEING_PROVED: N_("BEING PROVED"),
    VerdictWord.DOES_NOT_ARISE: N_("DOES NOT ARISE"),
    VerdictWord.HOLDS: N_("HOLDS"),
}
_COUNTED = {
    VerdictWord.BROKEN: (N_("is broken"), N_("are broken")),
    VerdictWord.UNPROVEN: (N_("is unproven"), N_("are unproven")),
    VerdictWord.BEING_PROVED: (N_("is being proved"), N_("are being proved")),
    VerdictWord.DOES_NOT_ARISE: (N_("does not arise"), N_("do not arise")),
    VerdictWord.HOLDS: (N_("holds"), N_("hold")),
}
BREAKS = N_("A shortest walk that breaks it:")
NEVER_ARISES = N_("No walk comes to what this rule of the pathway is of, so it guards nothing.")


def proof_text(proof: ProofShown, *, everything: bool = False) -> str:
    """Return the report of one pathway; with `everything`, each rule that holds by name too."""
    marks = "".join(f", {mark}" for mark in proof.marks)
    edition = _("edition {edition}").format(edition=proof.edition)
    head = f"{proof.title} ({proof.pathway}, {edition}{marks})"
    blocks = [wrapped([Paragraph("", head), Paragraph("", counted(proof))])]
    blocks += [wrapped([Paragraph(_("SWITCHED OFF: "), each)]) for each in proof.switched_off]
    for rule in proof.rules:
        if rule.verdict is VerdictWord.UNPROVEN or rule.is_finding:
            blocks.append(_block(rule))
    blocks.append(wrapped(_rest(proof, everything=everything)))
    return "\n\n".join("\n".join(block) for block in blocks if block)


def what_it_means() -> str:
    """Return what a proof says and what it does not, and what all this is for."""
    return "\n".join(wrapped([Paragraph("", _(MEANS)), Paragraph("", _(STANDING))]))


def counted(proof: ProofShown) -> str:
    """Return how many states were seen and how many rules there are of each verdict.

    A verdict that no rule has is left out.
    """
    states = ngettext("{number} state", "{number} states", proof.states).format(
        number=thousands(proof.states)
    )
    if not proof.rules:
        return _("{states}. No rule binds it.").format(states=states)
    number = len(proof.rules)
    rules = ngettext("{number} rule", "{number} rules", number).format(number=number)
    told = ", ".join(_count(proof.of(each), each) for each in VerdictWord if proof.of(each))
    if proof.is_under_way:
        return f"{rules}: {told}."
    return f"{states}, {rules}: {told}."


def _count(rules: Sequence[RuleShown], verdict: VerdictWord) -> str:
    one, several = _COUNTED[verdict]
    return f"{len(rules)} {_(one if len(rules) == 1 else several)}"


def _block(rule: RuleShown) -> list[str]:
    lines = wrapped([Paragraph(f"{_(_HEADS[rule.verdict])}: ", rule.title), *rule_told(rule)])
    if rule.story is not None:  # a command to be copied is one line, however long
        lines.append(_("  Replay:   ") + rule.story.replay)
    return lines


def rule_told(rule: RuleShown) -> Iterator[Paragraph]:
    """Yield what a rule asks, how it fares, its story where it is broken, and what it rests on."""
    if rule.brought_by:
        yield Paragraph(
            _("  By:       "),
            _("the local sheet, {places}").format(places=_(" with ").join(rule.brought_by)),
        )
    yield Paragraph(_("  Rule:     "), rule.meaning)
    if rule.story is not None:
        yield from (GAP, Paragraph("  ", _(BREAKS)), GAP, *told(rule.story), GAP)
    elif rule.reason:
        yield Paragraph(_("  Why:      "), f"{rule.reason[:1].upper()}{rule.reason[1:]}.")
    elif rule.is_finding:
        yield Paragraph(_("  Why:      "), _(NEVER_ARISES))
    for acts in rule.lists:
        yield Paragraph(_("  The "), acts, hang=12)
    yield Paragraph(_("  Harm:     "), f"{rule.harm} ({told_value(rule.severity)})")
    yield Paragraph(_("  Instead:  "), rule.instead)
    for source in rule.sources:
        where = f" {source.where}" if source.where else ""
        yield Paragraph(_("  Source:   "), f"{source.cite} [{source.mark_words}]{where}")
    yield Paragraph(
        _("  Written:  "),
        _("{place}, `{name}`, binds {walks}").format(
            place=rule.place, name=rule.id, walks=rule.binds
        ),
    )


def _rest(proof: ProofShown, *, everything: bool) -> Iterator[Paragraph]:
    holds = proof.of(VerdictWord.HOLDS)
    idle = tuple(each for each in proof.of(VerdictWord.DOES_NOT_ARISE) if not each.is_finding)
    if everything:
        for rule in (*holds, *idle):
            yield Paragraph(f"{_(_HEADS[rule.verdict])}: ", f"{rule.title} (`{rule.id}`)", hang=4)
    elif idle:
        told_of = ngettext(
            "{number} house rule does not arise here; --all names it.",
            "{number} house rules do not arise here; --all names them.",
            len(idle),
        )
        yield Paragraph("", told_of.format(number=len(idle)))
