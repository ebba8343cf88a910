"""The measures by which verdicts are judged, as functions of plain arrays by line and week.

    measure_alarms(alarm, truth, progress, onsets).median_delay  # Kaplan and Meier's median, in weeks
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from roster_truth import CANNOT_TELL, Onset, Truth

WEEKS_A_YEAR = 52
LONGEST_DELAY = 16
FLICKER_WEEKS = 3
ANSWERS = ("progressing", "holding", "stalled", "slipping", "cant_tell")
PROGRESSING, HOLDING, STALLED, SLIPPING, CANT_TELL = range(len(ANSWERS))
# An answer as one of the true states.
STATE_OF_ANSWER = np.array([0, 1, 1, 2, 3])


def beginnings(alarm: np.ndarray) -> np.ndarray:
    """Weeks in which an alarm begins that was silent for two weeks."""
    begins = alarm.copy()
    begins[:, 1:] &= ~alarm[:, :-1]
    begins[:, 2:] &= ~alarm[:, :-2]
    return begins


class FalseAlarms(NamedTuple):
    a_year: float  # begun, in a year of true progress
    share: float  # of the weeks of true progress


def false_alarms(alarm: np.ndarray, progress: np.ndarray) -> FalseAlarms:
    """How often an alarm is raised, and how long it lasts, in the given weeks of true progress."""
    weeks = max(1, progress.sum())
    begun = (beginnings(alarm) & progress).sum()
    return FalseAlarms(begun / weeks * WEEKS_A_YEAR, (alarm & progress).sum() / weeks)


@dataclass
class Delays:
    """Weeks from onset to alarm; where it never came, how many weeks were watched."""

    weeks: np.ndarray
    censored: np.ndarray
    already: int  # onsets at which the alarm was already on: not counted as found

    def found_by(self, week: int) -> float:
        """Kaplan and Meier's estimate of the share of stalls that are found in that many weeks."""
        missed = 1.0
        for delay in range(1, week + 1):
            watched = (self.weeks >= delay).sum()
            found = ((self.weeks == delay) & ~self.censored).sum()
            if watched:
                missed *= 1 - found / watched
        return 1 - missed

    def median(self) -> int | float:
        """The first week by which half are found; infinite where that is after LONGEST_DELAY."""
        return next((week for week in range(1, LONGEST_DELAY + 1) if self.found_by(week) >= 0.5), math.inf)


def delays(alarm: np.ndarray, onsets: list[Onset]) -> Delays:
    """The delay of every onset; an alarm in the week of the onset has a delay of 1."""
    weeks, censored, already = [], [], 0
    for onset in onsets:
        if alarm[onset.line, onset.start - 1]:
            already += 1
            continue
        hits = np.flatnonzero(alarm[onset.line, onset.start : onset.end])
        weeks.append(hits[0] + 1 if len(hits) else onset.end - onset.start)
        censored.append(not len(hits))
    return Delays(np.array(weeks, int), np.array(censored, bool), already)


def recalls(state: np.ndarray, truth: np.ndarray, weeks: np.ndarray, states: int) -> np.ndarray:
    """By true state: the share of its weeks in which that state was named (0 where there were none)."""
    result = np.zeros(states)
    for number in range(states):
        mine = weeks & (truth == number)
        result[number] = (mine & (state == number)).sum() / max(1, mine.sum())
    return result


def balanced(state: np.ndarray, truth: Truth, chosen: np.ndarray) -> tuple[float, float]:
    """Balanced accuracy over progress, flat and regress where a state was named, and over these and "cannot tell"."""
    weeks = (truth.state >= 0) & ~truth.few & chosen
    told = weeks & (truth.state < CANNOT_TELL) & (state < CANNOT_TELL)
    return recalls(state, truth.state, told, 3).mean(), recalls(state, truth.state, weeks, 4).mean()


def share(flags: np.ndarray, weeks: np.ndarray) -> float:
    """Share of the weeks in which the flag is up; NaN without any."""
    return float(flags[weeks].mean()) if weeks.any() else math.nan


class Meaning(NamedTuple):
    """What an answer means: how often it is given, and how often each state is then true."""

    share: float
    truth: np.ndarray  # progress, flat, regress, cannot tell


def meaning(answers: np.ndarray, answer: int, truth: Truth, chosen: np.ndarray) -> Meaning:
    """The meaning of one answer in the chosen weeks."""
    weeks = (truth.state >= 0) & ~truth.few & chosen
    given = weeks & (answers == answer)
    true = np.array([share(truth.state == state, given) for state in range(4)])
    return Meaning(given.sum() / max(1, weeks.sum()), true)


def flickering(answers: np.ndarray) -> np.ndarray:
    """Weeks of excursions: the answer leaves what it was and is back after at most FLICKER_WEEKS weeks.

    Weeks without an answer are negative; they are no excursions and end none.
    """
    result = np.zeros(answers.shape, bool)
    for line, row in enumerate(answers):
        for week in range(1, len(row)):
            before = row[week - 1]
            if before < 0 or row[week] == before:
                continue
            later = row[week : week + FLICKER_WEEKS + 1]
            back = np.flatnonzero(later == before)
            if len(back) and (later[: back[0]] >= 0).all():
                result[line, week : week + back[0]] = True
    return result


def answers_from(
    probabilities: np.ndarray, threshold: np.ndarray, few: np.ndarray, technique: np.ndarray, effort: np.ndarray,
) -> np.ndarray:
    """Answers by thresholds and gates alone; probabilities are of rising, flat, falling, `threshold` of not rising."""
    not_rising = probabilities[..., 1] + probabilities[..., 2]
    answers = np.full(few.shape, HOLDING)
    answers[probabilities[..., 0] >= 0.6] = PROGRESSING
    stalled = not_rising >= threshold
    answers[stalled] = STALLED
    answers[stalled & (probabilities[..., 2] >= 0.3)] = SLIPPING
    answers[effort & (answers != PROGRESSING)] = CANT_TELL
    answers[few | technique] = CANT_TELL
    return answers


def states_from(probabilities: np.ndarray, weights: tuple[float, float, float], closed: np.ndarray) -> np.ndarray:
    """The state of the largest weighted probability; CANNOT_TELL where a gate is closed."""
    state = (probabilities * np.array(weights)).argmax(-1)
    state[closed] = CANNOT_TELL
    return state


def random_pit(lower: np.ndarray, upper: np.ndarray, rng: np.random.Generator) -> np.ndarray:
    """Probability integral transform of whole repetitions, uniform between the two ends if the forecast is right."""
    return lower + rng.random(len(lower)) * (upper - lower)


def coverage(pit: np.ndarray, level: float) -> float:
    """Share of outcomes within the central interval of this level."""
    return float((np.abs(pit - 0.5) * 2 <= level).mean()) if len(pit) else math.nan


def by_level(measure: Callable[[int], dict[str, float]], levels: tuple[str, ...]) -> dict[str, float]:
    """The measures of every level, by "level.name"."""
    return {f"{level}.{name}": value
            for number, level in enumerate(levels) for name, value in measure(number).items()}
