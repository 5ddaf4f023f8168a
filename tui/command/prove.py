"""`chamberwise prove`: the safety rules on every walk, or a shortest walk that breaks one."""

from __future__ import annotations

from argparse import ArgumentTypeError, Namespace, _SubParsersAction
from datetime import date
from typing import TYPE_CHECKING, Any

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.command.finding_files import (
    Asked,
    UnusableError,
    add_library,
    add_local,
    asked,
    shipped,
)
from chamberwise.tui.command.output import talk
from chamberwise.tui.command.side_by_side import side_by_side
from chamberwise.tui.command.status import Status

if TYPE_CHECKING:
    from chamberwise.engine.diagnostics.problem import Problem
    from chamberwise.engine.model.rule import Rule
    from chamberwise.engine.mutants.strength import Strength
    from chamberwise.engine.proof.verdict import Proof
    from chamberwise.exports.proof.content import ProofShown
    from chamberwise.tui.command.prove_telling import Teller

EXAMPLE = N_("""example:
  chamberwise prove                            every pathway of the library
  chamberwise prove anterior-vitrectomy --all
  chamberwise prove my-pathway.yaml --format json
  chamberwise prove our-unit.yaml              a local sheet, over its pathway
  chamberwise prove anterior-vitrectomy --mutants --every 10

exit status:
  0 every rule holds, 1 a rule is broken or never arises, a walk cannot end or
  an edit goes unnoticed, 2 unusable input, 3 a rule is unproven and none broken

Pathways whose walks come through one that is asked for are proved with it.

A rule that holds, holds on every walk of the pathway as it is written; that
says nothing of what the pathway leaves out. Follow local protocol.
""")


def add_parser(commands: _SubParsersAction[Any]) -> None:
    """Say what may be typed."""
    parser = commands.add_parser("prove", help=_("safety rules on every walk"), epilog=_(EXAMPLE))
    parser.add_argument(
        "names", nargs="*", metavar=_("ID or FILE"), help=_("left out: every pathway")
    )
    add_library(parser)
    add_local(parser)
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.add_argument(
        "--rule",
        action="append",
        default=[],
        metavar=_("RULE"),
        help=_("only the rule of that name; may be given several times"),
    )
    parser.add_argument("--all", action="store_true", help=_("name the rules that hold as well"))
    parser.add_argument(
        "--mutants", action="store_true", help=_("measure which single edits the rules notice")
    )
    parser.add_argument(
        "--every", type=_count, metavar="N", help=_("with --mutants: a sample, one edit of every N")
    )
    parser.set_defaults(run=run)


def _count(text: str) -> int:
    if text.isascii() and text.isdigit() and int(text):
        return int(text)
    raise ArgumentTypeError(_("`{text}` is no number of 1 or more").format(text=text))


def run(arguments: Namespace) -> int:
    """Prove what was asked for, tell it, and return what was found as a status."""
    if arguments.every and not arguments.mutants:
        raise UnusableError(
            _("--every takes a sample of the mutants. Add --mutants, or leave it out.")
        )
    if arguments.rule and arguments.mutants:
        raise UnusableError(
            _("--mutants measures all rules together. Leave --rule or --mutants out.")
        )
    found = asked(arguments.names, arguments.library, arguments.local)
    asked_for = _walkable(found, everything=not arguments.names and found.under is None)
    names = (*asked_for, *_coming_through(found, asked_for))
    rules = _rules(found, names, arguments.rule)
    measured = asked_for if arguments.mutants else ()
    _refuse_bad_lists(found, measured)
    problems = _in_the_way(found, names)
    teller = _teller(found, arguments)
    teller.problems(problems)
    shown = side_by_side(
        lambda name: _proof(found, name, rules[name], arguments),
        [name for name in names if name in rules],
    )
    proofs = [teller.proof(each) for each in shown]
    strengths = [teller.strength(_strength(found, name, arguments.every or 1)) for name in measured]
    teller.end()
    return _status(problems, proofs, strengths)


def _teller(found: Asked, arguments: Namespace) -> Teller:
    from chamberwise.tui.command.prove_telling import InJson, InText

    if arguments.format == "json":
        return InJson(with_mutants=arguments.mutants)
    return InText(found.loaded.texts, everything=arguments.all, every=arguments.every or 1)


def _walkable(found: Asked, *, everything: bool) -> tuple[str, ...]:
    """Return the pathways to be proved; raise with what keeps any of them from being walked."""
    from chamberwise.tui.walkable import problems_in_the_way

    files = found.loaded.files
    told = dict.fromkeys(
        said
        for name in found.shown
        if not (everything and (files[name].is_vocabulary or files[name].sheet))
        for said in [problems_in_the_way(found.loaded, name)]
        if said
    )
    if told:
        raise UnusableError("\n\n".join(told))
    if not found.pathways:
        raise UnusableError(_("There is no pathway in this library, so there is nothing to prove."))
    return tuple(dict.fromkeys(found.pathways))


