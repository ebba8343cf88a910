#!/usr/bin/env python3
"""Answers a roster with the numpy filter instead of the C++ engine, in the same weeks.csv.

    prototype.py ROSTER_DIR OUT_DIR [--parameters FILE]

Its table is known, so it shows that the evaluation is right; and it is the yardstick of the engine's speed. The seconds
that the filter took go to stderr. Verdicts follow from the probabilities and the log alone: planned holds are unknown.
"""

from __future__ import annotations

import argparse
import csv
import sys
import time
from pathlib import Path

import numpy as np

from observations import Gates, Observations, gates_of
from regime_filter import FALLING, RISING, Parameters, Weekly, run
from roster_settings import DAYS

SHIPPED = Path(__file__).with_name("prototype_parameters.json")
COLUMNS = "athlete,exercise,variant,grip,week,p_rising,p_flat,p_falling,verdict,reason,stall_weeks"

THRESHOLDS = (0.67, 0.70, 0.55)  # of not rising, by level
FALLING_AT = 0.30
RISING_AT = 0.60
RISING_WITHOUT_EFFORT = 0.90
LONG_GAP = 16  # days
WEEKS_AFTER_GAP = 3


def easy_weeks(observations: Observations) -> np.ndarray:
    """By line and week: a planned easy week, or one of the first after a long gap."""
    easy = (observations.planned_easy & (observations.kind >= 0)).any((2, 3))
    for line, days in enumerate(observations.day):
        trained = days[days >= 0]
        for before, after in zip(trained, trained[1:]):
            if after - before > LONG_GAP:
                easy[line, after // DAYS : after // DAYS + WEEKS_AFTER_GAP] = True
    return easy


def verdict(probabilities: np.ndarray, level: int, effort_unknown: bool, easy: bool) -> tuple[str, str]:
    """Verdict and reason of a week that no gate closes."""
    rising, falling = probabilities[RISING], probabilities[FALLING]
    if effort_unknown:
        return ("progressing", "") if rising >= RISING_WITHOUT_EFFORT else ("cant_tell", "effort")
    if easy:
        return "holding", "easy"
    if 1 - rising >= THRESHOLDS[level]:
        return ("slipping" if falling >= FALLING_AT else "stalled"), ""
    return ("progressing" if rising >= RISING_AT else "holding"), ""


def week_row(observations: Observations, gates: Gates, easy: np.ndarray, weekly: Weekly, line: int, week: int) -> tuple:
    """A row of weeks.csv."""
    probabilities = weekly.probabilities[line, week]
    known = not np.isnan(probabilities[0])
    if gates.few[line, week] or not known:
        answer = "cant_tell", "few"
    elif gates.technique[line, week]:
        answer = "cant_tell", "standard"
    else:
        answer = verdict(probabilities, observations.level[line], gates.effort[line, week], easy[line, week])
    written = [repr(float(p)) if known else "" for p in probabilities]
    since = f"{weekly.stall_weeks[line, week]:.4f}" if known else ""
    return (*observations.keys[line], week, *written, *answer, since)


def write(observations: Observations, weekly: Weekly, file: Path) -> None:
    """Writes weeks.csv, making its folder."""
    file.parent.mkdir(parents=True, exist_ok=True)
    gates, easy = gates_of(observations), easy_weeks(observations)
    with open(file, "w", newline="", encoding="utf-8") as text:
        writer = csv.writer(text)
        writer.writerow(COLUMNS.split(","))
        for line, first in enumerate(observations.first_week):
            for week in range(first, weekly.stall_weeks.shape[1]):
                writer.writerow(week_row(observations, gates, easy, weekly, line, week))


def main() -> None:
    parser = argparse.ArgumentParser(description="Answers a roster with the numpy filter.")
    parser.add_argument("roster", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--parameters", type=Path, default=SHIPPED)
    arguments = parser.parse_args()
    observations = Observations.read(arguments.roster)
    parameters = Parameters.read(arguments.parameters)
    begin = time.perf_counter()
    weekly = run(observations, parameters)
    print(f"filter {time.perf_counter() - begin:.2f} s, {len(observations.keys)} lines", file=sys.stderr)
    write(observations, weekly, arguments.out / "weeks.csv")


if __name__ == "__main__":
    main()
