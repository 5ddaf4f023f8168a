"""The checker's rows, and what is told of the one chosen."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from chamberwise.engine.diagnostics.problem import Problem, Severity
from chamberwise.engine.diagnostics.text import how_many, problem_text
from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.proof.content import ProofShown, RuleShown, VerdictWord
from chamberwise.exports.proof.paragraph import Paragraph
from chamberwise.exports.proof.story_text import HERE
from chamberwise.exports.proof.text import BREAKS, MEANS, counted, rule_told
from chamberwise.tui.examining import Examined
from chamberwise.tui.present.parts import GAP, Part, Tone

MOST_TOLD = 20
UNDER_WAY = N_("under way")
PROVES = N_("Every state that a walk can come to is looked at. Esc goes back and gives up.")
WORDS = {
    VerdictWord.BROKEN: N_("BROKEN"),
    VerdictWord.UNPROVEN: N_("UNPROVEN"),
    VerdictWord.BEING_PROVED: N_("being proved"),
    VerdictWord.DOES_NOT_ARISE: N_("does not arise"),
    VerdictWord.HOLDS: N_("holds"),
}
_TONES = {VerdictWord.BROKEN: Tone.DANGER, VerdictWord.UNPROVEN: Tone.WARNING}


@dataclass(frozen=True, slots=True)
class CheckerRow:
    """One row: a word, what it is of, and what is told of it; `rule` where it is one."""

    word: str
    text: str
    told: tuple[Part, ...]
    tone: Tone = Tone.PLAIN
    rule: RuleShown | None = None

    @property
    def key(self) -> str:
        """The key of the walk that breaks the rule; nothing where none does."""
        return self.rule.story.key if self.rule and self.rule.story else ""


def checker_rows(found: Examined, texts: Mapping[str, str]) -> tuple[CheckerRow, ...]:
    """Return what the check found, what stands before any rule, and then the rules."""
    rows = [CheckerRow(_("check"), _count(found.problems), tuple(_told(found.problems, texts)))]
    if found.why:
        rows.append(
            CheckerRow(_("proof"), _("not yet: no walk is possible"), tuple(_plain(found.why)))
        )
    if not found.is_whole:
        rows.append(CheckerRow(_("proof"), _(UNDER_WAY), (Part(_(PROVES)), GAP, Part(_(MEANS)))))
    if found.before:
        said = _("a walk cannot end, or a team is left without a way")
        rows.append(CheckerRow(_("FIRST"), said, tuple(_told(found.before, texts)), Tone.DANGER))
    rules = found.proof.rules if found.proof else ()
    return (*rows, *(_rule_row(rule) for rule in rules))


def first_to_show(rows: Sequence[CheckerRow]) -> int:
    """Return which row is marked at first: a broken rule where there is one."""
    return next((at for at, row in enumerate(rows) if row.tone is Tone.DANGER), 0)


def checker_page(rows: Sequence[CheckerRow], chosen: int, proof: ProofShown | None) -> list[Part]:
    """Return the rows as paragraphs, the chosen one marked, and a count between them."""
    parts: list[Part] = []
    widest = max(len(_(word)) for word in WORDS.values())
    for at, row in enumerate(rows):
        if row.rule is not None and (at == 0 or rows[at - 1].rule is None) and proof:
            parts.append(Part(counted(proof), "  ", Tone.CALM))
        lead = f"{'>' if at == chosen else ' '} {row.word:<{widest}}  "
        tone = Tone.STRONG if at == chosen else Tone.PLAIN
        lead_tone = Tone.KEY if at == chosen else row.tone
        parts.append(Part(row.text, lead, tone, lead_tone, answer=str(at)))
    if proof is not None and not proof.rules:
        parts.append(Part(counted(proof), "  "))
    return parts


def in_short(found: Examined) -> str:
    """Return how far it came, in two words for the corner of a screen."""
    if found.proof is None:
        return _("not proved") if found.why else _(UNDER_WAY)
    if found.proof.is_under_way:
        still = len(found.proof.of(VerdictWord.BEING_PROVED))
        return _("under way, {count} to go").format(count=still)
    broken, unproven = (len(found.proof.of(each)) for each in _TONES)
    if broken or not unproven:
        told = ngettext("{count} rule broken", "{count} rules broken", broken)
        return told.format(count=broken) if broken else _("every rule holds")
    return _("{count} unproven").format(count=unproven)


def _count(problems: Sequence[Problem]) -> str:
    counts = [(sum(each.severity is kind for each in problems), kind) for kind in Severity]
    told = [how_many(count, kind) for count, kind in counts if count]
    return ", ".join(told) or _("no problem found")


def _told(problems: Sequence[Problem], texts: Mapping[str, str]) -> Iterator[Part]:
    if not problems:
        yield Part(_("No problem of form, wording or ways was found."))
    for problem in problems[:MOST_TOLD]:
        yield from _plain(problem_text(problem, texts))
        yield GAP
    if len(problems) > MOST_TOLD:
        yield Part(
            _("{count} more; `chamberwise check` tells them all.").format(
                count=len(problems) - MOST_TOLD
            )
        )


_LABELLED = re.compile(r" {4}\w+: +")


def _plain(text: str) -> Iterator[Part]:
    for line in text.split("\n"):
        labelled = _LABELLED.match(line)
        indent = labelled.end() if labelled else len(line) - len(line.lstrip())
        yield Part(line[indent:], line[:indent])


def _rule_row(rule: RuleShown) -> CheckerRow:
    told = tuple(_part(each) for each in rule_told(rule))
    return CheckerRow(
        _(WORDS[rule.verdict]), rule.title, told, _TONES.get(rule.verdict, Tone.PLAIN), rule
    )


def _part(paragraph: Paragraph) -> Part:
    lead, text, _hang = paragraph
    tone = Tone.STRONG if _(HERE) in lead else Tone.MARK if text == _(BREAKS) else Tone.PLAIN
    return Part(text, lead.removeprefix("  "), tone, hang=max(0, paragraph.indent - 2))