def _coming_through(found: Asked, names: tuple[str, ...]) -> tuple[str, ...]:
    """Return the other pathways whose walks come through those asked for: a change shows there."""
    from chamberwise.engine.reading.digest import that_reach
    from chamberwise.tui.walkable import problems_in_the_way

    others = that_reach(found.loaded.library, names)
    files = found.loaded.file_of
    return tuple(name for name in others if not problems_in_the_way(found.loaded, files[name]))


def _rules(found: Asked, names: tuple[str, ...], wanted: list[str]) -> dict[str, tuple[Rule, ...]]:
    """Return the rules of each pathway, or those wanted where they bind it."""
    from chamberwise.engine.diagnostics.nearest import did_you_mean
    from chamberwise.engine.proof.rules import rules_for

    rules = {name: rules_for(found.loaded.library, name) for name in names}
    if not wanted:
        return rules
    known = dict.fromkeys(rule.id for each in rules.values() for rule in each)
    for name in wanted:
        if name not in known:
            advice = did_you_mean(name, known, _("`chamberwise prove --all` names them."))
            raise UnusableError(
                _("No rule `{name}` binds what is to be proved. {advice}").format(
                    name=name, advice=advice
                )
            )
    chosen = {
        name: tuple(rule for rule in each if rule.id in wanted) for name, each in rules.items()
    }
    return {name: each for name, each in chosen.items() if each}


def _in_the_way(found: Asked, names: tuple[str, ...]) -> list[Problem]:
    from chamberwise.engine.checks.before_proof import check_before_proof

    today = date.today()
    told = [each for name in names for each in check_before_proof(found.loaded, name, today)]
    return list(dict.fromkeys(told))


def _proof(found: Asked, name: str, rules: tuple[Rule, ...], arguments: Namespace) -> ProofShown:
    from chamberwise.engine.proof.prove import prove
    from chamberwise.engine.translating.proof import retold_proof
    from chamberwise.exports.proof.extract import proof_shown
    from chamberwise.tui.in_language import in_language
    from chamberwise.tui.replaying import replay_command

    folder = arguments.library or shipped()
    replay = replay_command(found.loaded, name, arguments.library, folder)
    proof = prove(found.loaded.library, name, rules)
    told = in_language(found.loaded, folder)
    said = retold_proof(proof, told.library)
    return proof_shown(told, said, date.today(), replay, _brought_by(found, proof))


def _brought_by(found: Asked, proof: Proof) -> dict[str, tuple[str, ...]]:
    """Return, of each rule that the unit's sheet breaks, the places in the sheet that do it."""
    if found.under is None or found.loaded.library.local is None:
        return {}
    from chamberwise.engine.diagnostics.text import place
    from chamberwise.engine.local.breaking import broken_by

    sheet = found.under.sheet
    return {
        rule: tuple(place(sheet.shown_as, sheet.tree.span(each.said)) for each in operations)
        for rule, operations in broken_by(found.under.base, sheet, proof).items()
    }


def _refuse_bad_lists(found: Asked, names: tuple[str, ...]) -> None:
    """Raise with every problem of the lists of reviewed mutants."""
    if not names:
        return
    from chamberwise.engine.diagnostics.text import problem_text
    from chamberwise.engine.reading.reviewed import reviewed_of

    lists = (reviewed_of(found.loaded.file_of[name], name) for name in names)
    told = [problem_text(problem, {}) for each in lists for problem in each.problems]
    if told:
        raise UnusableError("\n\n".join(told))


def _strength(found: Asked, name: str, every: int) -> Strength:
    from chamberwise.engine.mutants.measure import measure

    talk(
        _("Measuring `{name}`: each single edit is checked and proved. This takes a while.").format(
            name=name
        )
    )
    return measure(found.loaded, name, every=every, told=_told_now_and_then)


def _told_now_and_then(done: int, of: int) -> None:
    if done % 500 == 0 or done == of:
        talk(_("  {done:,} of {of:,} edits").format(done=done, of=of))


def _status(problems: list[Problem], proofs: list[ProofShown], strengths: list[Strength]) -> Status:
    from chamberwise.exports.proof.content import VerdictWord

    rules = [rule for proof in proofs for rule in proof.rules]
    weak = any(not each.is_clean for each in strengths)
    if problems or weak or any(rule.is_finding for rule in rules):
        return Status.FINDINGS
    if any(rule.verdict is VerdictWord.UNPROVEN for rule in rules):
        return Status.UNPROVEN
    return Status.CLEAN
