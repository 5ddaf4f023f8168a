"""Every check, in the order in which a reader would want to meet what it finds."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from chamberwise.engine.checks.evidence import (
    edited_since_approval,
    no_source,
    not_approved,
    review_overdue,
    review_soon,
)
from chamberwise.engine.checks.knowledge import (
    answer_without_words,
    answers_cover,
    answers_overlap,
    asked_never_used,
    branch_cannot_decide,
    branch_decides_twice,
    never_comes_up,
    too_many_states,
    trapped,
    used_before_known,
)
from chamberwise.engine.checks.names import (
    file_name,
    leads_nowhere,
    never_used,
    no_such_calculation,
    no_such_pathway,
    no_such_value,
    not_defined,
    not_on_the_chart,
    redefined,
)
from chamberwise.engine.checks.rules import cannot_be, not_every_moment, says_nothing
from chamberwise.engine.checks.safety import caution_too_late, late_call_for_help
from chamberwise.engine.checks.shape import (
    handover_ring,
    loop_without_bound,
    loop_without_exit,
    no_entry,
    no_way_out,
    unreachable_step,
)
from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.problem import Problem

Check = Callable[[Subject], Iterator[Problem]]

NAMES: tuple[Check, ...] = (
    file_name.check,
    no_entry.check,
    leads_nowhere.check,
    not_defined.check,
    no_such_value.check,
    no_such_pathway.check,
    no_such_calculation.check,
    redefined.check,
)
"""Without these no walk is possible, so they come first and cost least."""

NEEDED_TO_WALK: tuple[Check, ...] = (
    *(check for check in NAMES if check is not file_name.check),
    handover_ring.check,
)

SHAPE: tuple[Check, ...] = (
    handover_ring.check,
    unreachable_step.check,
    no_way_out.check,
    loop_without_bound.check,
    loop_without_exit.check,
    answers_overlap.check,
    answer_without_words.check,
    branch_decides_twice.check,
    caution_too_late.check,
    late_call_for_help.check,
    not_on_the_chart.check,
)

KNOWLEDGE: tuple[Check, ...] = (
    too_many_states.check,
    answers_cover.check,
    branch_cannot_decide.check,
    used_before_known.check,
    trapped.check,
    never_comes_up.check,
    asked_never_used.check,
)

RULES: tuple[Check, ...] = (
    cannot_be.check,
    not_every_moment.check,
    says_nothing.check,
)

EVIDENCE: tuple[Check, ...] = (
    never_used.check,
    no_source.check,
    not_approved.check,
    edited_since_approval.check,
    review_overdue.check,
    review_soon.check,
)

SPEAK_OF_THE_HEAD = frozenset({not_approved.check, review_overdue.check, review_soon.check})
"""These need approval and dates to have been read, and nothing else."""

SPEAK_OF_WHAT_STANDS = frozenset(
    {
        *NAMES,
        handover_ring.check,
        answers_overlap.check,
        answer_without_words.check,
        branch_decides_twice.check,
        cannot_be.check,
        not_every_moment.check,
        no_source.check,
    }
)
"""The others speak of what is missing: where a step or a word could not be read, they would miss
what is there."""
