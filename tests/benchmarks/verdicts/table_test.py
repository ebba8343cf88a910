#!/usr/bin/env python3
"""Tests of the table's measures on cases worked by hand.

    python3 -m unittest discover -s tests/benchmarks/verdicts -p "*_test.py"
"""

from __future__ import annotations

import csv
import io
import json
import math
import sys
import tempfile
import unittest
from contextlib import redirect_stdout
from pathlib import Path
from unittest import mock

import numpy as np

sys.path.insert(0, str(Path(__file__).parent))

import measures
import prototype
import roster
import table
from judged import Judged
from limits import missed_limits
from observations import EXACT, LOWER, UPPER, LoggedSet, Observations, Reader, gates_of, z_of
from report import figure
from roster_kinds import KINDS
from roster_truth import CANNOT_TELL, FLAT, PROGRESS, REGRESS, Onset, Truth, onsets_of, true_progress


def flags(text: str) -> np.ndarray:
    """A line of weeks: "#" for true, anything else for false."""
    return np.array([[letter == "#" for letter in text]])


def verdicts(text: str) -> np.ndarray:
    """A line of weeks by the first letters of progressing, holding, stalled; "." for none."""
    return np.array([["phs".index(letter) if letter != "." else -1 for letter in text]])


class FalseAlarmsTest(unittest.TestCase):
    def test_an_alarm_that_pauses_for_one_week_is_one_alarm(self) -> None:
        self.assertEqual(measures.beginnings(flags(".##.#...#.")).sum(), 2)

    def test_an_alarm_in_the_first_week_begins_there(self) -> None:
        self.assertEqual(measures.beginnings(flags("#.........")).tolist(), flags("#.........").tolist())

    def test_two_alarms_in_half_a_year_of_progress_are_four_a_year(self) -> None:
        alarm, progress = np.zeros((1, 52), bool), np.zeros((1, 52), bool)
        progress[0, :26] = True
        alarm[0, [3, 4, 20, 40]] = True
        found = measures.false_alarms(alarm, progress)
        self.assertAlmostEqual(found.a_year, 4.0)
        self.assertAlmostEqual(found.share, 3 / 26)


class DelaysTest(unittest.TestCase):
    def setUp(self) -> None:
        # Stalls of weeks 10 to 19 found in weeks 11 and 13, one of weeks 10 to 12 never, one alarmed before it began.
        self.alarm = np.zeros((4, 30), bool)
        self.alarm[0, 11] = self.alarm[1, 13] = True
        self.alarm[2, 13:] = True
        self.alarm[3, 9:15] = True
        ends = (20, 20, 13, 20)
        self.onsets = [Onset(line, 10, end, 0) for line, end in enumerate(ends)]

    def test_the_week_of_the_onset_is_week_one(self) -> None:
        found = measures.delays(self.alarm, self.onsets)
        self.assertEqual(found.weeks.tolist(), [2, 4, 3])

    def test_a_stall_that_ends_unfound_is_censored(self) -> None:
        found = measures.delays(self.alarm, self.onsets)
        self.assertEqual(found.censored.tolist(), [False, False, True])

    def test_an_alarm_that_was_on_before_is_no_detection(self) -> None:
        self.assertEqual(measures.delays(self.alarm, self.onsets).already, 1)

    def test_an_alarm_that_begins_with_the_stall_found_it_in_week_one(self) -> None:
        self.alarm[0, 10] = True
        found = measures.delays(self.alarm, self.onsets[:1])
        self.assertEqual((found.weeks.tolist(), found.already), ([1], 0))

    def test_a_censored_stall_counts_as_watched_until_it_ends(self) -> None:
        # Week 2: one of three found, 2/3 missed. Week 4: the only one left is found.
        found = measures.delays(self.alarm, self.onsets)
        self.assertAlmostEqual(found.found_by(1), 0.0)
        self.assertAlmostEqual(found.found_by(3), 1 / 3)
        self.assertAlmostEqual(found.found_by(4), 1.0)
        self.assertEqual(found.median(), 4)

    def test_half_that_are_never_found_have_no_median(self) -> None:
        found = measures.delays(np.zeros((4, 30), bool), self.onsets)
        self.assertEqual(found.median(), math.inf)
        self.assertEqual(figure(found.median()), ">16")

    def test_no_onset_gives_no_delay(self) -> None:
        found = measures.delays(self.alarm, [])
        self.assertEqual(found.found_by(12), 0.0)


