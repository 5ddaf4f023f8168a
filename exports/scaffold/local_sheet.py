"""The text of a new local sheet, from the template beside this file."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from importlib.resources import files

from chamberwise.engine.approval.choosing import every_choice
from chamberwise.engine.local.localising import base_digest
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import Action, PathwayId
from chamberwise.engine.reading.digest import reached_by_handover
from chamberwise.exports.scaffold.remarks import TELLING

REVIEW_AFTER = timedelta(days=365)


def new_local_sheet(
    library: Library, over: PathwayId, name: str, unit: str, today: date, schema: str
) -> str:
    """Return a sheet that checks as it stands, with all that can be set in remarks."""
    from jinja2 import Environment, StrictUndefined

    template = files(__package__).joinpath("local-sheet.yaml.j2").read_text(encoding="utf-8")
    environment = Environment(
        undefined=StrictUndefined, trim_blocks=True, keep_trailing_newline=True
    )
    environment.globals.update(TELLING)
    pathway = library.pathways[over]
    return environment.from_string(template).render(
        id=name,
        unit=unit,
        pathway=over,
        title=pathway.title,
        edition=pathway.edition,
        digest=base_digest(library, over),
        today=today.isoformat(),
        review_by=(today + REVIEW_AFTER).isoformat(),
        schema=schema,
        calls=list(_calls(library, over).items()),
        kit=list(_kit(library, over).items()),
        choices=[
            (each.id, each.title, [(value.id, value.sign) for value in each.values])
            for each in every_choice(library, over)
        ],
    )


def _actions(library: Library, name: PathwayId) -> list[Action]:
    steps = library.pathways[name].steps.values()
    return [step for step in steps if isinstance(step, Action)]


def _calls(library: Library, over: PathwayId) -> Mapping[str, str]:
    """Return the acts that call for help on any walk, each with its title."""
    found = {}
    for name in reached_by_handover(library, over):
        acts = library.words(name).acts
        for step in _actions(library, name):
            named = [acts[line.act] for line in step.lines if line.act and line.act in acts]
            found.update({act.id: act.title for act in named if act.calls_for_help})
    return found


def _kit(library: Library, over: PathwayId) -> Mapping[str, str]:
    """Return what is needed on any walk, each item with its title."""
    found = {}
    for name in reached_by_handover(library, over):
        kit = library.words(name).kit
        for step in _actions(library, name):
            found.update({item: kit[item].title for item in step.needs if item in kit})
    return found
