"""What a simulated lifter is like, plans and does: who they are, their programs, and how one set of theirs ends.

The order of the random draws is part of the contract: figures are recorded for rosters of known seeds.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from rep_curves import RepCurve
from roster_settings import LEVELS, REP_RANGE_SHARES, REP_RANGES, Settings

HARD_STOP = 0.5  # a target reserve below this means to failure
DELOAD_RESERVE = 5.0
DELOAD_SHARE = 0.87
BACKOFF_SHARE = 0.9
FEWEST_REPS = 0.3  # real-valued repetitions of a set that all but fails
MOST_REPORTED = 8.0


class Lifter(NamedTuple):
    """What all lines of a lifter have in common."""

    name: str
    level: str
    noise_scale: float
    reserve_bias: float
    never_logs_reserve: bool
    reserve_missing: float
    deload_every: int


def draw_lifter(rng: np.random.Generator, number: int, settings: Settings) -> Lifter:
    """The lifter of this number; levels take turns."""
    return Lifter(
        name=f"A{number:03d}",
        level=LEVELS[number % len(LEVELS)],
        noise_scale=math.exp(rng.normal(0, settings.noise_scale_sd)),
        reserve_bias=rng.normal(*settings.reserve_bias),
        never_logs_reserve=rng.random() < settings.reserve_never_share,
        reserve_missing=rng.uniform(*settings.reserve_missing),
        deload_every=int(rng.integers(*settings.deload_every)),
    )


class Plan(NamedTuple):
    """What a lifter means to do in one exercise."""

    lowest: int
    highest: int
    per_week: int
    sets: int
    reserve: float
    stops_at_top: bool
    backs_off: bool


def draw_plan(rng: np.random.Generator, settings: Settings) -> Plan:
    """Range of repetitions, sessions a week, sets, reserve and whether sets end at the top of the range."""
    lowest, highest = REP_RANGES[rng.choice(len(REP_RANGES), p=REP_RANGE_SHARES)]
    return Plan(
        lowest=lowest,
        highest=highest,
        per_week=int(rng.choice([1, 2, 3], p=[0.35, 0.5, 0.15])),
        sets=int(rng.integers(2, 6)),
        reserve=float(rng.choice([0, 1, 2, 3], p=[0.2, 0.3, 0.35, 0.15])),
        stops_at_top=rng.random() < settings.cap_share,
        backs_off=rng.random() < 0.25,
    )


class Episode(NamedTuple):
    """Weeks from start to before end in which sets are made easier than the agreed standard."""

    start: int
    end: int
    mode: str  # rom_creep, swing, mixed
    size: float  # log load gained at the end
    marked: float  # chance that such a set is marked

    def ease(self, rng: np.random.Generator, week: int) -> tuple[bool, float]:
        """Whether a set of this week is below the standard, and the log load that gives."""
        done = (week - self.start + 1) / max(1, self.end - self.start)
        if self.mode == "rom_creep":
            below = rng.random() < 0.35 + 0.65 * done
            gain = self.size * done
        elif self.mode == "swing":
            below = True
            gain = self.size * min(1, done * 2)
        else:
            below = rng.random() < 0.6
            gain = self.size * rng.uniform(0.3, 1) if below else 0.0
        return below, gain if below else 0.0

    def mark(self, rng: np.random.Generator) -> str:
        """The letter for such a set: S short range, M momentum, E dropped lowering."""
        mixed = str(rng.choice(["S", "E"]))
        return {"rom_creep": "S", "swing": "M", "mixed": mixed}[self.mode]


def draw_episode(rng: np.random.Generator, weeks: int, settings: Settings) -> Episode | None:
    """An episode of lowered standards, in some series."""
    if rng.random() >= settings.lowered_standard_share:
        return None
    start = int(rng.integers(10, weeks - 10))
    length = int(rng.integers(8, 18))
    mode = str(rng.choice(["rom_creep", "swing", "mixed"]))
    size = rng.uniform(0.07, 0.18)
    hardly = rng.random() < settings.hardly_marked_share
    marked = settings.hardly_marked if hardly else settings.marked
    return Episode(start, min(weeks, start + length), mode, size, marked)


def lighter(load: float, share: float, step: float) -> float:
    """A share of the load, on the plates there are."""
    return max(step, math.floor(load * share / step) * step)


def loadable(load: float, step: float) -> float:
    """The load itself, rounded down to plates; 1e-9 keeps an exact one."""
    return max(step, math.floor(load / step + 1e-9) * step)


@dataclass
class Program:
    """Double progression: repetitions up to the top of the range, then a step more load."""

    lowest: int
    highest: int
    step: float
    load: float = 0.0
    times_below: int = 0

    def restart(self, curve: RepCurve, log_capacity: float, reserve: float) -> None:
        """Picks the load for the middle of the range."""
        middle = (self.lowest + self.highest) / 2 + reserve
        self.load = loadable(curve.load(log_capacity, middle), self.step)
        self.times_below = 0

    def advance(self, reps: list[int]) -> None:
        """What follows from the repetitions of a session's sets."""
        if reps[0] >= self.highest and min(reps) >= max(self.lowest, self.highest - 3):
            self.load += self.step
            self.times_below = 0
        elif reps[0] < self.lowest:
            self.times_below += 1
            if self.times_below >= 2:
                self.load = max(self.step, self.load - self.step)
                self.times_below = 0
        else:
            self.times_below = 0


class Effort(NamedTuple):
    """How a set ended and what the lifter thought of it."""

    reps: int
    reserve: float  # true repetitions left
    reported: float  # repetitions left as the lifter would write them
    failed: bool


def _stop_at(rng: np.random.Generator, target: float, lifter: Lifter, settings: Settings) -> float:
    """True reserve at which the perceived one reaches the target."""
    noise = rng.normal(0, 1)
    spread = settings.reserve_sd + settings.reserve_sd_slope * target
    true_stop = max(0.0, (target + lifter.reserve_bias + noise * spread) / (1 - settings.reserve_slope))
    return 0.0 if target < HARD_STOP else true_stop


def _perceive(rng: np.random.Generator, reserve: float, lifter: Lifter, settings: Settings) -> float:
    """The reserve as the lifter feels it."""
    spread = 0.5 * (settings.reserve_sd + settings.reserve_sd_slope * reserve)
    felt = reserve * (1 - settings.reserve_slope) - lifter.reserve_bias + rng.normal(0, spread)
    return max(0.0, felt)


def perform(
    rng: np.random.Generator, possible: float, target: float, limit: int | None, plan_top: int | None,
    lifter: Lifter, settings: Settings,
) -> Effort:
    """One set with `possible` repetitions in it.

    `limit` ends the set without fail (a deload); `plan_top` is where a lifter stops who stops at the top of the range:
    when more than one above it were done, it, or sometimes one more, stands in the log.
    """
    stop = _stop_at(rng, target, lifter, settings)
    reps = int(math.floor(max(0, possible - stop)))
    if limit is not None:
        reps = min(reps, limit)
    if plan_top is not None and reps > plan_top + 1:
        reps = plan_top + int(rng.random() < 0.3)
    reserve = possible - reps
    felt = _perceive(rng, reserve, lifter, settings)
    failed = reserve < 1.0
    return Effort(reps, reserve, 0.0 if failed else float(round(min(felt, MOST_REPORTED))), failed)