class KaplanMeierTest(unittest.TestCase):
    def test_found_by_agrees_with_the_remission_times_of_freireich(self) -> None:
        # Freireich et al. 1963, 6-mercaptopurine arm, as tabulated by Kaplan and Meier's method in textbooks of
        # survival analysis (Cox and Oakes 1984; times and figures from memory): S(6) = .857, S(7) = .807,
        # S(10) = .753, S(13) = .690, S(16) = .627.
        times = [6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35]
        censored = [0, 0, 0, 1, 0, 1, 0, 1, 1, 0, 0, 1, 1, 1, 0, 0, 1, 1, 1, 1, 1]
        found = measures.Delays(np.array(times), np.array(censored, bool), 0)
        for week, survival in ((6, 0.857), (7, 0.807), (10, 0.753), (13, 0.690), (16, 0.627)):
            self.assertAlmostEqual(1 - found.found_by(week), survival, places=3)


def truth_of(states: str, level: int = 0) -> Truth:
    """One line whose weeks are p, f, r or "?" (cannot tell), each stretch from where it begins."""
    truth = Truth.empty(1, len(states))
    codes = {"p": PROGRESS, "f": FLAT, "r": REGRESS, "?": CANNOT_TELL}
    truth.level[:] = level
    for week, letter in enumerate(states):
        truth.state[0, week] = codes[letter]
        truth.stretch[0, week] = codes[letter] if letter != "?" else PROGRESS
        truth.stalled[0, week] = letter == "f"
        same = week > 0 and states[week - 1] == letter
        truth.onset[0, week] = truth.onset[0, week - 1] if same else week
        truth.since[0, week] = week
    return truth


class OnsetsTest(unittest.TestCase):
    def test_a_stall_after_steady_progress_is_an_onset(self) -> None:
        self.assertEqual(onsets_of(truth_of("p" * 12 + "f" * 6 + "p" * 4)), [Onset(0, 12, 18, 0)])

    def test_a_stall_that_lasts_to_the_end_is_an_onset(self) -> None:
        self.assertEqual(onsets_of(truth_of("p" * 12 + "f" * 6)), [Onset(0, 12, 18, 0)])

    def test_stalls_that_are_early_short_or_after_little_progress_are_none(self) -> None:
        for states in ("p" * 9 + "f" * 8, "p" * 12 + "f" * 4 + "p" * 3, "p" * 8 + "r" * 4 + "p" * 5 + "f" * 8):
            self.assertEqual(onsets_of(truth_of(states)), [], states)

    def test_a_stall_below_the_standard_is_none(self) -> None:
        truth = truth_of("p" * 12 + "f" * 8)
        truth.below_standard[0, 9] = True
        self.assertEqual(onsets_of(truth), [])

    def test_progress_counts_against_alarms_from_its_fifth_week_and_the_lines_seventh(self) -> None:
        truth = truth_of("p" * 10 + "f" * 3 + "p" * 6)
        weeks = np.flatnonzero(true_progress(truth, np.zeros((1, 19), bool))[0])
        self.assertEqual(weeks.tolist(), [6, 7, 8, 9, 17, 18])


