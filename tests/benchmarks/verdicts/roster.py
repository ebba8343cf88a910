#!/usr/bin/env python3
"""Simulates a roster of lifters whose true state is known, to judge the verdict engine by.

    roster.py --seed 11 --athletes 120 --weeks 52 --out DIR [--kind default]

writes
    DIR/log.csv     athlete,date,exercise,variant,grip,load_kg,set_no,reps,partial_reps,rir,marks
    DIR/truth.csv   one row a week of each line (athlete, exercise, variant, grip): what was really so
    DIR/params.csv  one row a line: every parameter that was drawn for it

Marks: S short range, M momentum, E dropped lowering, D planned low effort. true_state is one of progressing, holding,
stalled, regressing, cannot_tell, none. The same arguments give the same bytes; recorded figures depend on that, so the
order of the random draws is not to be changed.
"""

from __future__ import annotations

import argparse
import csv
import datetime
import math
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from capacity import Capacity, plan_stretches
from roster_kinds import KINDS, Habits, Kind, readiness
from roster_settings import DAYS, EXERCISES, FIRST_DAY, STRENGTH, Exercise
from training import (
    BACKOFF_SHARE, DELOAD_RESERVE, DELOAD_SHARE, FEWEST_REPS, Effort, Lifter, Program, draw_episode, draw_lifter,
    draw_plan, lighter, loadable, perform,
)

FEWEST_WEEKS = 27  # a change of variant falls between week 16 and ten weeks before the end

LOG_COLUMNS = "athlete,date,exercise,variant,grip,load_kg,set_no,reps,partial_reps,rir,marks"
TRUTH_COLUMNS = (
    "athlete,exercise,variant,grip,week,true_state,underlying_state,onset_week,contaminated,slope_pct_wk,"
    "log_capacity,exposures,planned,level,segment,reason"
)
PARAMS_COLUMNS = (
    "athlete,exercise,variant,grip,level,lambda,curve_c,fatigue,noise_scale,rir_bias,per_week,sets,lo,hi,target_rir,"
    "contam_mode,mark_sens,effort_drift,rir_never,variant_change_week"
)

STATES = {
    "progress": "progressing", "stall": "stalled", "regress": "regressing", "maint": "holding", "layoff": "none",
    "regain": "holding",
}
# Weeks in which a stretch is too young to be called by its name.
YOUNG = {"stalled": 3, "regressing": 2}


@dataclass
class Roster:
    """The rows of the three files."""

    log: list[tuple] = field(default_factory=list)
    truth: list[tuple] = field(default_factory=list)
    params: list[tuple] = field(default_factory=list)


@dataclass
class Week:
    """What a week's sessions added up to."""

    sessions: int = 0
    sets: int = 0
    below_standard: int = 0

    def was_below_standard(self) -> bool:
        return self.sets > 0 and self.below_standard / self.sets >= 1 / 3


