"""What is told of progress: figures with what they are of, and nothing where there are few."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from chamberwise.engine.drill.measures.gates import Result
from chamberwise.engine.drill.measures.measured import measure
from chamberwise.engine.drill.remembering.current import current
from chamberwise.engine.drill.remembering.progress import Progress
from chamberwise.engine.drill.remembering.remembered import Remembered, remember
from chamberwise.engine.drill.spacing.due import due
from chamberwise.engine.drill.spacing.grading import Grade
from chamberwise.engine.drill.spacing.scheduling import after
from chamberwise.exports.progress.content import SIGNS
from chamberwise.exports.progress.extract import progress_content
from chamberwise.exports.progress.plot import bar, plot
from chamberwise.exports.progress.text import progress_text
from chamberwise.exports.progress.values import COLUMNS, as_csv, as_value

from tests.conformance.driver import RUPTURE, library
from tests.support.by_the_book import doings, drilled, without

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
SIGN = [sign for sign, _ in SIGNS]
MET, LATE, NOT_YET = Result.MET, Result.LATE, Result.NOT_YET


def run(*left_out: str) -> Remembered:
    script = list(doings()[:16])
    for doing in left_out:
        script = without(script, doing)
    return remember(measure(library(), drilled(script)), "nucleus")


def progress(*results: Result, latest: tuple[Remembered, ...] = ()) -> Progress:
    memory = after(None, "withdraw-tip", "nucleus", Grade.AGAIN, NOW - timedelta(days=3))
    months = {each: sum(one is each for one in results) for each in dict.fromkeys(results)}
    by_month = tuple(("2026-11", each, many) for each, many in months.items())
    return Progress(RUPTURE, results, by_month, latest, due([memory], NOW), NOW)


def told(of: Progress) -> str:
    return progress_text(progress_content(library(), of, SIGN))


def test_whether_rehearsal_is_current_is_told_with_what_it_lacks() -> None:
    of = progress(MET, MET)
    found = current([run(), run()], 1, [], NOW)
    said = told(replace(of, current=found))
    assert "Not current: the last two runs were of the same drill." in said
    assert "never what anybody can do" in said
    assert "Current." in told(replace(of, current=replace(found, lacks=())))


def test_few_runs_tell_nothing_and_say_how_many_more() -> None:
    said = told(progress(MET, MET, NOT_YET, latest=(run(),) * 3))
    assert "2 of 3: cannot tell yet; about" in said
    assert "half of the runs had it done by: cannot tell yet" in said
    assert "Cannot tell yet; about 10 more runs met in a row." in said


def test_what_is_the_same_of_several_acts_is_told_once() -> None:
    said = told(progress(NOT_YET, latest=(run(),)))
    assert "CRITICAL ACTS, in the latest run\n" in said
    assert said.count("left out 0 of 1") == 1
    assert all(f"\n  {act}\n" in said for act in ("Withdraw the tip", "Fetch the rupture box"))
    assert f"`chamberwise drill {RUPTURE} --plan`" in " ".join(said.split())


def test_many_runs_come_with_their_limits() -> None:
    said = told(progress(*[MET] * 30, *[NOT_YET] * 10))
    assert "met in this run: 30 of 40 (95 % limits: 59 to 87 of 100)" in said
    assert "Signalled at run 10" in said


def test_a_pathway_that_nobody_approved_says_so() -> None:
    assert "Status of the pathway: DRAFT\n" in told(progress(MET))


def test_the_strip_and_the_months_are_readable_without_colour() -> None:
    said = told(progress(NOT_YET, LATE, MET, MET))
    assert "RUNS: # met, + done, late, . not yet\n  .+##\n" in said
    assert "2026-11  ########################" in said


def test_what_is_due_is_named_with_its_stage_and_never_called_overdue() -> None:
    said = told(progress())
    assert "Withdraw the tip (nucleus): chance of recall now about" in said
    assert "overdue" not in said.replace("what is due is not overdue", "")


def test_parameters_stand_beside_every_sum() -> None:
    said = told(progress(*[MET] * 12))
    assert "acceptable 10%, unacceptable 30%, signal at 2.5" in said
    assert "errors 10% and 10%, step 0.186" in said


def test_an_act_left_out_is_counted_with_what_it_is_of() -> None:
    said = told(progress(MET, latest=(run("call-for-help"), *[run()] * 39)))
    assert "Call the senior surgeon\n      left out 1 of 40 (95 % limits: 0 to 13 of 100)" in said


def test_nothing_is_wider_than_a_screen() -> None:
    said = told(progress(*[MET, NOT_YET, LATE] * 90, latest=(run(),) * 20))
    assert max(map(len, said.splitlines())) <= 78
    assert "competen" not in said


def test_a_pathway_that_is_gone_is_told_by_its_name() -> None:
    gone = replace(progress(MET, latest=(run(),)), pathway="gone")
    assert told(gone).startswith("Progress: gone\n")


def test_a_table_has_a_head_and_a_row_a_run() -> None:
    rows = list(csv.reader(io.StringIO(as_csv([run(), run("fetch-box")]))))
    assert tuple(rows[0]) == COLUMNS
    assert len(rows) == 3
    assert rows[2][COLUMNS.index("critical acts left out")] == "1"
    assert rows[1][COLUMNS.index("counts")] == "yes"


def test_columns_are_the_values_in_their_order() -> None:
    value = as_value(run())
    assert tuple(value)[: len(COLUMNS)] == COLUMNS
    assert next(act["act"] for act in value["acts"]) == "hold-tip-still"


def test_a_plot_keeps_to_its_width_whatever_it_shows() -> None:
    for many in (0, 1, 59, 60, 61, 5000):
        lines = plot([float(each % 7) for each in range(many)], [(5.0, "signal")])
        assert len(lines) == 9
        assert max(map(len, lines)) <= 75
    assert plot([], [])[0].startswith("  ")


def test_a_bar_never_drops_what_there_is() -> None:
    assert bar((1, 0, 999), SIGN, 1000).startswith("#")
    assert len(bar((500, 250, 250), SIGN, 1000)) == 48
    assert bar((), (), 0) == ""
