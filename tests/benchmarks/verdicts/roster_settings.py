"""What simulated lifters are made of: every rate, size and spread of the simulator, in one place.

Capacities and their noise are natural logarithms of load, slopes are per cent of load a week, reserves are repetitions.
Sizes of noise and of errors in the reported reserve follow published test-retest work: Mitter et al. 2022 (PLOS ONE
e0268074), Refalo et al. 2023, Hackett et al. 2017, Halperin et al. 2022, Grgic et al. 2020 and Nuzzo et al. 2024. How
often lifters cheat, leave the reserve blank, mistype or stall is assumed: nobody has published it.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from typing import NamedTuple

FIRST_DAY = datetime.date(2024, 1, 1)  # of every roster: a Monday
DAYS = 7  # of a week

LEVELS = ("novice", "intermediate", "advanced")

# A level's starting strength, as a multiple of the exercise's usual one-repetition maximum.
STRENGTH = {"novice": 0.65, "intermediate": 1.0, "advanced": 1.35}


class Exercise(NamedTuple):
    """An exercise as it stands in the log; loads in kg."""

    name: str
    variant: str
    grip: str
    usual_max: float
    spread: float  # standard deviation of ln(maximum) between lifters
    step: float  # smallest change of load
    leg: int  # 1: legs, which repeat more often at the same share of their maximum


EXERCISES = (
    Exercise("bench press", "flat barbell", "medium", 90, 0.25, 2.5, 0),
    Exercise("bench press", "close grip", "narrow", 80, 0.25, 2.5, 0),
    Exercise("row", "chest-supported", "neutral", 70, 0.25, 2.5, 0),
    Exercise("pulldown", "cable", "wide", 75, 0.25, 5.0, 0),
    Exercise("squat", "high bar", "-", 120, 0.28, 2.5, 1),
    Exercise("leg press", "45 degree", "-", 220, 0.3, 10.0, 1),
    Exercise("curl", "dumbbell incline", "supinated", 18, 0.25, 1.0, 0),
    Exercise("triceps extension", "cable overhead", "rope", 35, 0.25, 2.5, 0),
    Exercise("lateral raise", "dumbbell", "neutral", 14, 0.25, 1.0, 0),
    Exercise("romanian deadlift", "barbell", "overhand", 120, 0.27, 2.5, 1),
    Exercise("leg extension", "machine", "-", 80, 0.25, 5.0, 1),
    Exercise("overhead press", "standing barbell", "medium", 55, 0.25, 2.5, 0),
)

REP_RANGES = ((5, 8), (6, 10), (8, 12), (10, 15), (12, 20), (20, 30))
REP_RANGE_SHARES = (0.15, 0.25, 0.27, 0.2, 0.1, 0.03)


def _slopes() -> dict[str, tuple[float, float]]:
    return {"novice": (1.0, 2.0), "intermediate": (0.3, 0.7), "advanced": (0.05, 0.2)}


def _slowing() -> dict[str, float]:
    return {"novice": 0.85, "intermediate": 0.95, "advanced": 1.0}


@dataclass(frozen=True)
class Settings:
    """The rates and sizes of one kind of roster; the defaults are those the verdict engine was tuned on."""

    slope: dict[str, tuple[float, float]] = field(default_factory=_slopes)  # uniform between the two
    slowing: dict[str, float] = field(default_factory=_slowing)  # of the slope, after each stretch of progress
    regress: tuple[float, float] = (-1.0, -0.3)
    # Stretches: (mean of the geometric extra weeks, fewest weeks).
    progress_weeks: tuple[int, int] = (16, 8)
    stall_weeks: tuple[int, int] = (7, 6)
    regress_weeks: tuple[int, int] = (2, 4)
    hold_weeks: tuple[int, int] = (3, 4)
    hold_share: float = 0.12  # of the ends of progress: a planned hold
    layoff_share: float = 0.30
    layoff_weeks: tuple[int, int] = (2, 7)  # below the second

    day_sd: float = 0.016
    set_sd: float = 0.011
    readiness_sd: float = 0.008  # weekly first-order autoregression
    readiness_memory: float = 0.6
    noise_scale_sd: float = 0.25  # of ln(scale) between lifters
    bad_day_share: float = 0.03
    bad_day: tuple[float, float] = (-0.06, 0.02)  # mean, standard deviation
    fatigue: tuple[float, float] = (0.030, 0.010)  # lost to each hard set before, saturating

    reps_at_75: tuple[float, float] = (11.5, 2.8)  # repetitions to failure at 75 % of the maximum
    reps_at_75_leg: float = 3.0  # more for legs
    curve_scale: tuple[float, float] = (22.0, 40.0)  # c of ln(1 + R/c)

    reserve_bias: tuple[float, float] = (0.4, 0.5)
    reserve_slope: float = 0.10
    reserve_sd: float = 0.45
    reserve_sd_slope: float = 0.22
    reserve_never_share: float = 0.15  # of lifters who never log it
    reserve_missing: tuple[float, float] = (0.02, 0.18)
    missed_sessions: float = 0.08
    typos: float = 0.003
    false_marks: float = 0.02
    cap_share: float = 0.5  # of series that stop at the top of their range

    lowered_standard_share: float = 0.22  # of series with an episode of it
    hardly_marked_share: float = 0.25  # of those episodes
    marked: float = 0.80  # chance that a set below the standard is marked
    hardly_marked: float = 0.10
    effort_drift_share: float = 0.06
    deload_every: tuple[int, int] = (4, 9)  # weeks; below the second
    variant_change_share: float = 0.20
    lifts: tuple[int, int] = (2, 3)  # exercises of a lifter
