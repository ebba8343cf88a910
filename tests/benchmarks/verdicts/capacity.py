"""What a simulated lifter could do on every day, and the plan of stretches behind it.

A year is a row of stretches: progress, stall, regress, maint (a planned hold), layoff, regain. `plan_stretches` draws
them, `Capacity` holds them week by week together with the log capacity day by day.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np

from roster_settings import DAYS, Settings

# (level, slope in per cent a week, day) -> slope that day
Pace = Callable[[str, float, int], float]


class Stretch(NamedTuple):
    """Weeks from start to before end in which a lift does the same thing."""

    start: int
    end: int
    kind: str
    slope: float  # per cent of load a week


def draw_weeks(rng: np.random.Generator, lengths: tuple[int, int]) -> int:
    """Geometric extra weeks over the fewest."""
    mean, fewest = lengths
    return fewest + int(rng.geometric(1.0 / (mean + 1.0)) - 1)


class _Planner:
    """Draws one stretch after the other; `base` is the slope of the next stretch of progress."""

    def __init__(self, rng: np.random.Generator, level: str, settings: Settings) -> None:
        self.rng = rng
        self.level = level
        self.settings = settings
        self.base = rng.uniform(*settings.slope[level])

    def draw(self, kind: str) -> tuple[int, float, str]:
        """Weeks and slope of a stretch of this kind, and the kind that follows."""
        rng, settings = self.rng, self.settings
        if kind == "progress":
            weeks = draw_weeks(rng, settings.progress_weeks)
            slope = self.base * rng.uniform(0.75, 1.25)
            self.base *= settings.slowing[self.level]
            shares = [0.72, 0.28 - settings.hold_share, settings.hold_share]
            return weeks, slope, str(rng.choice(["stall", "regress", "maint"], p=shares))
        if kind == "stall":
            weeks = draw_weeks(rng, settings.stall_weeks)
            slope = rng.normal(0, 0.02)
            return weeks, slope, str(rng.choice(["progress", "regress"], p=[0.82, 0.18]))
        if kind == "maint":
            return draw_weeks(rng, settings.hold_weeks), 0.0, "progress"
        weeks = draw_weeks(rng, settings.regress_weeks)
        slope = rng.uniform(*settings.regress)
        return weeks, slope, str(rng.choice(["progress", "stall"], p=[0.6, 0.4]))

    def first_kind(self, share_of_progress: float) -> str:
        return "progress" if self.rng.random() < share_of_progress else "stall"

    def draw_layoff(self, week: int) -> tuple[Stretch, Stretch]:
        """Some weeks without training, and the weeks in which four fifths of what was lost come back."""
        weeks = int(self.rng.integers(*self.settings.layoff_weeks))
        loss = -(0.2 if weeks <= 2 else 0.8)
        back = max(2, weeks // 2 + 1)
        layoff = Stretch(week, week + weeks, "layoff", loss)
        return layoff, Stretch(layoff.end, layoff.end + back, "regain", -loss * weeks / back * 0.8)


def plan_stretches(rng: np.random.Generator, level: str, weeks: int, settings: Settings) -> list[Stretch]:
    """The stretches of a year, cut at its end."""
    stretches: list[Stretch] = []
    week = 0
    planner = _Planner(rng, level, settings)
    kind = planner.first_kind(0.8)
    layoff_at = int(rng.integers(14, weeks - 6)) if rng.random() < settings.layoff_share else None
    while week < weeks:
        if layoff_at is not None and week >= layoff_at:
            stretches.extend(planner.draw_layoff(week))
            week = stretches[-1].end
            layoff_at = None
            kind = planner.first_kind(0.7)
            continue
        length, slope, following = planner.draw(kind)
        if layoff_at is not None and week < layoff_at < week + length:
            length = layoff_at - week
        stretches.append(Stretch(week, week + length, kind, slope))
        week += length
        kind = following
    return [cut_at(stretch, weeks) for stretch in stretches if stretch.start < weeks]


def cut_at(stretch: Stretch, weeks: int) -> Stretch:
    """The stretch, ending with the last week at the latest."""
    return stretch._replace(end=min(stretch.end, weeks))


def steady_pace(_level: str, slope: float, _day: int) -> float:
    """A stretch keeps its slope."""
    return slope


@dataclass
class Capacity:
    """`by_week[w]`: the stretch week w belongs to; `by_day[d]`: log capacity at the start of day d."""

    by_week: list[Stretch]
    by_day: np.ndarray
    bends_sharply: bool = True

    @classmethod
    def along(cls, stretches: list[Stretch], start: float, level: str, pace: Pace) -> Capacity:
        weeks = stretches[-1].end
        by_day = np.zeros(weeks * DAYS + 1)
        by_week: list[Stretch] = []
        level_now = start
        for stretch in stretches:
            by_week.extend([stretch] * (stretch.end - stretch.start))
            for day in range(stretch.start * DAYS, stretch.end * DAYS):
                by_day[day] = level_now
                level_now += pace(level, stretch.slope, day) / 100 / DAYS
        by_day[-1] = level_now
        return cls(by_week, by_day)

    def freeze(self, start: int, end: int) -> None:
        """Makes weeks from start to before end a stall, after which everything goes on from there."""
        frozen = self.by_day[start * DAYS]
        self.by_day[start * DAYS : end * DAYS] = frozen
        self.by_day[end * DAYS :] -= self.by_day[min(end * DAYS, len(self.by_day) - 1)] - frozen
        self.by_week[start:end] = [Stretch(start, end, "stall", 0.0)] * (end - start)
        for week, stretch in enumerate(self.by_week):
            if week < start < stretch.end:
                self.by_week[week] = stretch._replace(end=start)
            if week >= end > stretch.start:
                self.by_week[week] = stretch._replace(start=end)

    def smoothed(self, weeks: int) -> Capacity:
        """The same with every bend spread over so many weeks, its middle where the bend was."""
        half = weeks * DAYS // 2
        window = np.hanning(2 * half + 3)[1:-1]
        ends = np.arange(1, half + 1)
        before = self.by_day[0] - ends[::-1] * (self.by_day[1] - self.by_day[0])
        after = self.by_day[-1] + ends * (self.by_day[-1] - self.by_day[-2])
        padded = np.concatenate([before, self.by_day, after])
        by_day = np.convolve(padded, window / window.sum(), mode="valid")
        return replace(self, by_day=by_day, bends_sharply=False)

    def slope_in(self, week: int) -> float:
        """What the week gains, in per cent of load."""
        if self.bends_sharply:
            return self.by_week[week].slope
        return 100 * (self.by_day[(week + 1) * DAYS] - self.by_day[week * DAYS])


def fading_pace(months: dict[str, float]) -> Pace:
    """Progress that saturates: the slope falls by a factor e in a level's number of months of 30 days."""

    def pace(level: str, slope: float, day: int) -> float:
        return slope * math.exp(-day / (30 * months[level])) if slope > 0 else slope

    return pace
