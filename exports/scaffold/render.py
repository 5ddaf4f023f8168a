"""The text of a new pathway, from the template beside this file."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from importlib.resources import files

from chamberwise.exports.scaffold.remarks import TELLING

REVIEW_AFTER = timedelta(days=182)
SUMMARY = "For whom and when this pathway is used, in one or two sentences."
AUTHOR = "Education lead"


@dataclass(frozen=True, slots=True)
class Beginning:
    """What is known of a new pathway: its name and the texts at its head."""

    name: str
    title: str
    summary: str = SUMMARY
    author: str = AUTHOR


def new_pathway(
    beginning: Beginning, today: date, schema: str, *, own_words: bool, closes: bool
) -> str:
    """Return a pathway file that checks, proves and prints as it stands.

    `own_words` lets it define duties and sources itself, for a library without a vocabulary. With
    `closes` it hands over to the pathway that closes the eye, where what is owed at the end of
    an operation is asked and done.
    """
    from jinja2 import Environment, StrictUndefined

    template = files(__package__).joinpath("pathway.yaml.j2").read_text(encoding="utf-8")
    environment = Environment(
        undefined=StrictUndefined, trim_blocks=True, keep_trailing_newline=True
    )
    environment.globals.update(TELLING)
    return environment.from_string(template).render(
        id=beginning.name,
        title=beginning.title,
        summary=beginning.summary,
        author=beginning.author,
        today=today.isoformat(),
        review_by=(today + REVIEW_AFTER).isoformat(),
        schema=schema,
        own_words=own_words,
        closes=closes,
    )
