"""Short words of the engine as they are told: they double as words of files, which stay."""

from __future__ import annotations

from chamberwise.engine.diagnostics.problem import Severity
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext, pgettext


def status_word(status: str) -> str:
    """Return where a pathway stands in its life."""
    return {
        "draft": pgettext("status of a pathway", "draft"),
        "clinical review": pgettext("status of a pathway", "clinical review"),
        "approved": pgettext("status of a pathway", "approved"),
        "superseded": pgettext("status of a pathway", "superseded"),
        "withdrawn": pgettext("status of a pathway", "withdrawn"),
    }[status]


def signal_word(signal: str) -> str:
    """Return the signal word of a caution, in capitals."""
    return {
        "danger": pgettext("signal word", "DANGER"),
        "warning": pgettext("signal word", "WARNING"),
        "caution": pgettext("signal word", "CAUTION"),
        "notice": pgettext("signal word", "NOTICE"),
    }[signal]


def mark_word(mark: str) -> str:
    """Return how far a source was followed."""
    return {
        "read": pgettext("mark of a source", "read"),
        "memory": pgettext("mark of a source", "memory"),
        "common practice": pgettext("mark of a source", "common practice"),
        "derived": pgettext("mark of a source", "derived"),
        "local": pgettext("mark of a source", "local"),
    }[mark]


def harm_word(severity: str) -> str:
    """Return how bad a harm is."""
    return {
        "catastrophic": pgettext("harm", "catastrophic"),
        "critical": pgettext("harm", "critical"),
        "serious": pgettext("harm", "serious"),
        "minor": pgettext("harm", "minor"),
        "negligible": pgettext("harm", "negligible"),
    }[severity]


def severity_word(severity: Severity) -> str:
    """Return how much a problem matters."""
    match severity:
        case Severity.ERROR:
            return _("error")
        case Severity.WARNING:
            return _("warning")
        case Severity.NOTICE:
            return _("notice")


def severity_count(severity: Severity, count: int) -> str:
    """Return how many problems matter so much, e.g. `2 errors`."""
    match severity:
        case Severity.ERROR:
            told = ngettext("{count} error", "{count} errors", count)
        case Severity.WARNING:
            told = ngettext("{count} warning", "{count} warnings", count)
        case Severity.NOTICE:
            told = ngettext("{count} notice", "{count} notices", count)
    return told.format(count=count)
