"""Limits that named figures must keep: {"name": {"min": 0.4, "max": 1.2}}, either or both."""

from __future__ import annotations

import math


def missed_limits(values: dict[str, float], limits: dict[str, dict[str, float]]) -> list[str]:
    """A line for each limit that isn't kept; a figure that isn't there or isn't a number keeps none."""
    return [line for name, bounds in limits.items() for line in _missed(name, values.get(name), bounds)]


def _missed(name: str, value: float | None, bounds: dict[str, float]) -> list[str]:
    unknown = set(bounds) - {"min", "max"}
    if unknown or not bounds:
        return [f"{name}: a limit is min, max or both, not {', '.join(sorted(unknown)) or 'nothing'}"]
    if value is None or math.isnan(value):
        return [f"{name}: there is no such figure"]
    missed = []
    if value < bounds.get("min", -math.inf):
        missed.append(f"{name}: {value:.4f} is below {bounds['min']:g}")
    if value > bounds.get("max", math.inf):
        missed.append(f"{name}: {value:.4f} is above {bounds['max']:g}")
    return missed
