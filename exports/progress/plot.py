"""A line over time, drawn with plain characters."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

LIMIT, POINT, ZERO = "-", "*", "."


def plot(
    values: Sequence[float],
    limits: Sequence[tuple[float, str]],
    width: int = 60,
    height: int = 9,
) -> list[str]:
    """Return lines of text: the values from left to right, each limit as a row with its name.

    Where there are more values than columns, each column shows the last of its stretch.

    >>> print("\\n".join(plot([0, 1, 2], [(2, "signal")], width=3, height=3)))
      2.0 |--* signal
          | *
      0.0 |*..
    """
    shown = _thinned(values, width)
    highest = max([0.0, *shown, *(at for at, _ in limits)])
    lowest = min([0.0, *shown, *(at for at, _ in limits)])
    span = (highest - lowest) or 1.0

    def row_of(value: float) -> int:
        return round((highest - value) / span * (height - 1))

    names = {row_of(at): name for at, name in limits}
    return list(
        _rows(shown, names, (highest, span), row_of(0.0), [row_of(v) for v in shown], height)
    )


def _rows(
    shown: Sequence[float],
    names: dict[int, str],
    scale: tuple[float, float],
    zero: int,
    at: Sequence[int],
    height: int,
) -> Iterator[str]:
    highest, span = scale
    for row in range(height):
        ground = LIMIT if row in names else ZERO if row == zero else " "
        line = "".join(POINT if place == row else ground for place in at)
        value = highest - span * row / (height - 1)
        label = f"{value:5.1f}" if row in names or row in (0, zero, height - 1) else " " * 5
        yield f"{label} |{line} {names.get(row, '')}".rstrip()


def _thinned(values: Sequence[float], width: int) -> list[float]:
    if len(values) <= width:
        return list(values)
    return [values[(column + 1) * len(values) // width - 1] for column in range(width)]


def bar(counts: Sequence[int], signs: Sequence[str], most: int, width: int = 48) -> str:
    """Return counts as a bar, each by its sign; `most` fills the width.

    >>> bar((2, 0, 1), "#+.", most=3, width=6)
    '####..'
    """
    if not most:
        return ""
    scale = width // most if most <= width else width / most
    return "".join(
        sign * max(round(count * scale), 1 if count else 0)
        for sign, count in zip(signs, counts, strict=True)
    )