class BalanceTest(unittest.TestCase):
    def test_every_state_weighs_the_same_however_rare(self) -> None:
        truth = truth_of("pppp" + "ff" + "r" + "??")
        state = np.array([[0, 0, 0, 1, 1, 0, 0, 3, 0]])
        three, four = measures.balanced(state, truth, np.ones((1, 9), bool))
        self.assertAlmostEqual(three, (3 / 4 + 1 / 2 + 0) / 3)
        self.assertAlmostEqual(four, (3 / 4 + 1 / 2 + 0 + 1 / 2) / 4)

    def test_a_week_left_open_costs_the_four_states_but_not_the_three(self) -> None:
        truth = truth_of("pp" + "ff" + "rr" + "?")
        state = np.array([[0, 3, 1, 1, 2, 2, 3]])
        three, four = measures.balanced(state, truth, np.ones((1, 7), bool))
        self.assertAlmostEqual(three, 1.0)
        self.assertAlmostEqual(four, (1 / 2 + 1 + 1 + 1) / 4)

    def test_class_weights_lift_a_rare_state(self) -> None:
        probabilities = np.array([[[0.7, 0.2, 0.1], [0.7, 0.2, 0.1]]])
        closed = np.array([[False, True]])
        self.assertEqual(measures.states_from(probabilities, (1, 1, 1), closed).tolist(), [[PROGRESS, CANNOT_TELL]])
        self.assertEqual(measures.states_from(probabilities, (1, 2, 12), closed).tolist(), [[REGRESS, CANNOT_TELL]])


class AnswersTest(unittest.TestCase):
    def answer(self, probabilities: tuple[float, float, float], **gates: bool) -> str:
        closed = {name: np.array([[gates.get(name, False)]]) for name in ("few", "technique", "effort")}
        threshold = np.array([[0.7]])
        answer = measures.answers_from(np.array([[probabilities]]), threshold, **closed)
        return measures.ANSWERS[answer[0, 0]]

    def test_thresholds_decide(self) -> None:
        self.assertEqual(self.answer((0.6, 0.3, 0.1)), "progressing")
        self.assertEqual(self.answer((0.5, 0.4, 0.1)), "holding")
        self.assertEqual(self.answer((0.2, 0.6, 0.2)), "stalled")
        self.assertEqual(self.answer((0.2, 0.4, 0.4)), "slipping")

    def test_gates_leave_it_open(self) -> None:
        self.assertEqual(self.answer((0.9, 0.1, 0.0), few=True), "cant_tell")
        self.assertEqual(self.answer((0.9, 0.1, 0.0), technique=True), "cant_tell")
        self.assertEqual(self.answer((0.2, 0.6, 0.2), effort=True), "cant_tell")
        self.assertEqual(self.answer((0.9, 0.1, 0.0), effort=True), "progressing")

    def test_a_meaning_is_the_truth_among_the_weeks_it_was_given_in(self) -> None:
        truth = truth_of("pppf")
        what = measures.meaning(verdicts("ppsp"), measures.PROGRESSING, truth, np.ones((1, 4), bool))
        self.assertAlmostEqual(what.share, 3 / 4)
        self.assertEqual(what.truth.round(6).tolist(), [0.666667, 0.333333, 0.0, 0.0])


class FlickerTest(unittest.TestCase):
    def weeks(self, text: str) -> list[int]:
        return np.flatnonzero(measures.flickering(verdicts(text))[0]).tolist()

    def test_an_answer_that_comes_back_within_three_weeks_flickered(self) -> None:
        self.assertEqual(self.weeks("pphpp"), [2])
        self.assertEqual(self.weeks("pphshpp"), [2, 3, 4])

    def test_an_answer_that_stays_or_comes_back_later_did_not(self) -> None:
        self.assertEqual(self.weeks("pppsss"), [])
        self.assertEqual(self.weeks("ppsssspp"), [])

    def test_one_that_never_settles_flickers_throughout(self) -> None:
        self.assertEqual(self.weeks("phphp"), [1, 2, 3])

    def test_weeks_without_an_answer_are_no_flicker(self) -> None:
        self.assertEqual(self.weeks("..pphhhh"), [])


