"""A simulated roster as arrays: every set as what it says about capacity, and the gates that the log alone decides.

A set with R repetitions to failure is observed as z = ln(1 + R/30). `kind` says how: EXACT, at least so much (LOWER) or
at most so much (UPPER). Arrays are indexed line, week, session of the week, set; a line is one athlete, exercise,
variant and grip, in the order of truth.csv.

    observations = Observations.read(Path("roster"))
    observations.z[line, week, 0, 0]
"""

from __future__ import annotations

import csv
import datetime
import math
from collections.abc import Iterator
from dataclasses import dataclass, fields
from pathlib import Path
from typing import NamedTuple

import numpy as np

from roster_settings import DAYS, FIRST_DAY, LEVELS

Key = tuple[str, str, str, str]

SESSIONS = 3  # of a week
SETS = 5  # of a session
SCALE = 30.0  # c of z = ln(1 + R/c)
TECHNIQUE = frozenset("SME")

NONE, EXACT, LOWER, UPPER = -1, 0, 1, 2

USUAL_RESERVE = 1.5  # until three reserves are known
RESERVE_FACTOR = 1.1
HALF_REP = 0.45


def key_of(row: dict[str, str]) -> Key:
    """What makes a row of any of the files belong to a line."""
    return row["athlete"], row["exercise"], row["variant"], row["grip"]


def rows_of(file: Path) -> Iterator[dict[str, str]]:
    """The rows of a CSV file with a header."""
    with open(file, newline="", encoding="utf-8") as text:
        yield from csv.DictReader(text)


def z_of(reps: np.ndarray | float) -> np.ndarray | float:
    """Repetitions to failure on the scale of the model."""
    return np.log1p(np.asarray(reps, float) / SCALE)


class LoggedSet(NamedTuple):
    """A row of log.csv."""

    day: int
    load: float
    number: int
    reps: int
    partial: bool
    reserve: float | None
    marks: str

    @classmethod
    def of(cls, row: dict[str, str]) -> LoggedSet:
        day = (datetime.date.fromisoformat(row["date"]) - FIRST_DAY).days
        reserve = float(row["rir"]) if row["rir"] else None
        partial = int(row["partial_reps"]) > 0
        load, number, reps = float(row["load_kg"]), int(row["set_no"]), int(row["reps"])
        return cls(day, load, number, reps, partial, reserve, row["marks"])

    def failed(self) -> bool:
        return self.partial or (self.reserve is not None and self.reserve < 0.5)

    def planned_easy(self) -> bool:
        return "D" in self.marks

    def marked(self) -> bool:
        return any(letter in TECHNIQUE for letter in self.marks)

    def effort_unknown(self) -> bool:
        return not self.failed() and self.reserve is None


class Reading(NamedTuple):
    """Repetitions to failure, their standard deviation, and how the set tells them."""

    reps: float
    sd: float
    kind: int


class Reader:
    """Reads the sets of one line in turn; remembers the reserves it has seen, for those left blank."""

    def __init__(self, top_of_range: int) -> None:
        self.top = top_of_range
        self.reserves: list[float] = []

    def read(self, one: LoggedSet) -> Reading:
        reading = self._effort(one)
        if one.planned_easy():
            return Reading(one.reps + 1.5, 1.0, LOWER)
        if one.reserve is not None and one.reserve >= 5:
            reading = Reading(one.reps + 3.0, 1.0, LOWER)
        return reading._replace(kind=UPPER) if one.marked() else reading

    def _effort(self, one: LoggedSet) -> Reading:
        if one.failed():
            return Reading(one.reps + 0.5, 0.45, EXACT)
        if one.reserve is None:
            if one.reps >= self.top:
                return Reading(one.reps + 0.5, 0.8, LOWER)
            return Reading(one.reps + RESERVE_FACTOR * self._usual_reserve() + HALF_REP, 1.6, EXACT)
        self.reserves.append(one.reserve)
        return Reading(one.reps + RESERVE_FACTOR * one.reserve + HALF_REP, 0.45 + 0.25 * one.reserve, EXACT)

    def _usual_reserve(self) -> float:
        return float(np.median(self.reserves[-30:])) if len(self.reserves) >= 3 else USUAL_RESERVE