class Line:
    """One exercise of one lifter through the year; draws everything about it, then trains week by week."""

    def __init__(self, rng: np.random.Generator, kind: Kind, lifter: Lifter, exercise: Exercise, weeks: int) -> None:
        self.rng = rng
        self.kind = kind
        self.settings = kind.settings
        self.lifter = lifter
        self.exercise = exercise
        self.weeks = weeks
        start = math.log(exercise.usual_max * STRENGTH[lifter.level]) + rng.normal(0, exercise.spread)
        stretches = plan_stretches(rng, lifter.level, weeks, self.settings)
        capacity = Capacity.along(stretches, start, lifter.level, kind.pace)
        self.curve = kind.draw_curve(rng, self.settings, exercise.leg)
        self.fatigue = max(0.005, rng.normal(*self.settings.fatigue))
        self.plan = draw_plan(rng, self.settings)
        self.episode = draw_episode(rng, weeks, self.settings)
        if self.episode is not None and self.episode.mode != "mixed":
            # Lowered standards are what hides a plateau.
            capacity.freeze(self.episode.start, self.episode.end)
        self.capacity = kind.shape(capacity)
        self._draw_surroundings()
        self._start_programs()

    def _draw_surroundings(self) -> None:
        rng, settings = self.rng, self.settings
        self.drifts = rng.random() < settings.effort_drift_share
        self.hides_effort = self.lifter.never_logs_reserve or self.drifts
        self.targets = np.full(self.weeks, self.plan.reserve)
        if self.drifts:
            self.targets = np.clip(self.plan.reserve + np.cumsum(rng.normal(0, 0.8, self.weeks)), 0, 6)
        changes = rng.random() < settings.variant_change_share
        self.change_week = int(rng.integers(16, self.weeks - 10)) if changes else None
        innovations = self.kind.draw_innovations(rng, self.weeks)
        self.readiness = readiness(innovations, settings, self.lifter.noise_scale)
        self.habits: Habits = self.kind.draw_habits(rng, self.plan, self.weeks)

    def _start_programs(self) -> None:
        ranges = [(self.plan.lowest, self.plan.highest)]
        if self.habits.other_range is not None:
            ranges.append(self.habits.other_range)
        self.programs = [Program(lowest, highest, self.exercise.step) for lowest, highest in ranges]
        self._begin_variant(0, self.exercise.variant, 0.0)

    def _begin_variant(self, week: int, variant: str, offset: float) -> None:
        self.variant = variant
        self.variant_start = week
        self.offset = offset
        self.sessions: list[int] = []
        for program in self.programs:
            program.restart(self.curve, self.capacity.by_day[week * DAYS] + offset, self.plan.reserve)

    def train(self, roster: Roster) -> None:
        """Adds the line's rows to the roster."""
        roster.params.append(self._params_row())
        for week in range(self.weeks):
            if week == self.change_week:
                offset = self.rng.normal(-0.05, 0.08)
                self.curve = self.curve.of_other_variant(self.rng, self.settings, self.exercise.leg)
                self._begin_variant(week, self.exercise.variant + " (alt)", offset)
                roster.params.append(self._params_row())
            done = self._train_week(week, roster.log)
            self.sessions.append(done.sessions)
            roster.truth.append(self._truth_row(week, done))

    def _is_deload(self, week: int) -> bool:
        return week % self.lifter.deload_every == self.lifter.deload_every - 1

    def _train_week(self, week: int, log: list[tuple]) -> Week:
        done = Week()
        days = self.habits.days(self.rng, self.plan.per_week)
        if self.capacity.by_week[week].kind == "layoff":
            return done
        for weekday in days:
            if self.rng.random() < self.settings.missed_sessions:
                continue
            done.sessions += 1
            self._train_session(week, week * DAYS + weekday, done, log)
        return done

    def _train_session(self, week: int, day: int, done: Week, log: list[tuple]) -> None:
        noise_scale = self.lifter.noise_scale
        effect = self.kind.draw_day(self.rng, self.settings, noise_scale, self.readiness[week])
        effect += self.habits.weekday_effect(day)
        program = self.programs[week % len(self.programs)]
        tired = 0.0
        reps: list[int] = []
        for number in range(1, self.plan.sets + 1):
            load, target = self._load_and_target(program, week, number)
            below, gain = False, 0.0
            if self._standard_is_low(week):
                below, gain = self.episode.ease(self.rng, week)
            capacity = self.capacity.by_day[day] + self.offset + effect - self.fatigue * tired + gain
            capacity += self.rng.normal(0, self.settings.set_sd * noise_scale)
            possible = max(self.curve.reps(capacity, load), FEWEST_REPS)
            effort = self._perform(possible, target, program, week)
            log.append(self._log_row(week, day, number, load, effort, below))
            done.sets += 1
            done.below_standard += below
            tired = tired * 0.85 + math.exp(-0.25 * max(0, effort.reserve - 0.5))
            reps.append(effort.reps)
        if not self._is_deload(week) and self.habits.load_share(week) == 1.0:
            program.advance(reps)

    def _standard_is_low(self, week: int) -> bool:
        episode = self.episode
        return episode is not None and episode.start <= week < episode.end and not self._is_deload(week)

    def _load_and_target(self, program: Program, week: int, number: int) -> tuple[float, float]:
        """Load of a set in kg, and the reserve it is meant to end with."""
        step = self.exercise.step
        load = program.load
        share = self.habits.load_share(week)
        if share != 1.0:
            load = loadable(load * share, step)
        if self._is_deload(week):
            return lighter(load, DELOAD_SHARE, step), DELOAD_RESERVE
        if self.plan.backs_off and number > 1:
            load = lighter(load, BACKOFF_SHARE, step)
        return load, max(0.0, self.targets[week] + self.habits.reserve_step(week))

    def _perform(self, possible: float, target: float, program: Program, week: int) -> Effort:
        deload = self._is_deload(week)
        limit = program.highest if deload else None
        top = program.highest if self.plan.stops_at_top and not deload else None
        return perform(self.rng, possible, target, limit, top, self.lifter, self.settings)

    def _log_row(self, week: int, day: int, number: int, load: float, effort: Effort, below: bool) -> tuple:
        rng = self.rng
        partial = 1 if effort.failed and rng.random() < 0.6 else 0
        reserve = self._written_reserve(effort)
        marks = self._marks(week, below)
        load, reps = self._mistype(load, effort.reps)
        date = FIRST_DAY + datetime.timedelta(days=day)
        return (
            self.lifter.name, date.isoformat(), self.exercise.name, self.variant, self.exercise.grip, f"{load:g}",
            number, reps, partial, reserve, marks,
        )

    def _written_reserve(self, effort: Effort) -> str:
        blank = (self.hides_effort and not effort.failed) or self.rng.random() < self.lifter.reserve_missing
        if self.hides_effort and self.rng.random() < 0.5:
            blank = True
        return "" if blank else f"{effort.reported:g}"

    def _marks(self, week: int, below: bool) -> str:
        marks = ""
        if below and self.rng.random() < self.episode.marked:
            marks = self.episode.mark(self.rng)
        elif self.rng.random() < self.settings.false_marks:
            marks = str(self.rng.choice(["S", "M", "E"]))
        return marks + "D" if self._is_deload(week) else marks

    def _mistype(self, load: float, reps: int) -> tuple[float, int]:
        if self.rng.random() >= self.settings.typos:
            return load, reps
        wrong = self.rng.integers(0, 3)
        if wrong == 0:
            return load * 10, reps
        if wrong == 1:
            return load, reps + 10
        return load + 10 * self.exercise.step, reps

    def _key(self) -> tuple[str, str, str, str]:
        return self.lifter.name, self.exercise.name, self.variant, self.exercise.grip

    def _params_row(self) -> tuple:
        plan, lifter, episode = self.plan, self.lifter, self.episode
        return (
            *self._key(), lifter.level, f"{self.curve.elasticity:.5f}", f"{self.curve.scale:.3f}",
            f"{self.fatigue:.5f}", f"{lifter.noise_scale:.4f}", f"{lifter.reserve_bias:.4f}", plan.per_week, plan.sets,
            plan.lowest, plan.highest, plan.reserve, episode.mode if episode else "",
            f"{episode.marked:g}" if episode else "", int(self.drifts), int(self.hides_effort),
            "" if self.change_week is None else self.change_week,
        )

    def _truth_row(self, week: int, done: Week) -> tuple:
        stretch = self.capacity.by_week[week]
        state, reason = self._true_state(week, done)
        planned = "D" if self._is_deload(week) else ("H" if stretch.kind == "maint" else "")
        log_capacity = self.capacity.by_day[week * DAYS + 3] + self.offset
        return (
            *self._key(), week, state, STATES[stretch.kind], max(stretch.start, self.variant_start),
            int(done.was_below_standard()), f"{self.capacity.slope_in(week):.4f}", f"{log_capacity:.5f}",
            done.sessions, planned, self.lifter.level, stretch.kind, reason,
        )

    def _true_state(self, week: int, done: Week) -> tuple[str, str]:
        """The state a perfect judge of this log would name, and why it could not be told if so."""
        stretch = self.capacity.by_week[week]
        if stretch.kind == "layoff":
            return "none", ""
        if done.was_below_standard():
            return "cannot_tell", "standard"
        if self.drifts:
            return "cannot_tell", "effort"
        recent = sum(self.sessions[-4:])
        if week - self.variant_start < 4 or sum(self.sessions) < 5 or recent < 2:
            return "cannot_tell", "few"
        state = STATES[stretch.kind]
        return ("holding" if week - stretch.start < YOUNG.get(state, 0) else state), ""