class CoverageTest(unittest.TestCase):
    def test_central_intervals_hold_what_lies_within_them(self) -> None:
        pit = np.array([0.02, 0.2, 0.3, 0.5, 0.76, 0.99])
        self.assertAlmostEqual(measures.coverage(pit, 0.5), 2 / 6)
        self.assertAlmostEqual(measures.coverage(pit, 0.8), 4 / 6)
        self.assertAlmostEqual(measures.coverage(pit, 0.96), 5 / 6)

    def test_the_random_transform_of_a_right_forecast_of_whole_numbers_is_uniform(self) -> None:
        # A die thrown often enough, forecast as a die.
        rng = np.random.default_rng(1)
        eyes = rng.integers(1, 7, 60000)
        pit = measures.random_pit((eyes - 1) / 6, eyes / 6, rng)
        for level in (0.5, 0.8, 0.95):
            self.assertAlmostEqual(measures.coverage(pit, level), level, delta=0.01)

    def test_no_forecast_has_no_coverage(self) -> None:
        self.assertTrue(math.isnan(measures.coverage(np.array([]), 0.5)))


class LimitsTest(unittest.TestCase):
    values = {"a": 0.5, "b": math.nan, "c": math.inf}

    def test_kept_limits_give_no_line(self) -> None:
        self.assertEqual(missed_limits(self.values, {"a": {"min": 0.5, "max": 0.5}, "c": {"min": 8}}), [])

    def test_missed_limits_are_named(self) -> None:
        self.assertEqual(missed_limits(self.values, {"a": {"max": 0.4}, "c": {"max": 9}}),
                         ["a: 0.5000 is above 0.4", "c: inf is above 9"])
        self.assertEqual(missed_limits(self.values, {"a": {"min": 0.6}}), ["a: 0.5000 is below 0.6"])

    def test_figures_that_are_missing_keep_no_limit(self) -> None:
        limits = {"b": {"max": 1.0}, "d": {"max": 1.0}}
        lines = ["b: there is no such figure", "d: there is no such figure"]
        self.assertEqual(missed_limits(self.values, limits), lines)

    def test_a_misspelt_limit_is_missed(self) -> None:
        self.assertEqual(len(missed_limits(self.values, {"a": {"maximum": 1.0}})), 1)
        self.assertEqual(len(missed_limits(self.values, {"a": {}})), 1)


class ReaderTest(unittest.TestCase):
    def read(self, reps: int, reserve: float | None, marks: str = "", partial: bool = False) -> tuple:
        return tuple(Reader(12).read(LoggedSet(0, 100.0, 1, reps, partial, reserve, marks)))

    def test_a_set_says_what_its_effort_lets_it(self) -> None:
        self.assertEqual(self.read(8, 0.0), (8.5, 0.45, EXACT))
        self.assertEqual(self.read(8, 2.0), (8 + 2.2 + 0.45, 0.95, EXACT))
        self.assertEqual(self.read(8, 6.0), (11.0, 1.0, LOWER))
        self.assertEqual(self.read(8, 2.0, marks="D"), (9.5, 1.0, LOWER))
        self.assertEqual(self.read(12, None), (12.5, 0.8, LOWER))
        self.assertEqual(self.read(8, 2.0, marks="S")[2], UPPER)
        self.assertEqual(self.read(8, None, partial=True), (8.5, 0.45, EXACT))

    def test_a_blank_reserve_is_taken_as_the_usual_one(self) -> None:
        reader = Reader(12)
        for reserve in (1.0, 3.0, 3.0):
            reader.read(LoggedSet(0, 100.0, 1, 8, False, reserve, ""))
        self.assertEqual(reader.read(LoggedSet(0, 100.0, 1, 8, False, None, "")).reps, 8 + 1.1 * 3.0 + 0.45)

    def test_thirty_repetitions_are_the_logarithm_of_two(self) -> None:
        self.assertAlmostEqual(float(z_of(30.0)), math.log(2))


