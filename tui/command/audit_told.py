"""What the audit of a paper found, told beneath the name of its file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from chamberwise.tui.command.output import product, talk

if TYPE_CHECKING:
    from chamberwise.exports.audit.report import Report


def tell_audit(report: Report, *, is_wanted: bool, is_aside: bool = False) -> None:
    """Tell the errors of a paper that was written, and the whole report where it is wanted."""
    from chamberwise.exports.printing.telling_audits import told_of_paper

    for line in told_of_paper(report):
        talk(line)
    if is_wanted:
        tell_report(report, is_aside=is_aside)


def tell_report(report: Report, *, is_aside: bool = False) -> None:
    """Tell a whole report; aside where the product is something that a program reads."""
    from chamberwise.exports.audit.text import report_text

    (talk if is_aside else product)("\n" + report_text(report).rstrip("\n"))
