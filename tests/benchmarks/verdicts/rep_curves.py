"""How many repetitions a capacity allows with a load: the curve of one lifter in one exercise.

A curve answers `reps(log_capacity, load)`, the real-valued repetitions to failure, and its inverse
`load(log_capacity, reps)` before rounding to plates. Capacity is the largest load lifted once, near enough.

    curve = LogCurve.draw(rng, settings, leg=0)
    curve.reps(math.log(100), 75)  # about 11.5
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from roster_settings import Settings

FEWEST_REPS_AT_75 = 5.0
REFERENCE_SHARE = 0.75
MOST_REPS = 60.0  # where a curve has no end of its own


class RepCurve(Protocol):
    """A curve, with the two figures by which params.csv describes it: those of ln(1 + R/c) = elasticity * ln(C/w)."""

    scale: float
    elasticity: float

    def reps(self, log_capacity: float, load: float) -> float: ...

    def load(self, log_capacity: float, reps: float) -> float: ...

    def of_other_variant(self, rng: np.random.Generator, settings: Settings, leg: int) -> RepCurve: ...


def draw_reps_at_75(rng: np.random.Generator, settings: Settings, leg: int) -> float:
    """Repetitions to failure at 75 % of the maximum, of one lifter in one exercise."""
    mean, spread = settings.reps_at_75
    return max(FEWEST_REPS_AT_75, rng.normal(mean + settings.reps_at_75_leg * leg, spread))


@dataclass(frozen=True)
class LogCurve:
    """ln(1 + R/c) grows in proportion to ln(capacity/load): the family that the engine assumes, with c of its own."""

    scale: float
    elasticity: float

    @classmethod
    def through(cls, reps_at_75: float, scale: float) -> LogCurve:
        return cls(scale, math.log(1 + reps_at_75 / scale) / math.log(1 / REFERENCE_SHARE))

    @classmethod
    def draw(cls, rng: np.random.Generator, settings: Settings, leg: int) -> LogCurve:
        reps_at_75 = draw_reps_at_75(rng, settings, leg)
        return cls.through(reps_at_75, rng.uniform(*settings.curve_scale))

    def of_other_variant(self, rng: np.random.Generator, settings: Settings, leg: int) -> LogCurve:
        return LogCurve.through(draw_reps_at_75(rng, settings, leg), self.scale)

    def reps(self, log_capacity: float, load: float) -> float:
        return self.scale * (math.exp(self.elasticity * (log_capacity - math.log(load))) - 1)

    def load(self, log_capacity: float, reps: float) -> float:
        return math.exp(log_capacity - math.log(1 + reps / self.scale) / self.elasticity)


ENGINE_SCALE = 30.0  # the c in which the other families are described, for want of one


def _elasticity(reps: float, reps_per_log_load: float) -> float:
    """Slope of ln(1 + R/30) against -ln(load) where the curve passes through `reps`."""
    return reps_per_log_load / (ENGINE_SCALE + reps)


@dataclass(frozen=True)
class PowerCurve:
    """R = factor * (capacity/load - 1)^exponent. An exponent of 1 would be a member of LogCurve's family."""

    factor: float
    exponent: float
    scale: float = ENGINE_SCALE
    elasticity: float = 1.0

    @classmethod
    def through(cls, reps_at_75: float, exponent: float) -> PowerCurve:
        excess = 1 / REFERENCE_SHARE - 1
        slope = reps_at_75 * exponent * (1 + excess) / excess
        return cls(reps_at_75 / excess**exponent, exponent, elasticity=_elasticity(reps_at_75, slope))

    def of_other_variant(self, rng: np.random.Generator, settings: Settings, leg: int) -> PowerCurve:
        return PowerCurve.through(draw_reps_at_75(rng, settings, leg), self.exponent)

    def reps(self, log_capacity: float, load: float) -> float:
        excess = math.exp(log_capacity) / load - 1
        return self.factor * max(0.0, excess) ** self.exponent

    def load(self, log_capacity: float, reps: float) -> float:
        return math.exp(log_capacity) / (1 + (reps / self.factor) ** (1 / self.exponent))


@dataclass(frozen=True)
class DecayCurve:
    """load/capacity = floor + (1 - floor) * exp(-R/decay): lighter than the floor, sets end at MOST_REPS."""

    floor: float
    decay: float
    scale: float = ENGINE_SCALE
    elasticity: float = 1.0

    @classmethod
    def through(cls, reps_at_75: float, floor: float) -> DecayCurve:
        above = REFERENCE_SHARE - floor
        decay = -reps_at_75 / math.log(above / (1 - floor))
        return cls(floor, decay, elasticity=_elasticity(reps_at_75, decay * REFERENCE_SHARE / above))

    def of_other_variant(self, rng: np.random.Generator, settings: Settings, leg: int) -> DecayCurve:
        return DecayCurve.through(draw_reps_at_75(rng, settings, leg), self.floor)

    def reps(self, log_capacity: float, load: float) -> float:
        above = load / math.exp(log_capacity) - self.floor
        if above <= 0:
            return MOST_REPS
        return min(MOST_REPS, -self.decay * math.log(above / (1 - self.floor)))

    def load(self, log_capacity: float, reps: float) -> float:
        share = self.floor + (1 - self.floor) * math.exp(-reps / self.decay)
        return math.exp(log_capacity) * share


POWER_EXPONENTS = (0.7, 1.3)
DECAY_FLOORS = (0.30, 0.45)


def draw_other_family(rng: np.random.Generator, settings: Settings, leg: int) -> RepCurve:
    """A curve that is no member of the engine's family: half of the lifters have either."""
    reps_at_75 = draw_reps_at_75(rng, settings, leg)
    if rng.random() < 0.5:
        return PowerCurve.through(reps_at_75, rng.uniform(*POWER_EXPONENTS))
    return DecayCurve.through(reps_at_75, rng.uniform(*DECAY_FLOORS))
