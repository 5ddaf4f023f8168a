"""What was typed for a calculation, checked: every refusal is collected, nothing is clamped."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from chamberwise.engine.diagnostics.nearest import did_you_mean
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain
from chamberwise.engine.working.form import Calculation, Input, Kind
from chamberwise.engine.working.refusal import Refusal, RefusedError
from chamberwise.engine.working.scalars import Number, day, line, number, numbers, told_day, word
from chamberwise.engine.working.working import Told

Value = Decimal | str | date | tuple[Decimal, ...]


@dataclass(slots=True)
class Given:
    """The values of a calculation's inputs by name, how they were told, and soft remarks."""

    values: dict[str, Value] = field(default_factory=dict)
    told: list[Told] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)

    def __contains__(self, name: str) -> bool:
        return name in self.values

    def number(self, name: str) -> Decimal:
        """Return a number in the unit of its input."""
        value = self.values[name]
        assert isinstance(value, Decimal)
        return value

    def numbers(self, name: str) -> tuple[Decimal, ...]:
        """Return several numbers; none where none were given."""
        value = self.values.get(name, ())
        assert isinstance(value, tuple)
        return value

    def word(self, name: str) -> str:
        """Return a word; an empty one where none was given."""
        value = self.values.get(name, "")
        assert isinstance(value, str)
        return value

    def day(self, name: str) -> date:
        """Return a day."""
        value = self.values[name]
        assert isinstance(value, date)
        return value


def given(calculation: Calculation, typed: Mapping[str, str]) -> Given:
    """Return checked inputs. Raises `RefusedError` with all that is wrong."""
    refusals: list[Refusal] = []
    by_name = _by_name(calculation, typed, refusals)
    found = Given()
    for each in calculation.inputs:
        text = by_name.get(each.name, "")
        assumed = not text.strip()
        text = text if not assumed else each.given
        if not text:
            if each.required:
                refusals.append(_missing(each))
            continue
        try:
            _take(found, each, text, assumed)
        except RefusedError as error:
            refusals += error.refusals
    if refusals:
        raise RefusedError(_exchanged(calculation, by_name, refusals))
    return found


def tried(of: Input, typed: str) -> tuple[str, ...]:
    """Return what there is to remark on one input alone. Raises `RefusedError`."""
    found = Given()
    _take(found, of, typed, assumed=False)
    return tuple(found.remarks)


def _by_name(
    calculation: Calculation, typed: Mapping[str, str], refusals: list[Refusal]
) -> dict[str, str]:
    by_name: dict[str, str] = {}
    for name, text in typed.items():
        known = calculation.input(name)
        if known is None:
            refusals.append(_unknown(calculation, name))
        elif known.name in by_name:
            what = _("`{known}` is given twice").format(known=known.name)
            why = _("Nobody can tell which is meant.")
            refusals.append(Refusal(known.name, what, why, _("Give it once.")))
        else:
            by_name[known.name] = text
    return by_name


def _take(found: Given, of: Input, text: str, assumed: bool) -> None:
    match of.kind:
        case Kind.WORD:
            found.values[of.name] = told = word(of, text)
        case Kind.TEXT:
            found.values[of.name] = told = line(of, text)
        case Kind.DATE:
            found.values[of.name] = day(of, text)
            told = told_day(day(of, text))
        case Kind.NUMBER:
            one = number(of, text)
            _in_range(found, of, one)
            found.values[of.name], told = one.value, one.told
        case Kind.SEVERAL:
            several = numbers(of, text)
            for one in several:
                _in_range(found, of, one)
            found.values[of.name] = tuple(one.value for one in several)
            told = "; ".join(one.told for one in several)
    found.told.append(Told(of.name, of.symbol, of.meaning, told, assumed))


def _in_range(found: Given, of: Input, one: Number) -> None:
    if of.hard is not None and one.value not in of.hard:
        ends = (
            _("{low} to {high} {unit}")
            .format(low=plain(of.hard.low), high=plain(of.hard.high), unit=of.unit)
            .strip()
        )
        fix = of.outside or _("Look at the number and its unit again.")
        if of.slip is not None and one.value in of.slip[0]:
            fix = of.slip[1]
        raise RefusedError(
            [
                Refusal(
                    of.name,
                    _("`{of}` is {number}").format(of=of.name, number=one.told),
                    _("It is worked from {ends} only.").format(ends=ends),
                    fix.replace("{typed}", plain(one.value)),
                    is_outside=True,
                )
            ]
        )
    if of.soft is not None and one.value not in of.soft:
        ends = (
            _("{low} to {high} {unit}")
            .format(low=plain(of.soft.low), high=plain(of.soft.high), unit=of.unit)
            .strip()
        )
        found.remarks.append(
            _("`{of}` {number} is unusual (usual: {ends}). Look again.").format(
                of=of.name, number=one.told, ends=ends
            )
        )


def _unknown(calculation: Calculation, name: str) -> Refusal:
    names = [other for each in calculation.inputs for other in each.names]
    listed = ", ".join(f"`{each.name}`" for each in calculation.inputs)
    return Refusal(
        name,
        _("`{calculation}` takes no `{name}`").format(calculation=calculation.name, name=name[:40]),
        _("What is not understood is not left out in silence."),
        did_you_mean(name, names, _("It takes {listed}.").format(listed=listed)),
    )


def _missing(of: Input) -> Refusal:
    return Refusal(
        of.name,
        _("`{of}` is missing").format(of=of.name),
        _("{meaning}: it is not guessed.").format(
            meaning=f"{of.meaning[:1].upper()}{of.meaning[1:]}"
        ),
        _('Add `{of}="{example}"`.').format(of=of.name, example=of.example),
    )


def _exchanged(
    calculation: Calculation, by_name: Mapping[str, str], refusals: list[Refusal]
) -> list[Refusal]:
    """Return the refusals, with a hint where two inputs look exchanged."""
    outside = [each.of for each in refusals if each.is_outside]
    pairs = [
        (first, second)
        for place, first in enumerate(outside)
        for second in outside[place + 1 :]
        if _fits(calculation, first, by_name[second]) and _fits(calculation, second, by_name[first])
    ]
    hints = [
        Refusal(
            first,
            _("`{first}` and `{second}` look exchanged").format(first=first, second=second),
            _("Each lies in the range of the other."),
            _("Exchange them if so."),
        )
        for first, second in pairs
    ]
    return [*refusals, *hints]


def _fits(calculation: Calculation, name: str, text: str) -> bool:
    of = calculation.input(name)
    try:
        return of is not None and of.hard is not None and number(of, text).value in of.hard
    except RefusedError:
        return False
