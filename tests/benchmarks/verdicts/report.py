"""The table as lines of text, from the figures by name."""

from __future__ import annotations

import math
from collections.abc import Iterator

from measures import ANSWERS
from roster_settings import LEVELS
from scores import FOUND_BY, STATES, Values

NAME_WIDTH = 34
ALARM_ROWS = (
    ("false alarms a year of progress", "false_alarms"),
    ("share of progress in false alarm", "false_share"),
    ("median delay, weeks", "median_delay"),
    *((f"found by week {week}", f"found_by_{week}") for week in FOUND_BY),
    ("already in alarm at onset", "already_at_onset"),
    ("bal3", "bal3"),
    ("bal4", "bal4"),
)
WEIGHTED_ROWS = (("bal3, class weights", "bal3_weighted"), ("bal4, class weights", "bal4_weighted"))
SHARE_ROWS = (
    ("marked weeks: cannot tell", "marked.cant_tell"),
    ("marked weeks: progressing", "marked.progressing"),
    ("hardly marked weeks: cannot tell", "hardly_marked.cant_tell"),
    ("hardly marked weeks: progressing", "hardly_marked.progressing"),
    ("effort drifting: cannot tell", "effort_drifting.cant_tell"),
    ("effort drifting: progressing", "effort_drifting.progressing"),
    ("clean weeks gated", "clean_gated"),
    ("weeks in which the answer flickers", "flicker"),
)
FORECAST_COLUMNS = ("count", "cover50", "cover80", "cover95", "pit_mean", "mean_error", "half_width80")


def figure(value: float | None) -> str:
    """A figure as it stands in the table."""
    if value is None or math.isnan(value):
        return "-"
    if math.isinf(value):
        return ">16"
    return str(value) if isinstance(value, int) else f"{value:.3f}"


def lines_of(values: Values) -> Iterator[str]:
    """All lines of the table."""
    yield from _plain(values, "roster.")
    for source in ("probabilities", "verdicts"):
        yield from ("", f"From the {source}")
        yield from _judgements(values, source)
        yield from ("", "What an answer means: share of weeks; truth given the answer")
        yield from _meanings(values, source)
    yield from ("", "Reasons for \"cannot tell\", all weeks")
    yield from _plain(values, "verdicts.cant_tell_because.")
    yield from ("", "Weeks by which a found stall is thought too old (too young: -) 9 weeks on: count, quartiles")
    for level in LEVELS:
        names = ("count", "low", "median", "high")
        yield _row(level, [values[f"probabilities.dating.{level}.{name}"] for name in names])
    yield from ("", "Forecasts of first sets")
    yield from _forecasts(values)


def _row(name: str, figures: list[float | None]) -> str:
    return f"  {name:{NAME_WIDTH}}" + "".join(f"{figure(value):>14}" for value in figures)


def _header(names: list[str]) -> str:
    return " " * (NAME_WIDTH + 2) + "".join(f"{name:>14}" for name in names)


def _plain(values: Values, prefix: str) -> Iterator[str]:
    for name, value in values.items():
        if name.startswith(prefix):
            yield _row(name.removeprefix(prefix), [value])


def _judgements(values: Values, source: str) -> Iterator[str]:
    yield _header([*LEVELS, "all"])
    rows = ALARM_ROWS + (WEIGHTED_ROWS if source == "probabilities" else ())
    for title, name in rows:
        pooled = values.get(f"{source}.{name}")
        by_level = [values[f"{source}.{level}.{name}"] for level in LEVELS]
        yield _row(title, by_level if pooled is None else [*by_level, pooled])
    yield ""
    for title, name in SHARE_ROWS:
        yield _row(title, [values[f"{source}.{name}"]])


def _meanings(values: Values, source: str) -> Iterator[str]:
    yield _header(["share", *STATES])
    for level in LEVELS:
        for answer in ANSWERS:
            prefix = f"{source}.{level}.{answer}"
            figures = [values[f"{prefix}.share"], *(values[f"{prefix}.if_{state}"] for state in STATES)]
            yield _row(f"{level}, {answer}", figures)


def _forecasts(values: Values) -> Iterator[str]:
    groups = list(dict.fromkeys(name.split(".")[1] for name in values if name.startswith("forecasts.")))
    if not values["forecasts.all.count"]:
        yield "  none"
        return
    yield _header(list(FORECAST_COLUMNS))
    for group in groups:
        yield _row(group, [values.get(f"forecasts.{group}.{name}") for name in FORECAST_COLUMNS])
