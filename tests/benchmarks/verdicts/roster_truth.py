"""What was really so with a simulated roster, as arrays by line and week, and which onsets of stalls can be judged by.

    truth = Truth.read(Path("roster"), observations.keys, weeks=52)
    for onset in onsets_of(truth): ...
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from pathlib import Path
from typing import NamedTuple

import numpy as np

from observations import Key, key_of, rows_of
from roster_settings import LEVELS

# States of `state`: the last is for weeks that no judge could tell; -1 for weeks that aren't judged.
PROGRESS, FLAT, REGRESS, CANNOT_TELL = range(4)
# Kinds of `stretch`: the first three are states; -1 before a line begins.
AWAY, COMING_BACK = 4, 5
STRETCH_OF = {
    "progress": PROGRESS, "stall": FLAT, "maint": FLAT, "regress": REGRESS, "layoff": AWAY, "regain": COMING_BACK,
}

PROGRESS_BEFORE = 6  # weeks of progress before an onset
SINCE_START = 10  # weeks of the line before an onset
SHORTEST_STALL = 5
CLEAN_BEFORE = 4  # weeks before an onset in which the standard was kept


@dataclass
class Truth:
    """`level` and `marked` are by line, the rest by line and week."""

    level: np.ndarray
    marked: np.ndarray  # chance that a set below the standard is marked; NaN without an episode
    state: np.ndarray
    stretch: np.ndarray  # what the lift did, whether or not it could be told
    stalled: np.ndarray  # in a stall, not in a planned hold
    onset: np.ndarray  # first week of the stretch
    since: np.ndarray  # weeks since the line began
    below_standard: np.ndarray
    few: np.ndarray  # cannot be told for want of sessions
    untold: np.ndarray  # cannot be told for any reason
    drifting: np.ndarray  # cannot be told for want of any word on effort

    @classmethod
    def empty(cls, lines: int, weeks: int) -> Truth:
        shape = lines, weeks
        result = cls(**{field.name: np.zeros(shape, bool) for field in fields(cls)})
        result.level = np.zeros(lines, int)
        result.marked = np.full(lines, np.nan)
        result.state, result.stretch = np.full(shape, -1), np.full(shape, -1)
        result.onset, result.since = np.zeros(shape, int), np.zeros(shape, int)
        return result

    @classmethod
    def read(cls, folder: Path, keys: list[Key], weeks: int) -> Truth:
        """The truth of the lines in the order of `keys`."""
        result = cls.empty(len(keys), weeks)
        line_of = {key: line for line, key in enumerate(keys)}
        for row in rows_of(folder / "params.csv"):
            line = line_of[key_of(row)]
            result.level[line] = LEVELS.index(row["level"])
            result.marked[line] = float(row["mark_sens"]) if row["mark_sens"] else np.nan
        first: dict[int, int] = {}
        for row in rows_of(folder / "truth.csv"):
            line, week = line_of[key_of(row)], int(row["week"])
            result._add((line, week), row, first.setdefault(line, week))
        return result

    def _add(self, at: tuple[int, int], row: dict[str, str], first_week: int) -> None:
        stretch = STRETCH_OF[row["segment"]]
        self.stretch[at] = stretch
        if row["true_state"] == "cannot_tell":
            self.state[at] = CANNOT_TELL
        elif stretch in (PROGRESS, FLAT, REGRESS):
            self.state[at] = stretch
        self.stalled[at] = row["segment"] == "stall"
        self.onset[at] = int(row["onset_week"])
        self.since[at] = at[1] - first_week
        self.below_standard[at] = row["contaminated"] == "1"
        self.few[at] = row["reason"] == "few"
        self.drifting[at] = row["reason"] == "effort"
        self.untold[at] = row["reason"] != ""

    @classmethod
    def pooled(cls, rosters: list[Truth]) -> Truth:
        return cls(**{field.name: np.concatenate([getattr(one, field.name) for one in rosters])
                      for field in fields(cls)})


class Onset(NamedTuple):
    """A stall from week start to before week end, after steady progress, that a log can show."""

    line: int
    start: int
    end: int
    level: int


def runs_of(flags: np.ndarray) -> list[tuple[int, int]]:
    """Stretches of consecutive true values, as (first, after last)."""
    edges = np.diff(np.concatenate([[0], flags.astype(int), [0]]))
    return list(zip(np.flatnonzero(edges == 1), np.flatnonzero(edges == -1)))


def onsets_of(truth: Truth) -> list[Onset]:
    """The onsets that detection is measured by: long enough, after long enough progress, the standard kept."""
    found = []
    for line in range(len(truth.level)):
        for start, end in runs_of(truth.stalled[line]):
            before = truth.stretch[line, max(0, start - PROGRESS_BEFORE) : start]
            steady = len(before) == PROGRESS_BEFORE and (before == PROGRESS).all()
            long_enough = truth.since[line, start] >= SINCE_START and end - start >= SHORTEST_STALL
            if not (steady and long_enough):
                continue
            clean = not truth.below_standard[line, start - CLEAN_BEFORE : end].any()
            if clean and not truth.untold[line, start:end].any():
                found.append(Onset(line, int(start), int(end), int(truth.level[line])))
    return found


def true_progress(truth: Truth, few: np.ndarray) -> np.ndarray:
    """Weeks in which an alarm is false: progress for 4 weeks and more, the standard kept, sessions enough."""
    week = np.arange(truth.state.shape[1])[None]
    settled = (week - truth.onset >= 4) & (truth.since >= 6)
    return (truth.stretch == PROGRESS) & ~truth.below_standard & ~truth.untold & settled & ~few


def below_standard_weeks(truth: Truth) -> np.ndarray:
    """Weeks below the standard that are judged."""
    return truth.below_standard & (truth.since >= 4) & (truth.stretch >= 0)


def clean_weeks(truth: Truth) -> np.ndarray:
    """Weeks in which nothing stands in the way of a verdict."""
    return ~truth.below_standard & ~truth.untold & np.isin(truth.stretch, (PROGRESS, FLAT, REGRESS))


def drifting_weeks(truth: Truth) -> np.ndarray:
    """Weeks that are judged in which the effort drifts and isn't logged."""
    return truth.drifting & (truth.since >= 4) & (truth.stretch != AWAY)
