"""Rosters and the answers to them, pooled into arrays by line and week."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from measures import ANSWERS, CANT_TELL
from observations import Gates, Key, Observations, gates_of, key_of, rows_of
from roster_truth import Truth

FORECAST_COLUMNS = (
    "predicted_reps", "q025", "q10", "q25", "q50", "q75", "q90", "q975", "actual_reps", "lower_pit", "upper_pit",
)
PROBABILITY_COLUMNS = ("p_rising", "p_flat", "p_falling")


@dataclass
class Forecasts:
    """Forecasts of first sets: their line and week, and a column for each of FORECAST_COLUMNS."""

    line: np.ndarray
    week: np.ndarray
    columns: np.ndarray

    def __getitem__(self, name: str) -> np.ndarray:
        return self.columns[:, FORECAST_COLUMNS.index(name)]

    @classmethod
    def read(cls, file: Path, line_of: dict[Key, int], first_line: int) -> Forecasts:
        """Those of a file, lines counted from first_line; none if there is no such file."""
        rows = list(rows_of(file)) if file.exists() else []
        columns = np.array([[float(row[name]) for name in FORECAST_COLUMNS] for row in rows])
        return cls(
            np.array([line_of[key_of(row)] + first_line for row in rows], int),
            np.array([int(row["week"]) for row in rows], int),
            columns.reshape(-1, len(FORECAST_COLUMNS)),
        )

    def only(self, rows: np.ndarray) -> Forecasts:
        return Forecasts(self.line[rows], self.week[rows], self.columns[rows])


@dataclass
class Answers:
    """By line and week. `verdict` is an index of ANSWERS, -1 before a line begins; probabilities are 0 until known."""

    probabilities: np.ndarray
    verdict: np.ndarray
    stall_weeks: np.ndarray
    reason: np.ndarray

    @classmethod
    def read(cls, file: Path, line_of: dict[Key, int], weeks: int) -> Answers:
        shape = len(line_of), weeks
        result = cls(np.zeros((*shape, 3)), np.full(shape, -1), np.full(shape, np.nan), np.full(shape, "", object))
        for row in rows_of(file):
            result._add((line_of[key_of(row)], int(row["week"])), row)
        return result

    def _add(self, at: tuple[int, int], row: dict[str, str]) -> None:
        if row["p_rising"]:
            self.probabilities[at] = [float(row[name]) for name in PROBABILITY_COLUMNS]
        self.verdict[at] = ANSWERS.index(row["verdict"])
        self.reason[at] = row["reason"]
        if row["stall_weeks"]:
            self.stall_weeks[at] = float(row["stall_weeks"])

    def check_against(self, truth_weeks: np.ndarray, file: Path) -> None:
        """Every week of the truth must be answered, and no other."""
        wrong = ((self.verdict >= 0) != truth_weeks).sum()
        if wrong:
            raise ValueError(f"{file}: {wrong} weeks are missing or too many")


@dataclass
class Judged:
    """Everything that is needed to score answers."""

    truth: Truth
    gates: Gates
    answers: Answers
    forecasts: Forecasts
    reasons: Counter[str]  # of the weeks answered "cannot tell"

    @classmethod
    def read(cls, pairs: list[tuple[Path, Path]]) -> Judged:
        """Pools rosters with their answers."""
        truths, gates, answers, forecasts = [], [], [], []
        lines = 0
        for roster, folder in pairs:
            observations = Observations.read(roster)
            line_of = {key: line for line, key in enumerate(observations.keys)}
            weeks = observations.day.shape[1]
            truths.append(Truth.read(roster, observations.keys, weeks))
            gates.append(gates_of(observations))
            answers.append(Answers.read(folder / "weeks.csv", line_of, weeks))
            begun = np.arange(weeks)[None] >= observations.first_week[:, None]
            answers[-1].check_against(begun, folder / "weeks.csv")
            forecasts.append(Forecasts.read(folder / "forecasts.csv", line_of, lines))
            lines += len(observations.keys)
        pooled = _pooled(Answers, answers)
        reasons = Counter(pooled.reason[pooled.verdict == CANT_TELL])
        return cls(Truth.pooled(truths), _pooled(Gates, gates), pooled, _pooled(Forecasts, forecasts), reasons)


def _pooled(kind: type, parts: list) -> object:
    """The dataclass of arrays whose arrays are those of the parts, one after the other."""
    return kind(**{name: np.concatenate([getattr(part, name) for part in parts])
                   for name in kind.__dataclass_fields__})
