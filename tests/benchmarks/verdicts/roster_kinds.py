"""The kinds of rosters: the one the verdict engine was tuned on, and others that break its assumptions one by one.

A kind is a set of choices that the simulator asks for; what a kind doesn't choose is as in `default`.

    KINDS["heavy_tails"].draw_day(rng, settings, noise_scale=1.0, readiness=0.0)
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np

from capacity import Capacity, Pace, fading_pace, steady_pace
from rep_curves import LogCurve, RepCurve, draw_other_family
from roster_settings import Settings
from training import Plan

Rng = np.random.Generator


def draw_normal(rng: Rng, count: int) -> np.ndarray:
    """Standard normal innovations."""
    return rng.normal(0, 1, count)


# Quartiles of the standard normal and of Student's t with 3 degrees of freedom.
NORMAL_QUARTILE = 0.67449
STUDENT_QUARTILE = 0.76489


def draw_student(rng: Rng, count: int) -> np.ndarray:
    """Innovations of Student's t with 3 degrees of freedom: the middle half as wide as the normal's, the tails wider.

    Brought to the normal's variance instead, the middle would be so narrow that stalls were easier to see.
    """
    return rng.standard_t(3, count) * (NORMAL_QUARTILE / STUDENT_QUARTILE)


def readiness(innovations: np.ndarray, settings: Settings, noise_scale: float) -> np.ndarray:
    """Weekly first-order autoregression of stationary spread."""
    weekly = np.zeros(len(innovations))
    sd = settings.readiness_sd * noise_scale
    memory = settings.readiness_memory
    weekly[0] = sd * innovations[0]
    for week in range(1, len(innovations)):
        weekly[week] = memory * weekly[week - 1] + sd * math.sqrt(1 - memory**2) * innovations[week]
    return weekly


def draw_usual_day(rng: Rng, settings: Settings, noise_scale: float, ready: float) -> float:
    """A day's effect on log capacity: normal, with a bad day now and then."""
    effect = rng.normal(0, settings.day_sd * noise_scale) + ready
    if rng.random() < settings.bad_day_share:
        effect += rng.normal(*settings.bad_day)
    return effect


def draw_heavy_day(rng: Rng, settings: Settings, noise_scale: float, ready: float) -> float:
    """A day's effect whose tails are the bad and the good days."""
    return settings.day_sd * noise_scale * float(draw_student(rng, 1)[0]) + ready


@dataclass
class Habits:
    """How a lifter departs from the plan week by week; as it stands, not at all."""

    loads: np.ndarray | None = None  # by week of the wave: share of the program's load
    reserve_steps: np.ndarray | None = None  # by week: added to the planned reserve
    other_range: tuple[int, int] | None = None  # of every second week
    uneven: bool = False
    fixed_days: list[int] | None = None  # of the week, instead of new ones each week
    by_weekday: np.ndarray | None = None  # added to log capacity on that day of the week

    def weekday_effect(self, day: int) -> float:
        return 0.0 if self.by_weekday is None else float(self.by_weekday[day % 7])

    def load_share(self, week: int) -> float:
        return 1.0 if self.loads is None else float(self.loads[week % len(self.loads)])

    def reserve_step(self, week: int) -> float:
        return 0.0 if self.reserve_steps is None else float(self.reserve_steps[week])

    def days(self, rng: Rng, per_week: int) -> list[int]:
        """Days of the week on which the exercise is trained."""
        if self.fixed_days is not None:
            return self.fixed_days
        if self.uneven:
            return sorted(int(day) for day in rng.choice(7, size=int(rng.integers(1, 4)), replace=False))
        if per_week >= 3:
            return [0, 2, 4]
        return sorted(int(day) for day in rng.choice([0, 1, 2, 3, 4, 5], size=per_week, replace=False))


def no_habits(_rng: Rng, _plan: Plan, _weeks: int) -> Habits:
    """The plan as it stands; draws nothing."""
    return Habits()


