"""A mixture of Kalman filters over "rising, flat or falling, since how many weeks", for many lines at once.

State of a hypothesis: level, slope a week, weekly readiness, day effect, load elasticity, fatigue of a set. Every line
is filtered under three noise scales, which are weighed by how well they explained the log so far. Written from the
model, not from the C++ engine, so that the two can be held against each other.

    weekly = run(observations, Parameters.read(path))
    weekly.probabilities[line, week]  # rising, flat, falling

References: Harrison and Stevens 1976 (multi-process models); Allik et al. 2016 (bounds in a Kalman filter).
"""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

import numpy as np
from scipy.special import gammaln, log_ndtr

from observations import EXACT, LOWER, NONE, SESSIONS, SETS, UPPER, Observations

STATES = 6
LEVEL, SLOPE, READY, DAY, ELASTICITY, FATIGUE = range(STATES)
MODES = 3
RISING, FLAT, FALLING = range(MODES)

NOISE_SCALES = (0.7, 1.0, 1.4)
NOISE_SHARES = (0.25, 0.5, 0.25)
LEVEL_SD = 0.15
LONG_GAP = 2.3  # weeks without a session over which no slope is carried
LOST_A_WEEK = 0.005
GAP_SD = 0.04
SMALLEST = 1e-300


@dataclass(frozen=True)
class Parameters:
    """Hyper-parameters in units of z; slopes a week. The names are those of the JSON file."""

    sd_day: float
    sd_set: float
    sd_u: float
    rho: float
    q_a: float
    lam_m: float
    lam_s: float
    phi_m: float
    phi_s: float
    nu: float
    b_m: tuple[float, ...]  # of rising, by level
    b_s: tuple[float, ...]
    reg_m: float
    reg_s: float
    flat_s: float
    haz: tuple[tuple[float, ...], ...]
    p0: tuple[float, ...]
    rsd_mult: float
    jump: float
    young: int
    young_mult: float
    off_p: float
    off_m: float
    off_sd: float
    L: int = 8

    @classmethod
    def read(cls, file: Path) -> Parameters:
        values = json.loads(file.read_text(encoding="utf-8"))
        known = cls.__dataclass_fields__
        return cls(**{name: value for name, value in values.items() if name in known})


@dataclass
class Weekly:
    """By line and week; NaN until a line's first session."""

    probabilities: np.ndarray  # last axis: rising, flat, falling
    stall_weeks: np.ndarray  # mean age of the hypotheses that don't rise


class Mixture(NamedTuple):
    """Hypotheses of some lines, by line, mode and age."""

    mean: np.ndarray
    cov: np.ndarray
    log_weight: np.ndarray

    def like(self) -> Mixture:
        """One of the same shape, without any weight."""
        return Mixture(
            np.zeros_like(self.mean), np.zeros_like(self.cov), np.full_like(self.log_weight, -np.inf))


