"""The text of a new pathway, from the template beside this file."""

from __future__ import annotations

from datetime import date, timedelta
from importlib.resources import files

REVIEW_AFTER = timedelta(days=182)


def new_pathway(name: str, title: str, today: date, schema: str, *, own_words: bool) -> str:
    """Return a pathway file that checks as it stands.

    `own_words` lets it define duties and sources itself, for a library without a vocabulary.
    """
    from jinja2 import Environment, StrictUndefined

    template = files(__package__).joinpath("pathway.yaml.j2").read_text(encoding="utf-8")
    environment = Environment(
        undefined=StrictUndefined, trim_blocks=True, keep_trailing_newline=True
    )
    return environment.from_string(template).render(
        id=name,
        title=title,
        today=today.isoformat(),
        review_by=(today + REVIEW_AFTER).isoformat(),
        schema=schema,
        own_words=own_words,
    )