class GatesTest(unittest.TestCase):
    def setUp(self) -> None:
        # One line with two sessions of one set each week.
        self.seen = Observations.empty([("A", "row", "cable", "-")], 8)
        for week in range(8):
            for session in range(2):
                self.seen.day[0, week, session] = 7 * week + 3 * session
                self.seen.kind[0, week, session, 0] = EXACT

    def test_four_weeks_are_needed(self) -> None:
        self.assertEqual(gates_of(self.seen).few[0].tolist(), [True] * 4 + [False] * 4)

    def test_one_session_in_four_weeks_is_too_few(self) -> None:
        self.seen.day[0, 3, 1] = -1
        self.seen.day[0, 4:] = -1
        self.assertEqual(gates_of(self.seen).few[0].tolist(), [True] * 4 + [False] * 2 + [True] * 2)

    def test_two_marked_sessions_in_four_close_the_gate(self) -> None:
        self.seen.marked[0, 5, :, 0] = True
        self.assertEqual(np.flatnonzero(gates_of(self.seen).technique[0]).tolist(), [5, 6])

    def test_sets_without_effort_close_the_gate_until_half_of_four_have_one(self) -> None:
        self.seen.blank[0, :6, :, 0] = True
        self.assertEqual(gates_of(self.seen).effort[0].tolist(), [True] * 6 + [False] * 2)


class WholeTableTest(unittest.TestCase):
    """The programs together, on a roster of six lifters."""

    @classmethod
    def setUpClass(cls) -> None:
        cls.folder = tempfile.TemporaryDirectory()
        cls.roster, cls.answers = Path(cls.folder.name) / "roster", Path(cls.folder.name) / "answers"
        roster.write(roster.simulate(seed=7, athletes=6, weeks=52, kind=KINDS["default"]), cls.roster)
        with mock.patch("sys.argv", ["prototype.py", str(cls.roster), str(cls.answers)]), mock.patch("sys.stderr"):
            prototype.main()

    @classmethod
    def tearDownClass(cls) -> None:
        cls.folder.cleanup()

    def run_table(self, *more: str) -> tuple[int, str]:
        text = io.StringIO()
        arguments = ["table.py", str(self.roster), str(self.answers), *more]
        with mock.patch("sys.argv", arguments), redirect_stdout(text):
            status = table.main()
        return status, text.getvalue()

    def test_probabilities_of_every_answered_week_sum_to_one(self) -> None:
        judged = Judged.read([(self.roster, self.answers)])
        total = judged.answers.probabilities.sum(-1)
        self.assertGreater((total > 0).sum(), 300)
        np.testing.assert_allclose(total[total > 0], 1.0, atol=1e-12)

    def test_limits_decide_the_exit_status(self) -> None:
        for most, expected in ((100.0, 0), (-1.0, 1)):
            limits = Path(self.folder.name) / "limits.json"
            limits.write_text(json.dumps({"verdicts.novice.false_alarms": {"max": most}}), encoding="utf-8")
            status, text = self.run_table("--limits", str(limits))
            self.assertEqual(status, expected)
            self.assertEqual("verdicts.novice.false_alarms" in text, expected == 1)

    def test_a_missing_week_is_refused(self) -> None:
        with open(self.answers / "weeks.csv", newline="", encoding="utf-8") as text:
            rows = list(csv.reader(text))
        short = Path(self.folder.name) / "short"
        short.mkdir()
        with open(short / "weeks.csv", "w", newline="", encoding="utf-8") as text:
            csv.writer(text).writerows(rows[:-1])
        with self.assertRaisesRegex(ValueError, "1 weeks are missing"):
            Judged.read([(self.roster, short)])

    def test_a_roster_of_the_same_seed_is_the_same_and_of_another_is_not(self) -> None:
        again = roster.simulate(seed=7, athletes=1, weeks=52, kind=KINDS["default"])
        other = roster.simulate(seed=8, athletes=1, weeks=52, kind=KINDS["default"])
        with open(self.roster / "log.csv", newline="", encoding="utf-8") as text:
            first = [tuple(row) for row in csv.reader(text)][1 : 1 + len(again.log)]
        self.assertEqual(first, [tuple(map(str, row)) for row in again.log])
        self.assertNotEqual(again.log, other.log)

    def test_every_kind_of_roster_can_be_simulated_and_differs(self) -> None:
        logs = {name: roster.simulate(3, 1, 52, kind).log for name, kind in KINDS.items()}
        self.assertTrue(all(logs.values()))
        self.assertEqual(len({str(log) for log in logs.values()}), len(KINDS))


if __name__ == "__main__":
    unittest.main()
