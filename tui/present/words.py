"""Short words of the engine as they are told: they double as words of files, which stay."""

from __future__ import annotations

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import pgettext


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


def key_word(word: str) -> str:
    """Return what a key does; a word that is said otherwise elsewhere has a context here."""
    own = {"open": pgettext("what a key does", "open"), "note": pgettext("what a key does", "note")}
    return own.get(word) or _(word)