def collapse(weights: np.ndarray, mean: np.ndarray, cov: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """The Gaussian of the same moments as the mixture over axis 1; weights sum to 1 there."""
    middle = np.einsum("nh,nhi->ni", weights, mean)
    off = mean - middle[:, None]
    spread = cov + off[..., :, None] * off[..., None, :]
    return middle, np.einsum("nh,nhij->nij", weights, spread)


def _exact(error: np.ndarray, total: np.ndarray, noise: np.ndarray, nu: float) -> tuple[np.ndarray, ...]:
    """Log-likelihood under Student's t, gain on the error, shrinkage of the covariance; outliers weigh less."""
    ratio = error * error / total
    constant = gammaln((nu + 1) / 2) - gammaln(nu / 2)
    density = -0.5 * np.log(nu * math.pi * total * (nu - 2) / nu) - (nu + 1) / 2 * np.log1p(ratio / (nu - 2))
    weight = np.minimum(1.0, (nu + 1) / (nu - 2 + ratio))
    total = total + noise * (1 / weight - 1)
    return constant + density, error / total, 1 / total


def _bound(error: np.ndarray, total: np.ndarray, sign: float) -> tuple[np.ndarray, ...]:
    """The same for a lower (sign 1) or an upper (sign -1) bound, by the moments of the truncated normal."""
    sd = np.sqrt(total)
    alpha = sign * error / sd
    log_share = log_ndtr(-alpha)
    mills = np.exp(-0.5 * alpha * alpha - 0.5 * math.log(2 * math.pi) - log_share)
    return log_share, sign * mills / sd, np.clip(mills * (mills - alpha), 0, 1) / total


def update(
    mean: np.ndarray, cov: np.ndarray, design: np.ndarray, z: np.ndarray, noise: np.ndarray, kind: np.ndarray,
    nu: float,
) -> np.ndarray:
    """One set of each line: changes mean (n,h,6) and cov (n,h,6,6), returns the log-likelihoods (n,h)."""
    along = np.einsum("nhij,nj->nhi", cov, design)
    total = np.einsum("nhi,ni->nh", along, design) + noise[:, None]
    error = z[:, None] - np.einsum("nhi,ni->nh", mean, design)
    result = [np.empty_like(total) for _ in range(3)]
    for which in (EXACT, LOWER, UPPER):
        rows = kind == which
        if not rows.any():
            continue
        if which == EXACT:
            parts = _exact(error[rows], total[rows], noise[rows][:, None], nu)
        else:
            parts = _bound(error[rows], total[rows], 1.0 if which == LOWER else -1.0)
        for whole, part in zip(result, parts):
            whole[rows] = part
    likelihood, gain, shrink = result
    mean += along * gain[..., None]
    cov -= along[..., :, None] * along[..., None, :] * shrink[..., None, None]
    return likelihood


class RegimeFilter:
    """All lines of a roster, each under its own noise scale, from week to week."""

    def __init__(self, observations: Observations, parameters: Parameters, noise: np.ndarray) -> None:
        self.seen = observations
        self.p = parameters
        lines = len(observations.level)
        self.ages = parameters.L
        self.var_day = (parameters.sd_day * noise) ** 2
        self.var_set = (parameters.sd_set * noise) ** 2
        self.var_ready = (parameters.sd_u * noise) ** 2
        rising = np.array(parameters.b_m)[observations.level], np.array(parameters.b_s)[observations.level]
        self.slope_mean = np.stack([rising[0], np.zeros(lines), np.full(lines, parameters.reg_m)], 1)
        self.slope_sd = np.stack(
            [rising[1], np.full(lines, parameters.flat_s), np.full(lines, parameters.reg_s)], 1)
        self.mean = np.zeros((lines, MODES, self.ages, STATES))
        self.cov = np.zeros((lines, MODES, self.ages, STATES, STATES))
        self.log_weight = np.full((lines, MODES, self.ages), -np.inf)
        self.started = np.zeros(lines, bool)
        self.last_day = np.zeros(lines)
        self.log_likelihood = np.zeros(lines)

    def step(self, week: int) -> None:
        """Begins a week and takes its sessions."""
        lines = np.flatnonzero(self.started)
        if len(lines):
            self._forget_readiness(lines)
            self._age(lines)
        for session in range(SESSIONS):
            trained = (self.seen.day[:, week, session] >= 0) & (self.seen.kind[:, week, session] != NONE).any(1)
            lines = np.flatnonzero(trained)
            if len(lines):
                self._start(lines[~self.started[lines]], week, session)
                self._take(lines, week, session)

    def weights(self) -> np.ndarray:
        """Probability of every hypothesis, NaN for lines that haven't begun."""
        return np.where(self.started[:, None, None], np.exp(self.log_weight), np.nan)

    def _forget_readiness(self, lines: np.ndarray) -> None:
        rho = self.p.rho
        self.mean[lines, :, :, READY] *= rho
        self.cov[lines, :, :, READY, :] *= rho
        self.cov[lines, :, :, :, READY] *= rho
        self.cov[lines, :, :, READY, READY] += (self.var_ready[lines] * (1 - rho**2))[:, None, None]

    def _age(self, lines: np.ndarray) -> None:
        """Every hypothesis grows a week older or turns into a new one of another mode."""
        old = Mixture(self.mean[lines], self.cov[lines], self.log_weight[lines])
        new = old.like()
        hazards = np.array(self.p.haz)
        ends = 1 - np.diag(hazards)
        leave = ends[:, None] * np.where(np.arange(self.ages) < self.p.young, self.p.young_mult, 1.0)
        self._grow_older(old, leave, new)
        for mode in range(MODES):
            turn = hazards[:, mode] / np.maximum(ends, 1e-12)
            turn[mode] = 0
            coming = np.exp(old.log_weight) * (leave * turn[:, None])
            self._begin_mode(lines, mode, old, coming, new)
        total = np.logaddexp.reduce(new.log_weight.reshape(len(lines), -1), 1)[:, None, None]
        self.mean[lines], self.cov[lines], self.log_weight[lines] = new.mean, new.cov, new.log_weight - total

    def _grow_older(self, old: Mixture, leave: np.ndarray, new: Mixture) -> None:
        """Moves what stays by one age; the two oldest ages become one."""
        last = self.ages - 1
        stay = np.log1p(-leave)
        new.mean[:, :, 1:last] = old.mean[:, :, : last - 1]
        new.cov[:, :, 1:last] = old.cov[:, :, : last - 1]
        new.log_weight[:, :, 1:last] = old.log_weight[:, :, : last - 1] + stay[None, :, : last - 1]
        oldest = np.exp(old.log_weight[:, :, last - 1 :])
        total = oldest.sum(-1, keepdims=True)
        shares = np.where(total > 0, oldest / np.maximum(total, SMALLEST), 0.5)
        for mode in range(MODES):
            new.mean[:, mode, last], new.cov[:, mode, last] = collapse(
                shares[:, mode], old.mean[:, mode, last - 1 :], old.cov[:, mode, last - 1 :])
            new.log_weight[:, mode, last] = np.log(np.maximum(total[:, mode, 0], SMALLEST)) + stay[mode, last]

    def _begin_mode(self, lines: np.ndarray, mode: int, old: Mixture, coming: np.ndarray, new: Mixture) -> None:
        """What comes from the other modes becomes one hypothesis of age 0, its slope as if nothing were known."""
        count = len(lines)
        coming = coming.reshape(count, -1)
        total = coming.sum(1, keepdims=True)
        middle, spread = collapse(coming / np.maximum(total, SMALLEST), old.mean.reshape(count, -1, STATES),
                                  old.cov.reshape(count, -1, STATES, STATES))
        middle[:, SLOPE] = self.slope_mean[lines, mode]
        spread[:, LEVEL, LEVEL] += self.p.jump**2
        spread[:, SLOPE, :] = 0
        spread[:, :, SLOPE] = 0
        spread[:, SLOPE, SLOPE] = self.slope_sd[lines, mode] ** 2
        new.mean[:, mode, 0], new.cov[:, mode, 0] = middle, spread
        new.log_weight[:, mode, 0] = np.log(np.maximum(total[:, 0], SMALLEST))

    def _start(self, lines: np.ndarray, week: int, session: int) -> None:
        """Lines with their first session: the level is what its first set showed."""
        if not len(lines):
            return
        p = self.p
        first = (self.seen.kind[lines, week, session] != NONE).argmax(1)
        level = self.seen.z[lines, week, session, first] + p.lam_m * self.seen.x[lines, week, session, first]
        for mode in range(MODES):
            self._start_mode(lines, mode, level)
            self.log_weight[lines, mode, 0] = math.log(p.p0[mode])
        # Hypotheses of no weight keep a proper Gaussian, so that collapsing them stays finite.
        self.mean[lines, :, 1:] = self.mean[lines, RISING, 0][:, None, None]
        self.cov[lines, :, 1:] = self.cov[lines, RISING, 0][:, None, None]
        self.started[lines] = True
        self.last_day[lines] = self.seen.day[lines, week, session]

    def _start_mode(self, lines: np.ndarray, mode: int, level: np.ndarray) -> None:
        p = self.p
        mean = np.zeros((len(lines), STATES))
        mean[:, LEVEL], mean[:, SLOPE] = level, self.slope_mean[lines, mode]
        mean[:, ELASTICITY], mean[:, FATIGUE] = p.lam_m, p.phi_m
        variance = np.zeros((len(lines), STATES))
        variance[:, LEVEL], variance[:, SLOPE] = LEVEL_SD**2, self.slope_sd[lines, mode] ** 2
        variance[:, READY], variance[:, DAY] = self.var_ready[lines], self.var_day[lines]
        variance[:, ELASTICITY], variance[:, FATIGUE] = p.lam_s**2, p.phi_s**2
        self.mean[lines, mode, 0] = mean
        self.cov[lines, mode, 0] = variance[:, :, None] * np.eye(STATES)

    def _take(self, lines: np.ndarray, week: int, session: int) -> None:
        """A session: under the usual day and under an off day, which are then merged."""
        count = len(lines)
        mean = self.mean[lines].reshape(count, -1, STATES)
        cov = self.cov[lines].reshape(count, -1, STATES, STATES)
        self._pass_time(lines, mean, cov, self.seen.day[lines, week, session])
        both_mean = np.concatenate([mean, mean], 1)
        both_cov = np.concatenate([cov, cov], 1)
        off = slice(mean.shape[1], None)
        both_mean[:, off, DAY] = self.p.off_m
        both_cov[:, off, DAY, DAY] += self.p.off_sd**2
        likelihood = self._take_sets(lines, week, session, both_mean, both_cov)
        likelihood = likelihood.reshape(count, 2, -1) + np.log([1 - self.p.off_p, self.p.off_p])[:, None]
        merged = np.logaddexp(likelihood[:, 0], likelihood[:, 1])
        share = np.exp(likelihood - merged[:, None])
        self._merge_days(lines, both_mean, both_cov, share)
        log_weight = self.log_weight[lines].reshape(count, -1) + merged
        total = np.logaddexp.reduce(log_weight, 1)
        self.log_likelihood[lines] += total
        self.log_weight[lines] = (log_weight - total[:, None]).reshape(count, MODES, -1)

    def _pass_time(self, lines: np.ndarray, mean: np.ndarray, cov: np.ndarray, day: np.ndarray) -> None:
        weeks = (day - self.last_day[lines]) / 7.0
        self.last_day[lines] = day
        gap = weeks > LONG_GAP
        carried = np.where(gap, 0, weeks)[:, None]
        mean[:, :, LEVEL] += mean[:, :, SLOPE] * carried
        cov[:, :, LEVEL, :] += carried[..., None] * cov[:, :, SLOPE, :]
        cov[:, :, :, LEVEL] += carried[..., None] * cov[:, :, :, SLOPE]
        cov[:, :, LEVEL, LEVEL] += (self.p.q_a**2 * weeks)[:, None]
        mean[gap, :, LEVEL] -= LOST_A_WEEK * np.maximum(0, weeks[gap] - 2)[:, None]
        cov[gap, :, LEVEL, LEVEL] += GAP_SD**2
        mean[:, :, DAY] = 0
        cov[:, :, DAY, :] = 0
        cov[:, :, :, DAY] = 0
        cov[:, :, DAY, DAY] = self.var_day[lines][:, None]

    def _take_sets(self, lines: np.ndarray, week: int, session: int, mean: np.ndarray, cov: np.ndarray) -> np.ndarray:
        likelihood = np.zeros(mean.shape[:2])
        for number in range(SETS):
            kind = self.seen.kind[lines, week, session, number]
            rows = np.flatnonzero(kind != NONE)
            if not len(rows):
                continue
            at = (lines[rows], week, session, number)
            design = np.zeros((len(rows), STATES))
            design[:, [LEVEL, READY, DAY]] = 1
            design[:, ELASTICITY] = -self.seen.x[at]
            design[:, FATIGUE] = -self.seen.tired[at]
            noise = self.var_set[lines[rows]] + (self.p.rsd_mult * self.seen.sd[at]) ** 2
            some_mean, some_cov = mean[rows], cov[rows]
            likelihood[rows] += update(some_mean, some_cov, design, self.seen.z[at], noise, kind[rows], self.p.nu)
            mean[rows], cov[rows] = some_mean, some_cov
        return likelihood

    def _merge_days(self, lines: np.ndarray, mean: np.ndarray, cov: np.ndarray, share: np.ndarray) -> None:
        half = mean.shape[1] // 2
        between = mean[:, half:] - mean[:, :half]
        usual, off = share[:, 0][..., None], share[:, 1][..., None]
        middle = mean[:, :half] + off * between
        spread = usual[..., None] * cov[:, :half] + off[..., None] * cov[:, half:]
        spread += (usual * off)[..., None] * between[..., :, None] * between[..., None, :]
        self.mean[lines] = middle.reshape(self.mean[lines].shape)
        self.cov[lines] = spread.reshape(self.cov[lines].shape)


def _filter(observations: Observations, parameters: Parameters, noise: float) -> tuple[np.ndarray, ...]:
    """Probabilities, mean age of what doesn't rise, and cumulative log-likelihood under one noise scale."""
    lines, weeks = observations.day.shape[:2]
    one = RegimeFilter(observations, parameters, np.full(lines, noise))
    probabilities = np.full((lines, weeks, MODES), np.nan)
    stall_weeks = np.full((lines, weeks), np.nan)
    explained = np.zeros((lines, weeks))
    for week in range(weeks):
        one.step(week)
        weight = one.weights()
        probabilities[:, week] = weight.sum(2)
        stalled = weight[:, FLAT:].sum(1)
        stall_weeks[:, week] = stalled @ np.arange(one.ages) / np.maximum(stalled.sum(1), 1e-12)
        explained[:, week] = one.log_likelihood
    return probabilities, stall_weeks, explained


def run(observations: Observations, parameters: Parameters) -> Weekly:
    """All lines under all noise scales, averaged by the scales' likelihood up to each week."""
    runs = [_filter(observations, parameters, noise) for noise in NOISE_SCALES]
    log_share = np.stack([explained for _, _, explained in runs]) + np.log(NOISE_SHARES)[:, None, None]
    share = np.exp(log_share - np.logaddexp.reduce(log_share, 0))
    return Weekly(
        sum(weight[..., None] * one[0] for weight, one in zip(share, runs)),
        sum(weight * one[1] for weight, one in zip(share, runs)),
    )
