"""Whether a pathway may go on paper: without errors, and if approved, without a broken rule."""

from __future__ import annotations

from datetime import date

from chamberwise.engine.diagnostics.text import problem_text
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.reading.library import Loaded
from chamberwise.tui.walkable import not_yet, problems_in_the_way


def errors_in_the_way(loaded: Loaded, shown_as: str, today: date | None = None) -> str:
    """Return the errors that keep a file's pathway off paper, as text; nothing where none do.

    What only a walk would show is left to `check`.
    """
    from chamberwise.engine.checks.by_form import errors_of_form

    problems = problems_in_the_way(loaded, shown_as, today, to_print=True)
    if problems:
        return problems
    pathway = loaded.files[shown_as].pathway
    assert pathway
    errors = [*errors_of_form(loaded, pathway.id, today or date.today())]
    if not errors:
        return ""
    told = [problem_text(each, loaded.texts) for each in errors]
    return "\n\n".join([*told, not_yet(shown_as, to_print=True)])


def rules_in_the_way(loaded: Loaded, pathway: PathwayId) -> str:
    """Return the safety rules that an approved pathway breaks; a draft says itself what it is."""
    from chamberwise.engine.proof.prove import prove
    from chamberwise.engine.proof.verdict import Violated

    library = loaded.library
    if not library.pathways[pathway].is_approved:
        return ""
    verdicts = prove(library, pathway).verdicts
    broken = [each.rule.title for each in verdicts if isinstance(each, Violated)]
    if not broken:
        return ""
    told = "\n".join(f"  - {title}" for title in broken)
    breaks = _("It breaks safety rules and cannot go out as approved:")
    shows = _("`chamberwise prove {pathway}` shows a walk for each.").format(pathway=pathway)
    return f"{breaks}\n{told}\n{shows}"
