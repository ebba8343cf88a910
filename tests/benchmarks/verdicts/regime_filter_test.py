#!/usr/bin/env python3
"""Tests of the numpy filter's steps against numerical integration and against cases worked by hand."""

from __future__ import annotations

import math
import sys
import unittest
from collections.abc import Callable
from pathlib import Path

import numpy as np
from scipy.integrate import quad
from scipy.stats import norm, t

sys.path.insert(0, str(Path(__file__).parent))

from observations import EXACT, LOWER, UPPER, Observations
from prototype import SHIPPED, easy_weeks, verdict
from regime_filter import DAY, LEVEL, STATES, Parameters, RegimeFilter, collapse, update

PRIOR_MEAN, PRIOR_SD, NOISE_SD = 0.40, 0.05, 0.03


def after(z: float, kind: int, nu: float = 3.5) -> tuple[float, float, float]:
    """Log-likelihood, mean and variance of the level after one set seen from the level alone."""
    mean, cov = np.zeros((1, 1, STATES)), np.zeros((1, 1, STATES, STATES))
    mean[0, 0, LEVEL], cov[0, 0, LEVEL, LEVEL] = PRIOR_MEAN, PRIOR_SD**2
    design = np.zeros((1, STATES))
    design[0, LEVEL] = 1
    likelihood = update(mean, cov, design, np.array([z]), np.array([NOISE_SD**2]), np.array([kind]), nu)
    return likelihood[0, 0], mean[0, 0, LEVEL], cov[0, 0, LEVEL, LEVEL]


def integrated(likelihood: Callable[[float], float]) -> tuple[float, float, float]:
    """The same by quadrature."""
    def moment(power: int) -> float:
        def inside(level: float) -> float:
            return level**power * norm.pdf(level, PRIOR_MEAN, PRIOR_SD) * likelihood(level)
        return quad(inside, PRIOR_MEAN - 10 * PRIOR_SD, PRIOR_MEAN + 10 * PRIOR_SD, epsabs=1e-13, limit=200)[0]

    whole, mean = moment(0), moment(1) / moment(0)
    return math.log(whole), mean, moment(2) / whole - mean**2


class UpdateTest(unittest.TestCase):
    def test_bounds_have_the_moments_that_integration_gives(self) -> None:
        for z in (0.30, 0.42, 0.55):
            lower = integrated(lambda level: norm.sf(z, level, NOISE_SD))
            upper = integrated(lambda level: norm.cdf(z, level, NOISE_SD))
            np.testing.assert_allclose(after(z, LOWER), lower, rtol=1e-7)
            np.testing.assert_allclose(after(z, UPPER), upper, rtol=1e-7)

    def test_an_exact_set_with_normal_noise_is_kalmans_update(self) -> None:
        # Student's t with very many degrees of freedom.
        total = PRIOR_SD**2 + NOISE_SD**2
        likelihood, mean, variance = after(0.45, EXACT, nu=1e7)
        self.assertAlmostEqual(likelihood, norm.logpdf(0.45, PRIOR_MEAN, math.sqrt(total)), places=5)
        self.assertAlmostEqual(mean, PRIOR_MEAN + PRIOR_SD**2 / total * 0.05, places=6)
        self.assertAlmostEqual(variance, PRIOR_SD**2 * NOISE_SD**2 / total, places=9)

    def test_an_exact_set_is_as_likely_as_students_t_of_that_variance_says(self) -> None:
        scale = math.sqrt((PRIOR_SD**2 + NOISE_SD**2) * 1.5 / 3.5)
        self.assertAlmostEqual(after(0.6, EXACT)[0], t.logpdf(0.6, 3.5, PRIOR_MEAN, scale), places=12)

    def test_an_outlier_moves_the_level_less_than_its_error_asks(self) -> None:
        near, far = after(0.50, EXACT)[1] - PRIOR_MEAN, after(2.40, EXACT)[1] - PRIOR_MEAN
        self.assertLess(far, 20 * near * 0.6)

    def test_a_lower_bound_far_below_changes_nothing(self) -> None:
        likelihood, mean, variance = after(-2.0, LOWER)
        self.assertAlmostEqual(likelihood, 0.0)
        self.assertAlmostEqual(mean, PRIOR_MEAN)
        self.assertAlmostEqual(variance, PRIOR_SD**2)


class CollapseTest(unittest.TestCase):
    def test_two_points_collapse_to_their_mean_and_spread(self) -> None:
        mean = np.array([[[0.0], [4.0]]])
        cov = np.array([[[[1.0]], [[1.0]]]])
        middle, spread = collapse(np.array([[0.75, 0.25]]), mean, cov)
        self.assertAlmostEqual(middle[0, 0], 1.0)
        self.assertAlmostEqual(spread[0, 0, 0], 1.0 + 0.75 * 1 + 0.25 * 9)


class PlantedTest(unittest.TestCase):
    """Noiseless logs of two sessions a week at one load."""

    def probabilities(self, slope: Callable[[int], float], weeks: int = 30) -> np.ndarray:
        seen = Observations.empty([("A", "row", "cable", "-")], weeks)
        seen.level[0] = 1
        level = 0.3
        for week in range(weeks):
            level += slope(week)
            for session in range(2):
                at = (0, week, session, 0)
                seen.day[at[:3]] = 7 * week + 3 * session
                seen.z[at], seen.sd[at], seen.kind[at] = level, 0.01, EXACT
        one = RegimeFilter(seen, Parameters.read(SHIPPED), np.ones(1))
        for week in range(weeks):
            one.step(week)
        self.assertGreater(one.cov[0, 0, 0, DAY, DAY], 0)
        return one.weights()[0].sum(1)

    def test_planted_progress_is_seen_to_rise(self) -> None:
        self.assertGreater(self.probabilities(lambda _week: 0.006)[0], 0.8)

    def test_a_planted_stall_is_called_one(self) -> None:
        stalled = self.probabilities(lambda week: 0.006 if week < 15 else 0.0)
        self.assertEqual(verdict(stalled, 1, effort_unknown=False, easy=False)[0], "stalled")

    def test_a_planted_fall_is_seen(self) -> None:
        self.assertGreater(self.probabilities(lambda week: 0.006 if week < 20 else -0.012)[2], 0.5)


class VerdictTest(unittest.TestCase):
    def test_rules_are_taken_in_their_order(self) -> None:
        cases = (
            ((0.70, 0.20, 0.10), False, False, "progressing"),
            ((0.70, 0.20, 0.10), True, False, "cant_tell"),
            ((0.95, 0.05, 0.00), True, True, "progressing"),
            ((0.70, 0.20, 0.10), False, True, "holding"),
            ((0.50, 0.40, 0.10), False, False, "holding"),
            ((0.20, 0.60, 0.20), False, False, "stalled"),
            ((0.20, 0.45, 0.35), False, False, "slipping"),
        )
        for probabilities, effort, easy, expected in cases:
            self.assertEqual(verdict(np.array(probabilities), 1, effort, easy)[0], expected, probabilities)

    def test_three_weeks_after_a_long_gap_are_easy(self) -> None:
        seen = Observations.empty([("A", "row", "cable", "-")], 10)
        for day in (0, 7, 35, 42, 49, 56):
            seen.day[0, day // 7, 0] = day
        self.assertEqual(np.flatnonzero(easy_weeks(seen)[0]).tolist(), [5, 6, 7])


if __name__ == "__main__":
    unittest.main()