WEEKDAY_SD = 0.025  # of log capacity


def draw_weekdays(rng: Rng, plan: Plan, _weeks: int) -> Habits:
    """The same days every week, and each day better or worse than the others: what came before it, the hour, the sleep."""
    days = sorted(int(day) for day in rng.choice(6, size=plan.per_week, replace=False))
    return Habits(fixed_days=days, by_weekday=rng.normal(0, WEEKDAY_SD, 7))


WAVE = np.array([0.95, 1.0, 1.025])


def draw_habits(rng: Rng, plan: Plan, weeks: int) -> Habits:
    """Each habit in some series: a wave of loads, steps of reserve, two ranges in turn, any days of the week."""
    habits = Habits(uneven=rng.random() < 0.5)
    if rng.random() < 0.4:
        habits.loads = WAVE
    if rng.random() < 0.5:
        habits.reserve_steps = draw_reserve_steps(rng, weeks)
    if rng.random() < 0.4:
        habits.other_range = (plan.lowest + 4, plan.highest + 5)
    return habits


def draw_reserve_steps(rng: Rng, weeks: int) -> np.ndarray:
    """Two to four steps of one repetition up or down, at any week, never more than two from the plan."""
    steps = np.zeros(weeks)
    for _ in range(int(rng.integers(2, 5))):
        steps[int(rng.integers(4, weeks)) :] += rng.choice([-1.0, 1.0])
    return np.clip(steps, -2, 2)


def keep_bends(capacity: Capacity) -> Capacity:
    """Stretches change from one day to the next."""
    return capacity


FADE_WEEKS = 8


def fade_bends(capacity: Capacity) -> Capacity:
    """Stretches fade into each other; an onset is the week in which half of the change has come."""
    return capacity.smoothed(FADE_WEEKS)


@dataclass(frozen=True)
class Kind:
    """What a roster of this kind draws its lifters from."""

    settings: Settings = field(default_factory=Settings)
    draw_curve: Callable[[Rng, Settings, int], RepCurve] = LogCurve.draw
    pace: Pace = steady_pace
    shape: Callable[[Capacity], Capacity] = keep_bends
    draw_innovations: Callable[[Rng, int], np.ndarray] = draw_normal
    draw_day: Callable[[Rng, Settings, float, float], float] = draw_usual_day
    draw_habits: Callable[[Rng, Plan, int], Habits] = no_habits


def _steady_slopes() -> dict[str, float]:
    return {"novice": 1.0, "intermediate": 1.0, "advanced": 1.0}


DEFAULT = Settings()

KINDS = {
    "default": Kind(),
    # Another family of curves from load to repetitions, instead of ln(1 + R/c).
    "power_curve": Kind(draw_curve=draw_other_family),
    # Student's t with 3 degrees of freedom instead of the normal, long memory, lifters of very different steadiness.
    "heavy_tails": Kind(
        settings=replace(DEFAULT, noise_scale_sd=0.45, readiness_memory=0.85, typos=0.0),
        draw_innovations=draw_student,
        draw_day=draw_heavy_day,
    ),
    # Sets that end at the top of the range, waves of load, reserves that drift in steps, long breaks.
    "habits": Kind(
        settings=replace(DEFAULT, cap_share=0.9, layoff_share=0.6, layoff_weeks=(4, 11)),
        draw_habits=draw_habits,
    ),
    # Each day of the week is better or worse than the others, by about as much as a month's progress.
    "weekdays": Kind(draw_habits=draw_weekdays),
    # Progress that saturates and stalls that fade in: no point at which anything changes.
    "gentle": Kind(
        settings=replace(DEFAULT, slowing=_steady_slopes(), layoff_share=0.0),
        pace=fading_pace({"novice": 10.0, "intermediate": 20.0, "advanced": 60.0}),
        shape=fade_bends,
    ),
}