@dataclass
class Observations:
    """The sets of a roster. `first_week` and `level` are by line, `day` by session (-1: none), the rest by set."""

    keys: list[Key]
    level: np.ndarray
    first_week: np.ndarray
    day: np.ndarray
    x: np.ndarray  # ln(load) less that of the line's first loads
    z: np.ndarray
    sd: np.ndarray  # of z, from the repetitions alone
    kind: np.ndarray
    tired: np.ndarray  # by sets before it: 0, 1, 1.8, 2.44 ...
    marked: np.ndarray
    planned_easy: np.ndarray
    blank: np.ndarray  # effort unknown

    @classmethod
    def empty(cls, keys: list[Key], weeks: int) -> Observations:
        sets = (len(keys), weeks, SESSIONS, SETS)
        by_name = {field.name: np.zeros(sets, bool) for field in fields(cls)}
        by_name.update(keys=keys, level=np.zeros(len(keys), int), first_week=np.zeros(len(keys), int))
        by_name.update(day=np.full(sets[:3], -1), kind=np.full(sets, NONE), sd=np.ones(sets))
        by_name.update({name: np.zeros(sets) for name in ("x", "z", "tired")})
        return cls(**by_name)

    @classmethod
    def read(cls, folder: Path) -> Observations:
        """The roster in this folder."""
        first, last = _weeks_of(folder / "truth.csv")
        result = cls.empty(list(first), max(last.values()) + 1)
        params = {key_of(row): row for row in rows_of(folder / "params.csv")}
        logged: dict[Key, list[LoggedSet]] = {key: [] for key in result.keys}
        for row in rows_of(folder / "log.csv"):
            logged[key_of(row)].append(LoggedSet.of(row))
        for line, key in enumerate(result.keys):
            result.level[line] = LEVELS.index(params[key]["level"])
            result.first_week[line] = first[key]
            result._add_line(line, logged[key], Reader(int(params[key]["hi"])))
        return result

    def _add_line(self, line: int, sets: list[LoggedSet], reader: Reader) -> None:
        if not sets:
            return
        usual = math.log(np.median([one.load for one in sets[:6]]))
        by_day: dict[int, list[LoggedSet]] = {}
        for one in sets:
            by_day.setdefault(one.day, []).append(one)
        sessions_in: dict[int, int] = {}
        for day in sorted(by_day):
            week = day // DAYS
            session = sessions_in.get(week, 0)
            sessions_in[week] = session + 1
            if session >= SESSIONS or week >= self.day.shape[1]:
                continue
            self.day[line, week, session] = day
            for one in by_day[day]:
                if one.number <= SETS:
                    self._add_set((line, week, session, one.number - 1), one, reader.read(one), usual)

    def _add_set(self, at: tuple[int, int, int, int], one: LoggedSet, reading: Reading, usual: float) -> None:
        self.x[at] = math.log(one.load) - usual
        self.z[at] = z_of(reading.reps)
        self.sd[at] = reading.sd / (SCALE + reading.reps)
        self.kind[at] = reading.kind
        self.tired[at] = (1 - 0.8 ** (one.number - 1)) / 0.2
        self.marked[at] = one.marked()
        self.planned_easy[at] = one.planned_easy()
        self.blank[at] = one.effort_unknown()


def _weeks_of(truth: Path) -> tuple[dict[Key, int], dict[Key, int]]:
    """First and last week of each line."""
    first: dict[Key, int] = {}
    last: dict[Key, int] = {}
    for row in rows_of(truth):
        key = key_of(row)
        first[key] = min(first.get(key, int(row["week"])), int(row["week"]))
        last[key] = max(last.get(key, 0), int(row["week"]))
    return first, last


@dataclass
class Gates:
    """By line and week: whether the log says too little for a verdict."""

    few: np.ndarray  # sessions: under 4 weeks, under 5 in all or under 2 in the last 4 weeks
    technique: np.ndarray  # over a third of the last 4 sessions' sets marked, or over half of the last 2
    effort: np.ndarray  # over 60 % of the last 4 sessions' sets without any word on effort


class _Shares(NamedTuple):
    """Of a session's work sets."""

    marked: float
    blank: float


def gates_of(observations: Observations) -> Gates:
    """The gates, from the log alone."""
    shape = observations.day.shape[:2]
    gates = Gates(np.zeros(shape, bool), np.zeros(shape, bool), np.zeros(shape, bool))
    for line in range(shape[0]):
        _gate_line(observations, gates, line)
    return gates


def _gate_line(observations: Observations, gates: Gates, line: int) -> None:
    start = observations.first_week[line]
    sessions = (observations.day[line] >= 0).sum(1)
    seen: list[_Shares] = []
    for week in range(start, len(sessions)):
        seen.extend(_shares_in(observations, line, week))
        recent = sessions[max(start, week - 3) : week + 1].sum()
        gates.few[line, week] = week - start < 4 or sessions[start : week + 1].sum() < 5 or recent < 2
        if min(len(seen), 4) >= 2:
            marked = [one.marked for one in seen[-4:]]
            gates.technique[line, week] = np.mean(marked) > 1 / 3 or np.mean(marked[-2:]) > 0.5
            gates.effort[line, week] = np.mean([one.blank for one in seen[-4:]]) > 0.6


def _shares_in(observations: Observations, line: int, week: int) -> Iterator[_Shares]:
    for session in range(SESSIONS):
        at = (line, week, session)
        if observations.day[at] < 0:
            continue
        work = (observations.kind[at] != NONE) & ~observations.planned_easy[at]
        if work.any():
            yield _Shares(observations.marked[at][work].mean(), observations.blank[at][work].mean())