def simulate(seed: int, athletes: int, weeks: int, kind: Kind) -> Roster:
    """The roster of this seed."""
    if weeks < FEWEST_WEEKS:
        raise ValueError(f"a roster needs at least {FEWEST_WEEKS} weeks")
    rng = np.random.default_rng(seed)
    roster = Roster()
    fewest, most = kind.settings.lifts
    for number in range(athletes):
        lifter = draw_lifter(rng, number, kind.settings)
        count = int(rng.integers(fewest, most + 1))
        for index in rng.choice(len(EXERCISES), size=count, replace=False):
            Line(rng, kind, lifter, EXERCISES[index], weeks).train(roster)
    return roster


def write(roster: Roster, folder: Path) -> None:
    """Writes the three files, making the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    files = (("log", LOG_COLUMNS, roster.log), ("truth", TRUTH_COLUMNS, roster.truth),
             ("params", PARAMS_COLUMNS, roster.params))
    for name, columns, rows in files:
        with open(folder / f"{name}.csv", "w", newline="", encoding="utf-8") as file:
            writer = csv.writer(file)
            writer.writerow(columns.split(","))
            writer.writerows(rows)


def main() -> None:
    parser = argparse.ArgumentParser(description="Simulates a roster of lifters whose true state is known.")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--athletes", type=int, default=120)
    parser.add_argument("--weeks", type=int, default=52)
    parser.add_argument("--out", type=Path, required=True)
    parser.add_argument("--kind", choices=sorted(KINDS), default="default")
    arguments = parser.parse_args()
    roster = simulate(arguments.seed, arguments.athletes, arguments.weeks, KINDS[arguments.kind])
    write(roster, arguments.out)
    print(f"{len(roster.params)} lines, {len(roster.log)} sets, {len(roster.truth)} weeks -> {arguments.out}")


if __name__ == "__main__":
    main()
